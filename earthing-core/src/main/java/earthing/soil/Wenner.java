package earthing.soil;

import earthing.quantity.Source;

/**
 * Four probes in line at equal spacing a. Probes of depth 0 are points on the surface and K = 2πa; deeper ones are
 * points at depth b and K = 4πa / (1 + 2a/√(a²+4b²) − a/√(a²+b²)).
 *
 * <p>A driven rod is no point: of the depth to which it is driven, two thirds is the better value of b, see
 * {@link #driven}.
 *
 * @param spacing spacing a [m], &gt; 0
 * @param probeDepth depth b of the points [m], ≥ 0 and ≤ a
 */
public record Wenner(double spacing, double probeDepth) implements ElectrodeArray {

    /** Where the formula with probe depth comes from. */
    public static final Source SOURCE = Source.standard(
            "IEEE Std 81-2012", "four-point method, equal spacing, with probe depth", Source.Status.FROM_MEMORY);

    /**
     * Checks spacing and depth.
     *
     * @param spacing spacing a [m], &gt; 0
     * @param probeDepth depth b of the points [m], ≥ 0 and ≤ a
     */
    public Wenner {
        if (!(spacing > 0) || Double.isInfinite(spacing)) {
            throw new IllegalArgumentException("Wenner spacing must be > 0 m and finite; have " + spacing);
        }
        if (!(probeDepth >= 0 && probeDepth <= spacing)) {
            throw new IllegalArgumentException(
                    "probe depth must be from 0 to the spacing of " + spacing + " m; have " + probeDepth);
        }
    }

    /**
     * Probes that are points on the surface.
     *
     * @param spacing spacing a [m]
     * @return the arrangement
     */
    public static Wenner of(double spacing) {
        return new Wenner(spacing, 0);
    }

    /**
     * Probes driven to a depth, taken as points at two thirds of it.
     *
     * @param spacing spacing a [m]
     * @param driven depth to which the probes are driven [m], ≥ 0
     * @return the arrangement
     */
    public static Wenner driven(double spacing, double driven) {
        return new Wenner(spacing, driven * 2 / 3);
    }

    @Override
    public double resistance(SoilModel soil) {
        if (probeDepth == 0) {
            SurfacePotential potential = SurfacePotential.of(soil);
            return 2 * (potential.at(spacing) - potential.at(2 * spacing));
        }
        PointSource source = PointSource.of(soil);
        return 2
                * (source.potential(spacing, probeDepth, probeDepth)
                        - source.potential(2 * spacing, probeDepth, probeDepth));
    }

    @Override
    public double geometricFactor() {
        double a = spacing;
        double b = probeDepth;
        return 4 * Math.PI * a / (1 + 2 * a / Math.hypot(a, 2 * b) - a / Math.hypot(a, b));
    }

    @Override
    public double spread() {
        return 3 * spacing;
    }
}
