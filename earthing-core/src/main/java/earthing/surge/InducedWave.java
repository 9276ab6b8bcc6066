package earthing.surge;

/**
 * Voltage that a stroke of any current induces in a line beside it: the step response of {@link InducedVoltage} at 0.4 of
 * the speed of light, superposed over the changes of the current. In time measured by the distance all such responses
 * are one, which is tabulated once.
 *
 * @param height height of the line, the effective height over ground that conducts poorly [m], above 0
 * @param distance distance of the stroke [m], above 0
 */
public record InducedWave(double height, double distance) {

    private static final double LIGHT = 299_792_458;
    private static final double RATIO = InducedVoltage.USUAL_SPEED_RATIO;
    private static final double SPACING = 0.02;
    private static final double LONGEST = 300;
    private static final double[] INTEGRAL = integral();

    /**
     * Refuses values that are not above 0.
     *
     * @param height height of the line, the effective height over ground that conducts poorly [m], above 0
     * @param distance distance of the stroke [m], above 0
     */
    public InducedWave {
        if (!(height > 0) || !(distance > 0) || !Double.isFinite(height) || !Double.isFinite(distance)) {
            throw new IllegalArgumentException("height and distance must be > 0 m; have " + height + ", " + distance);
        }
    }

    /** Integral of the step response over time, for height and distance 1, time in units of distance/(0.4 c). */
    private static double[] integral() {
        int count = (int) Math.round(LONGEST / SPACING) + 1;
        double[] table = new double[count];
        double begin = antiderivative(RATIO);
        for (int k = 0; k < count; k++) {
            double x = k * SPACING;
            table[k] = x <= RATIO ? 0 : antiderivative(x) - begin;
        }
        return table;
    }

    /** Antiderivative of 60 x/(1 + x²) (1 + β x/√(x² + 1 − β²)). */
    private static double antiderivative(double x) {
        double root = Math.sqrt(x * x + 1 - RATIO * RATIO);
        double u = RATIO * x / root;
        return 60 * (0.5 * Math.log1p(x * x) + RATIO * Math.log(x + root) - 0.5 * Math.log((1 + u) / (1 - u)));
    }

    private double integral(double time) {
        double x = time * RATIO * LIGHT / distance / SPACING;
        if (!(x > 0)) {
            return 0;
        }
        int k = (int) x;
        // Beyond the table the return stroke has run up 300 times the distance; nothing follows there any more.
        double value = k >= INTEGRAL.length - 1
                ? INTEGRAL[INTEGRAL.length - 1]
                : INTEGRAL[k] + (x - k) * (INTEGRAL[k + 1] - INTEGRAL[k]);
        return height / (RATIO * LIGHT) * value;
    }

    /**
     * The voltage at given times.
     *
     * @param times rising times from the start of the return stroke [s]; the current is taken as straight between them
     * @param current current at the ground at these times [A], the first 0
     * @return voltage at these times [V]
     */
    public double[] voltages(double[] times, double[] current) {
        int n = times.length;
        if (current.length != n || n < 2) {
            throw new IllegalArgumentException(
                    "as many currents as times are needed, at least two; have " + current.length + " and " + n);
        }
        double[] slopes = new double[n - 1];
        for (int k = 0; k < n - 1; k++) {
            slopes[k] = (current[k + 1] - current[k]) / (times[k + 1] - times[k]);
        }
        double[] voltages = new double[n];
        for (int j = 1; j < n; j++) {
            double sum = 0;
            double before = integral(times[j] - times[0]);
            for (int k = 0; k < j; k++) {
                double after = integral(times[j] - times[k + 1]);
                sum += slopes[k] * (before - after);
                before = after;
            }
            voltages[j] = sum;
        }
        return voltages;
    }
}
