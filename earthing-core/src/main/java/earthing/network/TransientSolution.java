package earthing.network;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableSet;
import java.util.TreeSet;

/**
 * The potentials and branch currents of a circuit as functions of time, from rest. Implicit, A-stable and damped, see
 * {@link TimeGrid} for the steps. Impedances that depend on frequency take no part; their branches keep their constant
 * resistance and inductance.
 */
public final class TransientSolution {

    private static final int CHUNK = 1024;
    private static final int COARSEST = 40;
    private static final int FINEST = -8;
    private static final int COARSE_STEPS_PER_LEVEL = 4;
    private static final double GROW = 0.7;

    private final Circuit circuit;
    private final Topology topology;
    private final double[] times;
    private final List<double[]> records;
    private final int width;
    private final double condition;
    private final double residual;
    private final Map<String, Integer> nodeIndex;
    private final Map<String, Integer> branchColumn = new HashMap<>();
    private final List<SymmetricMatrix> resistorConductances = new ArrayList<>();
    private final List<CoupledBlocks.Block> resistorBlocks;
    private final List<Flashover> flashovers;

    /**
     * A gap that broke down.
     *
     * @param gap name of its branch
     * @param time time at which the voltage reached its strength [s]
     * @param voltage voltage across it just before, first node to second [V]
     */
    public record Flashover(String gap, double time, double voltage) {}

    private TransientSolution(
            Circuit circuit, Stepper stepper, double[] times, List<double[]> records, List<Flashover> flashovers) {
        this.flashovers = flashovers;
        this.circuit = circuit;
        this.topology = stepper.topology;
        this.times = times;
        this.records = records;
        this.width = stepper.recordLength();
        this.condition = stepper.condition();
        this.residual = stepper.residual();
        this.nodeIndex = circuit.nodeIndex();
        int column = topology.nodes;
        for (List<? extends Branch> kind : List.of(
                topology.rigid,
                topology.inductors,
                topology.capacitors,
                topology.nonlinears,
                topology.lineEnds,
                topology.gaps,
                topology.admittances)) {
            for (Branch branch : kind) {
                branchColumn.put(branch.name(), column++);
            }
        }
        resistorBlocks = CoupledBlocks.resistances(circuit).blocks();
        for (CoupledBlocks.Block block : resistorBlocks) {
            resistorConductances.add(SymmetricMatrix.invert(block.values(), "a group of mutual resistances")
                    .matrix());
        }
    }

    /**
     * Solves a circuit from rest: all currents of inductances and voltages of capacitances are 0 at time 0.
     *
     * @param circuit the circuit
     * @param grid end and steps
     * @return the solution
     * @throws IllegalArgumentException if the network is singular, or equal steps exceed the time of travel of a line
     * @throws IllegalStateException if the nonlinear branches do not settle
     */
    public static TransientSolution solve(Circuit circuit, TimeGrid grid) {
        Stepper stepper = new Stepper(circuit, grid.step());
        Recorder recorder = new Recorder(stepper.recordLength());
        recorder.add(0, null);
        NavigableSet<Double> jumps = jumps(circuit);
        GapEvents gaps = new GapEvents(stepper);
        if (grid.tolerance() == 0) {
            equalSteps(stepper, grid, recorder, jumps, gaps);
        } else {
            adaptiveSteps(stepper, grid, recorder, jumps, gaps);
        }
        return new TransientSolution(circuit, stepper, recorder.times(), recorder.chunks, gaps.found());
    }

    private static NavigableSet<Double> jumps(Circuit circuit) {
        NavigableSet<Double> jumps = new TreeSet<>();
        jumps.add(0.0);
        for (Branch branch : circuit.branches()) {
            if (branch instanceof Branch.CurrentSource source) {
                jumps.addAll(source.wave().jumps());
            } else if (branch instanceof Branch.VoltageSource source) {
                jumps.addAll(source.wave().jumps());
            }
        }
        return jumps;
    }

    /** Longest step: the first one doubled as long as it is within a twentieth of the whole. */
    private static double coarsest(TimeGrid grid) {
        return Math.scalb(grid.step(), Math.max(0, Math.getExponent(grid.end() / 20 / grid.step())));
    }

    private static boolean jumpWithin(NavigableSet<Double> jumps, double start, double step) {
        double slack = 1e-9 * step;
        return !jumps.subSet(start - slack, start + step - slack).isEmpty();
    }

    /** Shortens a step so that it ends at a jump instead of passing over it. */
    private static double upToJump(NavigableSet<Double> jumps, double time, double step) {
        Double next = jumps.higher(time + 1e-6 * step);
        return next != null && next < time + (1 - 1e-6) * step ? next - time : step;
    }

