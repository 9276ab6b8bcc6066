package earthing.electrode.wire;

import earthing.conductor.inductance.InductanceMatrix;
import earthing.conductor.inductance.Point;
import earthing.conductor.inductance.RoundConductor;
import earthing.network.SymmetricPhasors;
import earthing.soil.PointSource;
import earthing.soil.SoilModel;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.IntFunction;
import org.apache.commons.math3.complex.Complex;
import org.ejml.data.ZMatrixRMaj;

/**
 * Bars of one electrode or several whose ends are nodes: each element has a leakage current and a current along it. Shared
 * by the solution over frequency and the one with series impedance at power frequency.
 */
final class BondedWires {

    private static final double MU0 = 4e-7 * Math.PI;

    private static final String OVERLAP = "the bars cannot be solved: two of them probably overlap";

    private static final int LARGEST = 400;

    final Mesh mesh;
    final InductanceMatrix inductances;
    private final BondedNodes nodes;
    private final int[] owner;

    private BondedWires(Mesh mesh, BondedNodes nodes, int[] owner, InductanceMatrix inductances) {
        this.mesh = mesh;
        this.nodes = nodes;
        this.owner = owner;
        this.inductances = inductances;
    }

    /**
     * Cuts bars where others end on them and joins what touches.
     *
     * @param electrodes names in the order of the terminals
     * @param terminals where the earth lead of each arrives, x and y [m]
     * @param rule how the pieces are cut, from their number
     */
    static BondedWires of(
            SoilModel soil,
            List<Bar> bars,
            List<String> electrodes,
            double[][] terminals,
            IntFunction<Discretisation> rule) {
        List<Bar> pieces = BondedNodes.cutAtJunctions(bars);
        Mesh mesh = Mesh.of(soil, pieces, rule.apply(pieces.size()));
        if (mesh.size > LARGEST) {
            throw new IllegalArgumentException("the electrodes have " + mesh.size
                    + " elements; with currents along the bars at most " + LARGEST + " are solved");
        }
        int[] owner = new int[mesh.size];
        if (terminals.length > 1) {
            Arrays.setAll(owner, e -> electrodes.indexOf(pieces.get(mesh.bar[e]).electrode()));
        }
        BondedNodes nodes = BondedNodes.of(mesh, owner, terminals);
        List<RoundConductor> axes = new ArrayList<>();
        for (int e = 0; e < mesh.size; e++) {
            axes.add(RoundConductor.between(
                    new Point(mesh.x1[e], mesh.y1[e], -mesh.z1[e]),
                    new Point(mesh.x2[e], mesh.y2[e], -mesh.z2[e]),
                    Math.min(mesh.metal[e], 0.99 * mesh.length[e])));
        }
        return new BondedWires(mesh, nodes, owner, InductanceMatrix.of(axes, InductanceMatrix.Ground.NONE));
    }

    /** Number of the electrode of an element, in the order of the terminals. */
    int owner(int element) {
        return owner[element];
    }

    /** Mean potentials per ampere in real ground, row by row [V/A]. */
    double[] coefficients(SoilModel real) {
        PairIntegral integral = new PairIntegral(mesh, PointSource.of(real));
        int n = mesh.size;
        double[] values = new double[n * n];
        ImageTerms room = new ImageTerms();
        for (int i = 0; i < n; i++) {
            for (int j = 0; j <= i; j++) {
                values[i * n + j] = integral.mean(i, j, room);
                values[j * n + i] = values[i * n + j];
            }
        }
        return values;
    }

    /** Concrete around a bar stays the resistance that it is at low frequency; the current along the bar is in the metal. */
    void addSleeves(ZMatrixRMaj across) {
        for (int e = 0; e < mesh.size; e++) {
            across.data[2 * (e * mesh.size + e)] += mesh.sleeve[e];
        }
    }

