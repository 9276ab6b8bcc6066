package earthing.electrode.formula;

import earthing.quantity.Source;

/** Hemisphere flush with the surface of uniform ground, exact: R = ρ/(2πa), V(r) = ρI/(2πr). */
public final class Hemisphere {

    /** Where the formula comes from. */
    public static final Source SOURCE = Source.tool("exact solution of Laplace's equation, docs/theory/electrode.md");

    private Hemisphere() {}

    /**
     * Resistance.
     *
     * @param resistivity ρ [Ω·m], &gt; 0
     * @param radius a [m], &gt; 0
     * @return R [Ω]
     */
    public static double resistance(double resistivity, double radius) {
        return Positive.require("resistivity", resistivity) / (2 * Math.PI * Positive.require("radius", radius));
    }

    /**
     * Radius of the hemisphere of the same resistance.
     *
     * @param resistivity ρ [Ω·m], &gt; 0
     * @param resistance R [Ω], &gt; 0
     * @return a [m]
     */
    public static double equivalentRadius(double resistivity, double resistance) {
        return Positive.require("resistivity", resistivity)
                / (2 * Math.PI * Positive.require("resistance", resistance));
    }

    /**
     * Two equal hemispheres in parallel, each taken as a point for the other: R = (R1 + ρ/(2πD))/2.
     *
     * @param resistivity ρ [Ω·m], &gt; 0
     * @param radius a [m], &gt; 0
     * @param distance D of the centres [m]
     * @return R [Ω]; none for D &lt; 5a
     */
    public static FormulaResult twoInParallel(double resistivity, double radius, double distance) {
        double single = resistance(resistivity, radius);
        double mutual = resistance(resistivity, distance);
        return FormulaResult.of(
                distance >= 5 * radius, "D >= 5a", "R = (R1 + rho/(2 pi D))/2", SOURCE, () -> (single + mutual) / 2);
    }
}
