package earthing.conductor;

import earthing.quantity.Source;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;

/**
 * A temperature that something on the conductor must not exceed at the end of the fault.
 *
 * @param subject what sets the limit: the conductor, its covering or a joint
 * @param temperature limit [°C], finite
 * @param source where it stands
 */
public record TemperatureLimit(String subject, double temperature, Source source) {

    /**
     * Refuses a limit that is no number.
     *
     * @param subject what sets the limit: the conductor, its covering or a joint
     * @param temperature limit [°C], finite
     * @param source where it stands
     */
    public TemperatureLimit {
        Objects.requireNonNull(subject);
        Objects.requireNonNull(source);
        if (!Double.isFinite(temperature)) {
            throw new IllegalArgumentException("temperature limit must be finite; have " + temperature);
        }
    }

    /**
     * The limit that governs: the lowest.
     *
     * @param limits limits of the conductor, its covering and each joint; at least one
     * @return the lowest limit
     * @throws IllegalArgumentException if there is none
     */
    public static TemperatureLimit governing(List<TemperatureLimit> limits) {
        return limits.stream()
                .min(Comparator.comparingDouble(TemperatureLimit::temperature))
                .orElseThrow(() -> new IllegalArgumentException("no temperature limit given for conductor or joints"));
    }
}
