package earthing.fault.clearing;

import earthing.fault.clearing.ClearingTime.Cleared;
import earthing.fault.clearing.ClearingTime.Never;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.TreeSet;

/**
 * Stages that watch the same fault; the fastest interrupts it. A sensitive earth-fault element is one more stage; the
 * back-up is a {@code Protection} of its own, because it is a case of its own.
 *
 * @param stages the stages, at least one
 */
public record Protection(List<ProtectionStage> stages) {

    private static final int SAMPLES = 8;

    /**
     * Refuses protection without a stage.
     *
     * @param stages the stages, at least one
     */
    public Protection {
        stages = List.copyOf(stages);
        if (stages.isEmpty()) {
            throw new IllegalArgumentException("protection needs at least one stage");
        }
    }

    /**
     * Protection of the stages given.
     *
     * @param stages the stages
     * @return the protection
     */
    public static Protection of(ProtectionStage... stages) {
        return new Protection(List.of(stages));
    }

    /**
     * A declared clearing time whatever the current, breaker and margin included.
     *
     * @param seconds clearing time [s], ≥ 0
     * @return protection that clears every current above nothing in that time
     */
    public static Protection fixed(double seconds) {
        return of(new ProtectionStage(
                "declared clearing time", new Characteristic.DefiniteTime(Double.MIN_NORMAL, seconds), 0, 0));
    }

    /**
     * When a fault of constant current ends.
     *
     * @param current current that the stages measure [A], ≥ 0
     * @return the fastest stage, or never when no stage picks up
     */
    public ClearingTime clear(double current) {
        ClearingTime best = stages.get(0).clear(current);
        for (ProtectionStage stage : stages.subList(1, stages.size())) {
            ClearingTime next = stage.clear(current);
            if (next instanceof Cleared later
                    && (!(best instanceof Cleared earlier) || later.seconds() < earlier.seconds())) {
                best = next;
            } else if (next instanceof Never other && best instanceof Never reason) {
                best = new Never(reason.reason() + "; " + other.reason());
            }
        }
        return best;
    }

    /**
     * Whether a stage ends a fault for good.
     *
     * @param stage name of the stage
     * @return true for a fuse
     */
    boolean clearsForGood(String stage) {
        return stages.stream().anyMatch(s -> s.name().equals(stage) && s.clearsForGood());
    }

    /**
     * Smallest pickup of all stages.
     *
     * @return current [A]
     */
    public double pickup() {
        return stages.stream()
                .mapToDouble(stage -> stage.characteristic().pickup())
                .min()
                .orElseThrow();
    }

    /**
     * Currents at which some stage begins, bends or jumps, and where the fastest stage changes.
     *
     * @return currents [A], ascending
     */
    public List<Double> breakpoints() {
        TreeSet<Double> points = new TreeSet<>();
        stages.forEach(stage -> points.addAll(stage.characteristic().breakpoints()));
        points.addAll(crossings(List.copyOf(points)));
        return List.copyOf(points);
    }

    /** Stages that meet above both their pickups: the fastest changes there. */
    private List<Double> crossings(List<Double> bends) {
        List<Double> found = new ArrayList<>();
        for (int i = 0; i < stages.size(); i++) {
            for (int j = i + 1; j < stages.size(); j++) {
                ProtectionStage a = stages.get(i);
                ProtectionStage b = stages.get(j);
                for (int k = 1; k < bends.size(); k++) {
                    // smooth between two bends; a few samples catch curves that meet twice
                    for (int part = 0; part < SAMPLES; part++) {
                        crossing(a, b, between(bends, k, part), between(bends, k, part + 1))
                                .ifPresent(found::add);
                    }
                }
            }
        }
        return found;
    }

    private static double between(List<Double> bends, int k, int part) {
        double low = bends.get(k - 1);
        // just below the upper bend, where a jump may stand
        double high = bends.get(k) * (1 - 1e-12);
        return low * Math.pow(high / low, (double) part / SAMPLES);
    }

    private static OptionalDouble crossing(ProtectionStage a, ProtectionStage b, double low, double high) {
        double left = low;
        double right = high;
        OptionalDouble start = difference(a, b, left);
        OptionalDouble end = difference(a, b, right);
        if (start.isEmpty() || end.isEmpty() || !(start.getAsDouble() * end.getAsDouble() < 0)) {
            return OptionalDouble.empty();
        }
        while (right - left > 1e-12 * right) {
            double middle = Math.sqrt(left * right);
            if (!(middle > left && middle < right)) {
                break;
            }
            OptionalDouble value = difference(a, b, middle);
            if (value.isPresent() && value.getAsDouble() * start.getAsDouble() > 0) {
                left = middle;
            } else {
                right = middle;
            }
        }
        return OptionalDouble.of(right);
    }

    private static OptionalDouble difference(ProtectionStage a, ProtectionStage b, double current) {
        OptionalDouble first = a.clear(current).time();
        OptionalDouble second = b.clear(current).time();
        return first.isPresent() && second.isPresent()
                ? OptionalDouble.of(first.getAsDouble() - second.getAsDouble())
                : OptionalDouble.empty();
    }
}
