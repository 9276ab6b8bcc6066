package earthing.electrode.formula;

import earthing.quantity.Source;

/**
 * Buried grid as a plate of the same area with a term for the wires, R = ρ/4·√(π/A) + ρ/L.
 *
 * <p>ρ resistivity [Ω·m], A area [m²], L total length of buried conductor [m].
 */
public final class GridLaurent {

    /** Where the formula comes from. */
    public static final Source SOURCE = Source.standard(
            "IEEE Std 80-2013", "eq. (55) and (56), after Laurent and Niemann", Source.Status.FROM_MEMORY);

    private GridLaurent() {}

    /**
     * Resistance of a plate on the surface taken as a disc of the same area, the lower bound of the grid.
     *
     * @param resistivity ρ [Ω·m], &gt; 0
     * @param area A [m²], &gt; 0
     * @return R [Ω]
     */
    public static double plate(double resistivity, double area) {
        return Positive.require("resistivity", resistivity) / 4 * Math.sqrt(Math.PI / Positive.require("area", area));
    }

    /**
     * Resistance of the grid.
     *
     * @param resistivity ρ [Ω·m], &gt; 0
     * @param area A [m²], &gt; 0
     * @param conductor L [m], &gt; 0
     * @return R [Ω]; none where the conductor is shorter than the perimeter of a square of that area
     */
    public static FormulaResult resistance(double resistivity, double area, double conductor) {
        double plate = plate(resistivity, area);
        Positive.require("conductor length", conductor);
        return FormulaResult.of(
                conductor >= 4 * Math.sqrt(area),
                "L >= 4 sqrt(A)",
                "R = rho/4 sqrt(pi/A) + rho/L",
                SOURCE,
                () -> plate + resistivity / conductor);
    }
}
