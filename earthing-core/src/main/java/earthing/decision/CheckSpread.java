package earthing.decision;

import earthing.compliance.Finding;
import earthing.compliance.Status;
import java.util.Arrays;
import java.util.OptionalDouble;
import org.apache.commons.math3.stat.StatUtils;
import org.apache.commons.math3.stat.interval.ConfidenceInterval;
import org.apache.commons.math3.stat.interval.WilsonScoreInterval;

/** What becomes of one check over the samples. */
public final class CheckSpread {

    /** Confidence of the interval about a probability. */
    public static final double CONFIDENCE = 0.95;

    private final Finding verdict;
    private final double[] values;
    private final double[] margins;
    private final OptionalDouble limit;
    private final int notMet;

    /**
     * Keeps what the samples gave.
     *
     * @param verdict the finding on the site with its bounds
     * @param samples the finding of each sample that has a value and a margin
     */
    CheckSpread(Finding verdict, Finding[] samples) {
        this.verdict = verdict;
        int n = samples.length;
        double[] value = new double[n];
        double[] margin = new double[n];
        double least = Double.POSITIVE_INFINITY;
        double most = Double.NEGATIVE_INFINITY;
        int failed = 0;
        for (int i = 0; i < n; i++) {
            value[i] = samples[i].value().orElseThrow();
            margin[i] = samples[i].margin().orElseThrow();
            double at = samples[i].limit().orElse(Double.NaN);
            least = Math.min(least, at);
            most = Math.max(most, at);
            failed += isNotMet(samples[i]) ? 1 : 0;
        }
        Arrays.sort(value);
        Arrays.sort(margin);
        values = value;
        margins = margin;
        notMet = failed;
        // A limit that is a quotient of inputs wanders in its last digit only.
        limit = most - least <= 1e-9 * Math.abs(most) ? OptionalDouble.of(most) : OptionalDouble.empty();
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
        return values.length;
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
        return (double) notMet / values.length;
    }

    /**
     * Wilson's interval about that probability, which holds for rare events too.
     *
     * @return lower and upper bound at {@link #CONFIDENCE}
     */
    public ConfidenceInterval interval() {
        ConfidenceInterval wilson = new WilsonScoreInterval().createInterval(values.length, notMet, CONFIDENCE);
        // Where no sample or every sample fails, one end is exact; rounding must not move it.
        return new ConfidenceInterval(
                notMet == 0 ? 0 : wilson.getLowerBound(),
                notMet == values.length ? 1 : wilson.getUpperBound(),
                CONFIDENCE);
    }

    /**
     * Mean of the value.
     *
     * @return mean in SI
     */
    public double mean() {
        return StatUtils.mean(values);
    }

    /**
     * The value below which a part of the samples lies.
     *
     * @param part the part, from 0 to 1
     * @return value in SI, between two samples on a straight line
     */
    public double quantile(double part) {
        return quantile(values, part);
    }

    /**
     * The margin below which a part of the samples lies.
     *
     * @param part the part, from 0 to 1
     * @return relative margin, negative where the requirement is not met
     */
    public double marginQuantile(double part) {
        return quantile(margins, part);
    }

    private static double quantile(double[] sorted, double part) {
        double place = part * (sorted.length - 1);
        int below = (int) Math.floor(place);
        int above = Math.min(sorted.length - 1, below + 1);
        return sorted[below] + (place - below) * (sorted[above] - sorted[below]);
    }

    /**
     * The limit, where it is the same in all samples.
     *
     * @return limit in SI; none where it moves with the inputs
     */
    public OptionalDouble limit() {
        return limit;
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
        return counts(margins, from, to, steps);
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
        return counts(values, from, to, steps);
    }

    private static int[] counts(double[] sorted, double from, double to, int steps) {
        int[] counts = new int[steps];
        for (double value : sorted) {
            if (value >= from && value <= to) {
                counts[Math.min(steps - 1, (int) ((value - from) / (to - from) * steps))]++;
            }
        }
        return counts;
    }
}
