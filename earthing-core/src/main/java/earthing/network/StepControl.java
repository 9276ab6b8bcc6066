package earthing.network;

/**
 * Judges a step by how the new values depart from the last ones, each measured by its own largest value so far.
 *
 * <p>The voltage of an inductance is the slope of its current. The solver finds a slope by the parabola through the currents at
 * 0, γh and h, with an error of h² v″ (1 − γ)/6, so that is what is held to the tolerance. All other values follow with an error of third order; for them the departure from the parabola through
 * the last three values is held to it. Such a departure says nothing behind a change of step, since the error of second
 * order then jumps by as much; the smaller of both measures therefore counts.
 */
final class StepControl {

    /** (1 − γ)/6 with γ = 2 − √2. */
    private static final double SLOPE_ERROR = (Math.sqrt(2) - 1) / 6;

    /** Growth of an error of second and of third order when the step is doubled. */
    private static final double SECOND_ORDER = 4;

    private static final double THIRD_ORDER = 8;

    private final double tolerance;
    /** Values from here up to {@link #afterSlopes} are slopes of currents. */
    private final int slopes;

    private final int afterSlopes;
    private final double[][] history;
    private final double[] when = new double[3];
    private final double[] largest;
    private double[] found;
    private int known;
    private double overall;
    private double excess;
    private double doubled;

    /** Takes the expected largest values to start from. */
    StepControl(double[] expected, Stepper stepper, double tolerance) {
        this.tolerance = tolerance;
        this.slopes = stepper.firstSlope();
        this.afterSlopes = stepper.afterSlopes();
        this.history = new double[3][expected.length];
        this.largest = expected.clone();
        this.found = new double[expected.length];
        for (double value : expected) {
            overall = Math.max(overall, value);
        }
    }

    void restart() {
        known = 0;
    }

    /** Departure of the trial step in units of the tolerance; 1 or less is good. */
    double excess() {
        return excess;
    }

    /** What the departure would be after a step twice as long. */
    double excessIfDoubled() {
        return doubled;
    }

    void judge(Stepper stepper, double time) {
        stepper.watch(found);
        if (known < 2) {
            excess = 0.5;
            doubled = SECOND_ORDER * excess;
            return;
        }
        double a = when[0];
        double b = when[1];
        double c = when[2];
        double step = time - c;
        // Divided differences: twice the first is the second derivative.
        double sa = 1 / ((b - c) * (b - time));
        double sb = 1 / ((c - b) * (c - time));
        double sc = 1 / ((time - b) * (time - c));
        double bend = 2 * SLOPE_ERROR * step * step;
        boolean third = known > 2;
        double wa = third ? step * (time - b) / ((a - b) * (a - c)) : 0;
        double wb = third ? step * (time - a) / ((b - a) * (b - c)) : 0;
        double wc = third ? (time - a) * (time - b) / ((c - a) * (c - b)) : 0;
        double worst = 0;
        double next = 0;
        double[] h0 = history[0];
        double[] h1 = history[1];
        double[] h2 = history[2];
        for (int k = 0; k < found.length; k++) {
            double value = found[k];
            double scale = Math.max(Math.max(largest[k], Math.abs(value)), 1e-6 * overall);
            double second = bend * Math.abs(sa * h1[k] + sb * h2[k] + sc * value);
            double off = second;
            double grown = SECOND_ORDER * second;
            if (third && (k < slopes || k >= afterSlopes)) {
                double departure = Math.abs(value - (wa * h0[k] + wb * h1[k] + wc * h2[k]));
                off = Math.min(off, departure);
                grown = Math.min(grown, THIRD_ORDER * departure);
            }
            if (off > 0) {
                worst = Math.max(worst, off / scale);
                next = Math.max(next, grown / scale);
            }
        }
        excess = worst / tolerance;
        doubled = next / tolerance;
    }

    void accept(double time) {
        double[] oldest = history[0];
        history[0] = history[1];
        history[1] = history[2];
        history[2] = found;
        found = oldest;
        when[0] = when[1];
        when[1] = when[2];
        when[2] = time;
        known = Math.min(3, known + 1);
        double[] latest = history[2];
        for (int k = 0; k < latest.length; k++) {
            largest[k] = Math.max(largest[k], Math.abs(latest[k]));
            overall = Math.max(overall, largest[k]);
        }
    }
}
