package earthing.surge;

import earthing.network.Waveform;
import java.util.Arrays;

/**
 * What a linear circuit answers to a current that rises by 1 A/s from t = 0: a voltage [V] or a current [A]. It is solved
 * once and gives the answer to any current: the part that follows di/dt at once, w(0)·i'(t), and the superposition of the
 * rest over the changes of slope of the current, taken as straight between knots.
 */
public final class RampResponse {

    /** Knots of the front; the current is steepest where it ends. */
    private static final int FRONT = 16;
    /** Knots in units of the short tail, where the current turns over. */
    private static final double[] TURN = {0.25, 0.5, 1, 2, 4};

    private static final double GROWTH = 1.3;
    private static final int MOST = 80;

    private final double instant;
    private final double step;
    private final double[] rest;
    private final double end;

    /**
     * From a solution.
     *
     * @param response response from t = 0 on, per A/s
     * @param instant its value just after t = 0: the mutual inductance for a voltage, 0 for a current
     * @param step spacing to which it is brought [s], above 0
     */
    public RampResponse(Waveform response, double instant, double step) {
        if (!(step > 0) || !Double.isFinite(instant)) {
            throw new IllegalArgumentException(
                    "step must be > 0 s and the instant part finite; have " + step + ", " + instant);
        }
        this.instant = instant;
        this.step = step;
        this.end = response.time(response.size() - 1);
        int count = (int) Math.floor(end / step * (1 + 1e-12)) + 1;
        rest = new double[count];
        // The value at t = 0 itself is that of the circuit at rest.
        for (int k = 1; k < count; k++) {
            rest[k] = response.at(Math.min(end, k * step)) - instant;
        }
    }

    /**
     * The part that follows the steepness at once.
     *
     * @return V/(A/s) = H for a voltage
     */
    public double instant() {
        return instant;
    }

    /**
     * The response to the ramp itself.
     *
     * @param time time from the start [s], at least 0; beyond the end the last value
     * @return answer per A/s
     */
    public double at(double time) {
        return instant + rest(time);
    }

    /**
     * Time for which the response is known.
     *
     * @return time [s]
     */
    public double end() {
        return end;
    }

    /**
     * Largest magnitude of the answer to a stroke.
     *
     * @param stroke current of the stroke [A]
     * @return largest magnitude [V] or [A]
     */
    public double peak(ConcaveFront stroke) {
        double[] times = knots(stroke, end);
        int n = times.length;
        double[] values = new double[n];
        double[] rates = new double[n];
        for (int k = 0; k < n; k++) {
            values[k] = stroke.at(times[k]);
            rates[k] = stroke.rate(times[k]);
        }
        return peak(times, values, rates, rates, n);
    }

    /**
     * Largest magnitude of the answer to a current that is straight between samples.
     *
     * @param times rising times from 0 [s], at least two
     * @param values as many values [A], the first 0
     * @return largest magnitude [V] or [A]
     */
    public double peak(double[] times, double[] values) {
        int n = times.length;
        if (n < 2 || values.length != n || times[0] != 0 || values[0] != 0) {
            throw new IllegalArgumentException("samples have to begin with 0 at t = 0, at least two of them");
        }
        double[] after = new double[n];
        double[] before = new double[n];
        for (int k = 0; k < n - 1; k++) {
            after[k] = (values[k + 1] - values[k]) / (times[k + 1] - times[k]);
            before[k + 1] = after[k];
        }
        return peak(times, values, before, after, n);
    }

    private double peak(double[] times, double[] values, double[] before, double[] after, int n) {
        double[] bends = new double[n];
        double last = 0;
        for (int k = 0; k < n - 1; k++) {
            double slope = (values[k + 1] - values[k]) / (times[k + 1] - times[k]);
            bends[k] = slope - last;
            last = slope;
        }
        double largest = 0;
        for (int j = 0; j < n; j++) {
            double t = times[j];
            if (t > end) {
                break;
            }
            double sum = 0;
            for (int k = 0; k < j; k++) {
                sum += bends[k] * rest(t - times[k]);
            }
            largest = Math.max(
                    largest, Math.max(Math.abs(sum + instant * before[j]), Math.abs(sum + instant * after[j])));
        }
        return largest;
    }

    private double rest(double time) {
        double at = time / step;
        int k = (int) at;
        return k >= rest.length - 1 ? rest[rest.length - 1] : rest[k] + (at - k) * (rest[k + 1] - rest[k]);
    }

    /**
     * Times between which a stroke may be taken as straight, dense where it is steepest and where it turns over.
     *
     * @param stroke current of the stroke
     * @param end no time beyond the first one behind this is needed [s]
     * @return rising times from 0 [s]
     */
    public static double[] knots(ConcaveFront stroke, double end) {
        double[] times = new double[MOST];
        double join = stroke.joinTime();
        int n = 0;
        for (int k = 0; k <= FRONT; k++) {
            double left = 1 - (double) k / FRONT;
            times[n++] = join * (1 - left * left);
        }
        double turn = stroke.fastTail();
        for (double x : TURN) {
            times[n++] = join + x * turn;
        }
        double gap = Math.max(times[n - 1] - times[n - 2], join / FRONT);
        double last = Math.min(end, join + stroke.half());
        while (n < MOST && times[n - 1] < last) {
            times[n] = times[n - 1] + gap;
            n++;
            gap *= GROWTH;
        }
        return Arrays.copyOf(times, n);
    }
}
