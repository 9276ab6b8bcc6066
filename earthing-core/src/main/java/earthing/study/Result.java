package earthing.study;

import earthing.quantity.Source;
import earthing.quantity.Worked;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One number that a study computed.
 *
 * @param id stable id, for example {@code electrode.main.resistance}
 * @param circumstances the case it belongs to
 * @param at {@code low}, {@code nominal} or {@code high} soil and source bounds, or {@code input=value}
 * @param value value in SI, finite
 * @param unit SI unit, empty for a pure number
 * @param handValue what the student's formula gives, where there is one, in the same unit
 * @param model the model that gave the value, in a few words
 * @param source where the model comes from
 * @param worked line of working, where the value can be redone by hand
 */
public record Result(
        String id,
        Case circumstances,
        String at,
        double value,
        String unit,
        OptionalDouble handValue,
        String model,
        Source source,
        Optional<Worked> worked) {

    /**
     * Refuses a value that is not finite: what cannot be computed is a {@link Gap}.
     *
     * @param id stable id, for example {@code electrode.main.resistance}
     * @param circumstances the case it belongs to
     * @param at {@code low}, {@code nominal} or {@code high} soil and source bounds, or {@code input=value}
     * @param value value in SI, finite
     * @param unit SI unit, empty for a pure number
     * @param handValue what the student's formula gives, where there is one, in the same unit
     * @param model the model that gave the value, in a few words
     * @param source where the model comes from
     * @param worked line of working, where the value can be redone by hand
     */
    public Result {
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException("result " + id + " must be finite; have " + value);
        }
    }

    /**
     * A result without hand value and working.
     *
     * @param id stable id
     * @param circumstances the case
     * @param at bound
     * @param value value in SI
     * @param unit SI unit
     * @param model the model in a few words
     * @param source where it comes from
     * @return the result
     */
    public static Result of(
            String id, Case circumstances, String at, double value, String unit, String model, Source source) {
        return new Result(id, circumstances, at, value, unit, OptionalDouble.empty(), model, source, Optional.empty());
    }

    /**
     * The same result with a hand value.
     *
     * @param hand what the student's formula gives
     * @return the result
     */
    public Result withHandValue(double hand) {
        return new Result(id, circumstances, at, value, unit, OptionalDouble.of(hand), model, source, worked);
    }

    /**
     * The same result with a line of working.
     *
     * @param line the line
     * @return the result
     */
    public Result withWorked(Worked line) {
        return new Result(id, circumstances, at, value, unit, handValue, model, source, Optional.of(line));
    }
}
