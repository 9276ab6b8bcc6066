package earthing.electrode.formula;

import earthing.quantity.Source;

/**
 * Star of n horizontal arms of length L at depth s/2, R = ρ/(2πnL)·(ln(2L/a) + ln(2L/s) + N), N = c0 + c1·s/L +
 * c2·(s/L)² + c4·(s/L)⁴.
 *
 * <p>ρ resistivity [Ω·m], a radius [m]; two arms are a right-angle turn.
 */
public final class StarDwight {

    /** Where the formulas come from. */
    public static final Source SOURCE = Source.publication(
            "Dwight, Calculation of Resistances to Ground, Electrical Engineering 55, 1936; IEEE Std 142-2007",
            "table 13, right-angle turn and stars",
            Source.Status.FROM_MEMORY);

    /** Number of arms. */
    public enum Arms {
        /** Right-angle turn of two arms. */
        RIGHT_ANGLE(2, -0.2373, 0.2146, 0.1035, -0.0424),
        /** Three arms at 120°. */
        THREE(3, 1.071, -0.209, 0.238, -0.054),
        /** Four arms at right angles. */
        FOUR(4, 2.912, -1.071, 0.645, -0.145),
        /** Six arms at 60°. */
        SIX(6, 6.851, -3.128, 1.758, -0.490),
        /** Eight arms at 45°. */
        EIGHT(8, 10.98, -5.51, 3.26, -1.17);

        private final int count;
        private final double c0;
        private final double c1;
        private final double c2;
        private final double c4;

        Arms(int count, double c0, double c1, double c2, double c4) {
            this.count = count;
            this.c0 = c0;
            this.c1 = c1;
            this.c2 = c2;
            this.c4 = c4;
        }

        /**
         * Number of arms.
         *
         * @return n
         */
        public int count() {
            return count;
        }

        /**
         * The polynomial N of the formula.
         *
         * @param ratio s/L [-], twice the depth over the arm length
         * @return N [-]
         */
        public double polynomial(double ratio) {
            return c0 + c1 * ratio + c2 * ratio * ratio + c4 * ratio * ratio * ratio * ratio;
        }
    }

    private StarDwight() {}

    /**
     * Resistance of the star.
     *
     * @param arms shape
     * @param resistivity ρ [Ω·m], &gt; 0
     * @param armLength L [m], &gt; 0
     * @param radius a [m], &gt; 0
     * @param depth s/2 [m], &gt; 0
     * @return R [Ω]; none for L &lt; 10a, a depth below 2a or above L/4
     */
    public static FormulaResult resistance(
            Arms arms, double resistivity, double armLength, double radius, double depth) {
        Positive.require("resistivity", resistivity);
        Positive.require("arm length", armLength);
        Positive.require("radius", radius);
        Positive.require("depth", depth);
        double s = 2 * depth;
        return FormulaResult.of(
                armLength >= 10 * radius && depth >= 2 * radius && s <= armLength / 2,
                "L/a >= 10, depth >= 2a, s <= L/2",
                "R = rho/(2 pi n L) (ln(2L/a) + ln(2L/s) + N(s/L)), n = " + arms.count(),
                SOURCE,
                () -> resistivity
                        / (2 * Math.PI * arms.count() * armLength)
                        * (Math.log(2 * armLength / radius)
                                + Math.log(2 * armLength / s)
                                + arms.polynomial(s / armLength)));
    }
}
