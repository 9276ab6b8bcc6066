package earthing.quantity;

import java.math.BigDecimal;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A number with its unit whose dimension is not known yet, for example the expected value of a result.
 *
 * @param number the number as written
 * @param unit the unit as written, empty if there is none
 */
public record Written(String number, String unit) {

    private static final Pattern FORM =
            Pattern.compile("([+-]?(?:\\d++(?:\\.\\d*+)?|\\.\\d++)(?:[eE][+-]?\\d{1,3})?)\\s*+([^\\d\\s].*)?");

    /**
     * Takes a text apart.
     *
     * @param text the text
     * @return number and unit; empty if it does not begin with a number
     */
    public static Optional<Written> of(String text) {
        Matcher form = FORM.matcher(text.strip());
        if (!form.matches()) {
            return Optional.empty();
        }
        String unit = form.group(2);
        return Optional.of(new Written(form.group(1), unit == null ? "" : unit.strip()));
    }

    /**
     * Whether the number is a part of something.
     *
     * @return true if it is given in percent
     */
    public boolean isPart() {
        return unit.equals("%");
    }

    /**
     * The value in the unit in which the library computes.
     *
     * @param siUnit that unit, empty for a pure number
     * @return the value; empty if the unit as written is not one of the same dimension
     */
    public OptionalDouble si(String siUnit) {
        return si(number, siUnit);
    }

    /**
     * How large a difference is, in the unit in which the library computes: without the shift of a scale of temperature.
     *
     * @param siUnit that unit
     * @return the size; empty if the unit as written is not one of the same dimension
     */
    public OptionalDouble size(String siUnit) {
        return difference(number, siUnit);
    }

    /**
     * Half a unit of the last digit that is written.
     *
     * @param siUnit the unit in which the library computes
     * @return half of that digit in this unit; empty if the unit as written is not one of the same dimension
     */
    public OptionalDouble halfDigit(String siUnit) {
        BigDecimal unitOfLast = BigDecimal.ONE.scaleByPowerOfTen(-new BigDecimal(number).scale());
        return difference(unitOfLast.divide(BigDecimal.valueOf(2)).toString(), siUnit);
    }

    private OptionalDouble difference(String of, String siUnit) {
        OptionalDouble value = si(of, siUnit);
        OptionalDouble zero = si("0", siUnit);
        return value.isPresent() && zero.isPresent()
                ? OptionalDouble.of(value.getAsDouble() - zero.getAsDouble())
                : OptionalDouble.empty();
    }

    private OptionalDouble si(String of, String siUnit) {
        String wanted = siUnit.equals("1") ? "" : siUnit;
        for (Dimension dimension : Dimension.values()) {
            if (dimension.siUnit().equals(wanted)) {
                try {
                    return OptionalDouble.of(Quantity.parse(of + " " + unit, dimension, OptionalDouble.empty())
                            .si());
                } catch (UnitException other) {
                    return OptionalDouble.empty();
                }
            }
        }
        // A unit that no input has, such as A2s: as the library writes it.
        return unit.toLowerCase(Locale.ROOT).equals(wanted.toLowerCase(Locale.ROOT))
                ? OptionalDouble.of(Double.parseDouble(of))
                : OptionalDouble.empty();
    }
}
