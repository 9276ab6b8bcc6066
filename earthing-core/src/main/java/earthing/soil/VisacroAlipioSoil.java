package earthing.soil;

import earthing.quantity.Source;
import org.apache.commons.math3.complex.Complex;

/**
 * Fit of Visacro and Alipio 2012: ρ = ρ₀/(1 + 1.2e−6·ρ₀^0.73·(f − 100)^0.65), ρ in Ω·m and f in Hz, with ρ₀ the
 * resistivity at 100 Hz, and εr = 7.6e3·f^(−0.4) + 1.3 from 10 kHz. Below 100 Hz ρ₀, below 10 kHz the permittivity of 10
 * kHz. Conductivity and permittivity were fitted apart and are not quite one causal function. Range 100 Hz … 4 MHz.
 */
public record VisacroAlipioSoil() implements SoilDispersion {

    /** Where the law comes from. */
    public static final Source SOURCE = Source.publication(
            "Visacro, Alipio, Frequency dependence of soil parameters, IEEE Transactions on Power Delivery 27(2), 2012",
            "fitted expressions",
            Source.Status.FROM_MEMORY);

    private static final double PERMITTIVITY_FROM = 10e3;

    @Override
    public Complex admittivity(double conductivity, double frequency) {
        SoilDispersion.require(conductivity, frequency);
        double above = Math.max(0, frequency - lowest());
        double grown = 1 + 1.2e-6 * Math.pow(1 / conductivity, 0.73) * Math.pow(above, 0.65);
        double permittivity = 7.6e3 * Math.pow(Math.max(frequency, PERMITTIVITY_FROM), -0.4) + 1.3;
        return new Complex(conductivity * grown, 2 * Math.PI * frequency * EPSILON0 * permittivity);
    }

    @Override
    public String title() {
        return "Visacro-Alipio 2012";
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
