package earthing.soil;

import earthing.quantity.Source;
import org.apache.commons.math3.complex.Complex;

/**
 * Causal power law of Alipio and Visacro: σ = σ₀ + σ₀·h·(f/1 MHz)^γ with h = a·(σ₀/1 mS/m)^(−0.73), and ωε = ωε∞ +
 * tan(πγ/2)·(σ − σ₀), so that both parts are one analytic function of frequency. CIGRE TB 781 recommends the mean
 * constants. Range 100 Hz … 4 MHz.
 *
 * @param title name of the constants
 * @param factor a [-], &gt; 0
 * @param exponent γ [-], between 0 and 1
 * @param highPermittivity ε∞/ε₀ [-], ≥ 1
 */
public record PowerLawSoil(String title, double factor, double exponent, double highPermittivity)
        implements SoilDispersion {

    /** Where law and constants come from. */
    public static final Source SOURCE = Source.publication(
            "Alipio, Visacro, Modeling the frequency dependence of electrical parameters of soil, IEEE Transactions on"
                    + " Electromagnetic Compatibility 56(5), 2014; CIGRE TB 781, 2019",
            "causal model",
            Source.Status.FROM_MEMORY);

    /** Constants of the mean of the measured soils. */
    public static final PowerLawSoil MEAN = new PowerLawSoil("Alipio-Visacro 2014, mean", 1.26, 0.54, 12);

    /** Constants of the relatively conservative variant. */
    public static final PowerLawSoil CAUTIOUS =
            new PowerLawSoil("Alipio-Visacro 2014, relatively conservative", 0.95, 0.58, 8);

    /** Constants of the conservative variant, the weakest dispersion. */
    public static final PowerLawSoil CONSERVATIVE =
            new PowerLawSoil("Alipio-Visacro 2014, conservative", 0.70, 0.62, 4);

    /**
     * Refuses constants outside the domain of the law.
     *
     * @param title name of the constants
     * @param factor a [-], &gt; 0
     * @param exponent γ [-], between 0 and 1
     * @param highPermittivity ε∞/ε₀ [-], ≥ 1
     */
    public PowerLawSoil {
        if (!(factor > 0) || !(exponent > 0 && exponent < 1) || !(highPermittivity >= 1)) {
            throw new IllegalArgumentException("the power law needs a factor > 0, an exponent in (0, 1), a permittivity"
                    + " >= 1; have " + factor + ", " + exponent + ", " + highPermittivity);
        }
    }

    @Override
    public Complex admittivity(double conductivity, double frequency) {
        SoilDispersion.require(conductivity, frequency);
        double grown =
                conductivity * factor * Math.pow(1e3 * conductivity, -0.73) * Math.pow(frequency / 1e6, exponent);
        return new Complex(
                conductivity + grown,
                2 * Math.PI * frequency * EPSILON0 * highPermittivity + Math.tan(Math.PI * exponent / 2) * grown);
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
