package earthing.network;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.math3.complex.Complex;

/**
 * The potentials and branch currents of a linear circuit at one frequency, as phasors. Whether they are r.m.s. or peak
 * follows the sources.
 */
public final class FrequencySolution {

    private final Circuit circuit;
    private final double angularFrequency;
    private final Map<String, Integer> nodeIndex;
    private final Complex[] potentials;
    private final Map<String, Complex> currents = new HashMap<>();
    private final double residual;

    /** What does not depend on frequency. */
    private static final class Frame {

        final Circuit circuit;
        final Map<String, Integer> nodeIndex;
        final Topology topology;
        final List<CoupledBlocks.Block> inductive;
        final List<CoupledBlocks.Block> resistive;
        final List<ComplexSymmetric> resistiveAdmittance = new ArrayList<>();

        Frame(Circuit circuit) {
            this.circuit = circuit;
            nodeIndex = circuit.nodeIndex();
            topology = new Topology(circuit);
            inductive = CoupledBlocks.inductances(circuit).blocks();
            resistive = CoupledBlocks.resistances(circuit).blocks();
            for (CoupledBlocks.Block block : resistive) {
                int n = block.members().length;
                ComplexSymmetric r = new ComplexSymmetric(n);
                for (int i = 0; i < n; i++) {
                    for (int j = 0; j < n; j++) {
                        r.re[i][j] = block.values()[i][j];
                    }
                }
                resistiveAdmittance.add(ComplexEquations.inverse(r, "a group of mutual resistances"));
            }
        }
    }

    private FrequencySolution(Frame frame, double frequency) {
        this.circuit = frame.circuit;
        this.angularFrequency = 2 * Math.PI * frequency;
        this.nodeIndex = frame.nodeIndex;
        Topology topology = frame.topology;
        int size = topology.unknowns();
        ComplexSymmetric y = new ComplexSymmetric(size);
        double[] re = new double[size];
        double[] im = new double[size];
        List<ComplexSymmetric> inductiveAdmittance = new ArrayList<>();
        IdentityHashMap<InternalImpedance, Complex> internal = new IdentityHashMap<>();
        for (CoupledBlocks.Block block : frame.inductive) {
            ComplexSymmetric g =
                    ComplexEquations.inverse(impedance(topology, block, internal), "a group of mutual inductances");
            inductiveAdmittance.add(g);
            stamp(y, topology.inductorEnds, block.members(), g);
        }
        for (int b = 0; b < frame.resistive.size(); b++) {
            stamp(y, topology.resistorEnds, frame.resistive.get(b).members(), frame.resistiveAdmittance.get(b));
        }
        for (int k = 0; k < topology.capacitors.size(); k++) {
            double susceptance = angularFrequency * topology.capacitors.get(k).capacitance();
            stamp(y, topology.capacitorEnds[0][k], topology.capacitorEnds[1][k], 0, susceptance);
        }
        Map<CoupledBlocks.Block, ComplexSymmetric> admittances = admittances(topology);
        admittances.forEach((block, g) -> stamp(y, topology.admittanceEnds, block.members(), g));
        for (int k = 0; k < topology.rigid.size(); k++) {
            border(y, topology.nodes + k, topology.rigidEnds[0][k], 1);
            border(y, topology.nodes + k, topology.rigidEnds[1][k], -1);
            Complex value =
                    topology.rigid.get(k) instanceof Branch.VoltageSource source ? source.phasor() : Complex.ZERO;
            re[topology.nodes + k] = value.getReal();
            im[topology.nodes + k] = value.getImaginary();
        }
        for (int k = 0; k < topology.pinned.length; k++) {
            border(y, topology.nodes + topology.rigid.size() + k, topology.pinned[k], 1);
        }
        for (int k = 0; k < topology.currentSources.size(); k++) {
            Branch.CurrentSource source = topology.currentSources.get(k);
            inject(re, im, topology.currentSourceEnds[0][k], source.phasor().negate());
            inject(re, im, topology.currentSourceEnds[1][k], source.phasor());
            currents.put(source.name(), source.phasor());
        }
        residual = ComplexEquations.solve(y, re, im);
        potentials = new Complex[topology.nodes];
        for (int k = 0; k < potentials.length; k++) {
            potentials[k] = new Complex(re[k], im[k]);
        }
        for (int k = 0; k < topology.rigid.size(); k++) {
            currents.put(topology.rigid.get(k).name(), new Complex(re[topology.nodes + k], im[topology.nodes + k]));
        }
        for (int b = 0; b < inductiveAdmittance.size(); b++) {
            currents(topology.inductors, topology.inductorEnds, frame.inductive.get(b), inductiveAdmittance.get(b));
        }
        for (int b = 0; b < frame.resistive.size(); b++) {
            currents(
                    topology.resistors,
                    topology.resistorEnds,
                    frame.resistive.get(b),
                    frame.resistiveAdmittance.get(b));
        }
        admittances.forEach((block, g) -> currents(topology.admittances, topology.admittanceEnds, block, g));
        for (int k = 0; k < topology.capacitors.size(); k++) {
            Complex v = across(topology.capacitorEnds, k);
            currents.put(
                    topology.capacitors.get(k).name(),
                    v.multiply(new Complex(
                            0, angularFrequency * topology.capacitors.get(k).capacitance())));
        }
    }

