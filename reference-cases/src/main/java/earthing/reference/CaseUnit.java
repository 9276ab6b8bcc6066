package earthing.reference;

import earthing.quantity.Dimension;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A unit of a case file. Besides the units of {@link Dimension} it may be composed of them with {@code /}, {@code .}
 * and powers, for example {@code kA/us}, {@code kA2.s}, {@code A.s^0.5/mm2}.
 *
 * @param text as written, empty for a pure number
 * @param factor what one unit is in SI
 * @param dimension the dimension if the unit is one of its units, empty for a composed unit
 */
public record CaseUnit(String text, double factor, Optional<Dimension> dimension) {

    private static final Pattern POWER = Pattern.compile("(?<atom>.*?[^\\d^.\\-])\\^?(?<power>\\d+(?:\\.\\d+)?)");

    /** Atoms that no site file needs, with their factor into SI. */
    private static final Map<String, Double> MORE_ATOMS = Map.ofEntries(
            Map.entry("1", 1.0),
            Map.entry("K", 1.0),
            Map.entry("W", 1.0),
            Map.entry("kW", 1e3),
            Map.entry("g", 1e-3),
            Map.entry("kg", 1.0),
            Map.entry("mi", 1609.344),
            Map.entry("a", 365.25 * 86400),
            Map.entry("m3", 1.0),
            Map.entry("cm3", 1e-6),
            Map.entry("mm3", 1e-9),
            Map.entry("S", 1.0),
            Map.entry("mS", 1e-3),
            Map.entry("ns", 1e-9),
            Map.entry("MA", 1e6),
            Map.entry("MV", 1e6));

    /**
     * Reads a unit.
     *
     * @param text unit text, empty for a pure number
     * @return the unit
     * @throws IllegalArgumentException if the text is no unit
     */
    public static CaseUnit parse(String text) {
        Optional<CaseUnit> plain = plain(text);
        return plain.orElseGet(() -> new CaseUnit(text, composed(text), Optional.empty()));
    }

    private static Optional<CaseUnit> plain(String text) {
        for (Dimension dimension : Dimension.values()) {
            Double factor = dimension.factors().get(text);
            if (factor != null) {
                return Optional.of(new CaseUnit(text, factor, Optional.of(dimension)));
            }
        }
        return Optional.empty();
    }

    private static double composed(String text) {
        List<String> divisors = split(text, '/');
        double factor = product(divisors.get(0), text);
        for (String divisor : divisors.subList(1, divisors.size())) {
            factor /= product(divisor, text);
        }
        return factor;
    }

    private static double product(String part, String whole) {
        Optional<Double> single = atom(part);
        if (single.isPresent()) {
            return single.get();
        }
        double factor = 1;
        for (String piece : split(part, '.')) {
            Optional<Double> found = atom(piece);
            if (found.isEmpty()) {
                throw new IllegalArgumentException("\"" + whole + "\" is no unit"
                        + (piece.equals(whole) ? "" : ": \"" + piece + "\" is not known"));
            }
            factor *= found.get();
        }
        return factor;
    }

    private static Optional<Double> atom(String text) {
        if (text.isEmpty()) {
            return Optional.empty();
        }
        Optional<Double> factor = plain(text).map(CaseUnit::factor).or(() -> more(text));
        if (factor.isPresent()) {
            return factor;
        }
        Matcher power = POWER.matcher(text);
        if (!power.matches()) {
            return Optional.empty();
        }
        String base = power.group("atom");
        return plain(base)
                .map(CaseUnit::factor)
                .or(() -> more(base))
                .map(f -> Math.pow(f, Double.parseDouble(power.group("power"))));
    }

    private static Optional<Double> more(String text) {
        return Optional.ofNullable(MORE_ATOMS.get(text));
    }

    /** Splits at a mark, but never between the digits of a number. */
    private static List<String> split(String text, char mark) {
        List<String> parts = new ArrayList<>();
        int from = 0;
        for (int i = 0; i < text.length(); i++) {
            boolean inNumber = mark == '.'
                    && i > 0
                    && i + 1 < text.length()
                    && Character.isDigit(text.charAt(i - 1))
                    && Character.isDigit(text.charAt(i + 1));
            if (text.charAt(i) == mark && !inNumber) {
                parts.add(text.substring(from, i));
                from = i + 1;
            }
        }
        parts.add(text.substring(from));
        return parts;
    }

    /**
     * Whether values in the two units can be compared.
     *
     * @param other another unit
     * @return true for units of one dimension, or two composed units of the same text
     */
    public boolean isComparableWith(CaseUnit other) {
        return dimension.isPresent()
                ? dimension.equals(other.dimension)
                : text.toLowerCase(Locale.ROOT).equals(other.text.toLowerCase(Locale.ROOT));
    }
}
