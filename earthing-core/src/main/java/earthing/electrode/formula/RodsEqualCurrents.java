package earthing.electrode.formula;

import earthing.quantity.Source;

/**
 * Equal rods in line that share the current equally, R_N = R1/N + ρ·P/s, P = 1/(πN²)·Σ (N−k)/k for k = 1 … N−1: each rod
 * a hemisphere for the others.
 *
 * <p>ρ resistivity [Ω·m], s spacing [m].
 */
public final class RodsEqualCurrents {

    /** Where the formula comes from. */
    public static final Source SOURCE = Source.publication(
            "US Army Corps of Engineers ETL 1110-9-10, Cathodic Protection System Using Ceramic Anodes, 1991",
            "paralleling factor, p. 36",
            Source.Status.READ);

    private RodsEqualCurrents() {}

    /**
     * Paralleling factor P.
     *
     * @param rods N, ≥ 1
     * @return P [-]
     */
    public static double parallelingFactor(int rods) {
        if (rods < 1) {
            throw new IllegalArgumentException("need at least one rod; have " + rods);
        }
        double sum = 0;
        for (int k = 1; k < rods; k++) {
            sum += (double) (rods - k) / k;
        }
        return sum / (Math.PI * rods * rods);
    }

    /**
     * Resistance of the line of rods.
     *
     * @param resistivity ρ [Ω·m], &gt; 0
     * @param single R1 [Ω], &gt; 0
     * @param rods N, ≥ 1
     * @param spacing s [m], &gt; 0
     * @return R_N [Ω]; none where neighbours raise each other by more than half
     */
    public static FormulaResult resistance(double resistivity, double single, int rods, double spacing) {
        Positive.require("resistivity", resistivity);
        Positive.require("single resistance", single);
        Positive.require("spacing", spacing);
        return FormulaResult.of(
                resistivity / (2 * Math.PI * spacing) <= single / 2,
                "rho/(2 pi s) <= R_1/2",
                "R_N = R_1/N + rho P/s",
                SOURCE,
                () -> single / rods + resistivity * parallelingFactor(rods) / spacing);
    }
}
