package earthing.conductor;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/**
 * Heating of one conductor by all shots of a reclose sequence, adiabatic. The order of the shots does not matter.
 *
 * @param metal constants used
 * @param area area [m²]
 * @param initial initial temperature [°C]
 * @param jouleIntegral heat per ohm of all shots [A²·s]
 * @param afterShot temperature after each shot [°C]
 * @param finalTemperature temperature after the last shot [°C]
 * @param limit the limit that governs
 * @param requiredArea smallest area that keeps the limit [m²]
 * @param utilisation joule integral over the permissible one; above 1 the limit is exceeded
 */
public record SequenceHeating(
        ThermalConstants metal,
        double area,
        double initial,
        double jouleIntegral,
        List<Double> afterShot,
        double finalTemperature,
        TemperatureLimit limit,
        double requiredArea,
        double utilisation) {

    /**
     * Keeps a copy of the list.
     *
     * @param metal constants used
     * @param area area [m²]
     * @param initial initial temperature [°C]
     * @param jouleIntegral heat per ohm of all shots [A²·s]
     * @param afterShot temperature after each shot [°C]
     * @param finalTemperature temperature after the last shot [°C]
     * @param limit the limit that governs
     * @param requiredArea smallest area that keeps the limit [m²]
     * @param utilisation joule integral over the permissible one; above 1 the limit is exceeded
     */
    public SequenceHeating {
        Objects.requireNonNull(metal);
        Objects.requireNonNull(limit);
        afterShot = List.copyOf(afterShot);
    }

    /**
     * Heats a conductor.
     *
     * @param metal constants of the metal
     * @param area area [m²], &gt; 0
     * @param initial initial temperature [°C], below the governing limit
     * @param shots all shots to lockout, at least one
     * @param limits limits of the conductor, its covering and its joints, at least one
     * @return the result
     */
    public static SequenceHeating of(
            ThermalConstants metal, double area, double initial, List<Shot> shots, List<TemperatureLimit> limits) {
        if (shots.isEmpty()) {
            throw new IllegalArgumentException("a sequence needs at least one shot");
        }
        TemperatureLimit limit = TemperatureLimit.governing(limits);
        List<Double> after = new ArrayList<>();
        double sum = 0;
        for (Shot shot : shots) {
            // From the running sum, not from the last temperature: the chain of both is an identity.
            sum += shot.jouleIntegral();
            after.add(AdiabaticHeating.finalTemperature(metal, area, sum, initial));
        }
        double required = AdiabaticHeating.requiredArea(metal, sum, initial, limit.temperature());
        double ratio = required / area;
        return new SequenceHeating(
                metal, area, initial, sum, after, after.get(after.size() - 1), limit, required, ratio * ratio);
    }

    /**
     * Whether the governing limit is kept.
     *
     * @return true if the final temperature does not exceed the limit
     */
    public boolean keepsLimit() {
        return finalTemperature <= limit.temperature();
    }

    /**
     * Whether the conductor fuses, as far as the table prints a fusing temperature.
     *
     * @return true if the final temperature reaches the fusing temperature
     */
    public boolean fuses() {
        return metal.fusing().isPresent() && finalTemperature >= metal.fusing().getAsDouble();
    }
}
