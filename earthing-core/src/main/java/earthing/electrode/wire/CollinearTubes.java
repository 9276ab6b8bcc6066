package earthing.electrode.wire;

/**
 * Mean of 1/R between two pieces of tube on one axis, averaged over both circumferences: the exact kernel of a tube,
 * which converges when the pieces are made shorter.
 *
 * <p>With G″ = 1/√(u²+ρ²), G(u, ρ) = u·asinh(u/ρ) − √(u²+ρ²), the double integral is a second difference of G. On the
 * tube ρ = 2a sin(φ/2); the mean of ln ρ over φ is ln a exactly, the rest is periodic and smooth, so that few equal
 * steps in φ suffice.
 */
final class CollinearTubes {

    private static final int STEPS = 12;
    private static final double[] SINE_SQUARED = new double[STEPS];
    /** Beyond so many radii the mean of ρ² is enough. */
    private static final double FAR_IN_RADII = 40;

    static {
        for (int i = 0; i < STEPS; i++) {
            double sine = Math.sin(Math.PI * (i + 0.5) / (2 * STEPS));
            SINE_SQUARED[i] = 4 * sine * sine;
        }
    }

    private CollinearTubes() {}

    /**
     * Mean of 1/R over both pieces.
     *
     * @param a1 beginning of one piece [m]
     * @param a2 its end [m], above a1
     * @param b1 beginning of the other piece [m]
     * @param b2 its end [m], above b1
     * @param radiusSquared square of the radius [m²], mean of both
     * @return mean of 1/R [1/m]
     */
    static double mean(double a1, double a2, double b1, double b2, double radiusSquared) {
        double gap = Math.max(b1 - a2, a1 - b2);
        double value;
        if (gap > 0 && gap * gap > FAR_IN_RADII * FAR_IN_RADII * radiusSquared) {
            double rho2 = 2 * radiusSquared;
            value = far(b2 - a1, rho2) - far(b2 - a2, rho2) - far(b1 - a1, rho2) + far(b1 - a2, rho2);
        } else {
            value = near(b2 - a1, radiusSquared)
                    - near(b2 - a2, radiusSquared)
                    - near(b1 - a1, radiusSquared)
                    + near(b1 - a2, radiusSquared);
        }
        return value / ((a2 - a1) * (b2 - b1));
    }

    private static double far(double u, double rho2) {
        double root = Math.sqrt(u * u + rho2);
        return Math.abs(u) * Math.log((Math.abs(u) + root) / Math.sqrt(rho2)) - root;
    }

    private static double near(double signed, double radiusSquared) {
        double u = Math.abs(signed);
        double radius = Math.sqrt(radiusSquared);
        if (u < 1e-9 * radius) {
            return -4 * radius / Math.PI;
        }
        double product = 1;
        double roots = 0;
        for (double sineSquared : SINE_SQUARED) {
            double root = Math.sqrt(u * u + sineSquared * radiusSquared);
            product *= (u + root) / u;
            roots += root;
        }
        return (u * Math.log(product) - roots) / STEPS + u * Math.log(u / radius);
    }
}
