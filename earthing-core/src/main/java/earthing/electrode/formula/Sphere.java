package earthing.electrode.formula;

import earthing.quantity.Source;

/** Sphere in uniform ground, exact cases. */
public final class Sphere {

    /** Where the formulas come from. */
    public static final Source SOURCE = Source.tool("exact solution of Laplace's equation, docs/theory/electrode.md");

    private Sphere() {}

    /**
     * Sphere far below the surface, R = ρ/(4πa).
     *
     * @param resistivity ρ [Ω·m], &gt; 0
     * @param radius a [m], &gt; 0
     * @return R [Ω]
     */
    public static double deep(double resistivity, double radius) {
        return Positive.require("resistivity", resistivity) / (4 * Math.PI * Positive.require("radius", radius));
    }

    /**
     * Sphere that just touches the surface from below (two touching spheres), R = ρ/(4πa ln 2).
     *
     * @param resistivity ρ [Ω·m], &gt; 0
     * @param radius a [m], &gt; 0
     * @return R [Ω]
     */
    public static double touchingSurface(double resistivity, double radius) {
        return deep(resistivity, radius) / Math.log(2);
    }

    /**
     * Resistance between two deep spheres far apart, R = ρ/(2π)·(1/a − 1/s).
     *
     * @param resistivity ρ [Ω·m], &gt; 0
     * @param radius a [m], &gt; 0
     * @param distance s of the centres [m]
     * @return R [Ω]; none for s &lt; 10a
     */
    public static FormulaResult betweenTwoDeep(double resistivity, double radius, double distance) {
        double single = deep(resistivity, radius);
        double mutual = deep(resistivity, distance);
        return FormulaResult.of(
                distance >= 10 * radius, "s >= 10a", "R = rho/(2 pi) (1/a - 1/s)", SOURCE, () -> 2 * (single - mutual));
    }
}
