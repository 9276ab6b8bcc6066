package earthing.electrode;

import earthing.quantity.Source;

/**
 * Lumped resistance, inductance and capacitance of a slender electrode under impulse, current entering at one end and
 * leaking away evenly along it.
 *
 * <p>Valid while the electrode is short against wave length and skin depth in the ground; not for touch or step.
 *
 * @param resistance R at low current and low frequency [Ω]
 * @param inductance L of the tapering current [H]
 * @param capacitance C from R·C = ρε [F]
 */
public record ImpulseParameters(double resistance, double inductance, double capacitance) {

    /** R·C = ρε: current and displacement field have the same shape in uniform ground. */
    public static final Source DUALITY = Source.publication(
            "Sunde, Earth Conduction Effects in Transmission Systems, 1949",
            "resistance and capacitance of a buried electrode",
            Source.Status.FROM_MEMORY);

    /** Neumann's integral with a linear taper. */
    public static final Source TAPER =
            Source.tool("Neumann's double integral with a linearly tapering current, docs/theory/electrode.md");

    private static final double MU0 = 4e-7 * Math.PI;
    private static final double EPSILON0 = 8.8541878128e-12;

    /**
     * Refuses values that are not positive.
     *
     * @param resistance R at low current and low frequency [Ω]
     * @param inductance L of the tapering current [H]
     * @param capacitance C from R·C = ρε [F]
     */
    public ImpulseParameters {
        if (!(resistance > 0) || !(inductance > 0) || !(capacitance > 0)) {
            throw new IllegalArgumentException("resistance, inductance and capacitance must be > 0; have " + resistance
                    + " ohm, " + inductance + " H, " + capacitance + " F");
        }
    }

    /**
     * Parameters of a rod or of a wire fed at one end.
     *
     * @param resistance its resistance [Ω], &gt; 0, from the numeric solution
     * @param length length [m], &gt; 0
     * @param radius radius [m], &gt; 0
     * @param resistivity resistivity of the ground along it [Ω·m], &gt; 0
     * @param relativePermittivity permittivity of the ground [-], ≥ 1
     * @return the parameters
     */
    public static ImpulseParameters of(
            double resistance, double length, double radius, double resistivity, double relativePermittivity) {
        if (!(relativePermittivity >= 1)) {
            throw new IllegalArgumentException("relative permittivity must be >= 1; have " + relativePermittivity);
        }
        if (!(resistivity > 0)) {
            throw new IllegalArgumentException("soil resistivity must be > 0 ohm.m; have " + resistivity);
        }
        return new ImpulseParameters(
                resistance,
                taperedInductance(length, radius),
                resistivity * relativePermittivity * EPSILON0 / resistance);
    }

    /**
     * Inductance of a straight conductor whose current falls linearly to zero at its far end, L = μ0·l/(4π)·J with J =
     * ∫∫ (1−u)(1−v)/√((u−v)²+α²) du dv and α = a/l. With w = |u−v| the current product integrates to 1/3 − w/2 + w³/6,
     * and J is closed. For a slender one L = μ0·l/(6π)·(ln(2l/a) − 4/3).
     *
     * @param length l [m], &gt; 0
     * @param radius a [m], &gt; 0, filament at the radius
     * @return L [H]; a third, nearly, of what a current through the whole length would give
     */
    public static double taperedInductance(double length, double radius) {
        requireSlender(length, radius);
        double q = radius / length;
        double root = Math.hypot(1, q);
        double logarithm = Math.log((1 + root) / q);
        double cubic = ((1 - 2 * q * q) * root + 2 * q * q * q) / 3;
        double j = 2 * (logarithm / 3 - (root - q) / 2 + cubic / 6);
        return MU0 * length / (4 * Math.PI) * j;
    }

    /**
     * Inductance of the same conductor with one current through its whole length, for comparison.
     *
     * @param length l [m], &gt; 0
     * @param radius a [m], &gt; 0, filament at the radius
     * @return L [H]
     */
    public static double throughInductance(double length, double radius) {
        requireSlender(length, radius);
        double q = radius / length;
        double root = Math.hypot(1, q);
        return MU0 * length / (2 * Math.PI) * (Math.log((1 + root) / q) - root + q);
    }

    private static void requireSlender(double length, double radius) {
        if (!(radius > 0) || !(length >= 2 * radius) || Double.isInfinite(length)) {
            throw new IllegalArgumentException(
                    "a conductor must be at least as long as thick; have length " + length + " m, radius " + radius);
        }
    }
}
