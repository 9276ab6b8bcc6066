package earthing.network;

/**
 * Judges a step by how far the new values lie from the parabola through the last three, each measured by its own largest
 * value so far.
 */
final class StepControl {

    private final double tolerance;
    private final double[][] history;
    private final double[] when = new double[3];
    private final double[] largest;
    private double[] found;
    private int known;
    private double overall;

    /** Takes the expected largest values to start from. */
    StepControl(double[] expected, double tolerance) {
        this.tolerance = tolerance;
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

    /** Departure from the prediction in units of the tolerance; 1 or less is good. */
    double judge(Stepper stepper, double time) {
        stepper.watch(found);
        if (known < 3) {
            return 0.5;
        }
        double a = when[0];
        double b = when[1];
        double c = when[2];
        double wa = (time - b) * (time - c) / ((a - b) * (a - c));
        double wb = (time - a) * (time - c) / ((b - a) * (b - c));
        double wc = (time - a) * (time - b) / ((c - a) * (c - b));
        double worst = 0;
        for (int k = 0; k < found.length; k++) {
            double predicted = wa * history[0][k] + wb * history[1][k] + wc * history[2][k];
            double scale = Math.max(Math.max(largest[k], Math.abs(found[k])), 1e-6 * overall);
            double off = Math.abs(found[k] - predicted);
            if (off > 0) {
                worst = Math.max(worst, off / scale);
            }
        }
        return worst / tolerance;
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
        for (int k = 0; k < oldest.length; k++) {
            largest[k] = Math.max(largest[k], Math.abs(history[2][k]));
            overall = Math.max(overall, largest[k]);
        }
    }
}
