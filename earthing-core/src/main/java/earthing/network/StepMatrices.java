package earthing.network;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Everything of the linear part that depends on the step alone: conductances of the coupled inductances, the inverse of
 * the bordered nodal matrix, and that inverse seen from the nonlinear branches.
 */
final class StepMatrices {

    final double alpha;
    final List<CoupledBlocks.Block> blocks;
    final List<SymmetricMatrix> conductances = new ArrayList<>();
    final SymmetricMatrix nodal;
    final double condition;
    final double residual;
    final double[] capacitorConductance;
    final double[] chord;
    /** Answer of all unknowns to a unit current out of the first and into the second node of a nonlinear branch. */
    final double[][] portAnswer;

    final double[][] portImpedance;
    /** Nonlinear branches that see each other within a step. */
    final int[][] portGroups;

    StepMatrices(
            Topology topology,
            CoupledBlocks inductances,
            CoupledBlocks resistances,
            LineHistory lines,
            AdmittanceStates admittances,
            boolean[] closed,
            double alpha) {
        this.alpha = alpha;
        this.blocks = inductances.blocks();
        int size = topology.unknowns();
        double[][] y = new double[size][size];
        for (CoupledBlocks.Block block : resistances.blocks()) {
            SymmetricMatrix g = SymmetricMatrix.invert(block.values(), "a group of mutual resistances")
                    .matrix();
            stamp(y, topology.resistorEnds, block.members(), g);
        }
        for (CoupledBlocks.Block block : blocks) {
            int n = block.members().length;
            double[][] z = new double[n][n];
            for (int i = 0; i < n; i++) {
                for (int j = 0; j < n; j++) {
                    z[i][j] = block.values()[i][j] / alpha;
                }
                z[i][i] += topology.inductors.get(block.members()[i]).resistance();
            }
            SymmetricMatrix g =
                    SymmetricMatrix.invert(z, "a group of mutual inductances").matrix();
            conductances.add(g);
            stamp(y, topology.inductorEnds, block.members(), g);
        }
        capacitorConductance = new double[topology.capacitors.size()];
        for (int k = 0; k < capacitorConductance.length; k++) {
            capacitorConductance[k] = topology.capacitors.get(k).capacitance() / alpha;
            Topology.stamp(y, topology.capacitorEnds, k, k, capacitorConductance[k]);
        }
        int ports = topology.nonlinears.size();
        chord = new double[ports];
        for (int k = 0; k < ports; k++) {
            NonlinearResistance curve = topology.nonlinears.get(k).curve();
            chord[k] = curve.workingCurrent() / curve.voltage(curve.workingCurrent());
            Topology.stamp(y, topology.nonlinearEnds, k, k, chord[k]);
        }
        for (int k = 0; k < closed.length; k++) {
            if (closed[k]) {
                Topology.stamp(
                        y, topology.gapEnds, k, k, 1 / topology.gaps.get(k).arc());
            }
        }
        lines.stamp(y);
        admittances.stamp(y, alpha);
        topology.border(y);
        SymmetricMatrix.Inverse inverse = SymmetricMatrix.invert(y, "the network");
        nodal = inverse.matrix();
        condition = inverse.condition();
        residual = inverse.residual();
        portAnswer = new double[ports][size];
        portImpedance = new double[ports][ports];
        for (int k = 0; k < ports; k++) {
            int p = topology.nonlinearEnds[0][k];
            int q = topology.nonlinearEnds[1][k];
            for (int j = 0; j < size; j++) {
                portAnswer[k][j] = (p >= 0 ? nodal.get(p, j) : 0) - (q >= 0 ? nodal.get(q, j) : 0);
            }
            for (int j = 0; j < ports; j++) {
                int r = topology.nonlinearEnds[0][j];
                int s = topology.nonlinearEnds[1][j];
                portImpedance[k][j] = (r >= 0 ? portAnswer[k][r] : 0) - (s >= 0 ? portAnswer[k][s] : 0);
            }
        }
        portGroups = groups(portImpedance);
    }

    private static int[][] groups(double[][] impedance) {
        int n = impedance.length;
        int[] group = new int[n];
        for (int k = 0; k < n; k++) {
            group[k] = k;
        }
        for (int k = 0; k < n; k++) {
            for (int j = 0; j < k; j++) {
                if ((impedance[k][j] != 0 || impedance[j][k] != 0) && group[j] != group[k]) {
                    int gone = Math.max(group[j], group[k]);
                    int stays = Math.min(group[j], group[k]);
                    for (int i = 0; i < n; i++) {
                        group[i] = group[i] == gone ? stays : group[i];
                    }
                }
            }
        }
        int[] members = new int[n];
        List<int[]> groups = new ArrayList<>();
        for (int g = 0; g < n; g++) {
            int size = 0;
            for (int k = 0; k < n; k++) {
                if (group[k] == g) {
                    members[size++] = k;
                }
            }
            if (size > 0) {
                groups.add(Arrays.copyOf(members, size));
            }
        }
        return groups.toArray(int[][]::new);
    }

    private static void stamp(double[][] y, int[][] ends, int[] members, SymmetricMatrix g) {
        for (int i = 0; i < members.length; i++) {
            for (int j = 0; j < members.length; j++) {
                Topology.stamp(y, ends, members[i], members[j], g.get(i, j));
            }
        }
    }
}
