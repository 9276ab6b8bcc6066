package earthing.electrode.formula;

import earthing.quantity.Source;

/** Thin round disc and square plate in uniform ground. */
public final class Disc {

    /** Exact solution of the disc. */
    public static final Source SOURCE = Source.publication(
            "Maxwell, A Treatise on Electricity and Magnetism", "capacitance of a disc", Source.Status.FROM_MEMORY);

    /** Numeric capacitance of the unit square in units of 4πε. */
    public static final Source SQUARE = Source.publication(
            "Hwang & Mascagni, Electrical capacitance of the unit cube, J. Appl. Phys. 95, 2004; Read 1997",
            "unit square 0.3667892",
            Source.Status.FROM_MEMORY);

    private static final double UNIT_SQUARE = 0.366787;

    private Disc() {}

    /**
     * Disc on the surface, R = ρ/(4a).
     *
     * @param resistivity ρ [Ω·m], &gt; 0
     * @param radius a [m], &gt; 0
     * @return R [Ω]
     */
    public static double onSurface(double resistivity, double radius) {
        return Positive.require("resistivity", resistivity) / (4 * Positive.require("radius", radius));
    }

    /**
     * Disc far below the surface, R = ρ/(8a).
     *
     * @param resistivity ρ [Ω·m], &gt; 0
     * @param radius a [m], &gt; 0
     * @return R [Ω]
     */
    public static double deep(double resistivity, double radius) {
        return onSurface(resistivity, radius) / 2;
    }

    /**
     * Square plate on the surface, R = ρ/(2π·0.366787·b), after {@link #SQUARE}.
     *
     * @param resistivity ρ [Ω·m], &gt; 0
     * @param side b [m], &gt; 0
     * @return R [Ω]
     */
    public static double squareOnSurface(double resistivity, double side) {
        return Positive.require("resistivity", resistivity)
                / (2 * Math.PI * UNIT_SQUARE * Positive.require("side", side));
    }
}
