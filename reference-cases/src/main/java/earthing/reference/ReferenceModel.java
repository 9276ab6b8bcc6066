package earthing.reference;

import java.util.Map;

/** What a case file's {@code model} name stands for: one call of the library's public API. */
@FunctionalInterface
public interface ReferenceModel {

    /**
     * Computes the values that a row expects.
     *
     * @param given the row's given values; a value that is given but never read fails the row
     * @return result name to value in SI; {@link Double#POSITIVE_INFINITY} where the answer is "never"
     */
    Map<String, Double> compute(Given given);
}
