package earthing.electrode.formula;

import earthing.quantity.Source;

/**
 * n × n equal vertical rods filling a square, R_N = R1·(1 + A·B)/N with A = r/s, r the radius of the equivalent
 * hemisphere of one rod and s the spacing of neighbours; B is the mean over the rods of Σ s/d to all the others.
 *
 * <p>Up to 4 % below the printed constants for more than four rods, which follow unequal currents.
 */
public final class RodsFilledSquare {

    /** Where the form comes from. */
    public static final Source SOURCE =
            Source.publication("Tagg, Earth Resistances, 1964", "rods in a square", Source.Status.FROM_MEMORY);

    private RodsFilledSquare() {}

    /**
     * Constant B.
     *
     * @param side rods along one side n, ≥ 2
     * @return B [-]
     */
    public static double constant(int side) {
        if (side < 2) {
            throw new IllegalArgumentException("a square needs at least two rods a side; have " + side);
        }
        double sum = 0;
        for (int dx = 0; dx < side; dx++) {
            for (int dy = 0; dy < side; dy++) {
                if (dx + dy > 0) {
                    int copies = (dx == 0 ? 1 : 2) * (dy == 0 ? 1 : 2);
                    sum += copies * (side - dx) * (side - dy) / Math.hypot(dx, dy);
                }
            }
        }
        return sum / ((double) side * side);
    }

    /**
     * Factor from one rod to the group.
     *
     * @param side rods along one side n, ≥ 2
     * @param ratio A [-], &gt; 0
     * @return (1 + A·B)/N [-]; none for A &gt; 0.5
     */
    public static FormulaResult factor(int side, double ratio) {
        Positive.require("ratio of hemisphere radius to spacing", ratio);
        double b = constant(side);
        return FormulaResult.of(
                ratio <= 0.5, "A <= 0.5", "R_N = R_1 (1 + A B)/N", SOURCE, () -> (1 + ratio * b) / (side * side));
    }
}