    /** A sum of steps may miss the jump it leads to by rounding. */
    private static double snap(NavigableSet<Double> jumps, double time, double step) {
        Double near = jumps.ceiling(time - 1e-6 * step);
        return near != null && near <= time + 1e-6 * step ? near : time;
    }

    private static void equalSteps(
            Stepper stepper, TimeGrid grid, Recorder recorder, NavigableSet<Double> jumps, GapEvents gaps) {
        if (!(grid.step() <= stepper.lines().longestStep() * (1 + 1e-9))) {
            throw new IllegalArgumentException("step must not exceed the shortest time of travel of a line, "
                    + stepper.lines().longestStep() + " s; have " + grid.step());
        }
        long steps = (long) Math.ceil(grid.end() / grid.step() - 1e-9);
        for (long n = 0; n < steps; n++) {
            double time = n * grid.step();
            double end = (n + 1) * grid.step();
            double step = grid.step();
            // A gap that breaks down cuts a step in two.
            while (step > 0) {
                boolean afterJump = jumpWithin(jumps, time, step);
                stepper.step(time, step, afterJump);
                double taken = gaps.upToCrossing(time, step, afterJump);
                stepper.accept();
                if (afterJump) {
                    stepper.lines().announce(jumps);
                }
                time = taken == step ? end : time + taken;
                step = end - time;
                recorder.add(time, stepper);
                gaps.close(time, jumps);
            }
        }
    }

    private static void adaptiveSteps(
            Stepper stepper, TimeGrid grid, Recorder recorder, NavigableSet<Double> jumps, GapEvents gaps) {
        StepControl control = new StepControl(scales(stepper, grid), stepper, grid.tolerance());
        int level = 0;
        double time = 0;
        while (time < grid.end() * (1 - 1e-9)) {
            double step = upToJump(
                    jumps,
                    time,
                    Math.min(Math.scalb(grid.step(), level), stepper.lines().longestStep()));
            if (level > 0 && time + step > grid.end() * (1 + 1e-4)) {
                // A long last step would carry charge and heat far beyond the end that was asked for.
                level--;
                continue;
            }
            boolean afterJump = jumpWithin(jumps, time, step);
            if (afterJump && level > 0) {
                level = 0;
                continue;
            }
            if (afterJump) {
                control.restart();
            }
            stepper.step(time, step, afterJump);
            control.judge(stepper, time + step);
            double excess = control.excess();
            if (excess > 1 && level > FINEST) {
                level = Math.max(FINEST, level - (excess > 16 ? 2 : 1));
                continue;
            }
            if (excess > 1) {
                // A bend of a source or a curve: no step is short enough to foretell it, so start afresh behind it.
                control.restart();
            }
            double taken = gaps.upToCrossing(time, step, afterJump);
            stepper.accept();
            if (afterJump) {
                stepper.lines().announce(jumps);
            }
            if (taken < step) {
                time += taken;
                recorder.add(time, stepper);
                gaps.close(time, jumps);
                control.restart();
                level = FINEST;
                continue;
            }
            time = snap(jumps, time + step, step);
            control.accept(time);
            recorder.add(time, stepper);
            if (gaps.close(time, jumps)) {
                control.restart();
                level = FINEST;
                continue;
            }
            if (control.excessIfDoubled() < GROW
                    && level < COARSEST
                    && step < stepper.lines().longestStep()
                    && Math.scalb(grid.step(), level + 1) <= coarsest(grid)) {
                level++;
            }
        }
    }

    /**
     * Largest values of a coarse run, so that the first steps are not measured by values that are still tiny. Its steps
     * grow with the time, so that it sees front and tail alike.
     */
    private static double[] scales(Stepper stepper, TimeGrid grid) {
        double[] largest = new double[stepper.watched()];
        double[] found = new double[largest.length];
        double time = 0;
        for (int n = 0; time < grid.end() * (1 - 1e-9); n++) {
            double step = Math.min(Math.scalb(grid.step(), n / COARSE_STEPS_PER_LEVEL), coarsest(grid));
            stepper.step(time, step, n == 0);
            stepper.accept();
            stepper.watch(found);
            stepper.closeStruck(time + step);
            for (int k = 0; k < found.length; k++) {
                largest[k] = Math.max(largest[k], Math.abs(found[k]));
            }
            time += step;
        }
        stepper.rest();
        return largest;
    }

    /** Records of all steps, in pieces so that nothing is copied when they grow. */
    private static final class Recorder {

        private final int width;
        private final List<double[]> chunks = new ArrayList<>();
        private double[] times = new double[CHUNK];
        private int count;

        Recorder(int width) {
            this.width = width;
        }

