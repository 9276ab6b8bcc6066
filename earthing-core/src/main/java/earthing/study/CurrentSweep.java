package earthing.study;

import earthing.fault.clearing.RecloseSequence;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/**
 * Currents within a range at which a check may be worse than at the ends: just below and above every current where the
 * clearing time bends or jumps, where a shot or a run of shots lasts as long as a point of a table of permissible voltages,
 * and a few in between.
 */
final class CurrentSweep {

    /** Printed durations of the tables of permissible voltages, where these bend [s]. */
    private static final double[] TABLE = {
        0.04, 0.05, 0.08, 0.1, 0.15, 0.2, 0.25, 0.3, 0.35, 0.4, 0.45, 0.5, 0.55, 0.6, 0.65, 0.7, 0.8, 0.9, 1, 1.1, 1.5,
        2, 3, 4, 5, 7, 10
    };

    private static final double BESIDE = 1e-9;
    private static final int PARTS = 10;
    private static final int HALVINGS = 48;

    private CurrentSweep() {}

    /** The currents, ascending, all within the range; both ends are looked at by their own cases. */
    static List<Double> currents(RecloseSequence sequence, double low, double high) {
        TreeSet<Double> ends = new TreeSet<>(List.of(low, high));
        for (double point : sequence.breakpoints()) {
            for (double beside : new double[] {point * (1 - BESIDE), point * (1 + BESIDE)}) {
                if (beside > low && beside < high) {
                    ends.add(beside);
                }
            }
        }
        TreeSet<Double> currents = new TreeSet<>(ends);
        List<Double> bends = List.copyOf(ends);
        for (int i = 1; i < bends.size(); i++) {
            smooth(sequence, bends.get(i - 1), bends.get(i), currents);
        }
        currents.remove(low);
        currents.remove(high);
        currents.removeIf(current -> sequence.run(current) instanceof RecloseSequence.Outcome.Sustained);
        return List.copyOf(currents);
    }

    private static void smooth(RecloseSequence sequence, double from, double to, Set<Double> currents) {
        if (!(to > from * (1 + 10 * BESIDE))) {
            return;
        }
        double[] slow = sums(sequence, from);
        double[] fast = sums(sequence, to);
        boolean constant = slow.length == 0 || slow.length != fast.length || java.util.Arrays.equals(slow, fast);
        if (constant) {
            return;
        }
        for (int part = 1; part < PARTS; part++) {
            currents.add(from * Math.pow(to / from, (double) part / PARTS));
        }
        for (int run = 0; run < slow.length; run++) {
            for (double time : TABLE) {
                if (slow[run] > time && fast[run] < time) {
                    double current = where(sequence, run, time, from, to);
                    currents.add(current * (1 - BESIDE));
                    currents.add(current * (1 + BESIDE));
                }
            }
        }
    }

    /** Current at which a run of shots lasts so long; the time falls with the current. */
    private static double where(RecloseSequence sequence, int run, double time, double from, double to) {
        double low = from;
        double high = to;
        for (int i = 0; i < HALVINGS; i++) {
            double middle = Math.sqrt(low * high);
            double[] sums = sums(sequence, middle);
            if (run < sums.length && sums[run] > time) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return high;
    }

    /** Durations of every run of consecutive shots, since dead times may merge them; empty if never cleared. */
    private static double[] sums(RecloseSequence sequence, double current) {
        RecloseSequence.Outcome outcome = sequence.run(current);
        if (outcome instanceof RecloseSequence.Outcome.Sustained) {
            return new double[0];
        }
        List<Double> sums = new ArrayList<>();
        for (int first = 0; first < outcome.shots().size(); first++) {
            double sum = 0;
            for (int last = first; last < outcome.shots().size(); last++) {
                sum += outcome.shots().get(last).duration();
                sums.add(sum);
            }
        }
        return sums.stream().mapToDouble(Double::doubleValue).toArray();
    }
}
