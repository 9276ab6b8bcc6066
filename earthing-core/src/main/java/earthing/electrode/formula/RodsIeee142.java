package earthing.electrode.formula;

import earthing.quantity.Source;

/** Rods one length apart, R_n = R1·F/n. A rule of thumb: in line F is up to 20 % too high. */
public final class RodsIeee142 {

    /** Where the table comes from. */
    public static final Source SOURCE =
            Source.standard("IEEE Std 142-2007", "table 14, multiplying factors for multiple rods", Source.Status.READ);

    private static final int[] RODS = {2, 3, 4, 8, 12, 16, 20, 24};
    private static final double[] FACTOR = {1.16, 1.29, 1.36, 1.68, 1.80, 1.92, 2.00, 2.16};

    private RodsIeee142() {}

    /**
     * Multiplying factor.
     *
     * @param rods number of rods
     * @return F [-]; none for a number that the table does not print
     */
    public static FormulaResult factor(int rods) {
        int found = -1;
        for (int i = 0; i < RODS.length; i++) {
            found = RODS[i] == rods ? i : found;
        }
        int row = found;
        return FormulaResult.of(
                row >= 0,
                "2, 3, 4, 8, 12, 16, 20 or 24 rods one length apart",
                "R_n = R_1 F/n",
                SOURCE,
                () -> FACTOR[row]);
    }
}