    /**
     * Solves a circuit at one frequency.
     *
     * @param circuit a circuit without nonlinear branches and travelling-wave lines
     * @param frequency frequency [Hz], above 0
     * @return the solution
     * @throws IllegalArgumentException if the frequency is not above 0, the circuit holds a nonlinear branch or a travelling-wave line, or the
     *     network is singular
     */
    public static FrequencySolution solve(Circuit circuit, double frequency) {
        return sweep(circuit, frequency).get(0);
    }

    /**
     * Solves a circuit at many frequencies; what does not depend on frequency is found once.
     *
     * @param circuit a circuit without nonlinear branches and travelling-wave lines
     * @param frequencies frequencies [Hz], all above 0
     * @return the solutions in the order of the frequencies
     * @throws IllegalArgumentException as {@link #solve}
     */
    public static List<FrequencySolution> sweep(Circuit circuit, double... frequencies) {
        for (double frequency : frequencies) {
            if (!(frequency > 0) || !Double.isFinite(frequency)) {
                throw new IllegalArgumentException("frequency must be > 0 Hz; have " + frequency);
            }
        }
        for (Branch.Nonlinear branch : circuit.branches(Branch.Nonlinear.class)) {
            throw new IllegalArgumentException("a phasor solution can't hold the nonlinear branch " + branch.name()
                    + "; remove it or put its resistance at the working point");
        }
        for (Branch.LineEnd end : circuit.branches(Branch.LineEnd.class)) {
            throw new IllegalArgumentException("a phasor solution can't hold the travelling-wave line " + end.lineName()
                    + "; put its surge impedance or its inductance and capacitance in its place");
        }
        Frame frame = new Frame(circuit);
        return Arrays.stream(frequencies)
                .mapToObj(f -> new FrequencySolution(frame, f))
                .toList();
    }

    /** Ports of each group of admittances, with its matrix at this frequency. */
    private Map<CoupledBlocks.Block, ComplexSymmetric> admittances(Topology topology) {
        Map<String, int[]> members = new LinkedHashMap<>();
        Map<CoupledBlocks.Block, ComplexSymmetric> found = new LinkedHashMap<>();
        for (int k = 0; k < topology.admittances.size(); k++) {
            Branch.Admittance branch = topology.admittances.get(k);
            int n = branch.admittance().ports();
            int[] group = members.get(branch.group());
            if (group == null) {
                group = new int[n];
                members.put(branch.group(), group);
                Complex[][] values = branch.admittance().at(angularFrequency);
                ComplexSymmetric g = new ComplexSymmetric(n);
                for (int i = 0; i < n; i++) {
                    for (int j = 0; j < n; j++) {
                        g.re[i][j] = values[i][j].getReal();
                        g.im[i][j] = values[i][j].getImaginary();
                    }
                }
                found.put(new CoupledBlocks.Block(group, new double[0][]), g);
            }
            group[branch.port()] = k;
        }
        return found;
    }

