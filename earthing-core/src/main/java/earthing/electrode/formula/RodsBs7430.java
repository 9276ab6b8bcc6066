package earthing.electrode.formula;

import earthing.quantity.Source;

/**
 * Equal vertical rods in parallel, R_n = R1·(1 + λα)/n, α = ρ/(2πR1·s). λ is the mean over the rods of Σ s/d to all the
 * others, which reproduces the tables of the standard.
 *
 * <p>ρ resistivity [Ω·m], R1 resistance of one rod [Ω], s spacing of neighbours [m].
 */
public final class RodsBs7430 {

    /** Where the formula comes from. */
    public static final Source SOURCE =
            Source.standard("BS 7430:2011", "clause 9.5.4, tables of lambda", Source.Status.FROM_MEMORY);

    private RodsBs7430() {}

    /**
     * Factor of n rods in a straight line.
     *
     * @param n number of rods, ≥ 2
     * @return λ [-]
     */
    public static double lambdaInLine(int n) {
        requireAtLeastTwo(n);
        double sum = 0;
        for (int k = 1; k < n; k++) {
            sum += 2.0 * (n - k) / k;
        }
        return sum / n;
    }

    /**
     * Factor of 4(n − 1) rods along the sides of a square.
     *
     * @param n rods along each side, corners included, ≥ 2
     * @return λ [-]
     */
    public static double lambdaHollowSquare(int n) {
        requireAtLeastTwo(n);
        int count = 4 * (n - 1);
        int[] x = new int[count];
        int[] y = new int[count];
        for (int i = 0; i < n - 1; i++) {
            x[i] = i;
            x[n - 1 + i] = n - 1;
            y[n - 1 + i] = i;
            x[2 * (n - 1) + i] = n - 1 - i;
            y[2 * (n - 1) + i] = n - 1;
            y[3 * (n - 1) + i] = n - 1 - i;
        }
        double sum = 0;
        for (int i = 0; i < count; i++) {
            for (int j = 0; j < count; j++) {
                sum += i == j ? 0 : 1 / Math.hypot(x[i] - x[j], y[i] - y[j]);
            }
        }
        return sum / count;
    }

    /**
     * Ratio α of mutual to self resistance of neighbours.
     *
     * @param resistivity ρ [Ω·m], &gt; 0
     * @param single R1 [Ω], &gt; 0
     * @param spacing s [m], &gt; 0
     * @return α [-]
     */
    public static double alpha(double resistivity, double single, double spacing) {
        return Positive.require("resistivity", resistivity)
                / (2 * Math.PI * Positive.require("single resistance", single) * Positive.require("spacing", spacing));
    }

    /**
     * Resistance of the group.
     *
     * @param resistivity ρ [Ω·m], &gt; 0
     * @param single R1 [Ω], &gt; 0
     * @param spacing s [m], &gt; 0
     * @param rods number of all rods N, ≥ 2
     * @param lambda λ [-]
     * @return R_n [Ω]; none where α exceeds 0.5, the rods being too close to be taken as hemispheres
     */
    public static FormulaResult resistance(double resistivity, double single, double spacing, int rods, double lambda) {
        requireAtLeastTwo(rods);
        double alpha = alpha(resistivity, single, spacing);
        return FormulaResult.of(
                alpha <= 0.5 && lambda > 0,
                "alpha <= 0.5",
                "R_n = R_1 (1 + lambda alpha)/N",
                SOURCE,
                () -> single * (1 + lambda * alpha) / rods);
    }

    private static void requireAtLeastTwo(int n) {
        if (n < 2) {
            throw new IllegalArgumentException("a group needs at least two rods; have " + n);
        }
    }
}
