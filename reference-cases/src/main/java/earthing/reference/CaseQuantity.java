package earthing.reference;

import earthing.quantity.Dimension;
import earthing.quantity.Quantity;
import earthing.quantity.UnitException;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;

/** Reads a given value through the library's own reader of quantities; the unit tells the dimension. */
final class CaseQuantity {

    private CaseQuantity() {}

    /**
     * A value in SI.
     *
     * @param text number with a unit of {@link Dimension}, or with a composed unit of {@link CaseUnit}
     * @return the value in SI
     * @throws IllegalArgumentException if the text is no number with a known unit
     */
    static double si(String text) {
        String trimmed = text.strip();
        if (trimmed.endsWith("AWG")) {
            return read(trimmed, Dimension.AREA);
        }
        Matcher matcher = PrintedNumber.NUMBER_AND_UNIT.matcher(trimmed);
        if (!matcher.matches()) {
            throw new IllegalArgumentException("\"" + trimmed + "\" is no number with a unit");
        }
        String unit = matcher.group("unit").strip();
        if (unit.equals("degF") || unit.equals("°F")) {
            return read(trimmed, Dimension.TEMPERATURE);
        }
        CaseUnit known = CaseUnit.parse(unit);
        Optional<Dimension> dimension = known.dimension();
        return dimension.isPresent()
                ? read(trimmed, dimension.get())
                : Double.parseDouble(matcher.group("number")) * known.factor();
    }

    private static double read(String text, Dimension dimension) {
        try {
            return Quantity.parse(text, dimension, OptionalDouble.empty()).si();
        } catch (UnitException e) {
            throw new IllegalArgumentException(e.getMessage(), e);
        }
    }
}
