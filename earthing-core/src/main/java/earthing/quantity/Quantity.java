package earthing.quantity;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * One number with its unit, as written and in SI.
 *
 * @param dimension what is measured
 * @param si value in the SI unit of the dimension, finite
 * @param text the text as its author wrote it, number and unit
 */
public record Quantity(Dimension dimension, double si, String text) {

    /** Digits once taken are not given back: a long row of them before a unit that does not fit would take minutes. */
    private static final Pattern NUMBER_AND_UNIT =
            Pattern.compile("([+-]?(?:\\d++(?:\\.\\d*+)?|\\.\\d++)(?:[eE][+-]?\\d{1,3})?)\\s*+(.*)");

    /**
     * Refuses values that are not finite.
     *
     * @param dimension what is measured
     * @param si value in the SI unit of the dimension, finite
     * @param text the text as its author wrote it, number and unit
     */
    public Quantity {
        if (!Double.isFinite(si)) {
            throw new IllegalArgumentException("a quantity must be finite; have " + si);
        }
    }

    /**
     * A value that was computed, not written.
     *
     * @param dimension what is measured
     * @param si value in SI
     * @return the quantity, its text in the SI unit
     */
    public static Quantity of(Dimension dimension, double si) {
        String unit = dimension.siUnit();
        return new Quantity(dimension, si, unit.isEmpty() ? plain(si) : plain(si) + " " + unit);
    }

    /**
     * Reads a number with its unit.
     *
     * @param text for example {@code 70 mm2}, {@code 2.4 m}, {@code 2/0 AWG}, {@code 10 cycles}
     * @param dimension the expected dimension
     * @param frequency frequency of the network [Hz], needed for {@code cycles} only
     * @return the quantity
     * @throws UnitException when the number, the unit or their combination is not understood; the message says what was
     *     expected
     */
    public static Quantity parse(String text, Dimension dimension, OptionalDouble frequency) throws UnitException {
        String trimmed = text.strip();
        if (dimension == Dimension.AREA && trimmed.endsWith("AWG")) {
            return new Quantity(dimension, awgArea(trimmed), trimmed);
        }
        Matcher matcher = NUMBER_AND_UNIT.matcher(trimmed);
        if (!matcher.matches()) {
            throw new UnitException("\"" + trimmed + "\" is no number with a unit; expected " + expected(dimension));
        }
        String number = matcher.group(1);
        String unit = matcher.group(2).strip();
        if (unit.startsWith(",")) {
            throw new UnitException(
                    "\"" + trimmed + "\" has a decimal comma; write a decimal point, expected " + expected(dimension));
        }
        // BigDecimal, so that "80 mm" and "0.08 m" are the same double.
        BigDecimal value = new BigDecimal(number);
        double si;
        if (dimension == Dimension.TIME && (unit.equals("cycles") || unit.equals("cycle"))) {
            if (frequency.isEmpty()) {
                throw new UnitException("\"" + trimmed
                        + "\": cycles need the frequency of the system; give system.frequency or write seconds");
            }
            si = value.doubleValue() / frequency.getAsDouble();
        } else if (dimension == Dimension.TEMPERATURE && (unit.equals("degF") || unit.equals("°F"))) {
            si = (value.doubleValue() - 32) / 1.8;
        } else {
            Double factor = dimension.factors().get(unit);
            if (factor == null) {
                throw new UnitException(
                        unit.isEmpty()
                                ? "\"" + trimmed + "\" has no unit; expected " + expected(dimension)
                                : "\"" + trimmed + "\": unit \"" + unit + "\" is not one of "
                                        + units(dimension) + "; expected "
                                        + expected(dimension));
            }
            si = value.multiply(BigDecimal.valueOf(factor), MathContext.DECIMAL64)
                    .doubleValue();
        }
        if (!Double.isFinite(si)) {
            throw new UnitException("\"" + trimmed + "\" is too large; expected " + expected(dimension));
        }
        return new Quantity(dimension, si, trimmed);
    }

    /** A pure number has the empty unit too, which cannot be told by writing it. */
    private static String units(Dimension dimension) {
        return dimension.factors().keySet().stream()
                .filter(unit -> !unit.isEmpty())
                .collect(Collectors.joining(", "));
    }

    /**
     * What a value of a dimension has to look like.
     *
     * @param dimension the dimension
     * @return a phrase for an error message
     */
    public static String expected(Dimension dimension) {
        return switch (dimension) {
            case LENGTH -> "a length such as 2.4 m, 200 mm, 8 ft";
            case AREA -> "a cross-section such as 70 mm2, 2/0 AWG, 250 kcmil";
            case RESISTIVITY -> "a resistivity such as 120 ohm.m, 12000 ohm.cm";
            case RESISTANCE -> "a resistance such as 25 ohm, 40 mohm";
            case RESISTANCE_PER_LENGTH -> "an impedance per length such as 0.32 ohm/km";
            case INDUCTANCE -> "an inductance such as 4.2 uH, 30 mH";
            case CAPACITANCE -> "a capacitance such as 120 pF, 2 uF";
            case CURRENT -> "a current such as 320 A, 8 kA";
            case VOLTAGE -> "a voltage such as 22 kV, 230 V";
            case POWER -> "an apparent power such as 250 MVA, 50 kVA";
            case ENERGY -> "an energy such as 5 kJ";
            case CHARGE -> "a charge such as 0.4 C";
            case FIELD -> "a field strength such as 300 kV/m";
            case TIME -> "a time such as 0.5 s, 150 ms, 10 cycles";
            case FREQUENCY -> "a frequency such as 50 Hz";
            case TEMPERATURE -> "a temperature such as 30 degC, 86 degF";
            case ANGLE -> "an angle such as 30 deg";
            case RATE -> "a rate such as 0.1 /a";
            case FLASH_DENSITY -> "a ground flash density such as 4 /km2/a";
            case RATIO -> "a number without unit, or with %";
        };
    }

    private static double awgArea(String text) throws UnitException {
        String size = text.substring(0, text.length() - 3).strip();
        int gauge;
        if (size.matches("[1-4]/0")) {
            gauge = 1 - (size.charAt(0) - '0');
        } else if (size.matches("\\d{1,2}") && Integer.parseInt(size) <= 40) {
            gauge = Integer.parseInt(size);
        } else {
            throw new UnitException(
                    "\"" + text + "\": AWG sizes run from 4/0 to 40; expected " + expected(Dimension.AREA));
        }
        // ASTM B258: diameter 0.005 in × 92^((36 − n)/39).
        double diameter = 0.005 * 0.0254 * Math.pow(92, (36 - gauge) / 39.0);
        return Math.PI / 4 * diameter * diameter;
    }

    private static String plain(double value) {
        return Numbers.full(value);
    }
}
