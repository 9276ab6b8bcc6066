package earthing.electrode.formula;

import earthing.quantity.Source;
import java.util.OptionalDouble;
import java.util.function.DoubleSupplier;

/**
 * What a closed form gives: a value, or none where it does not hold.
 *
 * @param value the value in SI; empty outside the range
 * @param expression the formula as text
 * @param range the range in which it holds, as text
 * @param source where it comes from
 */
public record FormulaResult(OptionalDouble value, String expression, String range, Source source) {

    static FormulaResult of(boolean holds, String range, String expression, Source source, DoubleSupplier value) {
        double result = holds ? value.getAsDouble() : Double.NaN;
        return new FormulaResult(
                Double.isFinite(result) ? OptionalDouble.of(result) : OptionalDouble.empty(),
                expression,
                range,
                source);
    }

    /**
     * Whether the formula holds for the given arguments.
     *
     * @return true where there is a value
     */
    public boolean holds() {
        return value.isPresent();
    }

    /**
     * The value.
     *
     * @return the value in SI
     * @throws IllegalStateException outside the range of the formula
     */
    public double get() {
        return value.orElseThrow(
                () -> new IllegalStateException(expression + " holds only for " + range + " (" + source.text() + ")"));
    }
}
