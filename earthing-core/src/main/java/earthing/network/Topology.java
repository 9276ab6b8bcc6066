package earthing.network;

import java.util.List;
import java.util.Map;

/** Node numbers of every branch by kind; -1 is the reference. Floating parts are pinned at one node. */
final class Topology {

    final int nodes;
    final List<Branch.Resistor> resistors;
    final List<Branch.Inductor> inductors;
    final List<Branch.Capacitor> capacitors;
    final List<Branch.CurrentSource> currentSources;
    final List<Branch.Nonlinear> nonlinears;
    final List<Branch.LineEnd> lineEnds;
    final List<Branch.Gap> gaps;
    final List<Branch.Admittance> admittances;
    /** Voltage sources and ties in the order of the circuit. */
    final List<Branch> rigid;

    final int[][] resistorEnds;
    final int[][] inductorEnds;
    final int[][] capacitorEnds;
    final int[][] currentSourceEnds;
    final int[][] nonlinearEnds;
    final int[][] lineTerminals;
    final int[][] gapEnds;
    final int[][] admittanceEnds;
    final int[][] rigidEnds;
    final int[] pinned;

    Topology(Circuit circuit) {
        Map<String, Integer> index = circuit.nodeIndex();
        nodes = circuit.nodes().size();
        resistors = circuit.branches(Branch.Resistor.class);
        inductors = circuit.branches(Branch.Inductor.class);
        capacitors = circuit.branches(Branch.Capacitor.class);
        currentSources = circuit.branches(Branch.CurrentSource.class);
        nonlinears = circuit.branches(Branch.Nonlinear.class);
        lineEnds = circuit.branches(Branch.LineEnd.class);
        gaps = circuit.branches(Branch.Gap.class);
        admittances = circuit.branches(Branch.Admittance.class);
        rigid = circuit.branches().stream()
                .filter(b -> b instanceof Branch.VoltageSource || b instanceof Branch.Tie)
                .toList();
        resistorEnds = ends(resistors, index);
        inductorEnds = ends(inductors, index);
        capacitorEnds = ends(capacitors, index);
        currentSourceEnds = ends(currentSources, index);
        nonlinearEnds = ends(nonlinears, index);
        lineTerminals = ends(lineEnds, index);
        gapEnds = ends(gaps, index);
        admittanceEnds = ends(admittances, index);
        rigidEnds = ends(rigid, index);
        pinned = circuit.islands().anchors().stream()
                .mapToInt(n -> index.getOrDefault(n, -1))
                .toArray();
    }

    private static int[][] ends(List<? extends Branch> branches, Map<String, Integer> index) {
        int[][] ends = new int[2][branches.size()];
        for (int k = 0; k < branches.size(); k++) {
            ends[0][k] = index.getOrDefault(branches.get(k).from(), -1);
            ends[1][k] = index.getOrDefault(branches.get(k).to(), -1);
        }
        return ends;
    }

    /** Unknowns: node potentials, currents of rigid branches, currents of the pins. */
    int unknowns() {
        return nodes + rigid.size() + pinned.length;
    }

    /** Adds a conductance between two branches' ends: the current of branch a per voltage of branch b. */
    static void stamp(double[][] y, int[][] ends, int a, int b, double g) {
        int p = ends[0][a];
        int q = ends[1][a];
        int r = ends[0][b];
        int s = ends[1][b];
        if (p >= 0 && r >= 0) {
            y[p][r] += g;
        }
        if (q >= 0 && s >= 0) {
            y[q][s] += g;
        }
        if (p >= 0 && s >= 0) {
            y[p][s] -= g;
        }
        if (q >= 0 && r >= 0) {
            y[q][r] -= g;
        }
    }

    /** Rows and columns of the rigid branches and pins. */
    void border(double[][] y) {
        for (int k = 0; k < rigid.size(); k++) {
            int row = nodes + k;
            border(y, row, rigidEnds[0][k], 1);
            border(y, row, rigidEnds[1][k], -1);
        }
        for (int k = 0; k < pinned.length; k++) {
            border(y, nodes + rigid.size() + k, pinned[k], 1);
        }
    }

    private static void border(double[][] y, int row, int node, double sign) {
        if (node >= 0) {
            y[row][node] = sign;
            y[node][row] = sign;
        }
    }
}
