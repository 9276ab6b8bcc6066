package earthing.study;

import earthing.quantity.Numbers;
import java.util.ArrayList;
import java.util.List;

/**
 * Faults of every current between the smallest and the largest, as a source in between would give them: the circuit of
 * the pole is linear. They are looked at for a worse touch voltage or heating; only what governs is reported.
 */
final class SweptFaults {

    /**
     * A fault in between.
     *
     * @param fault the fault
     * @param touch whether the current can occur in this very soil; for heating, which asks for the current only, any
     *     current between the smallest and the largest of all soils counts
     */
    record Swept(SolvedFault fault, boolean touch) {}

    private static final String MARK = ", ";

    private SweptFaults() {}

    /** Whether a point is that of a swept fault. */
    static boolean swept(String at) {
        return at.startsWith("current=") && at.contains(" A, soil=");
    }

    /**
     * Sweeps one kind of fault.
     *
     * @param groups smallest and largest fault, by soil
     * @param clearing how a current ends
     * @param circumstances the case of the faults in between
     */
    static List<Swept> of(List<List<SolvedFault>> groups, FaultClearing clearing, Case circumstances) {
        double least = Double.POSITIVE_INFINITY;
        double most = 0;
        for (List<SolvedFault> group : groups) {
            least = Math.min(least, smallest(group));
            most = Math.max(most, largest(group).power().current());
        }
        List<Swept> swept = new ArrayList<>();
        if (!(least > 0 && most > least)) {
            return swept;
        }
        CurrentSweep sweep = new CurrentSweep(clearing.sequence(), least, most);
        List<Double> anywhere = sweep.currents(least, most);
        for (List<SolvedFault> group : groups) {
            SolvedFault largest = largest(group);
            double low = smallest(group);
            double high = largest.power().current();
            for (double current : sweep.currents(low, high)) {
                swept.add(new Swept(largest.carrying(current, clearing, circumstances, place(largest, current)), true));
            }
            for (double current : anywhere) {
                if (current <= low || current >= high) {
                    swept.add(new Swept(
                            largest.carrying(current, clearing, circumstances, place(largest, current)), false));
                }
            }
        }
        return swept;
    }

    private static double smallest(List<SolvedFault> group) {
        return group.stream().mapToDouble(s -> s.power().current()).min().orElse(0);
    }

    private static SolvedFault largest(List<SolvedFault> group) {
        return group.stream()
                .max(java.util.Comparator.comparingDouble(s -> s.power().current()))
                .orElseThrow();
    }

    private static String place(SolvedFault largest, double current) {
        String at = largest.power().at();
        return "current=" + Numbers.significant(current, 6) + " A" + MARK + (at.startsWith("soil=") ? "" : "soil=")
                + at;
    }
}
