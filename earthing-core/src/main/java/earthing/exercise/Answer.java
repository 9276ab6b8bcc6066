package earthing.exercise;

import earthing.quantity.Dimension;
import earthing.quantity.Numbers;
import earthing.quantity.Quantity;
import earthing.quantity.UnitException;
import java.util.OptionalDouble;

/**
 * The right answer of an exercise.
 *
 * @param dimension what is measured
 * @param unit the unit it is asked in, one of the dimension's; empty for a pure number
 * @param value the answer in that unit, finite and not 0
 * @param within how far a right answer may lie from it, in that unit, above 0
 * @param printed whether the value was printed by others; else this library computed it
 */
public record Answer(Dimension dimension, String unit, double value, double within, boolean printed) {

    /**
     * Refuses an answer that cannot be judged.
     *
     * @param dimension what is measured
     * @param unit the unit it is asked in, one of the dimension's; empty for a pure number
     * @param value the answer in that unit, finite and not 0
     * @param within how far a right answer may lie from it, in that unit, above 0
     * @param printed whether the value was printed by others; else this library computed it
     */
    public Answer {
        if (!dimension.factors().containsKey(unit)) {
            throw new IllegalArgumentException("the unit \"" + unit + "\" is not one of "
                    + String.join(", ", dimension.factors().keySet()));
        }
        if (!(Math.abs(value) > 0 && Double.isFinite(value))) {
            throw new IllegalArgumentException("an answer must be finite and not 0; have " + value);
        }
        if (!(within > 0 && within < Math.abs(value))) {
            throw new IllegalArgumentException(
                    "the tolerance of an answer must be > 0 and less than the answer; have " + within);
        }
    }

    /**
     * The answer in the unit it is asked in.
     *
     * @return number and unit
     */
    public String text() {
        return Numbers.full(value) + (unit.isEmpty() ? "" : " " + unit);
    }

    /**
     * How far a right answer may lie from this one.
     *
     * @return as a share of it, with two digits and {@code %}
     */
    public String tolerance() {
        double percent = 100 * within / Math.abs(value);
        return Numbers.full(Double.parseDouble(Numbers.significant(percent, 2))) + " %";
    }

    /**
     * Reads what somebody answered.
     *
     * @param text number and unit, in any unit of the dimension
     * @return the number in the unit of this answer
     * @throws UnitException if it is no number with such a unit; the message says what is expected
     */
    public double read(String text) throws UnitException {
        return Quantity.parse(text, dimension, OptionalDouble.empty()).si()
                / dimension.factors().getOrDefault(unit, Double.NaN);
    }
}
