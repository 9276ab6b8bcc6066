package earthing.electrode.formula;

import earthing.quantity.Source;

/**
 * Pipe or rod electrode, R = ρ/(2πL)·ln(4L/d). Five to six percent above the accurate value of a slender rod.
 *
 * <p>ρ resistivity [Ω·m], L length [m], d diameter [m].
 */
public final class PipeIs3043 {

    /** Where the formula comes from. */
    public static final Source SOURCE =
            Source.standard("IS 3043:1987", "rod or pipe electrode", Source.Status.FROM_MEMORY);

    private PipeIs3043() {}

    /**
     * Resistance of the pipe.
     *
     * @param resistivity ρ [Ω·m], &gt; 0
     * @param length L [m], &gt; 0
     * @param diameter d [m], &gt; 0
     * @return R [Ω]; none for L/d &lt; 5
     */
    public static FormulaResult resistance(double resistivity, double length, double diameter) {
        Positive.require("resistivity", resistivity);
        Positive.require("length", length);
        Positive.require("diameter", diameter);
        return FormulaResult.of(
                length >= 5 * diameter,
                "L/d >= 5",
                "R = rho/(2 pi L) ln(4L/d)",
                SOURCE,
                () -> resistivity / (2 * Math.PI * length) * Math.log(4 * length / diameter));
    }
}
