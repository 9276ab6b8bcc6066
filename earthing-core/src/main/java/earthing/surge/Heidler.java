package earthing.surge;

import earthing.quantity.Source;
import java.util.Optional;

/**
 * {@code i(t) = (I/k) x/(1+x) exp(−t/τ2)} with {@code x = (t/τ1)^n}.
 *
 * @param amplitude I/k, above 0 [A] or [V]
 * @param front τ1 [s], above 0
 * @param tail τ2 [s], above 0
 * @param exponent n, at least 1
 */
public record Heidler(double amplitude, double front, double tail, double exponent) implements Impulse {

    /** Source of the first-stroke and subsequent-stroke constants. */
    public static final Source SOURCE =
            Source.standard("IEC 62305-1:2010", "annex B, table B.1", Source.Status.FROM_MEMORY);

    /** Source of the surge generator's shapes. */
    public static final Source GENERATOR_SOURCE =
            Source.standard("IEC 61000-4-5:2014", "annex, formulas of the combination wave", Source.Status.FROM_MEMORY);

    /**
     * Refuses values outside the stated ranges.
     *
     * @param amplitude I/k, above 0 [A] or [V]
     * @param front τ1 [s], above 0
     * @param tail τ2 [s], above 0
     * @param exponent n, at least 1
     */
    public Heidler {
        if (!(amplitude > 0) || !Double.isFinite(amplitude)) {
            throw new IllegalArgumentException("amplitude must be > 0; have " + amplitude);
        }
        if (!(front > 0) || !(tail > 0) || !Double.isFinite(front) || !Double.isFinite(tail)) {
            throw new IllegalArgumentException("time constants must be > 0 s; have " + front + ", " + tail);
        }
        if (!(exponent >= 1 && exponent <= 50)) {
            throw new IllegalArgumentException("exponent must be in [1, 50]; have " + exponent);
        }
    }

    /**
     * First positive stroke, 10/350 µs: k 0.93, τ1 19 µs, τ2 485 µs, n 10.
     *
     * @param nominal I [A]
     * @return the impulse; its peak is 1.0013 I since k is rounded
     */
    public static Heidler firstPositive(double nominal) {
        return new Heidler(nominal / 0.93, 19e-6, 485e-6, 10);
    }

    /**
     * First negative stroke, 1/200 µs: k 0.986, τ1 1.82 µs, τ2 285 µs, n 10.
     *
     * @param nominal I [A]
     * @return the impulse
     */
    public static Heidler firstNegative(double nominal) {
        return new Heidler(nominal / 0.986, 1.82e-6, 285e-6, 10);
    }

    /**
     * Subsequent stroke, 0.25/100 µs: k 0.993, τ1 0.454 µs, τ2 143 µs, n 10.
     *
     * @param nominal I [A]
     * @return the impulse
     */
    public static Heidler subsequent(double nominal) {
        return new Heidler(nominal / 0.993, 0.454e-6, 143e-6, 10);
    }

    /**
     * Open-circuit voltage of the surge generator, 1.2/50 µs, brought to the peak.
     *
     * @param peak peak [V]
     * @return the impulse
     */
    public static Heidler generatorVoltage(double peak) {
        return (Heidler) new Heidler(1, 0.356e-6, 65.845e-6, 1.852).withPeak(peak);
    }

    /**
     * Short-circuit current of the surge generator, 8/20 µs, brought to the peak.
     *
     * @param peak peak [A]
     * @return the impulse
     */
    public static Heidler generatorCurrent(double peak) {
        return (Heidler) new Heidler(1, 47.52e-6, 4.296e-6, 2.741).withPeak(peak);
    }

    private double power(double time) {
        double x = time / front;
        if (exponent == 10) {
            double square = x * x;
            double fourth = square * square;
            return fourth * fourth * square;
        }
        return Math.pow(x, exponent);
    }

    @Override
    public double at(double time) {
        if (!(time > 0)) {
            return 0;
        }
        double x = power(time);
        double rise = x > 1e200 ? 1 : x / (1 + x);
        return amplitude * rise * Math.exp(-time / tail);
    }

    @Override
    public double rate(double time) {
        if (!(time > 0)) {
            return exponent == 1 && time == 0 ? amplitude / front : 0;
        }
        double x = power(time);
        double rise = x > 1e200 ? 1 : x / (1 + x);
        double steep = x > 1e100 ? 0 : exponent / time * x / ((1 + x) * (1 + x));
        return amplitude * Math.exp(-time / tail) * (steep - rise / tail);
    }

    /**
     * The peak correction of the standard, exp[−(τ1/τ2)(n τ2/τ1)^(1/n)].
     *
     * @return k, the ratio of the peak to the amplitude, approximate
     */
    public double peakCorrection() {
        return Math.exp(-(front / tail) * Math.pow(exponent * tail / front, 1 / exponent));
    }

    @Override
    public double duration() {
        return 20 * tail + 5 * front;
    }

    @Override
    public double frontScale() {
        return Math.min(front, tail);
    }

    @Override
    public Heidler scaled(double factor) {
        return new Heidler(amplitude * factor, front, tail, exponent);
    }

    @Override
    public Optional<String> expression() {
        String x = "pow(time/" + front + "," + exponent + ")";
        return Optional.of(amplitude + "*" + x + "/(1+" + x + ")*exp(-time/" + tail + ")");
    }
}
