package earthing.network;

import java.util.Arrays;

/**
 * Voltage as a strictly rising odd function of current: {@code v(-i) = -v(i)}. The solver adds such a branch to the
 * linear network by compensation.
 */
public sealed interface NonlinearResistance {

    /**
     * Voltage at a current.
     *
     * @param current current [A], any sign
     * @return voltage [V]
     */
    double voltage(double current);

    /**
     * Differential resistance at a current.
     *
     * @param current current [A], any sign
     * @return dv/di [Ω], above 0
     */
    double slope(double current);

    /**
     * A current at which the branch does its duty; the solver takes the chord resistance there as its starting point.
     *
     * @return current above 0 [A]
     */
    double workingCurrent();

    /**
     * The largest current that the data cover. Beyond it the curve is extrapolated and the solution says so.
     *
     * @return current [A]
     */
    double largestCurrent();

    /**
     * The next current at which the slope bends. The solver stops there, since the slope on one side tells nothing of
     * the other.
     *
     * @param current where to start [A], any sign
     * @param rising whether to look towards larger or smaller currents
     * @return current strictly beyond the start in that direction [A]; infinite if there is no further bend
     */
    double nextBend(double current, boolean rising);

    /** Straight pieces between tabulated points, through the origin, the last piece continued. */
    final class PiecewiseLinear implements NonlinearResistance {

        private final double[] currents;
        private final double[] voltages;

        /**
         * A curve from its points in the first quadrant.
         *
         * @param currents currents [A], above 0 and rising
         * @param voltages voltages [V], above 0 and rising
         * @throws IllegalArgumentException if the points do not rise strictly or differ in number
         */
        public PiecewiseLinear(double[] currents, double[] voltages) {
            checkRising(currents, voltages);
            this.currents = new double[currents.length + 1];
            this.voltages = new double[voltages.length + 1];
            System.arraycopy(currents, 0, this.currents, 1, currents.length);
            System.arraycopy(voltages, 0, this.voltages, 1, voltages.length);
        }

        private int piece(double magnitude) {
            int last = currents.length - 2;
            int k = 0;
            while (k < last && magnitude > currents[k + 1]) {
                k++;
            }
            return k;
        }

        @Override
        public double voltage(double current) {
            double magnitude = Math.abs(current);
            int k = piece(magnitude);
            double v = voltages[k] + slope(k) * (magnitude - currents[k]);
            return current < 0 ? -v : v;
        }

        @Override
        public double slope(double current) {
            return slope(piece(Math.abs(current)));
        }

        private double slope(int k) {
            return (voltages[k + 1] - voltages[k]) / (currents[k + 1] - currents[k]);
        }

        @Override
        public double nextBend(double current, boolean rising) {
            return NonlinearResistance.nextOf(currents, currents.length - 1, current, rising);
        }

        /**
         * Number of tabulated points in the first quadrant, the origin not counted.
         *
         * @return number of points
         */
        public int points() {
            return currents.length - 1;
        }

        /**
         * Current of a tabulated point.
         *
         * @param k index from 0
         * @return current [A]
         */
        public double current(int k) {
            return currents[k + 1];
        }

        /**
         * Voltage of a tabulated point.
         *
         * @param k index from 0
         * @return voltage [V]
         */
        public double tabulatedVoltage(int k) {
            return voltages[k + 1];
        }

        @Override
        public double workingCurrent() {
            return currents[currents.length - 1] / 2;
        }

        @Override
        public double largestCurrent() {
            return currents[currents.length - 1];
        }
    }

    /**
     * Straight pieces between tabulated points on double-logarithmic axes; below the first point the first piece is
     * continued down to a thousandth of its current and from there straight to the origin; above the last point the last
     * piece is continued.
     */
    final class LogLog implements NonlinearResistance {

        private final double[] currents;
        private final double[] voltages;
        private final double[] exponents;
        private final double knee;

