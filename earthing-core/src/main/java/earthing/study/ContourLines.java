package earthing.study;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Lines of equal value over a rectangular grid by marching squares: on each edge of a cell the crossing is found by
 * linear interpolation, and crossings of one cell are joined. A saddle is parted by the mean of its corners.
 */
final class ContourLines {

    /** A point in plan [m]. */
    record Point(double x, double y) {}

    private final double[] xs;
    private final double[] ys;
    private final double[][] values;
    private final double level;
    private final Map<Integer, Point> crossings = new HashMap<>();
    private final Map<Integer, List<Integer>> joined = new LinkedHashMap<>();

    private ContourLines(double[] xs, double[] ys, double[][] values, double level) {
        this.xs = xs;
        this.ys = ys;
        this.values = values;
        this.level = level;
    }

    /**
     * The lines of one level.
     *
     * @param xs abscissae of the grid, rising
     * @param ys ordinates of the grid, rising
     * @param values value at each abscissa and ordinate
     * @param level the level
     * @return lines of at least two points; a closed one ends where it begins
     */
    static List<List<Point>> of(double[] xs, double[] ys, double[][] values, double level) {
        ContourLines lines = new ContourLines(xs, ys, values, level);
        for (int i = 0; i + 1 < xs.length; i++) {
            for (int j = 0; j + 1 < ys.length; j++) {
                lines.cell(i, j);
            }
        }
        return lines.chains();
    }

    private boolean above(int i, int j) {
        return values[i][j] >= level;
    }

    private void cell(int i, int j) {
        boolean a = above(i, j);
        boolean b = above(i + 1, j);
        boolean c = above(i + 1, j + 1);
        boolean d = above(i, j + 1);
        List<Integer> edges = new ArrayList<>();
        if (a != b) {
            edges.add(across(i, j));
        }
        if (b != c) {
            edges.add(up(i + 1, j));
        }
        if (c != d) {
            edges.add(across(i, j + 1));
        }
        if (d != a) {
            edges.add(up(i, j));
        }
        if (edges.size() == 2) {
            join(edges.get(0), edges.get(1));
        } else if (edges.size() == 4) {
            double mean = (values[i][j] + values[i + 1][j] + values[i + 1][j + 1] + values[i][j + 1]) / 4;
            boolean cutAtB = (mean >= level) == a;
            join(edges.get(0), edges.get(cutAtB ? 1 : 3));
            join(edges.get(2), edges.get(cutAtB ? 3 : 1));
        }
    }

    private int across(int i, int j) {
        int id = 2 * (j * xs.length + i);
        double t = part(values[i][j], values[i + 1][j]);
        crossings.computeIfAbsent(id, key -> new Point(xs[i] + t * (xs[i + 1] - xs[i]), ys[j]));
        return id;
    }

    private int up(int i, int j) {
        int id = 2 * (j * xs.length + i) + 1;
        double t = part(values[i][j], values[i][j + 1]);
        crossings.computeIfAbsent(id, key -> new Point(xs[i], ys[j] + t * (ys[j + 1] - ys[j])));
        return id;
    }

    private double part(double from, double to) {
        return (level - from) / (to - from);
    }

    private void join(int one, int other) {
        joined.computeIfAbsent(one, key -> new ArrayList<>()).add(other);
        joined.computeIfAbsent(other, key -> new ArrayList<>()).add(one);
    }

    private List<List<Point>> chains() {
        List<List<Point>> chains = new ArrayList<>();
        Set<Integer> used = new LinkedHashSet<>();
        // Open lines first, from an end at the edge of the grid; what is left is closed.
        joined.forEach((edge, next) -> {
            if (next.size() == 1 && !used.contains(edge)) {
                chains.add(walk(edge, used));
            }
        });
        for (Integer edge : joined.keySet()) {
            if (!used.contains(edge)) {
                List<Point> ring = walk(edge, used);
                ring.add(ring.get(0));
                chains.add(ring);
            }
        }
        return chains;
    }

    private List<Point> walk(int start, Set<Integer> used) {
        List<Point> line = new ArrayList<>();
        Integer at = start;
        while (at != null) {
            used.add(at);
            Point point = crossings.get(at);
            if (point != null) {
                line.add(point);
            }
            at = joined.getOrDefault(at, List.of()).stream()
                    .filter(next -> !used.contains(next))
                    .findFirst()
                    .orElse(null);
        }
        return line;
    }
}