    /** Adds (e^(−γR) − 1)/R to both systems, and the partial inductances to that along the bars. */
    void phases(Complex[] kappa, double frequency, ZMatrixRMaj across, ZMatrixRMaj along) {
        int n = mesh.size;
        double omega = 2 * Math.PI * frequency;
        double[] pair = new double[4];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j <= i; j++) {
                Complex k = mesh.layer[i] == mesh.layer[j]
                        ? kappa[mesh.layer[i]]
                        : kappa[mesh.layer[i]].multiply(kappa[mesh.layer[j]]).sqrt();
                Complex gamma = k.multiply(new Complex(0, omega * MU0)).sqrt();
                PhaseRemainder.means(mesh, i, j, gamma, pair);
                Complex strength = k.multiply(4 * Math.PI).reciprocal();
                Complex leak = new Complex(pair[0] + pair[2], pair[1] + pair[3]).multiply(strength);
                double parallel = ((mesh.x2[i] - mesh.x1[i]) * (mesh.x2[j] - mesh.x1[j])
                                + (mesh.y2[i] - mesh.y1[i]) * (mesh.y2[j] - mesh.y1[j])
                                + (mesh.z2[i] - mesh.z1[i]) * (mesh.z2[j] - mesh.z1[j]))
                        * MU0
                        / (4 * Math.PI);
                Complex run = new Complex(pair[0] * parallel + inductances.get(i, j), pair[1] * parallel)
                        .multiply(new Complex(0, omega));
                add(across, i, j, leak);
                add(along, i, j, run);
                if (i != j) {
                    add(across, j, i, leak);
                    add(along, j, i, run);
                }
            }
        }
    }

    private static void add(ZMatrixRMaj matrix, int i, int j, Complex value) {
        int at = 2 * (i * matrix.numCols + j);
        matrix.data[at] += value.getReal();
        matrix.data[at + 1] += value.getImaginary();
    }

    /** Node potentials: the current along an element sees both ends, its leakage leaves half at each. */
    Complex[][] solve(ZMatrixRMaj across, ZMatrixRMaj along) {
        int n = mesh.size;
        ZMatrixRMaj leak = inverse(across);
        ZMatrixRMaj run = inverse(along);
        ZMatrixRMaj y = new ZMatrixRMaj(nodes.count, nodes.count);
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                int at = 2 * (i * n + j);
                Complex half = new Complex(leak.data[at] / 4, leak.data[at + 1] / 4);
                Complex difference = new Complex(run.data[at], run.data[at + 1]);
                add(y, nodes.from[i], nodes.from[j], half.add(difference));
                add(y, nodes.to[i], nodes.to[j], half.add(difference));
                add(y, nodes.from[i], nodes.to[j], half.subtract(difference));
                add(y, nodes.to[i], nodes.from[j], half.subtract(difference));
            }
        }
        int ports = nodes.feed.length;
        Complex[][] impedances = new Complex[ports][ports];
        for (int j = 0; j < ports; j++) {
            double[] potentials = column(y, nodes.feed[j]);
            for (int i = 0; i < ports; i++) {
                impedances[i][j] = new Complex(potentials[2 * nodes.feed[i]], potentials[2 * nodes.feed[i] + 1]);
            }
        }
        return impedances;
    }

    private static double[] column(ZMatrixRMaj matrix, int column) {
        try {
            return SymmetricPhasors.column(matrix.data, matrix.numRows, column);
        } catch (IllegalArgumentException singular) {
            throw new IllegalArgumentException(OVERLAP, singular);
        }
    }

    private static ZMatrixRMaj inverse(ZMatrixRMaj matrix) {
        ZMatrixRMaj result = new ZMatrixRMaj(matrix.numRows, matrix.numCols);
        try {
            result.data = SymmetricPhasors.inverse(matrix.data, matrix.numRows);
        } catch (IllegalArgumentException singular) {
            throw new IllegalArgumentException(OVERLAP, singular);
        }
        return result;
    }
}
