package earthing.electrode.wire;

import earthing.soil.SoilModel;
import java.util.ArrayList;
import java.util.List;

/** Bars cut into elements, each within one layer. Arrays of one length, one entry an element. */
final class Mesh {

    /** Elements of the piece of a bar within one layer: with a single one a short end in good ground misses 1 %. */
    private static final int LEAST_IN_LAYER = 3;

    final int size;
    final double[] x1;
    final double[] y1;
    final double[] z1;
    final double[] x2;
    final double[] y2;
    final double[] z2;
    final double[] length;
    final double[] radius;
    /** Resistance through the sleeve of an element [Ω]. */
    final double[] sleeve;

    final int[] layer;
    final int[] bar;
    final boolean[] vertical;

    private Mesh(List<double[]> pieces, List<int[]> places) {
        size = pieces.size();
        x1 = new double[size];
        y1 = new double[size];
        z1 = new double[size];
        x2 = new double[size];
        y2 = new double[size];
        z2 = new double[size];
        length = new double[size];
        radius = new double[size];
        sleeve = new double[size];
        layer = new int[size];
        bar = new int[size];
        vertical = new boolean[size];
        for (int i = 0; i < size; i++) {
            double[] p = pieces.get(i);
            x1[i] = p[0];
            y1[i] = p[1];
            z1[i] = p[2];
            x2[i] = p[3];
            y2[i] = p[4];
            z2[i] = p[5];
            radius[i] = p[6];
            length[i] = Math.sqrt(square(p[3] - p[0]) + square(p[4] - p[1]) + square(p[5] - p[2]));
            sleeve[i] = p[7] / length[i];
            layer[i] = places.get(i)[0];
            bar[i] = places.get(i)[1];
            vertical[i] = p[0] == p[3] && p[1] == p[4];
        }
    }

    private static double square(double v) {
        return v * v;
    }

    static Mesh of(SoilModel soil, List<Bar> bars, Discretisation rule) {
        List<double[]> pieces = new ArrayList<>();
        List<int[]> places = new ArrayList<>();
        for (int b = 0; b < bars.size(); b++) {
            Bar bar = bars.get(b);
            double floor = rule.floorInRadii() * bar.radius() / bar.length();
            double[] cuts = cuts(soil, bar, floor);
            for (int s = 0; s + 1 < cuts.length; s++) {
                double share = cuts[s + 1] - cuts[s];
                int count = (int) Math.max(
                        Math.max(Math.min(LEAST_IN_LAYER, rule.leastPerBar()), Math.ceil(rule.leastPerBar() * share)),
                        Math.ceil(share * bar.length() / rule.longest()));
                boolean fromTip = cuts[s] == 0 && bar.depth1() > 0;
                boolean toTip = cuts[s + 1] == 1 && bar.depth2() > 0;
                double[] inner = graded(Math.max(1, count), fromTip, toTip, floor / share);
                for (int e = 0; e + 1 < inner.length; e++) {
                    double from = cuts[s] + share * inner[e];
                    double to = cuts[s] + share * inner[e + 1];
                    pieces.add(new double[] {
                        at(bar.x1(), bar.x2(), from),
                        at(bar.y1(), bar.y2(), from),
                        at(bar.depth1(), bar.depth2(), from),
                        at(bar.x1(), bar.x2(), to),
                        at(bar.y1(), bar.y2(), to),
                        at(bar.depth1(), bar.depth2(), to),
                        bar.radius(),
                        bar.sleeve()
                    });
                    double middle = at(bar.depth1(), bar.depth2(), (from + to) / 2);
                    places.add(new int[] {soil.layerAt(middle), b});
                }
            }
        }
        return new Mesh(pieces, places);
    }

    private static double at(double first, double second, double t) {
        if (t == 0) {
            return first;
        }
        return t == 1 ? second : first + (second - first) * t;
    }

    /** Places 0 … 1 along a bar where it crosses a boundary, without those nearer than the floor to another cut. */
    private static double[] cuts(SoilModel soil, Bar bar, double floor) {
        List<Double> cuts = new ArrayList<>();
        cuts.add(0.0);
        double span = bar.depth2() - bar.depth1();
        int n = soil.layerCount();
        for (int i = 1; i < n; i++) {
            int layer = span > 0 ? i : n - i;
            double t = (soil.top(layer) - bar.depth1()) / span;
            double least = Math.min(floor / 4, 0.01);
            if (t - cuts.get(cuts.size() - 1) > least && t < 1 - least) {
                cuts.add(t);
            }
        }
        cuts.add(1.0);
        return cuts.stream().mapToDouble(Double::doubleValue).toArray();
    }

    /**
     * Division of 0 … 1 with elements that grow away from free ends, where the leakage is singular; fewer elements
     * where the smallest would fall below the floor.
     */
    static double[] graded(int wanted, boolean first, boolean last, double floor) {
        for (int n = wanted; n > 1; n--) {
            for (int grading = 4; grading >= 0; grading--) {
                double[] t = new double[n + 1];
                double smallest = 1;
                for (int i = 1; i <= n; i++) {
                    t[i] = place((double) i / n, first, last, grading / 4.0);
                    smallest = Math.min(smallest, t[i] - t[i - 1]);
                }
                if (smallest >= floor) {
                    return t;
                }
            }
        }
        return new double[] {0, 1};
    }

    /** A mixture of cosine and equal spacing, so that the end elements do not become needlessly short. */
    private static double place(double u, boolean first, boolean last, double grading) {
        double cosine = u;
        if (first && last) {
            cosine = (1 - Math.cos(Math.PI * u)) / 2;
        } else if (first) {
            cosine = 1 - Math.cos(Math.PI / 2 * u);
        } else if (last) {
            cosine = Math.sin(Math.PI / 2 * u);
        }
        return u == 1 ? 1 : (1 - grading) * u + grading * cosine;
    }
}
