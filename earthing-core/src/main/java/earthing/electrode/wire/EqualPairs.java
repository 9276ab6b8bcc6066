package earthing.electrode.wire;

import java.util.HashMap;
import java.util.Map;

/**
 * Pairs of elements that lie to each other like a pair before them. In ground of level layers shifts, turns about a
 * vertical axis and reflections change no mean potential, and mats, rings and rows of rods repeat themselves: one integral serves all
 * pairs of a kind. Lengths count as equal within a nanometre.
 */
final class EqualPairs {

    /** Elements up to which pairs are compared: what it takes from the heap stays below what the solution takes. */
    private static final int MOST = 1000;

    /** Added to a number of less than 2^21 it leaves the nearest multiple of 2^−30. */
    private static final double ROUND = 1.5 * (1 << 22);

    /** What an element is by itself; depths and lengths rounded. */
    private record Shape(int layer, long shallow, long deep, long across, long radius) {}

    private final Mesh mesh;
    private final int[] shape;
    /** Level direction of each element from its shallow end, zero of a vertical one. */
    private final double[] ux;

    private final double[] uy;

    private long[] first = new long[1 << 10];
    private long[] second = new long[1 << 10];
    private int[] pair = new int[1 << 10];
    private int kinds;

    private EqualPairs(Mesh mesh) {
        this.mesh = mesh;
        shape = new int[mesh.size];
        ux = new double[mesh.size];
        uy = new double[mesh.size];
        Map<Shape, Integer> shapes = new HashMap<>();
        for (int e = 0; e < mesh.size; e++) {
            double across = Math.hypot(mesh.x2[e] - mesh.x1[e], mesh.y2[e] - mesh.y1[e]);
            double way = across == 0 ? 0 : (mesh.z1[e] <= mesh.z2[e] ? 1 : -1) / across;
            ux[e] = way * (mesh.x2[e] - mesh.x1[e]);
            uy[e] = way * (mesh.y2[e] - mesh.y1[e]);
            Shape own = new Shape(
                    mesh.layer[e],
                    rounded(Math.min(mesh.z1[e], mesh.z2[e])),
                    rounded(Math.max(mesh.z1[e], mesh.z2[e])),
                    rounded(across),
                    rounded(mesh.radius[e]));
            shape[e] = shapes.computeIfAbsent(own, s -> shapes.size());
        }
    }

    /**
     * The first pair that each pair is equal to.
     *
     * @param mesh the elements
     * @return for the pair of i and j ≤ i, at i(i+1)/2 + j, the place of the first of its kind, which may be its own; empty
     *     where there are too many elements to compare
     */
    static int[] of(Mesh mesh) {
        if (mesh.size > MOST) {
            return new int[0];
        }
        EqualPairs equal = new EqualPairs(mesh);
        int[] places = new int[mesh.size * (mesh.size + 1) / 2];
        int place = 0;
        for (int i = 0; i < mesh.size; i++) {
            for (int j = 0; j <= i; j++) {
                places[place] = equal.firstLike(i, j, place);
                place++;
            }
        }
        return places;
    }

    private int firstLike(int one, int other, int place) {
        boolean swap = shape[one] > shape[other];
        int i = swap ? other : one;
        int j = swap ? one : other;
        boolean levelI = mesh.z1[i] == mesh.z2[i];
        boolean levelJ = mesh.z1[j] == mesh.z2[j];
        double dx = (mesh.x1[j] + mesh.x2[j] - mesh.x1[i] - mesh.x2[i]) / 2;
        double dy = (mesh.y1[j] + mesh.y2[j] - mesh.y1[i] - mesh.y2[i]) / 2;
        double along = ux[i] * dx + uy[i] * dy;
        double alongJ = ux[j] * dx + uy[j] * dy;
        double between = ux[i] * ux[j] + uy[i] * uy[j];
        // A level element has two directions: the one that makes the products positive is taken.
        if (levelI && along < 0) {
            along = -along;
            between = -between;
        }
        if (levelJ && alongJ < 0) {
            alongJ = -alongJ;
            between = -between;
        }
        if (between < 0 && ((levelI && zero(along)) || (levelJ && zero(alongJ)))) {
            between = -between;
        }
        if (shape[i] == shape[j]) {
            // Seen from the other one, which is of the same shape, the way between them is turned.
            double turn = levelI ? 1 : -1;
            if (along < turn * alongJ) {
                double seen = turn * alongJ;
                alongJ = turn * along;
                along = seen;
            }
        }
        boolean oneAxis = mesh.vertical[i] && mesh.vertical[j] && dx == 0 && dy == 0;
        long kind = ((long) shape[i] << 32)
                + ((long) shape[j] << 2)
                + (mesh.bar[i] == mesh.bar[j] ? 1 : 0)
                + (oneAxis ? 2 : 0);
        long apart = rounded(Math.sqrt(dx * dx + dy * dy));
        long a = rounded(along);
        long b = rounded(alongJ);
        long c = rounded(between);
        return firstOf(
                mixed(mixed(mixed(mixed(kind, apart), a), b), c),
                mixed(mixed(mixed(mixed(c ^ 0x5DEECE66DL, b), a), apart), kind),
                place);
    }

    /** The pair with this fingerprint of 128 bits; the one given where there is none yet. */
    private int firstOf(long one, long other, int place) {
        int mask = pair.length - 1;
        int at = (int) one & mask;
        while (pair[at] != 0) {
            if (first[at] == one && second[at] == other) {
                return pair[at] - 1;
            }
            at = (at + 1) & mask;
        }
        first[at] = one;
        second[at] = other;
        pair[at] = place + 1;
        kinds++;
        if (2 * kinds > pair.length) {
            grow();
        }
        return place;
    }

    private void grow() {
        long[] ones = first;
        long[] others = second;
        int[] pairs = pair;
        first = new long[2 * ones.length];
        second = new long[2 * ones.length];
        pair = new int[2 * ones.length];
        int mask = pair.length - 1;
        for (int old = 0; old < pairs.length; old++) {
            if (pairs[old] != 0) {
                int at = (int) ones[old] & mask;
                while (pair[at] != 0) {
                    at = (at + 1) & mask;
                }
                first[at] = ones[old];
                second[at] = others[old];
                pair[at] = pairs[old];
            }
        }
    }

    private static long mixed(long hash, long part) {
        long mixed = (hash ^ part) * 0x9E3779B97F4A7C15L;
        mixed = (mixed ^ (mixed >>> 32)) * 0xD6E8FEB86659FD93L;
        return mixed ^ (mixed >>> 29);
    }

    private static boolean zero(double length) {
        return Math.abs(length) < 0x1p-30;
    }

    private static long rounded(double value) {
        return Double.doubleToRawLongBits(value + ROUND);
    }
}
