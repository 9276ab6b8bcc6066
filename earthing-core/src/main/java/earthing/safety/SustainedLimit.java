package earthing.safety;

import earthing.quantity.Source;
import java.util.Objects;

/**
 * What holds for a fault that is not cleared within the curve.
 *
 * @param value permissible voltage [V], &gt; 0
 * @param source where it stands
 */
public record SustainedLimit(double value, Source source) {

    /**
     * Refuses a limit that is not positive.
     *
     * @param value permissible voltage [V], &gt; 0
     * @param source where it stands
     */
    public SustainedLimit {
        Objects.requireNonNull(source);
        if (!(value > 0 && value < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("sustained limit must be > 0 V; have " + value);
        }
    }
}
