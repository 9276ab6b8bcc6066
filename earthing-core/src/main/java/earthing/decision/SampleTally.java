package earthing.decision;

import java.util.Arrays;
import java.util.Map;
import java.util.TreeMap;

/**
 * Numbers of samples, kept in bounded room. Up to {@link #KEPT} of them the numbers themselves are kept; of more only how
 * many lie in each step of 2⁻¹² of the number, with the least, the greatest and the sum. A quantile of those holds to
 * 2.5e-4 of itself, which is less than what so many samples leave open.
 */
final class SampleTally {

    /** So many numbers are kept as they are. */
    static final int KEPT = 100_000;

    /** Bits of a double's fraction that a step takes together. */
    private static final int DROPPED = 52 - 12;

    private double[] numbers = new double[256];
    private final Map<Long, int[]> steps = new TreeMap<>();
    private int count;
    private double least = Double.POSITIVE_INFINITY;
    private double most = Double.NEGATIVE_INFINITY;
    private double sum;
    private double lost;

    /** Adds a number; the same numbers in the same order leave the same tally. */
    void add(double number) {
        least = Math.min(least, number);
        most = Math.max(most, number);
        // Kahan's sum: a million terms must not cost digits of the mean.
        double term = number - lost;
        double next = sum + term;
        lost = next - sum - term;
        sum = next;
        if (count < KEPT) {
            if (count == numbers.length) {
                numbers = Arrays.copyOf(numbers, Math.min(KEPT, 2 * count));
            }
            numbers[count] = number;
        } else {
            if (count == KEPT) {
                for (double kept : numbers) {
                    steps.computeIfAbsent(step(kept), s -> new int[1])[0]++;
                }
                numbers = new double[0];
            }
            steps.computeIfAbsent(step(number), s -> new int[1])[0]++;
        }
        count++;
    }

    int count() {
        return count;
    }

    /** Puts the numbers in their order; none is added after that. */
    SampleTally settled() {
        if (exact()) {
            numbers = Arrays.copyOf(numbers, count);
            Arrays.sort(numbers);
        }
        return this;
    }

    private boolean exact() {
        return count <= KEPT;
    }

    /** Rising with the number, also through zero. */
    private static long step(double number) {
        long bits = Double.doubleToLongBits(number == 0 ? 0 : number);
        long size = (bits & Long.MAX_VALUE) >>> DROPPED;
        return bits < 0 ? -1 - size : size;
    }

    private static double beginning(long step) {
        return step >= 0 ? Double.longBitsToDouble(step << DROPPED) : -Double.longBitsToDouble(-step << DROPPED);
    }

    double mean() {
        return sum / count;
    }

    /** The number below which a part of all lies, between two of them on a straight line. */
    double quantile(double part) {
        double place = part * (count - 1);
        int below = (int) Math.floor(place);
        double one = ranked(below);
        return one + (place - below) * (ranked(Math.min(count - 1, below + 1)) - one);
    }

    /** The number that so many are less than; where steps are counted, at its even share of its step. */
    private double ranked(int rank) {
        if (exact()) {
            return numbers[rank];
        }
        if (rank == 0 || rank == count - 1) {
            return rank == 0 ? least : most;
        }
        int before = 0;
        for (Map.Entry<Long, int[]> step : steps.entrySet()) {
            int here = step.getValue()[0];
            if (rank < before + here) {
                double from = Math.max(least, beginning(step.getKey()));
                double to = Math.min(most, beginning(step.getKey() + 1));
                return from + (rank - before + 0.5) / here * (to - from);
            }
            before += here;
        }
        return most;
    }

    /** How many numbers lie in equal steps; a step of this tally counts where its middle lies. */
    int[] counts(double from, double to, int boxes) {
        int[] counts = new int[boxes];
        if (exact()) {
            for (int i = 0; i < count; i++) {
                count(numbers[i], 1, from, to, counts);
            }
        } else {
            steps.forEach((step, times) -> count(
                    Math.min(most, Math.max(least, (beginning(step) + beginning(step + 1)) / 2)),
                    times[0],
                    from,
                    to,
                    counts));
        }
        return counts;
    }

    private static void count(double number, int times, double from, double to, int[] counts) {
        if (number >= from && number <= to) {
            counts[Math.min(counts.length - 1, (int) ((number - from) / (to - from) * counts.length))] += times;
        }
    }
}