        /**
         * A curve from its points in the first quadrant.
         *
         * @param currents currents [A], above 0 and rising, at least two
         * @param voltages voltages [V], above 0 and rising
         * @throws IllegalArgumentException if the points do not rise strictly or are fewer than two
         */
        public LogLog(double[] currents, double[] voltages) {
            checkRising(currents, voltages);
            if (currents.length < 2) {
                throw new IllegalArgumentException("a double-logarithmic curve needs two points; have one");
            }
            this.currents = currents.clone();
            this.voltages = voltages.clone();
            this.exponents = new double[currents.length - 1];
            for (int k = 0; k < exponents.length; k++) {
                exponents[k] = Math.log(voltages[k + 1] / voltages[k]) / Math.log(currents[k + 1] / currents[k]);
            }
            this.knee = currents[0] / 1000;
        }

        private int piece(double magnitude) {
            int k = 0;
            while (k < exponents.length - 1 && magnitude > currents[k + 1]) {
                k++;
            }
            return k;
        }

        private double power(int k, double magnitude) {
            return voltages[k] * Math.pow(magnitude / currents[k], exponents[k]);
        }

        @Override
        public double voltage(double current) {
            double magnitude = Math.abs(current);
            double v = magnitude < knee ? power(0, knee) * (magnitude / knee) : power(piece(magnitude), magnitude);
            return current < 0 ? -v : v;
        }

        @Override
        public double slope(double current) {
            double magnitude = Math.abs(current);
            if (magnitude < knee) {
                return power(0, knee) / knee;
            }
            int k = piece(magnitude);
            return exponents[k] * power(k, magnitude) / magnitude;
        }

        @Override
        public double nextBend(double current, boolean rising) {
            double sign = rising ? 1 : -1;
            double from = sign * current;
            if (from < -knee) {
                double far = NonlinearResistance.nextOf(currents, exponents.length, current, rising);
                return sign * far <= 0 && sign * far <= -knee ? far : -sign * knee;
            }
            if (from < knee) {
                return sign * knee;
            }
            return NonlinearResistance.nextOf(currents, exponents.length, current, rising);
        }

        @Override
        public double workingCurrent() {
            return largestCurrent() / 2;
        }

        @Override
        public double largestCurrent() {
            return currents[currents.length - 1];
        }
    }

    /**
     * One power law {@code v = V (i / I)^b}, straight to the origin below a millionth of I.
     *
     * @param referenceCurrent I [A], above 0
     * @param referenceVoltage V [V], above 0
     * @param exponent b, above 0 and at most 1
     * @param largestCurrent largest current covered [A], at least I
     */
    record PowerLaw(double referenceCurrent, double referenceVoltage, double exponent, double largestCurrent)
            implements NonlinearResistance {

        private static final double KNEE = 1e-6;

        /**
         * Refuses values outside the stated ranges.
         *
         * @param referenceCurrent I [A], above 0
         * @param referenceVoltage V [V], above 0
         * @param exponent b, above 0 and at most 1
         * @param largestCurrent largest current covered [A], at least I
         */
        public PowerLaw {
            if (!(referenceCurrent > 0) || !(referenceVoltage > 0)) {
                throw new IllegalArgumentException("reference current and voltage must be > 0; have " + referenceCurrent
                        + " A, " + referenceVoltage + " V");
            }
            if (!(exponent > 0 && exponent <= 1)) {
                throw new IllegalArgumentException("exponent must be in (0, 1]; have " + exponent);
            }
            if (!(largestCurrent >= referenceCurrent)) {
                throw new IllegalArgumentException(
                        "largest current must be at least the reference current; have " + largestCurrent + " A");
            }
        }

        @Override
        public double voltage(double current) {
            double x = Math.abs(current) / referenceCurrent;
            double v = referenceVoltage * (x < KNEE ? Math.pow(KNEE, exponent - 1) * x : Math.pow(x, exponent));
            return current < 0 ? -v : v;
        }

        @Override
        public double slope(double current) {
            double x = Math.max(Math.abs(current) / referenceCurrent, KNEE);
            double chord = referenceVoltage / referenceCurrent * Math.pow(x, exponent - 1);
            return Math.abs(current) / referenceCurrent < KNEE ? chord : exponent * chord;
        }

        @Override
        public double nextBend(double current, boolean rising) {
            double knee = KNEE * referenceCurrent;
            double sign = rising ? 1 : -1;
            double from = sign * current;
            return from < -knee ? -sign * knee : from < knee ? sign * knee : sign * Double.POSITIVE_INFINITY;
        }

        @Override
        public double workingCurrent() {
            return referenceCurrent;
        }
    }

