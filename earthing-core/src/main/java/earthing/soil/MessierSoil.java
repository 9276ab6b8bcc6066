package earthing.soil;

import earthing.quantity.Source;
import org.apache.commons.math3.complex.Complex;

/**
 * Messier's law: κ = σ₀ + jωε∞ + 2·√(jωσ₀ε∞), that is σ = σ₀(1 + √(4πfε∞/σ₀)) and ε = ε∞(1 + √(σ₀/(πfε∞))), with ε∞ =
 * 8 ε₀. Causal by its form. Range 100 Hz … 4 MHz, where it was compared with measured soils.
 */
public record MessierSoil() implements SoilDispersion {

    /** Where the law comes from. */
    public static final Source SOURCE = Source.publication(
            "Messier, Another soil conductivity model, JAYCOR, 1985",
            "law with eps_inf = 8",
            Source.Status.FROM_MEMORY);

    private static final double HIGH_PERMITTIVITY = 8 * EPSILON0;

    @Override
    public Complex admittivity(double conductivity, double frequency) {
        SoilDispersion.require(conductivity, frequency);
        double both = Math.sqrt(4 * Math.PI * frequency * conductivity * HIGH_PERMITTIVITY);
        return new Complex(conductivity + both, 2 * Math.PI * frequency * HIGH_PERMITTIVITY + both);
    }

    @Override
    public String title() {
        return "Messier 1985";
    }

    @Override
    public Source source() {
        return SOURCE;
    }

    @Override
    public double lowest() {
        return 100;
    }

    @Override
    public double highest() {
        return 4e6;
    }
}
