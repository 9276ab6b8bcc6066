package earthing.network;

import java.util.ArrayList;
import java.util.List;
import java.util.NavigableSet;

/**
 * Watches the open gaps of a circuit. Where a trial step leads a gap beyond its strength, the step is cut at the time of
 * the crossing, found by regula falsi on trial steps of other lengths; from that time on the arc is a resistance.
 */
final class GapEvents {

    /** A crossing is found to this part of the strength. */
    private static final double CLOSE_ENOUGH = 1e-9;
    /** Or to this part of the step. A still shorter step would drown inductances beside the resistance of an arc. */
    private static final double SHORTEST_PART = 1e-5;

    private static final int MOST_TRIALS = 60;

    private final Stepper stepper;
    private final List<Branch.Gap> gaps;
    private final List<TransientSolution.Flashover> found = new ArrayList<>();
    /** Excess at the end of the last accepted step, below 0. */
    private double atStart = -1;

    GapEvents(Stepper stepper) {
        this.stepper = stepper;
        this.gaps = stepper.topology.gaps;
    }

    List<TransientSolution.Flashover> found() {
        return List.copyOf(found);
    }

    /** Shortens the trial step to the first crossing within it; the trial step is left at the length returned. */
    double upToCrossing(double time, double step, boolean afterJump) {
        double high = step;
        double above = excess(time + high);
        if (!(above >= 0)) {
            return step;
        }
        double low = 0;
        double below = atStart;
        int side = 0;
        for (int n = 0; n < MOST_TRIALS && above > CLOSE_ENOUGH && high - low > SHORTEST_PART * step; n++) {
            double middle = high - (high - low) * above / (above - below);
            if (!(middle > low && middle < high)) {
                middle = 0.5 * (low + high);
            }
            middle = Math.max(middle, SHORTEST_PART * step);
            if (middle >= high) {
                break;
            }
            stepper.step(time, middle, afterJump);
            double value = excess(time + middle);
            if (value >= 0) {
                high = middle;
                above = value;
                below = side > 0 ? below / 2 : below;
                side = 1;
            } else {
                low = middle;
                below = value;
                above = side < 0 ? above / 2 : above;
                side = -1;
                if (-value < CLOSE_ENOUGH) {
                    // Just short of the crossing is as good as just beyond it.
                    high = middle;
                    break;
                }
            }
        }
        stepper.step(time, high, afterJump);
        return high;
    }

    /** Largest voltage over an open gap, less its strength, as a part of it. */
    private double excess(double time) {
        double worst = Double.NEGATIVE_INFINITY;
        for (int k = 0; k < gaps.size(); k++) {
            if (!stepper.closed(k)) {
                worst = Math.max(worst, excess(k, time));
            }
        }
        return worst;
    }

    private double excess(int gap, double time) {
        return Math.abs(stepper.gapVoltage(gap)) / gaps.get(gap).law().strength(time) - 1;
    }

    /** Closes the gaps that the accepted step brought to their strength; true if there was one. */
    boolean close(double time, NavigableSet<Double> jumps) {
        boolean any = false;
        for (int k = 0; k < gaps.size(); k++) {
            if (!stepper.closed(k) && excess(k, time) >= -CLOSE_ENOUGH) {
                found.add(new TransientSolution.Flashover(gaps.get(k).name(), time, stepper.gapVoltage(k)));
                stepper.close(k);
                any = true;
            }
        }
        if (any) {
            jumps.add(time);
        }
        atStart = gaps.isEmpty() ? -1 : Math.max(-Double.MAX_VALUE, excess(time));
        return any;
    }
}
