package earthing.soil;

import earthing.quantity.Source;

/**
 * Four probes in line, the current probes outside, symmetric about the middle: K = π(L² − l²)/(2l). With L = 3l it is
 * the Wenner arrangement. Probes are points on the surface.
 *
 * @param halfCurrent half the distance of the current probes AB/2, L [m]
 * @param halfPotential half the distance of the potential probes MN/2, l [m], &gt; 0 and &lt; L
 */
public record Schlumberger(double halfCurrent, double halfPotential) implements ElectrodeArray {

    /** Where the geometric factor comes from. */
    public static final Source SOURCE = Source.publication(
            "Telford, Geldart & Sheriff, Applied Geophysics, 2nd ed. 1990",
            "Schlumberger array",
            Source.Status.FROM_MEMORY);

    /**
     * Checks the order of the probes.
     *
     * @param halfCurrent half the distance of the current probes AB/2, L [m]
     * @param halfPotential half the distance of the potential probes MN/2, l [m], &gt; 0 and &lt; L
     */
    public Schlumberger {
        if (!(halfPotential > 0) || !(halfCurrent > halfPotential) || Double.isInfinite(halfCurrent)) {
            throw new IllegalArgumentException("a Schlumberger array needs 0 < MN/2 < AB/2; have MN/2 " + halfPotential
                    + " m, AB/2 " + halfCurrent + " m");
        }
    }

    @Override
    public double resistance(SoilModel soil) {
        SurfacePotential potential = SurfacePotential.of(soil);
        return 2 * (potential.at(halfCurrent - halfPotential) - potential.at(halfCurrent + halfPotential));
    }

    @Override
    public double geometricFactor() {
        return Math.PI * (halfCurrent * halfCurrent - halfPotential * halfPotential) / (2 * halfPotential);
    }

    @Override
    public double spread() {
        return 2 * halfCurrent;
    }
}
