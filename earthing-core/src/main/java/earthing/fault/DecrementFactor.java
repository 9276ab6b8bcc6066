package earthing.fault;

import earthing.quantity.Source;
import earthing.quantity.Source.Status;

/**
 * Decrement factor for the d.c. offset of an earth-fault current, {@code Df = √(1 + Ta/tf·(1 − e^(−2·tf/Ta)))} with
 * {@code Ta = (X/R)/ω}. The ratio is that of the whole loop with the electrode in it, and the factor belongs to every
 * shot of a reclose sequence by itself. Worst instant of closing assumed.
 */
public final class DecrementFactor {

    /** Where the formula comes from. */
    public static final Source SOURCE = Source.standard("IEEE Std 80-2013", "eq. (84), table 10", Status.FROM_MEMORY);

    private DecrementFactor() {}

    /**
     * The factor.
     *
     * @param xOverR reactance over resistance of the loop [1], ≥ 0; a capacitive loop has no such offset and no factor
     * @param frequency frequency [Hz], &gt; 0
     * @param duration duration of the shot [s], &gt; 0
     * @return factor between 1 and √3
     */
    public static double of(double xOverR, double frequency, double duration) {
        if (!(xOverR >= 0)) {
            throw new IllegalArgumentException("X/R must be >= 0; have " + xOverR);
        }
        if (!(frequency > 0 && duration > 0)) {
            throw new IllegalArgumentException(
                    "frequency and duration must be > 0; have " + frequency + " Hz, " + duration + " s");
        }
        double timeConstant = timeConstant(xOverR, frequency);
        if (timeConstant == 0) {
            return 1;
        }
        if (Double.isInfinite(timeConstant)) {
            return Math.sqrt(3);
        }
        double ratio = duration / timeConstant;
        return ratio == 0 ? Math.sqrt(3) : Math.sqrt(1 - Math.expm1(-2 * ratio) / ratio);
    }

    /**
     * Time constant of the d.c. offset, {@code Ta = (X/R)/(2πf)}.
     *
     * @param xOverR reactance over resistance [1]
     * @param frequency frequency [Hz]
     * @return time constant [s]
     */
    public static double timeConstant(double xOverR, double frequency) {
        return xOverR / (2 * Math.PI * frequency);
    }
}
