package earthing.electrode.formula;

import earthing.quantity.Source;

/**
 * Vertical rod from the surface down, R = ρ/(2πL)·(ln(4L/a) − 1) = ρ/(2πL)·(ln(8L/d) − 1).
 *
 * <p>ρ resistivity [Ω·m], L length [m], a radius [m], d = 2a. About 1 % above the exact value, down to a length of six radii.
 */
public final class RodDwight {

    /** Where the formula comes from. */
    public static final Source SOURCE = Source.publication(
            "Dwight, Calculation of Resistances to Ground, Electrical Engineering 55, 1936",
            "one ground rod; printed also in MIL-HDBK-419A vol. I 2.4",
            Source.Status.FROM_MEMORY);

    private static final String RANGE = "L/a >= 6";

    private RodDwight() {}

    /**
     * Resistance of the rod.
     *
     * @param resistivity ρ [Ω·m], &gt; 0
     * @param length L [m], &gt; 0
     * @param radius a [m], &gt; 0
     * @return R [Ω]; none for L/a &lt; 6
     */
    public static FormulaResult resistance(double resistivity, double length, double radius) {
        Positive.require("resistivity", resistivity);
        Positive.require("length", length);
        Positive.require("radius", radius);
        return FormulaResult.of(
                length >= 6 * radius,
                RANGE,
                "R = rho/(2 pi L) (ln(4L/a) - 1)",
                SOURCE,
                () -> resistivity / (2 * Math.PI * length) * (Math.log(4 * length / radius) - 1));
    }

    /**
     * Potential of the surface beside the rod, its current leaving uniformly: V = ρI/(2πL)·asinh(L/x).
     *
     * @param resistivity ρ [Ω·m], &gt; 0
     * @param length L [m], &gt; 0
     * @param distance x from the axis [m], &gt; 0
     * @return V/I [Ω]
     */
    public static double surfacePotential(double resistivity, double length, double distance) {
        Positive.require("resistivity", resistivity);
        double ratio = Positive.require("length", length) / Positive.require("distance", distance);
        return resistivity / (2 * Math.PI * length) * Math.log(ratio + Math.hypot(1, ratio));
    }
}
