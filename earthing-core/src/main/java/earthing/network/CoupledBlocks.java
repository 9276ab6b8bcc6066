package earthing.network;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Branches of one kind sorted into blocks that are coupled among themselves and with no other. Block order and order
 * within a block follow the order in which the branches were given.
 */
final class CoupledBlocks {

    /**
     * One block: positions of its branches in the list of their kind, and the full symmetric matrix of own and mutual
     * values. The arrays are shared with the solver and written to by nobody.
     */
    static final class Block {

        private final int[] members;
        private final double[][] values;

        Block(int[] members, double[][] values) {
            this.members = members;
            this.values = values;
        }

        int[] members() {
            return members;
        }

        double[][] values() {
            return values;
        }
    }

    private final List<Block> blocks = new ArrayList<>();

    CoupledBlocks(List<String> names, double[] own, List<Circuit.Mutual> mutuals) {
        Map<String, Integer> position = new HashMap<>();
        for (int k = 0; k < names.size(); k++) {
            position.put(names.get(k), k);
        }
        int[] group = new int[names.size()];
        for (int k = 0; k < group.length; k++) {
            group[k] = k;
        }
        List<Circuit.Mutual> ours = new ArrayList<>();
        for (Circuit.Mutual mutual : mutuals) {
            Integer a = position.get(mutual.first());
            Integer b = position.get(mutual.second());
            if (a == null || b == null || mutual.value() == 0) {
                continue;
            }
            ours.add(mutual);
            int from = Math.max(group[a], group[b]);
            int to = Math.min(group[a], group[b]);
            for (int k = 0; k < group.length; k++) {
                if (group[k] == from) {
                    group[k] = to;
                }
            }
        }
        int[] slot = new int[names.size()];
        int[] blockOf = new int[names.size()];
        Map<Integer, List<Integer>> byGroup = new HashMap<>();
        List<List<Integer>> ordered = new ArrayList<>();
        for (int k = 0; k < group.length; k++) {
            List<Integer> list = byGroup.get(group[k]);
            if (list == null) {
                list = new ArrayList<>();
                byGroup.put(group[k], list);
                ordered.add(list);
            }
            slot[k] = list.size();
            list.add(k);
        }
        for (int b = 0; b < ordered.size(); b++) {
            List<Integer> list = ordered.get(b);
            double[][] values = new double[list.size()][list.size()];
            int[] members = new int[list.size()];
            for (int k = 0; k < members.length; k++) {
                members[k] = list.get(k);
                values[k][k] = own[members[k]];
                blockOf[members[k]] = b;
            }
            blocks.add(new Block(members, values));
        }
        for (Circuit.Mutual mutual : ours) {
            int a = position.getOrDefault(mutual.first(), -1);
            int b = position.getOrDefault(mutual.second(), -1);
            double[][] values = blocks.get(blockOf[a]).values();
            values[slot[a]][slot[b]] = mutual.value();
            values[slot[b]][slot[a]] = mutual.value();
        }
        for (Block block : blocks) {
            requirePassive(block, names);
        }
    }

    /** Couplings that are each admissible can together store negative energy; such a block is no passive network. */
    private static void requirePassive(Block block, List<String> names) {
        int n = block.members().length;
        if (n == 1) {
            return;
        }
        double[][] scaled = new double[n][n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                double scale = Math.sqrt(block.values()[i][i] * block.values()[j][j]);
                scaled[i][j] = block.values()[i][j] / scale + (i == j ? 1e-9 : 0);
            }
        }
        boolean positive = SymmetricInverse.factorise(scaled, 0);
        for (int i = 0; i < n; i++) {
            positive &= scaled[i][i] > 0;
        }
        if (!positive) {
            List<String> members =
                    Arrays.stream(block.members()).mapToObj(names::get).toList();
            throw new IllegalArgumentException(
                    "own and mutual values of " + members + " are together not positive definite, so not passive");
        }
    }

    List<Block> blocks() {
        return blocks;
    }

    static CoupledBlocks inductances(Circuit circuit) {
        List<Branch.Inductor> list = circuit.branches(Branch.Inductor.class);
        return new CoupledBlocks(
                list.stream().map(Branch.Inductor::name).toList(),
                list.stream().mapToDouble(Branch.Inductor::inductance).toArray(),
                circuit.mutuals());
    }

    static CoupledBlocks resistances(Circuit circuit) {
        List<Branch.Resistor> list = circuit.branches(Branch.Resistor.class);
        return new CoupledBlocks(
                list.stream().map(Branch.Resistor::name).toList(),
                list.stream().mapToDouble(Branch.Resistor::resistance).toArray(),
                circuit.mutuals());
    }
}
