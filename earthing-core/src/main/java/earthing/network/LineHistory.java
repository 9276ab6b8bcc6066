package earthing.network;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableSet;

/**
 * What the ends of all travelling-wave lines of a circuit have sent out, kept as long as it is on its way. For each step
 * the values at its start, middle stage and end are kept and joined by a parabola, so that a delayed wave stays as smooth
 * as the one that set out; a step that follows a jump starts afresh with the value just after the jump.
 */
final class LineHistory {

    /** Part of the largest wave beyond which a jump is followed to the other end. */
    private static final double JUMP = 1e-6;

    /** Both ends of one line: positions of the ends of its conductors in the list of line ends. */
    private static final class Pair {

        private final LosslessLine line;
        private final int[] near;
        private final int[] far;

        Pair(LosslessLine line) {
            this.line = line;
            this.near = new int[line.conductors()];
            this.far = new int[line.conductors()];
        }
    }

    private final List<Pair> pairs = new ArrayList<>();
    private final int[][] ends;
    private final int count;
    private final double longestDelay;
    private final double shortestDelay;
    private final double[] arriving;
    private final double[] middle;
    private final double[] latest;
    private final double[] current;
    private double largest;

    /** Steps in a ring: times of start, middle and end, and behind each other the waves of all ends at these times. */
    private double[][] times = new double[64][];

    private double[][] waves = new double[64][];
    private int first;
    private int size;

    LineHistory(List<Branch.LineEnd> list, int[][] ends) {
        this.ends = ends;
        this.count = list.size();
        Map<String, Pair> byName = new LinkedHashMap<>();
        double longest = 0;
        double shortest = Double.POSITIVE_INFINITY;
        for (int k = 0; k < count; k++) {
            Branch.LineEnd end = list.get(k);
            Pair pair = byName.computeIfAbsent(end.lineName(), name -> new Pair(end.line()));
            (end.far() ? pair.far : pair.near)[end.conductor()] = k;
            longest = Math.max(longest, end.line().delay());
            shortest = Math.min(shortest, end.line().delay());
        }
        pairs.addAll(byName.values());
        longestDelay = longest;
        shortestDelay = shortest;
        arriving = new double[count];
        middle = new double[count];
        latest = new double[count];
        current = new double[count];
    }

    /** No step may be longer than the shortest time of travel [s]; infinite without lines. */
    double longestStep() {
        return shortestDelay;
    }

    int count() {
        return count;
    }

    double current(int end) {
        return current[end];
    }

    /** Puts the surge admittances into the nodal matrix. */
    void stamp(double[][] y) {
        for (Pair pair : pairs) {
            for (int[] side : new int[][] {pair.near, pair.far}) {
                for (int i = 0; i < side.length; i++) {
                    for (int j = 0; j < side.length; j++) {
                        Topology.stamp(y, ends, side[i], side[j], pair.line.surgeAdmittance(i, j));
                    }
                }
            }
        }
    }

    /** Finds what arrives at all ends at a time; the slack keeps the end of a step before a jump that falls on it. */
    void arrive(double time, double slack) {
        for (Pair pair : pairs) {
            double sent = time - pair.line.delay();
            int step = find(sent - slack);
            for (int k = 0; k < pair.near.length; k++) {
                arriving[pair.near[k]] = wave(step, sent, pair.far[k]);
                arriving[pair.far[k]] = wave(step, sent, pair.near[k]);
            }
        }
    }

    double arriving(int end) {
        return arriving[end];
    }

    private int at(int step) {
        return (first + step) % times.length;
    }

    /** The step that holds a time, its end included; -1 before the start, the last one for a time not yet reached. */
    private int find(double time) {
        if (size == 0 || time <= times[at(0)][0]) {
            return -1;
        }
        int low = 0;
        int high = size - 1;
        while (low < high) {
            int mid = (low + high) >>> 1;
            if (times[at(mid)][2] >= time) {
                high = mid;
            } else {
                low = mid + 1;
            }
        }
        return low;
    }

    private double wave(int step, double time, int end) {
        if (step < 0) {
            return 0;
        }
        double[] t = times[at(step)];
        double[] w = waves[at(step)];
        // Not yet sent, which happens in the coarse run for scales only: the last value stands in.
        double x = Math.min(Math.max(time, t[0]), t[2]);
        double a = t[0];
        double b = t[1];
        double c = t[2];
        return w[end] * ((x - b) * (x - c)) / ((a - b) * (a - c))
                + w[count + end] * ((x - a) * (x - c)) / ((b - a) * (b - c))
                + w[2 * count + end] * ((x - a) * (x - b)) / ((c - a) * (c - b));
    }

    /** Takes the potentials of a stage: currents into the lines and what sets out from each end. */
    void depart(double[] unknown, boolean last) {
        double[] target = last ? latest : middle;
        for (Pair pair : pairs) {
            depart(pair.line, pair.near, unknown, target);
            depart(pair.line, pair.far, unknown, target);
        }
    }

    private void depart(LosslessLine line, int[] side, double[] unknown, double[] target) {
        for (int i = 0; i < side.length; i++) {
            double through = 0;
            for (int j = 0; j < side.length; j++) {
                through += line.surgeAdmittance(i, j) * Stepper.across(unknown, ends, side[j]);
            }
            current[side[i]] = through - arriving[side[i]];
            target[side[i]] = through + current[side[i]];
        }
    }

    /** Keeps the waves of a step that was accepted. */
    void accept(double start, double mid, double end, boolean afterJump) {
        if (count == 0) {
            return;
        }
        while (size > 0 && times[first][2] < start - longestDelay - (end - start)) {
            first = (first + 1) % times.length;
            size--;
        }
        if (size == times.length) {
            grow();
        }
        int slot = at(size);
        double[] before = size > 0 ? waves[at(size - 1)] : new double[3 * count];
        double[] t = new double[] {start, mid, end};
        double[] w = new double[3 * count];
        for (int k = 0; k < count; k++) {
            w[k] = afterJump
                    ? latest[k] - (latest[k] - middle[k]) * (end - start) / (end - mid)
                    : before[2 * count + k];
            w[count + k] = middle[k];
            w[2 * count + k] = latest[k];
            largest = Math.max(largest, Math.abs(latest[k]));
        }
        times[slot] = t;
        waves[slot] = w;
        size++;
    }

    private void grow() {
        double[][] moreTimes = new double[2 * times.length][];
        double[][] moreWaves = new double[2 * times.length][];
        for (int k = 0; k < size; k++) {
            moreTimes[k] = times[at(k)];
            moreWaves[k] = waves[at(k)];
        }
        times = moreTimes;
        waves = moreWaves;
        first = 0;
    }

    /** Adds the times at which a jump at the start of the last accepted step reaches the other ends. */
    void announce(NavigableSet<Double> jumps) {
        if (count == 0 || size == 0) {
            return;
        }
        double[] now = waves[at(size - 1)];
        for (Pair pair : pairs) {
            boolean jumped = false;
            for (int[] side : new int[][] {pair.near, pair.far}) {
                for (int k : side) {
                    double before = size > 1 ? waves[at(size - 2)][2 * count + k] : 0;
                    jumped |= Math.abs(now[k] - before) > JUMP * largest;
                }
            }
            if (jumped) {
                jumps.add(times[at(size - 1)][0] + pair.line.delay());
            }
        }
    }

    /** Forgets all waves; the largest is kept as a measure for the next run. */
    void rest() {
        first = 0;
        size = 0;
    }
}
