package earthing.study;

import earthing.fault.clearing.RecloseSequence;
import java.util.Arrays;
import java.util.List;
import java.util.NavigableSet;
import java.util.Set;
import java.util.TreeSet;
import org.apache.commons.math3.analysis.solvers.AllowedSolution;
import org.apache.commons.math3.analysis.solvers.BracketingNthOrderBrentSolver;

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
    private static final int MOST_STEPS = 200;

    private final RecloseSequence sequence;
    /** Just below and above every bend or jump of the clearing time. */
    private final NavigableSet<Double> bends = new TreeSet<>();
    /** Just below and above where a run of shots lasts as long as a point of a table. */
    private final NavigableSet<Double> crossings = new TreeSet<>();

    /**
     * Finds where the clearing time bends and where it passes a point of a table.
     *
     * @param sequence how a current ends
     * @param least smallest current of any range that will be asked for [A]
     * @param most largest such current [A]
     */
    CurrentSweep(RecloseSequence sequence, double least, double most) {
        this.sequence = sequence;
        for (double point : sequence.breakpoints()) {
            bends.add(point * (1 - BESIDE));
            bends.add(point * (1 + BESIDE));
        }
        List<Double> ends = ends(least, most);
        for (int i = 1; i < ends.size(); i++) {
            crossings(ends.get(i - 1), ends.get(i));
        }
    }

    /** The currents, ascending, all within the range; both ends are looked at by their own cases. */
    List<Double> currents(double low, double high) {
        List<Double> ends = ends(low, high);
        TreeSet<Double> currents = new TreeSet<>(ends);
        for (int i = 1; i < ends.size(); i++) {
            double from = ends.get(i - 1);
            double to = ends.get(i);
            if (falls(from, to)) {
                for (int part = 1; part < PARTS; part++) {
                    currents.add(from * Math.pow(to / from, (double) part / PARTS));
                }
            }
        }
        currents.addAll(within(crossings, low, high));
        currents.remove(low);
        currents.remove(high);
        currents.removeIf(current -> sequence.run(current) instanceof RecloseSequence.Outcome.Sustained);
        return List.copyOf(currents);
    }

    private List<Double> ends(double low, double high) {
        TreeSet<Double> ends = new TreeSet<>(within(bends, low, high));
        ends.add(low);
        ends.add(high);
        return List.copyOf(ends);
    }

    private static Set<Double> within(NavigableSet<Double> all, double low, double high) {
        return low < high ? all.subSet(low, false, high, false) : Set.of();
    }

    /** Whether the clearing time falls over a range without bends, so that anything may lie in between. */
    private boolean falls(double from, double to) {
        if (!(to > from * (1 + 10 * BESIDE))) {
            return false;
        }
        double[] slow = sums(from);
        double[] fast = sums(to);
        return slow.length > 0 && slow.length == fast.length && !Arrays.equals(slow, fast);
    }

    private void crossings(double from, double to) {
        if (!falls(from, to)) {
            return;
        }
        double[] slow = sums(from);
        double[] fast = sums(to);
        for (int run = 0; run < slow.length; run++) {
            for (double time : TABLE) {
                if (slow[run] > time && fast[run] < time) {
                    double current = where(run, time, from, to);
                    crossings.add(current * (1 - BESIDE));
                    crossings.add(current * (1 + BESIDE));
                }
            }
        }
    }

    /** Current at which a run of shots lasts so long; the time falls with the current. */
    private double where(int run, double time, double from, double to) {
        BracketingNthOrderBrentSolver solver = new BracketingNthOrderBrentSolver(BESIDE / 100, 5);
        double root = solver.solve(
                MOST_STEPS,
                x -> {
                    double[] sums = sums(Math.exp(x));
                    return run < sums.length ? Math.log(sums[run] / time) : -1;
                },
                Math.log(from),
                Math.log(to),
                AllowedSolution.BELOW_SIDE);
        return Math.exp(root);
    }

    /** Durations of every run of consecutive shots, since dead times may merge them; empty if never cleared. */
    private double[] sums(double current) {
        RecloseSequence.Outcome outcome = sequence.run(current);
        if (outcome instanceof RecloseSequence.Outcome.Sustained) {
            return new double[0];
        }
        int shots = outcome.shots().size();
        double[] sums = new double[shots * (shots + 1) / 2];
        int run = 0;
        for (int first = 0; first < shots; first++) {
            double sum = 0;
            for (int last = first; last < shots; last++) {
                sum += outcome.shots().get(last).duration();
                sums[run++] = sum;
            }
        }
        return sums;
    }
}
