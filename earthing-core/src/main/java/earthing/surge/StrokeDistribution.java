package earthing.surge;

import earthing.quantity.Source;
import org.apache.commons.math3.distribution.NormalDistribution;

/**
 * Distribution of a stroke parameter. The published sets differ by more than their own precision (P(I > 200 kA) of first
 * strokes is 0.0015 or 0.0078), so each is kept under its name and the report says which is in use.
 */
public sealed interface StrokeDistribution {

    /**
     * Probability that the parameter exceeds a value.
     *
     * @param value value in SI, above 0
     * @return probability in (0, 1)
     */
    double exceedance(double value);

    /**
     * The value exceeded with a probability; the inverse of {@link #exceedance}.
     *
     * @param probability probability in (0, 1)
     * @return value in SI
     */
    double exceededWith(double probability);

    /**
     * Where the numbers come from.
     *
     * @return the source
     */
    Source source();

    private static void checkValue(double value) {
        if (!(value > 0)) {
            throw new IllegalArgumentException("value must be > 0; have " + value);
        }
    }

    private static void checkProbability(double probability) {
        if (!(probability > 0 && probability < 1)) {
            throw new IllegalArgumentException("probability must be in (0, 1); have " + probability);
        }
    }

    /**
     * A lognormal distribution.
     *
     * @param median median in SI, above 0
     * @param sigma standard deviation of the natural logarithm, above 0
     * @param source where the numbers come from
     */
    record Lognormal(double median, double sigma, Source source) implements StrokeDistribution {

        private static final NormalDistribution NORMAL = new NormalDistribution(0, 1);

        /**
         * Refuses values that are not above 0.
         *
         * @param median median in SI, above 0
         * @param sigma standard deviation of the natural logarithm, above 0
         * @param source where the numbers come from
         */
        public Lognormal {
            if (!(median > 0) || !(sigma > 0) || !Double.isFinite(median) || !Double.isFinite(sigma)) {
                throw new IllegalArgumentException("median and sigma must be > 0; have " + median + ", " + sigma);
            }
        }

        /**
         * A lognormal distribution whose spread is stated in decades.
         *
         * @param median median in SI
         * @param sigmaDecades standard deviation of the decimal logarithm
         * @param source where the numbers come from
         * @return the distribution
         */
        public static Lognormal ofDecades(double median, double sigmaDecades, Source source) {
            return new Lognormal(median, sigmaDecades * Math.log(10), source);
        }

        @Override
        public double exceedance(double value) {
            checkValue(value);
            return NORMAL.cumulativeProbability(-Math.log(value / median) / sigma);
        }

        @Override
        public double exceededWith(double probability) {
            checkProbability(probability);
            return median * Math.exp(-sigma * NORMAL.inverseCumulativeProbability(probability));
        }

        /**
         * The value that lies so many standard deviations above the median, in logarithms.
         *
         * @param score standard normal score
         * @return value in SI
         */
        public double atScore(double score) {
            return median * Math.exp(sigma * score);
        }

        /**
         * The distribution of the parameter times a constant, for example of M·dI/dt.
         *
         * @param factor factor above 0
         * @return lognormal with the median multiplied
         */
        public Lognormal times(double factor) {
            return new Lognormal(median * factor, sigma, source);
        }
    }

    /**
     * Two lognormal branches that meet at a value.
     *
     * @param below branch up to the join
     * @param above branch beyond the join
     * @param join value at which the branches meet
     */
    record TwoSlope(Lognormal below, Lognormal above, double join) implements StrokeDistribution {

        @Override
        public double exceedance(double value) {
            // The branches meet within 0.001; at the join the larger counts, so that nothing rises with the value.
            return value < join ? Math.max(below.exceedance(value), above.exceedance(join)) : above.exceedance(value);
        }

        @Override
        public double exceededWith(double probability) {
            double high = above.exceededWith(probability);
            return high >= join ? high : Math.min(join, below.exceededWith(probability));
        }

        /**
         * The value whose exceedance is that of a standard normal score.
         *
         * @param score standard normal score
         * @return value in SI
         */
        public double atScore(double score) {
            double high = above.atScore(score);
            return high >= join ? high : Math.min(join, below.atScore(score));
        }

        @Override
        public Source source() {
            return above.source();
        }
    }

    /**
     * {@code P(> x) = 1/(1 + (x/median)^exponent)}.
     *
     * @param median median in SI, above 0
     * @param exponent exponent, above 0
     * @param source where the numbers come from
     */
    record LogLogistic(double median, double exponent, Source source) implements StrokeDistribution {

        /**
         * Refuses values that are not above 0.
         *
         * @param median median in SI, above 0
         * @param exponent exponent, above 0
         * @param source where the numbers come from
         */
        public LogLogistic {
            if (!(median > 0) || !(exponent > 0)) {
                throw new IllegalArgumentException("median and exponent must be > 0; have " + median + ", " + exponent);
            }
        }

        @Override
        public double exceedance(double value) {
            checkValue(value);
            return 1 / (1 + Math.pow(value / median, exponent));
        }

        @Override
        public double exceededWith(double probability) {
            checkProbability(probability);
            return median * Math.pow(1 / probability - 1, 1 / exponent);
        }
    }
}
