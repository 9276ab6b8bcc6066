package earthing.soil;

import earthing.quantity.Source;
import org.apache.commons.math3.complex.Complex;

/**
 * Ground that does not disperse: κ = σ₀ + jωε. No soil is so; it is the comparison that shows what dispersion does.
 *
 * @param permittivity ε/ε₀ [-], ≥ 1
 */
public record FixedSoil(double permittivity) implements SoilDispersion {

    /** Where it comes from. */
    public static final Source SOURCE = Source.tool("conductivity and permittivity that do not move with frequency");

    /**
     * Refuses what no matter has.
     *
     * @param permittivity ε/ε₀ [-], ≥ 1
     */
    public FixedSoil {
        if (!(permittivity >= 1) || Double.isInfinite(permittivity)) {
            throw new IllegalArgumentException("relative permittivity must be >= 1; have " + permittivity);
        }
    }

    @Override
    public Complex admittivity(double conductivity, double frequency) {
        SoilDispersion.require(conductivity, frequency);
        return new Complex(conductivity, 2 * Math.PI * frequency * EPSILON0 * permittivity);
    }

    @Override
    public String title() {
        return "no dispersion";
    }

    @Override
    public Source source() {
        return SOURCE;
    }

    @Override
    public double lowest() {
        return 0;
    }

    @Override
    public double highest() {
        return Double.POSITIVE_INFINITY;
    }
}
