package earthing.soil;

import earthing.quantity.Source;
import org.apache.commons.math3.complex.Complex;

/**
 * Universal soil of Longmire and Smith: thirteen relaxations, κ = σ₀ + jωε₀·(5 + Σ aₙ/(1 + jf/fₙ)), fₙ = (125·σ₀)^0.8312·
 * 10^(n−1) Hz with σ₀ in S/m. Causal by its form. Range 100 Hz … 200 MHz.
 */
public record LongmireSmithSoil() implements SoilDispersion {

    /** Where the law comes from. */
    public static final Source SOURCE = Source.publication(
            "Longmire, Smith, A universal impedance for soils, DNA 3788T, 1975",
            "coefficients of the thirteen terms",
            Source.Status.FROM_MEMORY);

    private static final double[] STRENGTH = {
        3.4e6, 2.74e5, 2.58e4, 3.38e3, 526, 133, 27.2, 12.5, 4.8, 2.17, 0.98, 0.392, 0.173
    };

    @Override
    public Complex admittivity(double conductivity, double frequency) {
        SoilDispersion.require(conductivity, frequency);
        double first = Math.pow(125 * conductivity, 0.8312);
        Complex permittivity = new Complex(5);
        for (int n = 0; n < STRENGTH.length; n++) {
            permittivity = permittivity.add(new Complex(1, frequency / (first * Math.pow(10, n)))
                    .reciprocal()
                    .multiply(STRENGTH[n]));
        }
        return permittivity
                .multiply(new Complex(0, 2 * Math.PI * frequency * EPSILON0))
                .add(conductivity);
    }

    @Override
    public String title() {
        return "Longmire-Smith 1975";
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
        return 2e8;
    }
}
