package earthing.conductor.inductance;

import static earthing.conductor.inductance.FilamentInductance.MU0_OVER_4PI;

import earthing.quantity.Source;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegrator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegratorFactory;

/**
 * Self partial inductance of a straight conductor in free space, for several assumptions on where the current flows. The
 * library's circuits use {@link #filamentAtRadius}: with it the pieces of a conductor add up exactly to the whole. The
 * exact tube lies a few parts in 1e5 above it for a down-lead (5e-4 for a pole of 100 mm radius).
 */
public final class SelfInductance {

    /** Source of the handbook formulas. */
    public static final Source ROSA = Source.publication(
            "E. B. Rosa, The self and mutual inductances of linear conductors, Bull. Bureau of Standards 4 (1908) 301-344",
            "straight round wire, arithmetic mean distance term included",
            Source.Status.FROM_MEMORY);

    /** Source of the strip formula. */
    public static final Source STRIP = Source.publication(
            "F. W. Grover, Inductance Calculations, 1946",
            "ch. 5, straight conductor of rectangular section",
            Source.Status.FROM_MEMORY);

    /** Apart, because its nodes take milliseconds to find and few need them. */
    private static final class Gauss {
        static final GaussIntegrator RULE = new GaussIntegratorFactory().legendre(40);
    }

    private SelfInductance() {}

    private static void check(double length, double radius) {
        if (!(length > 0) || !Double.isFinite(length)) {
            throw new IllegalArgumentException("length must be > 0 m; have " + length);
        }
        if (!(radius > 0) || !(radius < length)) {
            throw new IllegalArgumentException(
                    "radius must be > 0 m and below the length " + length + " m; have " + radius);
        }
    }

    /**
     * Mutual inductance of the axis and a filament on the surface: (μ0/2π)[l asinh(l/r) − √(l² + r²) + r]. External
     * flux only; exact additivity over pieces of one conductor.
     *
     * @param length l [m]
     * @param radius r [m], below the length
     * @return inductance [H]
     */
    public static double filamentAtRadius(double length, double radius) {
        check(length, radius);
        return FilamentInductance.sideBySide(length, radius);
    }

    /**
     * Current evenly in a thin tube, the double integral over its circumference done exactly. External flux only.
     *
     * @param length l [m]
     * @param radius r [m], below the length
     * @return inductance [H]
     */
    public static double tube(double length, double radius) {
        check(length, radius);
        // ln d over the circle is ln r on average, d is 4r/π; the rest is smooth and periodic, so equal steps converge
        // faster than any power.
        int steps = 256;
        double sum = 0;
        for (int k = 0; k < steps; k++) {
            double d = 2 * radius * Math.sin(Math.PI * (k + 0.5) / steps);
            sum += rest(length, d);
        }
        return 2 * MU0_OVER_4PI * (sum / steps - length * Math.log(radius) + 4 * radius / Math.PI);
    }

    /**
     * Direct current evenly over a solid round section, the double integral over the section done exactly. Internal flux
     * included.
     *
     * @param length l [m]
     * @param radius r [m], below the length
     * @return inductance [H]
     */
    public static double solid(double length, double radius) {
        check(length, radius);
        // Density of the distance s of two random points in a disc of radius r; mean ln s = ln r − 1/4,
        // mean s = 128 r / 45π.
        double smooth = 0.5
                * Math.PI
                / 2
                * Gauss.RULE.integrate(x -> {
                    double theta = 0.25 * Math.PI * (1 + x);
                    double sine = Math.sin(theta);
                    double cosine = Math.cos(theta);
                    double density = 8 / Math.PI * sine * (2 * (Math.PI / 2 - theta) - 2 * sine * cosine) * cosine;
                    return density * rest(length, 2 * radius * sine);
                });
        return 2 * MU0_OVER_4PI * (smooth - length * (Math.log(radius) - 0.25) + 128 * radius / (45 * Math.PI));
    }

    /** The part of the filament formula that stays smooth as the distance goes to 0. */
    private static double rest(double length, double d) {
        double r = Math.hypot(length, d);
        return length * Math.log(length + r) - r;
    }

    /**
     * Handbook formula for direct current in a solid wire: (μ0/2π) l [ln(2l/r) − 3/4].
     *
     * @param length l [m]
     * @param radius r [m]; the formula lies 0.16 % low at l/r = 120
     * @return inductance [H], internal flux included
     */
    public static double rosaSolid(double length, double radius) {
        check(length, radius);
        return 2 * MU0_OVER_4PI * length * (Math.log(2 * length / radius) - 0.75);
    }

    /**
     * Handbook formula for direct current in a solid wire with the mean-distance term: (μ0/2π)[l ln(2l/r) − 3l/4 +
     * 128r/45π].
     *
     * @param length l [m]
     * @param radius r [m]
     * @return inductance [H], internal flux included
     */
    public static double rosaSolidWithMeanDistance(double length, double radius) {
        return rosaSolid(length, radius) + 2 * MU0_OVER_4PI * 128 * radius / (45 * Math.PI);
    }

    /**
     * Handbook formula for current in the skin: (μ0/2π) l [ln(2l/r) − 1].
     *
     * @param length l [m]
     * @param radius r [m]
     * @return inductance [H], external flux only
     */
    public static double rosaSkin(double length, double radius) {
        check(length, radius);
        return 2 * MU0_OVER_4PI * length * (Math.log(2 * length / radius) - 1);
    }

    /**
     * Handbook formula for a tape with direct current evenly over its section: 0.2 µH/m · l [ln(2l/(w+t)) + 0.5 +
     * 0.2235 (w+t)/l].
     *
     * @param length l [m]
     * @param width w [m], above 0
     * @param thickness t [m], at least 0
     * @return inductance [H]
     */
    public static double strip(double length, double width, double thickness) {
        checkStrip(length, width, thickness);
        double sides = width + thickness;
        return 2 * MU0_OVER_4PI * length * (Math.log(2 * length / sides) + 0.5 + 0.2235 * sides / length);
    }

    /**
     * A tape without thickness, current evenly over its width, the double integral over the width done exactly.
     *
     * @param length l [m]
     * @param width w [m], above 0 and below the length
     * @return inductance [H]
     */
    public static double thinStrip(double length, double width) {
        checkStrip(length, width, 0);
        // Density of the distance of two random points of a line: 2(w − s)/w²; mean ln s = ln w − 3/2, mean s = w/3.
        double smooth = 0.5
                * Gauss.RULE.integrate(x -> {
                    double s = 0.5 * (1 + x);
                    return 2 * (1 - s) * rest(length, s * width);
                });
        return 2 * MU0_OVER_4PI * (smooth - length * (Math.log(width) - 1.5) + width / 3);
    }

    /**
     * Radius of the round conductor with the external field of a thin tape that carries its current as the skin effect
     * spreads it, most of it at the edges: w/4 for a tape without thickness (conformal map of a strip on a circle). The
     * thickness is added as (w + t)/4, a common approximation that is not exact.
     *
     * @param width w [m], above 0
     * @param thickness t [m], at least 0 and at most w
     * @return radius [m]
     */
    public static double stripRadius(double width, double thickness) {
        if (!(width > 0) || !(thickness >= 0) || !(thickness <= width)) {
            throw new IllegalArgumentException(
                    "a tape needs width > 0 m and thickness from 0 to the width; have " + width + ", " + thickness);
        }
        return (width + thickness) / 4;
    }

    private static void checkStrip(double length, double width, double thickness) {
        stripRadius(width, thickness);
        if (!(length > width + thickness)) {
            throw new IllegalArgumentException("the length must exceed width and thickness; have " + length);
        }
    }
}
