package earthing.electrode.formula;

import earthing.quantity.Source;

/**
 * Buried grid with or without rods, R = ρ·(1/L + 1/√(20A)·(1 + 1/(1 + h√(20/A)))).
 *
 * <p>ρ resistivity [Ω·m], L total length of buried conductor [m], A area [m²], h depth [m]. Without the last bracket and
 * at h = 0 it is the older form √π/4·ρ/√A + ρ/L but for rounding of the constant.
 */
public final class GridSverak {

    /** Where the formula comes from. */
    public static final Source SOURCE = Source.standard("IEEE Std 80-2013", "eq. (57)", Source.Status.FROM_MEMORY);

    private GridSverak() {}

    /**
     * Resistance of the grid.
     *
     * @param resistivity ρ [Ω·m], &gt; 0
     * @param area A [m²], &gt; 0
     * @param conductor L [m], &gt; 0
     * @param depth h [m], &gt; 0
     * @return R [Ω]; none for depths outside 0.25 … 2.5 m
     */
    public static FormulaResult resistance(double resistivity, double area, double conductor, double depth) {
        Positive.require("resistivity", resistivity);
        Positive.require("area", area);
        Positive.require("conductor length", conductor);
        Positive.require("depth", depth);
        return FormulaResult.of(
                depth >= 0.25 && depth <= 2.5,
                "h from 0.25 m to 2.5 m",
                "R = rho (1/L + 1/sqrt(20A) (1 + 1/(1 + h sqrt(20/A))))",
                SOURCE,
                () -> resistivity
                        * (1 / conductor + 1 / Math.sqrt(20 * area) * (1 + 1 / (1 + depth * Math.sqrt(20 / area)))));
    }
}