    /**
     * A resistance that falls with the current, {@code v = R i / sqrt(1 + |i| / I)}: an earth electrode in ground that
     * breaks down.
     *
     * @param resistance R at low current [Ω], above 0
     * @param limitCurrent I [A], above 0
     */
    record Falling(double resistance, double limitCurrent) implements NonlinearResistance {

        /**
         * Refuses values outside the stated ranges.
         *
         * @param resistance R at low current [Ω], above 0
         * @param limitCurrent I [A], above 0
         */
        public Falling {
            if (!(resistance > 0) || !(limitCurrent > 0) || Double.isInfinite(resistance + limitCurrent)) {
                throw new IllegalArgumentException("resistance and limit current must be > 0 and finite; have "
                        + resistance + " ohm, " + limitCurrent + " A");
            }
        }

        @Override
        public double voltage(double current) {
            return resistance * current / Math.sqrt(1 + Math.abs(current) / limitCurrent);
        }

        @Override
        public double slope(double current) {
            double x = Math.abs(current) / limitCurrent;
            return resistance * (1 + x / 2) / ((1 + x) * Math.sqrt(1 + x));
        }

        @Override
        public double nextBend(double current, boolean rising) {
            // The curvature jumps at the origin, the slope does not.
            return rising ? Double.POSITIVE_INFINITY : Double.NEGATIVE_INFINITY;
        }

        @Override
        public double workingCurrent() {
            return limitCurrent;
        }

        @Override
        public double largestCurrent() {
            return Double.POSITIVE_INFINITY;
        }
    }

    /** Next of the bends ±b[0..count-1] beyond a current; a bend at 0 is none, the curves are odd. */
    private static double nextOf(double[] bends, int count, double current, boolean rising) {
        double sign = rising ? 1 : -1;
        double from = sign * current;
        if (from >= 0) {
            for (int k = 0; k < count; k++) {
                if (bends[k] > from) {
                    return sign * bends[k];
                }
            }
            return sign * Double.POSITIVE_INFINITY;
        }
        for (int k = count - 1; k >= 0; k--) {
            if (bends[k] > 0 && -bends[k] > from) {
                return -sign * bends[k];
            }
        }
        for (int k = 0; k < count; k++) {
            if (bends[k] > 0) {
                return sign * bends[k];
            }
        }
        return sign * Double.POSITIVE_INFINITY;
    }

    private static void checkRising(double[] currents, double[] voltages) {
        if (currents.length != voltages.length || currents.length == 0) {
            throw new IllegalArgumentException("a curve needs as many currents as voltages, at least one; have "
                    + currents.length + " and " + voltages.length);
        }
        double i = 0;
        double v = 0;
        for (int k = 0; k < currents.length; k++) {
            if (!(currents[k] > i) || !(voltages[k] > v)) {
                throw new IllegalArgumentException("a curve must rise strictly from the origin; have "
                        + Arrays.toString(currents) + " A, " + Arrays.toString(voltages) + " V");
            }
            i = currents[k];
            v = voltages[k];
        }
        if (!Double.isFinite(i) || !Double.isFinite(v)) {
            throw new IllegalArgumentException("a curve must be finite");
        }
    }
}
