package earthing.decision;

import earthing.compliance.Finding;
import earthing.compliance.Status;
import java.util.OptionalDouble;
import org.apache.commons.math3.stat.interval.ConfidenceInterval;
import org.apache.commons.math3.stat.interval.WilsonScoreInterval;

/** What becomes of one check over the samples. */
public final class CheckSpread {

    /** Confidence of the interval about a probability. */
    public static final double CONFIDENCE = 0.95;

    private final Finding verdict;
    private final SampleTally values = new SampleTally();
    private final SampleTally margins = new SampleTally();
    private double leastLimit = Double.POSITIVE_INFINITY;
    private double mostLimit = Double.NEGATIVE_INFINITY;
    private int notMet;

    /**
     * Nothing yet.
     *
     * @param verdict the finding on the site with its bounds
     */
    CheckSpread(Finding verdict) {
        this.verdict = verdict;
    }

    /** Takes the finding of a sample that has a value and a margin. */
    void add(Finding sample) {
        values.add(sample.value().orElseThrow());
        margins.add(sample.margin().orElseThrow());
        double limit = sample.limit().orElse(Double.NaN);
        leastLimit = Math.min(leastLimit, limit);
        mostLimit = Math.max(mostLimit, limit);
        notMet += isNotMet(sample) ? 1 : 0;
    }

    /** Ends the taking. */
    CheckSpread settled() {
        values.settled();
        margins.settled();
        return this;
    }

    /** Whether a requirement is not met, accepted or not. */
    static boolean isNotMet(Finding finding) {
        return finding.status() == Status.NOT_MET || finding.status() == Status.ACCEPTED_DEPARTURE;
    }

    /**
     * The finding on the site with its bounds.
     *
     * @return the finding
     */
    public Finding verdict() {
        return verdict;
    }

    /**
     * How many samples have this check with a value.
     *
     * @return the number
     */
    public int samples() {
        return values.count();
    }

    /**
     * In how many of them it is not met.
     *
     * @return the number
     */
    public int notMet() {
        return notMet;
    }

    /**
     * Probability that it is not met.
     *
     * @return part of the samples
     */
    public double probability() {
        return (double) notMet / values.count();
    }

    /**
     * Wilson's interval about that probability, which holds for rare events too.
     *
     * @return lower and upper bound at {@link #CONFIDENCE}
     */
    public ConfidenceInterval interval() {
        ConfidenceInterval wilson = new WilsonScoreInterval().createInterval(values.count(), notMet, CONFIDENCE);
        // Where no sample or every sample fails, one end is exact; rounding must not move it.
        return new ConfidenceInterval(
                notMet == 0 ? 0 : wilson.getLowerBound(),
                notMet == values.count() ? 1 : wilson.getUpperBound(),
                CONFIDENCE);
    }

    /**
     * Mean of the value.
     *
     * @return mean in SI
     */
    public double mean() {
        return values.mean();
    }

    /**
     * The value below which a part of the samples lies.
     *
     * @param part the part, from 0 to 1
     * @return value in SI, between two samples on a straight line
     */
    public double quantile(double part) {
        return values.quantile(part);
    }

    /**
     * The margin below which a part of the samples lies.
     *
     * @param part the part, from 0 to 1
     * @return relative margin, negative where the requirement is not met
     */
    public double marginQuantile(double part) {
        return margins.quantile(part);
    }

    /**
     * The limit, where it is the same in all samples.
     *
     * @return limit in SI; none where it moves with the inputs
     */
    public OptionalDouble limit() {
        // A limit that is a quotient of inputs wanders in its last digit only.
        return mostLimit - leastLimit <= 1e-9 * Math.abs(mostLimit)
                ? OptionalDouble.of(mostLimit)
                : OptionalDouble.empty();
    }

    /**
     * How many margins lie in equal steps.
     *
     * @param from beginning of the first step
     * @param to end of the last step
     * @param steps number of steps
     * @return the numbers; what lies outside is not counted
     */
    public int[] marginCounts(double from, double to, int steps) {
        return margins.counts(from, to, steps);
    }

    /**
     * How many values lie in equal steps.
     *
     * @param from beginning of the first step in SI
     * @param to end of the last step in SI
     * @param steps number of steps
     * @return the numbers; what lies outside is not counted
     */
    public int[] counts(double from, double to, int steps) {
        return values.counts(from, to, steps);
    }
}