    private ComplexSymmetric impedance(
            Topology topology, CoupledBlocks.Block block, IdentityHashMap<InternalImpedance, Complex> known) {
        int n = block.members().length;
        ComplexSymmetric z = new ComplexSymmetric(n);
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                z.im[i][j] = angularFrequency * block.values()[i][j];
            }
            Branch.Inductor inductor = topology.inductors.get(block.members()[i]);
            Complex internal = inductor.internal()
                    .map(f -> known.computeIfAbsent(f, g -> g.at(angularFrequency)))
                    .orElse(Complex.ZERO);
            z.re[i][i] = inductor.resistance() + internal.getReal();
            z.im[i][i] += internal.getImaginary();
        }
        return z;
    }

    private static void stamp(ComplexSymmetric y, int p, int q, double re, double im) {
        y.add(p, p, re, im);
        y.add(q, q, re, im);
        y.add(p, q, -re, -im);
        y.add(q, p, -re, -im);
    }

    private static void stamp(ComplexSymmetric y, int[][] ends, int[] members, ComplexSymmetric g) {
        for (int i = 0; i < members.length; i++) {
            int p = ends[0][members[i]];
            int q = ends[1][members[i]];
            for (int j = 0; j < members.length; j++) {
                int r = ends[0][members[j]];
                int s = ends[1][members[j]];
                double re = g.re[i][j];
                double im = g.im[i][j];
                y.add(p, r, re, im);
                y.add(q, s, re, im);
                y.add(p, s, -re, -im);
                y.add(q, r, -re, -im);
            }
        }
    }

    private static void border(ComplexSymmetric y, int row, int node, double sign) {
        if (node >= 0) {
            y.re[row][node] = sign;
            y.re[node][row] = sign;
        }
    }

    private static void inject(double[] re, double[] im, int node, Complex current) {
        if (node >= 0) {
            re[node] += current.getReal();
            im[node] += current.getImaginary();
        }
    }

    private Complex across(int[][] ends, int branch) {
        int p = ends[0][branch];
        int q = ends[1][branch];
        return (p >= 0 ? potentials[p] : Complex.ZERO).subtract(q >= 0 ? potentials[q] : Complex.ZERO);
    }

    private void currents(List<? extends Branch> list, int[][] ends, CoupledBlocks.Block block, ComplexSymmetric g) {
        int[] members = block.members();
        int n = members.length;
        double[] vr = new double[n];
        double[] vi = new double[n];
        for (int k = 0; k < n; k++) {
            Complex v = across(ends, members[k]);
            vr[k] = v.getReal();
            vi[k] = v.getImaginary();
        }
        double[] ir = new double[n];
        double[] ii = new double[n];
        g.addProduct(vr, vi, ir, ii);
        for (int k = 0; k < n; k++) {
            currents.put(list.get(members[k]).name(), new Complex(ir[k], ii[k]));
        }
    }

    private Complex raw(String node) {
        Integer index = nodeIndex.get(node);
        if (index == null) {
            throw new IllegalArgumentException("no node " + node + " in the circuit");
        }
        return index < 0 ? Complex.ZERO : potentials[index];
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
     * The angular frequency.
     *
     * @return ω [rad/s]
     */
    public double angularFrequency() {
        return angularFrequency;
    }

    /**
     * Potential of a node to the reference.
     *
     * @param node node name
     * @return phasor [V]
     * @throws FloatingNodeException if no branch leads from the node to the reference
     */
    public Complex potential(String node) {
        Complex value = raw(node);
        circuit.islands().requireGrounded(node);
        return value;
    }

    /**
     * Voltage between two nodes, along the branches between them.
     *
     * @param from first node
     * @param to second node
     * @return potential of the first less that of the second [V]
     * @throws FloatingNodeException if no branches lead from one to the other
     */
    public Complex voltage(String from, String to) {
        Complex difference = raw(from).subtract(raw(to));
        if (!circuit.islands().sameIsland(from, to)) {
            throw new FloatingNodeException(circuit.floatingNodes().contains(from) ? from : to);
        }
        return difference;
    }

    /**
     * Current of a branch, positive from its first to its second node.
     *
     * @param branch branch name
     * @return phasor [A]
     */
    public Complex current(String branch) {
        circuit.branch(branch);
        return currents.getOrDefault(branch, Complex.ZERO);
    }

    /**
     * The worst row of the solved equations: what is left over, as a part of the sum of the row's terms.
     *
     * @return relative residual
     */
    public double residual() {
        return residual;
    }
}
