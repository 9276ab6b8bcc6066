package earthing.network;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Which nodes hang together, and with the reference, over branches other than current sources and gaps. */
final class Islands {

    private final Map<String, String> parents = new HashMap<>();
    private final List<String> floating = new ArrayList<>();
    private final List<String> anchors = new ArrayList<>();

    Islands(Circuit circuit) {
        Map<String, String> rigid = new HashMap<>();
        for (Branch branch : circuit.branches()) {
            if (branch instanceof Branch.CurrentSource || branch instanceof Branch.Gap) {
                continue;
            }
            unite(parents, branch.from(), branch.to());
            if ((branch instanceof Branch.Tie || branch instanceof Branch.VoltageSource)
                    && !unite(rigid, branch.from(), branch.to())) {
                throw new IllegalArgumentException(
                        "branch " + branch.name() + " closes a loop of ties and voltage sources alone");
            }
        }
        String home = root(parents, Circuit.REFERENCE);
        Map<String, String> anchorOf = new LinkedHashMap<>();
        for (String node : circuit.nodes()) {
            String root = root(parents, node);
            if (!root.equals(home)) {
                floating.add(node);
                anchorOf.putIfAbsent(root, node);
            }
        }
        anchors.addAll(anchorOf.values());
        for (Branch.CurrentSource source : circuit.branches(Branch.CurrentSource.class)) {
            if (!sameIsland(source.from(), source.to())) {
                throw new IllegalArgumentException("cannot be computed: current source " + source.name()
                        + " drives a part without a return path, between nodes " + source.from() + " and "
                        + source.to());
            }
        }
        for (Branch.Gap gap : circuit.branches(Branch.Gap.class)) {
            if (!sameIsland(gap.from(), gap.to())) {
                throw new IllegalArgumentException("cannot be computed: gap " + gap.name()
                        + " leads to a floating part whose voltage nothing fixes, between nodes " + gap.from() + " and "
                        + gap.to());
            }
        }
    }

    boolean sameIsland(String a, String b) {
        return root(parents, a).equals(root(parents, b));
    }

    /** Nodes without a path to the reference. */
    List<String> floatingNodes() {
        return List.copyOf(floating);
    }

    /** One node of each floating part; the solver pins it to zero so that the currents inside can be found. */
    List<String> anchors() {
        return List.copyOf(anchors);
    }

    void requireGrounded(String node) {
        if (!node.equals(Circuit.REFERENCE) && floating.contains(node)) {
            throw new FloatingNodeException(node);
        }
    }

    private static String root(Map<String, String> parents, String node) {
        String at = node;
        while (true) {
            String up = parents.getOrDefault(at, at);
            if (up.equals(at)) {
                return at;
            }
            at = up;
        }
    }

    private static boolean unite(Map<String, String> parents, String a, String b) {
        String rootA = root(parents, a);
        String rootB = root(parents, b);
        if (rootA.equals(rootB)) {
            return false;
        }
        parents.put(rootA, rootB);
        return true;
    }
}