        void add(double time, @org.jspecify.annotations.Nullable Stepper stepper) {
            if (count % CHUNK == 0) {
                chunks.add(new double[Math.multiplyExact(CHUNK, width)]);
            }
            if (count == times.length) {
                times = Arrays.copyOf(times, 2 * count);
            }
            times[count] = time;
            if (stepper != null) {
                stepper.record(chunks.get(chunks.size() - 1), (count % CHUNK) * width);
            }
            count++;
        }

        double[] times() {
            return Arrays.copyOf(times, count);
        }
    }

    private double[] column(int column) {
        double[] values = new double[times.length];
        if (column < 0) {
            return values;
        }
        for (int k = 0; k < values.length; k++) {
            values[k] = records.get(k / CHUNK)[(k % CHUNK) * width + column];
        }
        return values;
    }

    private int node(String name) {
        Integer index = nodeIndex.get(name);
        if (index == null) {
            throw new IllegalArgumentException("no node " + name + " in the circuit");
        }
        return index;
    }

    /**
     * The circuit that was solved.
     *
     * @return the circuit
     */
    public Circuit circuit() {
        return circuit;
    }

    /**
     * Number of samples, the one at rest included.
     *
     * @return number of samples
     */
    public int size() {
        return times.length;
    }

    /**
     * Potential of a node to the reference.
     *
     * @param node node name
     * @return waveform [V]; its first sample is at rest, before any jump of a source
     * @throws FloatingNodeException if no branch leads from the node to the reference
     */
    public Waveform potential(String node) {
        int index = node(node);
        circuit.islands().requireGrounded(node);
        return new Waveform(times, column(index));
    }

    /**
     * Voltage between two nodes. It is the difference of node potentials; where mutual inductances are in the circuit it
     * holds along the branches between the two, not along any other path.
     *
     * @param from first node
     * @param to second node
     * @return waveform of the potential of the first less that of the second [V]
     * @throws FloatingNodeException if no branches lead from one to the other
     */
    public Waveform voltage(String from, String to) {
        int a = node(from);
        int b = node(to);
        if (!circuit.islands().sameIsland(from, to)) {
            throw new FloatingNodeException(circuit.floatingNodes().contains(from) ? from : to);
        }
        double[] values = column(a);
        double[] other = column(b);
        for (int k = 0; k < values.length; k++) {
            values[k] -= other[k];
        }
        return new Waveform(times, values);
    }

    /**
     * Current of a branch, positive from its first to its second node.
     *
     * @param branch branch name
     * @return waveform [A]
     */
    public Waveform current(String branch) {
        Branch found = circuit.branch(branch);
        Integer column = branchColumn.get(branch);
        if (column != null) {
            return new Waveform(times, column(column));
        }
        if (found instanceof Branch.CurrentSource source) {
            double[] values = new double[times.length];
            for (int k = 1; k < values.length; k++) {
                values[k] = source.wave().at(times[k]);
            }
            return new Waveform(times, values);
        }
        return new Waveform(times, resistorCurrent(branch));
    }

    private double[] resistorCurrent(String branch) {
        double[] values = new double[times.length];
        for (int b = 0; b < resistorBlocks.size(); b++) {
            int[] members = resistorBlocks.get(b).members();
            for (int r = 0; r < members.length; r++) {
                if (!topology.resistors.get(members[r]).name().equals(branch)) {
                    continue;
                }
                for (int c = 0; c < members.length; c++) {
                    double g = resistorConductances.get(b).get(r, c);
                    double[] from = column(topology.resistorEnds[0][members[c]]);
                    double[] to = column(topology.resistorEnds[1][members[c]]);
                    for (int k = 0; k < values.length; k++) {
                        values[k] += g * (from[k] - to[k]);
                    }
                }
            }
        }
        return values;
    }

    /**
     * The gaps that broke down.
     *
     * @return in order of time, empty if all held
     */
    public List<Flashover> flashovers() {
        return flashovers;
    }

    /**
     * The nonlinear branches whose current went beyond their data, so that their curve was extrapolated.
     *
     * @return branch names, empty if all stayed within
     */
    public List<String> beyondData() {
        return topology.nonlinears.stream()
                .filter(b ->
                        Math.abs(current(b.name()).peak().value()) > b.curve().largestCurrent())
                .map(Branch.Nonlinear::name)
                .toList();
    }

    /**
     * Condition of the worst matrix that was inverted, after scaling.
     *
     * @return 1-norm condition, 1 or more
     */
    public double condition() {
        return condition;
    }

    /**
     * Largest entry of A·A⁻¹z − z over the matrices that were inverted, after scaling, for test vectors z of ones and of
     * alternating sign.
     *
     * @return residual
     */
    public double residual() {
        return residual;
    }
}
