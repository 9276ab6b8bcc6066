package earthing.surge;

import org.apache.commons.math3.random.RandomGenerator;
import org.apache.commons.math3.random.Well19937c;

/**
 * Draws strokes from the published distributions, as concave-front currents: peak, largest steepness and front time are
 * lognormal (the peak of first strokes in two slopes) and correlated by their logarithms. Peak and steepness keep their
 * distributions exactly; a front too short or too long for a concave shape of that peak and steepness gives way, which the
 * share {@link #bent()} counts. The time to half value is the median, or three times the front where that is longer.
 * The same seed draws the same strokes.
 */
public final class StrokeSampler {

    private static final double LEAST = 1 + 1e-9;
    private static final double MOST = 99;

    private final RandomGenerator random;
    private final long seed;
    private long drawn;
    private long bent;

    /**
     * A sampler.
     *
     * @param seed start of the random numbers
     */
    public StrokeSampler(long seed) {
        this.seed = seed;
        this.random = new Well19937c(seed);
    }

    /**
     * The next first stroke of a negative downward flash.
     *
     * @return current [A]
     */
    public ConcaveFront first() {
        double score = random.nextGaussian();
        double peak = StrokeStatistics.FIRST_PEAK_TWO_SLOPE.atScore(score);
        double steepness = StrokeStatistics.FIRST_STEEPNESS.atScore(
                joint(score, StrokeStatistics.FIRST_STEEPNESS_PEAK_CORRELATION));
        double front =
                StrokeStatistics.FIRST_FRONT.atScore(joint(score, StrokeStatistics.FIRST_FRONT_PEAK_CORRELATION));
        return stroke(peak, front, steepness, StrokeStatistics.FIRST_HALF);
    }

    /**
     * The next subsequent stroke of a negative downward flash.
     *
     * @return current [A]
     */
    public ConcaveFront subsequent() {
        double score = random.nextGaussian();
        double peak = StrokeStatistics.SUBSEQUENT_PEAK.atScore(score);
        double steepness = StrokeStatistics.SUBSEQUENT_STEEPNESS.atScore(
                joint(score, StrokeStatistics.SUBSEQUENT_STEEPNESS_PEAK_CORRELATION));
        double front = StrokeStatistics.SUBSEQUENT_FRONT.atScore(random.nextGaussian());
        return stroke(peak, front, steepness, StrokeStatistics.SUBSEQUENT_HALF);
    }

    /**
     * The next number that is spread evenly.
     *
     * @return number in [0, 1)
     */
    public double uniform() {
        return random.nextDouble();
    }

    /**
     * The seed.
     *
     * @return start of the random numbers
     */
    public long seed() {
        return seed;
    }

    /**
     * Part of the strokes so far whose front had to give way.
     *
     * @return part [1]
     */
    public double bent() {
        return drawn == 0 ? 0 : (double) bent / drawn;
    }

    private double joint(double score, double correlation) {
        return correlation * score + Math.sqrt(1 - correlation * correlation) * random.nextGaussian();
    }

    private ConcaveFront stroke(double peak, double front, double steepness, double half) {
        drawn++;
        double normalised = steepness * front / peak;
        double fitting = Math.min(MOST, Math.max(LEAST, normalised));
        double used = front;
        if (fitting != normalised) {
            bent++;
            used = fitting * peak / steepness;
        }
        return new ConcaveFront(peak, used, steepness, Math.max(half, 3 * used));
    }
}
