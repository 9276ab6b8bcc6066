package earthing.report.document;

import earthing.quantity.Numbers;
import java.util.List;
import java.util.OptionalDouble;
import java.util.regex.Pattern;

/**
 * The text of an amount: three significant digits, with the unit and the prefix that the trade would write. The value
 * itself stays as it is; only the printed text is scaled.
 */
public final class Amount {

    private static final String[] PREFIXES = {"p", "n", "µ", "m", "", "k", "M", "G"};
    private static final int NO_PREFIX = 4;

    /** A unit as the site file writes it, behind a number; not a word that only begins like one. */
    private static final Pattern ASCII_UNIT = Pattern.compile(
            "(?<=\\d)[ \\u00a0]([mkMµ]?)(ohm\\.m|ohm\\.cm|ohm|degC|mm2|us)(?![A-Za-z0-9.]*[A-Za-z0-9])");

    /** The space between a number and its unit, at which no line ends; plain text prints it as a space. */
    public static final String NO_BREAK = "\u00a0";

    private Amount() {}

    /**
     * A unit to print in.
     *
     * @param perSi what one SI unit is in the printed unit
     * @param unit the printed unit, empty for a pure number
     */
    public record Scale(double perSi, String unit) {
        /**
         * A value in the printed unit.
         *
         * @param si value in SI
         * @return the scaled value
         */
        public double of(double si) {
            return si * perSi;
        }
    }

    /**
     * An amount with its unit, joined by {@link #NO_BREAK}.
     *
     * @param si value in SI
     * @param unit SI unit as in the results, empty or {@code 1} for a pure number
     * @return for example {@code 6.45 kV}, {@code 70.0 mm²}, {@code 0.350}
     */
    public static String text(double si, String unit) {
        Scale scale = scale(si, unit);
        String digits = Numbers.brief(scale.of(si));
        return scale.unit().isEmpty() ? digits : digits + NO_BREAK + scale.unit();
    }

    /**
     * An amount, if there is one.
     *
     * @param si value in SI, or none
     * @param unit SI unit
     * @return the amount, or a dash
     */
    public static String text(OptionalDouble si, String unit) {
        return si.isPresent() ? text(si.getAsDouble(), unit) : "–";
    }

    /**
     * Amounts that stand side by side. One that is less than a millionth of the largest is printed as nearly zero: it
     * is what the arithmetic of the others leaves over.
     *
     * @param values values in SI, or none
     * @param unit SI unit
     * @return a text for each
     */
    public static List<String> row(List<OptionalDouble> values, String unit) {
        return row(values, unit, 0);
    }

    /**
     * Amounts that stand side by side and beside others of the same unit.
     *
     * @param values values in SI, or none
     * @param unit SI unit
     * @param beside the largest of the others, in SI; a value below a millionth of it is nearly zero
     * @return a text for each
     */
    public static List<String> row(List<OptionalDouble> values, String unit, double beside) {
        double most = Math.max(
                Math.abs(beside),
                values.stream().mapToDouble(v -> Math.abs(v.orElse(0))).max().orElse(0));
        return values.stream()
                .map(v -> v.isPresent() && v.getAsDouble() != 0 && Math.abs(v.getAsDouble()) < 1e-6 * most
                        ? "≈ 0"
                        : text(v, unit))
                .toList();
    }

    /**
     * Words in which each number has its unit as it is printed everywhere else: {@code 70 mm2} becomes {@code 70 mm²}.
     *
     * @param words words of a study or of the site file
     * @return the words, numbers and symbols joined by {@link #NO_BREAK}
     */
    public static String withSymbols(String words) {
        return ASCII_UNIT.matcher(words).replaceAll(match -> NO_BREAK + match.group(1) + symbol(match.group(2)));
    }

    private static String symbol(String unit) {
        return switch (unit) {
            case "ohm.m" -> "Ω·m";
            case "ohm.cm" -> "Ω·cm";
            case "ohm" -> "Ω";
            case "degC" -> "°C";
            case "mm2" -> "mm²";
            default -> "µs";
        };
    }

    /**
     * A relative margin in per cent.
     *
     * @param margin margin as a fraction, or none
     * @return for example {@code +12 %}, or a dash
     */
    public static String margin(OptionalDouble margin) {
        if (margin.isEmpty()) {
            return "–";
        }
        double percent = margin.getAsDouble() * 100;
        String digits = Math.abs(percent) < 100 ? Numbers.significant(percent, 2) : Long.toString(Math.round(percent));
        return (percent > 0 ? "+" : "") + digits + NO_BREAK + "%";
    }

    /**
     * The unit in which an amount of a given size is printed.
     *
     * @param si the largest value that has to be printed, in SI
     * @param unit SI unit
     * @return the printed unit and its factor
     */
    public static Scale scale(double si, String unit) {
        return switch (unit) {
            case "", "1" -> new Scale(1, "");
            case "m2" -> new Scale(1e6, "mm²");
            case "degC" -> new Scale(1, "°C");
            case "deg" -> new Scale(1, "°");
            case "ohm.m" -> new Scale(1, "Ω·m");
            case "ohm/m" -> new Scale(1e3, "Ω/km");
            case "V/m" -> new Scale(1e-3, "kV/m");
            case "/m2/a" -> new Scale(1e6, "/km²/a");
            case "m" -> Math.abs(si) < 0.0095 && si != 0 ? new Scale(1e3, "mm") : new Scale(1, "m");
            case "ohm" -> prefixed(si, "Ω", 3, 6);
            case "s" -> prefixed(si, "s", 1, NO_PREFIX);
            case "F", "C" -> prefixed(si, unit, 0, NO_PREFIX);
            case "H" -> prefixed(si, unit, 1, NO_PREFIX);
            case "V", "A", "J", "VA", "Hz", "W" -> prefixed(si, unit, 2, 7);
            default -> new Scale(1, unit);
        };
    }

    private static Scale prefixed(double si, String unit, int lowest, int highest) {
        double size = Math.abs(si);
        if (size == 0 || !Double.isFinite(size)) {
            return new Scale(1, unit);
        }
        int prefix = NO_PREFIX;
        double perSi = 1;
        // 999.5 rounds to 1000 in three digits, so the next prefix begins there.
        while (prefix < highest && size * perSi >= 999.5) {
            perSi /= 1000;
            prefix++;
        }
        while (prefix > lowest && size * perSi < 0.9995) {
            perSi *= 1000;
            prefix--;
        }
        return new Scale(perSi, PREFIXES[prefix] + unit);
    }
}
