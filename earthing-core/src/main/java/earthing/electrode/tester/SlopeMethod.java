package earthing.electrode.tester;

import earthing.quantity.Source;
import org.apache.commons.math3.analysis.solvers.BrentSolver;

/**
 * Slope method for an electrode whose electrical centre is not known: readings at 0.2, 0.4 and 0.6 of the distance C of
 * the current probe give μ = (R₃ − R₂)/(R₂ − R₁), and μ gives the place that reads the resistance.
 *
 * <p>The electrode counts as a point at X behind its terminal, in uniform ground: R(p) = R − ρ/2π·(1/(C+X) + 1/(p+X) −
 * 1/(C−p)), so that μ is a function of X/C, and the place is 0.618·(C + X) − X. The printed table ends at μ = 0.40 and
 * 1.59; beyond them the current probe stands too near.
 */
public final class SlopeMethod {

    /** Source of the method and the range of its table. */
    public static final Source SOURCE = Source.publication(
            "Tagg, Proceedings IEE 117, 1970; table also in BS 7430", "slope method", Source.Status.FROM_MEMORY);

    /** Least and greatest slope coefficient of the printed table [-]. */
    public static final double LEAST = 0.40;

    /** Greatest slope coefficient of the printed table [-]. */
    public static final double GREATEST = 1.59;

    private static final double GOLDEN = (Math.sqrt(5) - 1) / 2;

    private SlopeMethod() {}

    /**
     * Slope coefficient of three readings.
     *
     * @param near reading with the potential probe at 0.2 of the distance of the current probe [Ω]
     * @param middle reading at 0.4 [Ω], above the first
     * @param far reading at 0.6 [Ω]
     * @return μ [-]
     */
    public static double slope(double near, double middle, double far) {
        if (!(near > 0) || !(middle > near) || !(far > middle)) {
            throw new IllegalArgumentException("readings must rise towards the current probe and be > 0 ohm; have "
                    + near + ", " + middle + ", " + far);
        }
        return (far - middle) / (middle - near);
    }

    /**
     * Place of the potential probe that reads the resistance.
     *
     * @param slope μ [-], 0.40 … 1.59
     * @return place over the distance of the current probe [-]
     */
    public static double place(double slope) {
        if (!(slope >= LEAST && slope <= GREATEST)) {
            throw new IllegalArgumentException("the slope method is tabulated for 0.40 to 1.59; have " + slope
                    + "; drive the current probe farther out");
        }
        double behind = new BrentSolver(1e-14).solve(200, x -> slopeOf(x) - slope, -0.15, 2);
        return GOLDEN * (1 + behind) - behind;
    }

    /** Slope of a point electrode at a distance behind its terminal, in distances of the current probe. */
    private static double slopeOf(double behind) {
        double near = fall(0.2, behind);
        double middle = fall(0.4, behind);
        return (fall(0.6, behind) - middle) / (middle - near);
    }

    private static double fall(double place, double behind) {
        return 1 / (1 - place) - 1 / (place + behind);
    }
}
