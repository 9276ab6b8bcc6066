package earthing.conductor;

import earthing.quantity.Source;
import java.util.Objects;
import java.util.OptionalDouble;

/**
 * What the heating of a metal depends on. IEC 60949 and IEEE Std 80 print the same law with different names: with the
 * temperature coefficient α₂₀ at 20 °C and β = 1/α₂₀ − 20 °C, the metal's constant is K = √(q / (α₂₀ ρ₂₀)).
 *
 * @param metal which metal
 * @param edition which table
 * @param heatCapacity volumetric heat capacity q [J/(K·m³)], &gt; 0
 * @param resistivity20 resistivity at 20 °C, ρ₂₀ [Ω·m], &gt; 0
 * @param alpha20 temperature coefficient of resistance at 20 °C, α₂₀ [1/K], &gt; 0
 * @param beta reciprocal of the temperature coefficient at 0 °C, β [K], &gt; 0; IEEE Std 80 calls it K₀
 * @param fusing fusing temperature [°C], empty where the table prints none
 * @param source where the row stands
 */
public record ThermalConstants(
        Metal metal,
        ThermalEdition edition,
        double heatCapacity,
        double resistivity20,
        double alpha20,
        double beta,
        OptionalDouble fusing,
        Source source) {

    /**
     * Refuses constants that are not positive.
     *
     * @param metal which metal
     * @param edition which table
     * @param heatCapacity volumetric heat capacity q [J/(K·m³)], &gt; 0
     * @param resistivity20 resistivity at 20 °C, ρ₂₀ [Ω·m], &gt; 0
     * @param alpha20 temperature coefficient of resistance at 20 °C, α₂₀ [1/K], &gt; 0
     * @param beta reciprocal of the temperature coefficient at 0 °C, β [K], &gt; 0; IEEE Std 80 calls it K₀
     * @param fusing fusing temperature [°C], empty where the table prints none
     * @param source where the row stands
     */
    public ThermalConstants {
        Objects.requireNonNull(metal);
        Objects.requireNonNull(edition);
        Objects.requireNonNull(fusing);
        Objects.requireNonNull(source);
        if (!(heatCapacity > 0 && resistivity20 > 0 && alpha20 > 0 && beta > 0)) {
            throw new IllegalArgumentException("thermal constants must be > 0; have heat capacity " + heatCapacity
                    + ", resistivity " + resistivity20 + ", coefficient " + alpha20 + ", beta " + beta);
        }
    }

    /**
     * The metal's constant K of IEC 60949 eq. (2).
     *
     * @return K [A·√s/m²]; divide by 1e6 for the customary A·√s/mm²
     */
    public double constant() {
        return Math.sqrt(heatCapacity / (alpha20 * resistivity20));
    }

    /**
     * Resistivity at a temperature, linear in temperature as both standards have it.
     *
     * @param temperature temperature θ [°C], above −β
     * @return ρ₂₀ (β + θ)/(β + 20) [Ω·m]
     */
    public double resistivity(double temperature) {
        if (!(temperature > -beta)) {
            throw new IllegalArgumentException("temperature must be above " + -beta + " °C; have " + temperature);
        }
        return resistivity20 * (beta + temperature) / (beta + 20);
    }
}
