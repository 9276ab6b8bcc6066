package earthing.network;

import java.util.Arrays;
import java.util.function.DoubleBinaryOperator;

/**
 * A quantity sampled in time. Between samples it is taken as straight; at its extremes as a parabola through three
 * samples.
 */
public final class Waveform {

    /** Greatest ratio of the steps beside an extreme through which a parabola is laid. */
    private static final double UNEVEN = 5;

    private final double[] times;
    private final double[] values;

    /** The times are shared between the waveforms of one solution and never written to. */
    Waveform(double[] times, double[] values) {
        this.times = times;
        this.values = values;
    }

    /**
     * A waveform from samples.
     *
     * @param times rising times [s], at least two
     * @param values as many values
     * @return the waveform
     * @throws IllegalArgumentException if the times do not rise strictly or the numbers differ
     */
    public static Waveform of(double[] times, double[] values) {
        if (times.length != values.length || times.length < 2) {
            throw new IllegalArgumentException("a waveform needs as many values as times, at least two; have "
                    + times.length + " and " + values.length);
        }
        for (int k = 1; k < times.length; k++) {
            if (!(times[k] > times[k - 1])) {
                throw new IllegalArgumentException("times must rise; have " + times[k - 1] + ", " + times[k]);
            }
        }
        return new Waveform(times.clone(), values.clone());
    }

    /**
     * An extreme value.
     *
     * @param value the value, in the unit of the waveform
     * @param time when [s], from the start of the solution
     */
    public record Extreme(double value, double time) {}

    /**
     * Number of samples.
     *
     * @return at least two
     */
    public int size() {
        return times.length;
    }

    /**
     * Time of a sample.
     *
     * @param k index from 0
     * @return time [s]
     */
    public double time(int k) {
        return times[k];
    }

    /**
     * Value of a sample.
     *
     * @param k index from 0
     * @return value in the unit of the waveform
     */
    public double value(int k) {
        return values[k];
    }

    /**
     * Value at a time, straight between samples.
     *
     * @param time time within the samples [s]
     * @return value
     * @throws IllegalArgumentException outside the samples
     */
    public double at(double time) {
        int last = times.length - 1;
        // Sums of steps may miss a round time by rounding.
        double slack = 1e-9 * (times[last] - times[0]);
        if (!(time >= times[0] - slack && time <= times[last] + slack)) {
            throw new IllegalArgumentException(
                    "time must be in [" + times[0] + ", " + times[last] + "] s; have " + time);
        }
        int low = 0;
        int high = last;
        while (high - low > 1) {
            int mid = (low + high) >>> 1;
            if (times[mid] <= time) {
                low = mid;
            } else {
                high = mid;
            }
        }
        double part = (time - times[low]) / (times[high] - times[low]);
        return values[low] + part * (values[high] - values[low]);
    }

    /**
     * The largest value, sign counted.
     *
     * @return value and time
     */
    public Extreme maximum() {
        return extreme(1);
    }

    /**
     * The smallest value, sign counted.
     *
     * @return value and time
     */
    public Extreme minimum() {
        return extreme(-1);
    }

    /**
     * The extreme of largest magnitude, with its sign.
     *
     * @return value and time
     */
    public Extreme peak() {
        Extreme high = maximum();
        Extreme low = minimum();
        return Math.abs(high.value()) >= Math.abs(low.value()) ? high : low;
    }

    private Extreme extreme(int sign) {
        int best = 0;
        for (int k = 1; k < values.length; k++) {
            if (sign * values[k] > sign * values[best]) {
                best = k;
            }
        }
        if (best == 0 || best == values.length - 1) {
            return new Extreme(values[best], times[best]);
        }
        double left = times[best - 1] - times[best];
        double right = times[best + 1] - times[best];
        if (Math.max(-left, right) > UNEVEN * Math.min(-left, right)) {
            // The error of the short side, divided by its length, would make the parabola.
            return new Extreme(values[best], times[best]);
        }
        if (jumps(best, sign)) {
            return new Extreme(values[best], times[best]);
        }
        double a = (values[best - 1] - values[best]) / left;
        double b = (values[best + 1] - values[best]) / right;
        double curvature = (b - a) / (right - left);
        if (!(sign * curvature < 0)) {
            return new Extreme(values[best], times[best]);
        }
        double slope = a - curvature * left;
        double shift = -slope / (2 * curvature);
        if (!(shift >= left && shift <= right)) {
            return new Extreme(values[best], times[best]);
        }
        return new Extreme(values[best] + slope * shift / 2, times[best] + shift);
    }

    /**
     * Whether the steeper side of a peak is a jump. Behind a smooth peak the curve still bends the same way one sample
     * further; behind a jump it bends back, and a parabola would rise an eighth above it.
     */
    private boolean jumps(int best, int sign) {
        double before = Math.abs(values[best - 1] - values[best]);
        double after = Math.abs(values[best + 1] - values[best]);
        int steep = before > after ? best - 1 : best + 1;
        if (steep == 0 || steep == values.length - 1) {
            return true;
        }
        double a = (values[steep] - values[steep - 1]) / (times[steep] - times[steep - 1]);
        double b = (values[steep + 1] - values[steep]) / (times[steep + 1] - times[steep]);
        return !(sign * (b - a) < 0);
    }

    /**
     * The integral over all samples.
     *
     * @return integral [unit·s], trapezoids
     */
    public double integral() {
        double sum = 0;
        for (int k = 1; k < times.length; k++) {
            sum += 0.5 * (values[k] + values[k - 1]) * (times[k] - times[k - 1]);
        }
        return sum;
    }

    /**
     * The integral of the square over all samples, exact for straight pieces.
     *
     * @return integral [unit²·s]
     */
    public double squareIntegral() {
        double sum = 0;
        for (int k = 1; k < times.length; k++) {
            double a = values[k - 1];
            double b = values[k];
            sum += (a * a + a * b + b * b) / 3 * (times[k] - times[k - 1]);
        }
        return sum;
    }

    /**
     * Difference to a waveform of the same solution.
     *
     * @param other waveform with the same times
     * @return this less the other
     * @throws IllegalArgumentException if the times differ
     */
    public Waveform minus(Waveform other) {
        return combine(other, (a, b) -> a - b);
    }

    /**
     * Sum with a waveform of the same solution.
     *
     * @param other waveform with the same times
     * @return this and the other
     * @throws IllegalArgumentException if the times differ
     */
    public Waveform plus(Waveform other) {
        return combine(other, Double::sum);
    }

    /**
     * Two waveforms of the same solution joined sample by sample.
     *
     * @param other waveform with the same times
     * @param operation what to do with each pair
     * @return the joined waveform
     * @throws IllegalArgumentException if the times differ
     */
    public Waveform combine(Waveform other, DoubleBinaryOperator operation) {
        if (times != other.times && !Arrays.equals(times, other.times)) {
            throw new IllegalArgumentException("waveforms of different times can't be joined");
        }
        double[] joined = new double[values.length];
        for (int k = 0; k < joined.length; k++) {
            joined[k] = operation.applyAsDouble(values[k], other.values[k]);
        }
        return new Waveform(times, joined);
    }

    /**
     * The waveform multiplied by a number.
     *
     * @param factor the number
     * @return the scaled waveform
     */
    public Waveform times(double factor) {
        double[] scaled = values.clone();
        for (int k = 0; k < scaled.length; k++) {
            scaled[k] *= factor;
        }
        return new Waveform(times, scaled);
    }
}
