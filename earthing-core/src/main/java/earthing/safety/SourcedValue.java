package earthing.safety;

import earthing.quantity.Source;
import java.util.Objects;

/**
 * A number of a criteria set with its origin.
 *
 * @param value value in SI, finite
 * @param source where it stands
 */
public record SourcedValue(double value, Source source) {

    /**
     * Refuses a value that is no number.
     *
     * @param value value in SI, finite
     * @param source where it stands
     */
    public SourcedValue {
        Objects.requireNonNull(source);
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException("a criterion must be finite; have " + value);
        }
    }
}
