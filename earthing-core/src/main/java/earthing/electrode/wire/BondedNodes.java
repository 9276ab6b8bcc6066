package earthing.electrode.wire;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.IntPredicate;

/**
 * Which ends of elements are one node, for a current that runs along the bars. Pieces of one electrode that hang together
 * nowhere are bonded above ground: each with its node nearest to where the earth lead of the electrode arrives.
 */
final class BondedNodes {

    /** Ends nearer than this are one [m]. */
    private static final double TOGETHER = 5e-3;

    final int count;
    /** Node where the current enters, one an electrode. */
    final int[] feed;

    final int[] from;
    final int[] to;

    private BondedNodes(int count, int[] feed, int[] from, int[] to) {
        this.count = count;
        this.feed = feed;
        this.from = from;
        this.to = to;
    }

    /** Bars cut where another one ends on them, so that both share a node there. */
    static List<Bar> cutAtJunctions(List<Bar> bars) {
        List<Bar> result = new ArrayList<>();
        for (Bar bar : bars) {
            List<Double> cuts = new ArrayList<>(List.of(0.0, 1.0));
            for (Bar other : bars) {
                if (!other.equals(bar)) {
                    cut(bar, other.x1(), other.y1(), other.depth1(), cuts);
                    cut(bar, other.x2(), other.y2(), other.depth2(), cuts);
                }
            }
            cuts.sort(Double::compare);
            for (int i = 0; i + 1 < cuts.size(); i++) {
                result.add(piece(bar, cuts.get(i), cuts.get(i + 1)));
            }
        }
        return result;
    }

    private static void cut(Bar bar, double x, double y, double z, List<Double> cuts) {
        double dx = bar.x2() - bar.x1();
        double dy = bar.y2() - bar.y1();
        double dz = bar.depth2() - bar.depth1();
        double length = bar.length();
        double t = ((x - bar.x1()) * dx + (y - bar.y1()) * dy + (z - bar.depth1()) * dz) / (length * length);
        double apart = Math.sqrt(
                square(x - bar.x1() - t * dx) + square(y - bar.y1() - t * dy) + square(z - bar.depth1() - t * dz));
        double least = Math.max(TOGETHER, 2 * bar.radius()) / length;
        boolean fresh = cuts.stream().allMatch(known -> Math.abs(known - t) > least);
        if (apart < TOGETHER && t > least && t < 1 - least && fresh) {
            cuts.add(t);
        }
    }

    private static Bar piece(Bar bar, double a, double b) {
        if (a == 0 && b == 1) {
            return bar;
        }
        return new Bar(
                bar.electrode(),
                at(bar.x1(), bar.x2(), a),
                at(bar.y1(), bar.y2(), a),
                at(bar.depth1(), bar.depth2(), a),
                at(bar.x1(), bar.x2(), b),
                at(bar.y1(), bar.y2(), b),
                at(bar.depth1(), bar.depth2(), b),
                bar.radius(),
                bar.sleeve(),
                bar.metal());
    }

    private static double at(double first, double second, double t) {
        return t == 1 ? second : first + (second - first) * t;
    }

    /**
     * Finds the nodes.
     *
     * @param electrodes electrode of each element, from 0
     * @param terminals where the earth lead of each electrode arrives, x and y [m]
     */
    static BondedNodes of(Mesh mesh, int[] electrodes, double[][] terminals) {
        List<double[]> places = new ArrayList<>();
        int[] from = new int[mesh.size];
        int[] to = new int[mesh.size];
        for (int e = 0; e < mesh.size; e++) {
            from[e] = node(places, mesh.x1[e], mesh.y1[e], mesh.z1[e]);
            to[e] = node(places, mesh.x2[e], mesh.y2[e], mesh.z2[e]);
        }
        int[] owner = owners(electrodes, from, to, places.size());
        int[] group = new int[places.size()];
        Arrays.setAll(group, i -> i);
        for (boolean changed = true; changed; ) {
            changed = false;
            for (int e = 0; e < mesh.size; e++) {
                int least = Math.min(group[from[e]], group[to[e]]);
                changed |= group[from[e]] != least || group[to[e]] != least;
                group[from[e]] = least;
                group[to[e]] = least;
            }
        }
        int[] node = new int[places.size()];
        Arrays.setAll(node, i -> i);
        int[] feed = new int[terminals.length];
        for (int k = 0; k < feed.length; k++) {
            int electrode = k;
            double[] at = terminals[k];
            feed[k] = nearest(places, i -> owner[i] == electrode, at[0], at[1]);
            for (int g = 0; g < group.length; g++) {
                if (owner[g] == k && group[g] == g && g != group[feed[k]]) {
                    int own = g;
                    node[nearest(places, i -> group[i] == own, at[0], at[1])] = feed[k];
                }
            }
        }
        int[] number = new int[node.length];
        int count = 0;
        for (int i = 0; i < node.length; i++) {
            if (node[i] == i) {
                number[i] = count++;
            }
        }
        for (int e = 0; e < mesh.size; e++) {
            from[e] = number[node[from[e]]];
            to[e] = number[node[to[e]]];
        }
        Arrays.setAll(feed, k -> number[feed[k]]);
        return new BondedNodes(count, feed, from, to);
    }

    /** Electrode of each place; bars of two electrodes that meet would be one. */
    private static int[] owners(int[] electrodes, int[] from, int[] to, int places) {
        int[] owner = new int[places];
        Arrays.fill(owner, -1);
        for (int e = 0; e < electrodes.length; e++) {
            for (int place : new int[] {from[e], to[e]}) {
                if (owner[place] >= 0 && owner[place] != electrodes[e]) {
                    throw new IllegalArgumentException("bars of two electrodes meet in one place");
                }
                owner[place] = electrodes[e];
            }
        }
        return owner;
    }

    private static int node(List<double[]> places, double x, double y, double z) {
        for (int i = 0; i < places.size(); i++) {
            if (distance2(places.get(i), x, y, z) < TOGETHER * TOGETHER) {
                return i;
            }
        }
        places.add(new double[] {x, y, z});
        return places.size() - 1;
    }

    /** The node among those wanted that is nearest to a place on the surface. */
    private static int nearest(List<double[]> places, IntPredicate wanted, double x, double y) {
        int best = -1;
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i < places.size(); i++) {
            double distance = distance2(places.get(i), x, y, 0);
            if (wanted.test(i) && distance < least) {
                least = distance;
                best = i;
            }
        }
        return best;
    }

    private static double distance2(double[] place, double x, double y, double z) {
        return square(place[0] - x) + square(place[1] - y) + square(place[2] - z);
    }

    private static double square(double v) {
        return v * v;
    }
}
