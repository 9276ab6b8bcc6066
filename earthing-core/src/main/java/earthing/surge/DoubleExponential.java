package earthing.surge;

import earthing.quantity.Source;
import java.util.Optional;

/**
 * {@code A (exp(−αt) − exp(−βt))}.
 *
 * @param amplitude A, above 0 [A] or [V]
 * @param alpha α of the tail [1/s], above 0
 * @param beta β of the front [1/s], above α
 */
public record DoubleExponential(double amplitude, double alpha, double beta) implements Impulse {

    /** Source of the 1.2/50 constants. */
    public static final Source SOURCE = Source.standard(
            "IEEE C62.41.2-2002",
            "1.2/50 µs: A = 1.037, τ1 = 0.4074 µs, τ2 = 68.22 µs, product form",
            Source.Status.FROM_MEMORY);

    /**
     * Refuses values outside the stated ranges.
     *
     * @param amplitude A, above 0 [A] or [V]
     * @param alpha α of the tail [1/s], above 0
     * @param beta β of the front [1/s], above α
     */
    public DoubleExponential {
        if (!(amplitude > 0) || !Double.isFinite(amplitude)) {
            throw new IllegalArgumentException("amplitude must be > 0; have " + amplitude);
        }
        if (!(alpha > 0) || !(beta > alpha) || !Double.isFinite(beta)) {
            throw new IllegalArgumentException("rates must be 0 < alpha < beta; have " + alpha + ", " + beta);
        }
    }

    /**
     * From the product form {@code A (1 − exp(−t/τ1)) exp(−t/τ2)}, which is not the difference of exponentials of τ1 and
     * τ2.
     *
     * @param amplitude A
     * @param front τ1 [s]
     * @param tail τ2 [s]
     * @return the impulse
     */
    public static DoubleExponential product(double amplitude, double front, double tail) {
        return new DoubleExponential(amplitude, 1 / tail, 1 / front + 1 / tail);
    }

    /**
     * The standard 1.2/50 µs voltage.
     *
     * @param nominal nominal peak [V]; the true peak is 0.99976 of it
     * @return the impulse
     */
    public static DoubleExponential impulse1250(double nominal) {
        return product(1.037 * nominal, 0.4074e-6, 68.22e-6);
    }

    @Override
    public double at(double time) {
        return time > 0 ? amplitude * (Math.exp(-alpha * time) - Math.exp(-beta * time)) : 0;
    }

    @Override
    public double rate(double time) {
        return time >= 0 ? amplitude * (beta * Math.exp(-beta * time) - alpha * Math.exp(-alpha * time)) : 0;
    }

    @Override
    public double duration() {
        return 20 / alpha;
    }

    @Override
    public double frontScale() {
        return 1 / beta;
    }

    @Override
    public DoubleExponential scaled(double factor) {
        return new DoubleExponential(amplitude * factor, alpha, beta);
    }

    @Override
    public Optional<String> expression() {
        return Optional.of(amplitude + "*(exp(-" + alpha + "*time)-exp(-" + beta + "*time))");
    }
}
