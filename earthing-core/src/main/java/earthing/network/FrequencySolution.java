package earthing.network;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.math3.complex.Complex;
import org.ejml.data.Complex_F64;
import org.ejml.data.ZMatrixRMaj;
import org.ejml.dense.row.CommonOps_ZDRM;
import org.ejml.dense.row.factory.LinearSolverFactory_ZDRM;
import org.ejml.interfaces.linsol.LinearSolverDense;

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

    private FrequencySolution(Circuit circuit, double frequency) {
        this.circuit = circuit;
        this.angularFrequency = 2 * Math.PI * frequency;
        this.nodeIndex = circuit.nodeIndex();
        Topology topology = new Topology(circuit);
        int size = topology.unknowns();
        ZMatrixRMaj y = new ZMatrixRMaj(size, size);
        ZMatrixRMaj right = new ZMatrixRMaj(size, 1);
        List<CoupledBlocks.Block> inductive = CoupledBlocks.inductances(circuit).blocks();
        List<CoupledBlocks.Block> resistive = CoupledBlocks.resistances(circuit).blocks();
        ZMatrixRMaj[] inductiveAdmittance = new ZMatrixRMaj[inductive.size()];
        for (int b = 0; b < inductiveAdmittance.length; b++) {
            inductiveAdmittance[b] = inverse(impedance(topology, inductive.get(b)), "a group of mutual inductances");
            stamp(y, topology.inductorEnds, inductive.get(b).members(), inductiveAdmittance[b]);
        }
        ZMatrixRMaj[] resistiveAdmittance = new ZMatrixRMaj[resistive.size()];
        for (int b = 0; b < resistiveAdmittance.length; b++) {
            CoupledBlocks.Block block = resistive.get(b);
            int n = block.members().length;
            ZMatrixRMaj r = new ZMatrixRMaj(n, n);
            for (int i = 0; i < n; i++) {
                for (int j = 0; j < n; j++) {
                    r.set(i, j, block.values()[i][j], 0);
                }
            }
            resistiveAdmittance[b] = inverse(r, "a group of mutual resistances");
            stamp(y, topology.resistorEnds, block.members(), resistiveAdmittance[b]);
        }
        for (int k = 0; k < topology.capacitors.size(); k++) {
            double susceptance = angularFrequency * topology.capacitors.get(k).capacitance();
            stamp(y, topology.capacitorEnds[0][k], topology.capacitorEnds[1][k], 0, susceptance);
        }
        for (int k = 0; k < topology.rigid.size(); k++) {
            border(y, topology.nodes + k, topology.rigidEnds[0][k], 1);
            border(y, topology.nodes + k, topology.rigidEnds[1][k], -1);
            Complex value =
                    topology.rigid.get(k) instanceof Branch.VoltageSource source ? source.phasor() : Complex.ZERO;
            right.set(topology.nodes + k, 0, value.getReal(), value.getImaginary());
        }
        for (int k = 0; k < topology.pinned.length; k++) {
            border(y, topology.nodes + topology.rigid.size() + k, topology.pinned[k], 1);
        }
        for (int k = 0; k < topology.currentSources.size(); k++) {
            Branch.CurrentSource source = topology.currentSources.get(k);
            inject(right, topology.currentSourceEnds[0][k], source.phasor().negate());
            inject(right, topology.currentSourceEnds[1][k], source.phasor());
            currents.put(source.name(), source.phasor());
        }
        ZMatrixRMaj x = new ZMatrixRMaj(size, 1);
        residual = solve(y, right, x);
        potentials = new Complex[topology.nodes];
        for (int k = 0; k < potentials.length; k++) {
            potentials[k] = get(x, k, 0);
        }
        for (int k = 0; k < topology.rigid.size(); k++) {
            currents.put(topology.rigid.get(k).name(), get(x, topology.nodes + k, 0));
        }
        for (int b = 0; b < inductiveAdmittance.length; b++) {
            currents(topology.inductors, topology.inductorEnds, inductive.get(b), inductiveAdmittance[b]);
        }
        for (int b = 0; b < resistiveAdmittance.length; b++) {
            currents(topology.resistors, topology.resistorEnds, resistive.get(b), resistiveAdmittance[b]);
        }
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
        if (!(frequency > 0) || !Double.isFinite(frequency)) {
            throw new IllegalArgumentException("frequency must be > 0 Hz; have " + frequency);
        }
        for (Branch.Nonlinear branch : circuit.branches(Branch.Nonlinear.class)) {
            throw new IllegalArgumentException("a phasor solution can't hold the nonlinear branch " + branch.name()
                    + "; remove it or put its resistance at the working point");
        }
        for (Branch.LineEnd end : circuit.branches(Branch.LineEnd.class)) {
            throw new IllegalArgumentException("a phasor solution can't hold the travelling-wave line " + end.lineName()
                    + "; put its surge impedance or its inductance and capacitance in its place");
        }
        return new FrequencySolution(circuit, frequency);
    }

    private ZMatrixRMaj impedance(Topology topology, CoupledBlocks.Block block) {
        int n = block.members().length;
        ZMatrixRMaj z = new ZMatrixRMaj(n, n);
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                z.set(i, j, 0, angularFrequency * block.values()[i][j]);
            }
            Branch.Inductor inductor = topology.inductors.get(block.members()[i]);
            Complex internal =
                    inductor.internal().map(f -> f.at(angularFrequency)).orElse(Complex.ZERO);
            z.set(
                    i,
                    i,
                    inductor.resistance() + internal.getReal(),
                    angularFrequency * block.values()[i][i] + internal.getImaginary());
        }
        return z;
    }

    private static ZMatrixRMaj inverse(ZMatrixRMaj a, String what) {
        int n = a.getNumRows();
        ZMatrixRMaj result = new ZMatrixRMaj(n, n);
        if (n == 1) {
            Complex reciprocal = get(a, 0, 0).reciprocal();
            result.set(0, 0, reciprocal.getReal(), reciprocal.getImaginary());
            return result;
        }
        LinearSolverDense<ZMatrixRMaj> solver = LinearSolverFactory_ZDRM.lu(n);
        // The solver's own quality figure looks at real parts only and calls a purely inductive matrix singular.
        boolean regular = solver.setA(a.copy());
        if (regular) {
            solver.invert(result);
        }
        double residual = regular ? inverseResidual(a, result) : Double.NaN;
        if (!(residual < 1e-6)) {
            throw new IllegalArgumentException(
                    "cannot be computed: " + what + " is singular to working precision (residual " + residual + ")");
        }
        return result;
    }

    private static double inverseResidual(ZMatrixRMaj a, ZMatrixRMaj inverse) {
        int n = a.getNumRows();
        ZMatrixRMaj product = new ZMatrixRMaj(n, n);
        CommonOps_ZDRM.mult(a, inverse, product);
        double worst = 0;
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                Complex off = get(product, i, j).subtract(i == j ? Complex.ONE : Complex.ZERO);
                double size = off.abs();
                worst = Double.isNaN(size) ? Double.POSITIVE_INFINITY : Math.max(worst, size);
            }
        }
        return worst;
    }

    private static double solve(ZMatrixRMaj a, ZMatrixRMaj right, ZMatrixRMaj x) {
        if (a.getNumRows() == 0) {
            return 0;
        }
        LinearSolverDense<ZMatrixRMaj> solver = LinearSolverFactory_ZDRM.lu(a.getNumRows());
        if (!solver.setA(a.copy())) {
            throw new IllegalArgumentException("cannot be computed: the network is singular");
        }
        solver.solve(right.copy(), x);
        double largest = 0;
        for (double value : x.data) {
            if (!Double.isFinite(value)) {
                throw new IllegalArgumentException("cannot be computed: the network is singular");
            }
            largest = Math.max(largest, Math.abs(value));
        }
        // Row by row against the size of the row's own terms: siemens and pure numbers stand in one matrix.
        ZMatrixRMaj product = new ZMatrixRMaj(a.getNumRows(), 1);
        CommonOps_ZDRM.mult(a, x, product);
        double worst = 0;
        for (int i = 0; i < a.getNumRows(); i++) {
            double terms = get(right, i, 0).abs();
            for (int j = 0; j < a.getNumCols(); j++) {
                terms += get(a, i, j).abs() * get(x, j, 0).abs();
            }
            double off = get(product, i, 0).subtract(get(right, i, 0)).abs();
            worst = Math.max(worst, terms > 0 ? off / terms : off);
        }
        if (!(worst < 1e-6)) {
            throw new IllegalArgumentException(
                    "cannot be computed: the network is singular to working precision (residual " + worst + ")");
        }
        return worst;
    }

    private static Complex get(ZMatrixRMaj m, int row, int col) {
        Complex_F64 value = new Complex_F64();
        m.get(row, col, value);
        return new Complex(value.real, value.imaginary);
    }

    private static void add(ZMatrixRMaj y, int row, int col, double re, double im) {
        if (row >= 0 && col >= 0) {
            int at = y.getIndex(row, col);
            y.data[at] += re;
            y.data[at + 1] += im;
        }
    }

    private static void stamp(ZMatrixRMaj y, int p, int q, double re, double im) {
        add(y, p, p, re, im);
        add(y, q, q, re, im);
        add(y, p, q, -re, -im);
        add(y, q, p, -re, -im);
    }

    private static void stamp(ZMatrixRMaj y, int[][] ends, int[] members, ZMatrixRMaj g) {
        for (int i = 0; i < members.length; i++) {
            int p = ends[0][members[i]];
            int q = ends[1][members[i]];
            for (int j = 0; j < members.length; j++) {
                int r = ends[0][members[j]];
                int s = ends[1][members[j]];
                int at = g.getIndex(i, j);
                double re = g.data[at];
                double im = g.data[at + 1];
                add(y, p, r, re, im);
                add(y, q, s, re, im);
                add(y, p, s, -re, -im);
                add(y, q, r, -re, -im);
            }
        }
    }

    private static void border(ZMatrixRMaj y, int row, int node, double sign) {
        if (node >= 0) {
            y.set(row, node, sign, 0);
            y.set(node, row, sign, 0);
        }
    }

    private static void inject(ZMatrixRMaj right, int node, Complex current) {
        if (node >= 0) {
            add(right, node, 0, current.getReal(), current.getImaginary());
        }
    }

    private Complex across(int[][] ends, int branch) {
        int p = ends[0][branch];
        int q = ends[1][branch];
        return (p >= 0 ? potentials[p] : Complex.ZERO).subtract(q >= 0 ? potentials[q] : Complex.ZERO);
    }

    private void currents(List<? extends Branch> list, int[][] ends, CoupledBlocks.Block block, ZMatrixRMaj g) {
        int[] members = block.members();
        for (int i = 0; i < members.length; i++) {
            Complex sum = Complex.ZERO;
            for (int j = 0; j < members.length; j++) {
                sum = sum.add(get(g, i, j).multiply(across(ends, members[j])));
            }
            currents.put(list.get(members[i]).name(), sum);
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
