package earthing.electrode.wire;

import earthing.soil.SoilModel;
import java.util.ArrayList;
import java.util.List;

/** Bars cut into elements, each within one layer. Arrays of one length, one entry an element. */
final class Mesh {

    /** Elements of the piece of a bar within one layer: with a single one a short end in good ground misses 1 %, with three 0.5 %. */
    private static final int LEAST_IN_LAYER = 4;

    /** Grading makes the elements in the middle of a long wire longer than its length over their number. */
    private static final double GRADED = 1.25;

    /** Ground beyond a boundary that is better by this factor draws the leakage to the tip before it. */
    private static final double BETTER = 1.5;

    /** Least length of any element [radii]: below, the mean over the circumference of the tube is no longer exact. */
    private static final double SHORTEST = 0.1;

    /** A piece beyond a boundary that is shorter than so many radii is left out. */
    private static final double SLIVER = 0.1;

    /** Where a bar touches another one in its middle, elements are halved down to so many floors. */
    private static final double TOUCHING = 400;

    final int size;
    final double[] x1;
    final double[] y1;
    final double[] z1;
    final double[] x2;
    final double[] y2;
    final double[] z2;
    final double[] length;
    final double[] radius;
    /** Radius of the metal, within the sleeve if there is one [m]. */
    final double[] metal;
    /** Resistance through the sleeve of an element [Ω]. */
    final double[] sleeve;

    final int[] layer;
    final int[] bar;
    final boolean[] vertical;

    private Mesh(List<double[]> pieces, List<int[]> owners) {
        size = pieces.size();
        x1 = new double[size];
        y1 = new double[size];
        z1 = new double[size];
        x2 = new double[size];
        y2 = new double[size];
        z2 = new double[size];
        length = new double[size];
        radius = new double[size];
        metal = new double[size];
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
            metal[i] = p[8];
            layer[i] = owners.get(i)[0];
            bar[i] = owners.get(i)[1];
            vertical[i] = p[0] == p[3] && p[1] == p[4];
        }
    }

    private static double square(double v) {
        return v * v;
    }

    static Mesh of(SoilModel soil, List<Bar> bars, Discretisation rule) {
        List<double[]> pieces = new ArrayList<>();
        List<int[]> owners = new ArrayList<>();
        for (int b = 0; b < bars.size(); b++) {
            Bar bar = bars.get(b);
            double floor = rule.floorInRadii() * bar.radius() / bar.length();
            double[] cuts = cuts(soil, bar);
            List<Beside> beside = beside(bars, b, rule);
            for (int s = 0; s + 1 < cuts.length; s++) {
                double share = cuts[s + 1] - cuts[s];
                int count = (int) Math.max(
                        Math.max(Math.min(LEAST_IN_LAYER, rule.leastPerBar()), Math.ceil(rule.leastPerBar() * share)),
                        Math.ceil(GRADED * share * bar.length() / rule.longest()));
                boolean fromTip = s == 0 && bar.depth1() > 0;
                boolean toTip = s + 2 == cuts.length && bar.depth2() > 0;
                double finest = Math.max(SHORTEST * bar.radius() / bar.length(), share / LEAST_IN_LAYER);
                double[] inner = graded(Math.max(1, count), fromTip, toTip, Math.min(floor, finest) / share);
                boolean sinks = bar.depth1() != bar.depth2();
                double inside = at(bar.depth1(), bar.depth2(), (cuts[s] + cuts[s + 1]) / 2);
                if (fromTip && sinks) {
                    inner = tipHalved(inner, longestAtTip(soil, bar, bar.depth1(), inside, rule) / share);
                }
                if (toTip && sinks) {
                    inner = turned(
                            tipHalved(turned(inner), longestAtTip(soil, bar, bar.depth2(), inside, rule) / share));
                }
                List<Double> places = new ArrayList<>();
                for (int e = 0; e + 1 < inner.length; e++) {
                    halve(
                            bar,
                            cuts[s] + share * inner[e],
                            cuts[s] + share * inner[e + 1],
                            beside,
                            rule.steepest(),
                            places);
                }
                places.add(cuts[s] + share);
                for (int e = 0; e + 1 < places.size(); e++) {
                    double from = places.get(e);
                    double to = places.get(e + 1);
                    pieces.add(new double[] {
                        at(bar.x1(), bar.x2(), from),
                        at(bar.y1(), bar.y2(), from),
                        at(bar.depth1(), bar.depth2(), from),
                        at(bar.x1(), bar.x2(), to),
                        at(bar.y1(), bar.y2(), to),
                        at(bar.depth1(), bar.depth2(), to),
                        bar.radius(),
                        bar.sleeve(),
                        bar.metal()
                    });
                    double middle = at(bar.depth1(), bar.depth2(), (from + to) / 2);
                    owners.add(new int[] {soil.layerAt(middle), b});
                }
            }
        }
        return new Mesh(pieces, owners);
    }

    /**
     * Greatest length of the element at a tip, as a part of the bar: near a boundary beyond which the ground is better the
     * leakage crowds, as if the bar's image were another bar of the other sign.
     */
    private static double longestAtTip(SoilModel soil, Bar bar, double tip, double inside, Discretisation rule) {
        // The image stands at twice that distance; see beside() for the change along an element.
        double apart = 2 * toBetterGround(soil, tip, inside) * Math.expm1(rule.steepest() / 2);
        return Math.max(2 * SHORTEST * bar.radius(), apart) / bar.length();
    }

    private static double toBetterGround(SoilModel soil, double tip, double inside) {
        int layer = soil.layerAt(inside);
        double least = Double.POSITIVE_INFINITY;
        if (layer > 0 && soil.resistivity(layer - 1) < soil.resistivity(layer) / BETTER) {
            least = Math.abs(tip - soil.top(layer));
        }
        if (layer + 1 < soil.layerCount() && soil.resistivity(layer + 1) < soil.resistivity(layer) / BETTER) {
            least = Math.min(least, Math.abs(tip - soil.top(layer + 1)));
        }
        return least;
    }

    /** The first element of a division halved towards its beginning until it is no longer than asked. */
    private static double[] tipHalved(double[] places, double longest) {
        List<Double> list = new ArrayList<>();
        for (double place : places) {
            list.add(place);
        }
        while (list.get(1) > longest) {
            list.add(1, list.get(1) / 2);
        }
        return list.stream().mapToDouble(Double::doubleValue).toArray();
    }

    private static double[] turned(double[] places) {
        double[] turned = new double[places.length];
        for (int i = 0; i < turned.length; i++) {
            turned[i] = 1 - places[places.length - 1 - i];
        }
        return turned;
    }

    /** Another bar near enough to matter, the place 0 … 1 nearest to it, and the length that is not halved for it [m]. */
    private record Beside(Bar other, double nearest, double least) {}

    /**
     * Bars whose potential may change by more than the rule allows. A leak spread along a line of any direction changes by
     * no more than 2 ln(1 + l/d) from a place at distance d over a length l. What meets end to end is left to the grading.
     */
    private static List<Beside> beside(List<Bar> bars, int b, Discretisation rule) {
        Bar bar = bars.get(b);
        double reach = Math.min(bar.length(), rule.longest()) / Math.expm1(rule.steepest() / 2);
        List<Beside> beside = new ArrayList<>();
        for (int c = 0; c < bars.size(); c++) {
            Bar other = bars.get(c);
            double distance = c == b ? Double.POSITIVE_INFINITY : bar.distance(other);
            if (distance < reach && !bar.meetsEndToEnd(other)) {
                boolean touches = distance < bar.radius() + other.radius();
                double floor = rule.floorInRadii() * bar.radius();
                beside.add(new Beside(other, bar.nearestTo(other), touches ? TOUCHING * floor : 2 * floor));
            }
        }
        return beside;
    }

    /** Halves an element of a bar until no other bar changes its potential by more than is allowed; adds the beginnings. */
    private static void halve(
            Bar bar, double from, double to, List<Beside> beside, double steepest, List<Double> places) {
        double length = (to - from) * bar.length();
        for (Beside near : beside) {
            if (length >= near.least() && change(bar, from, to, near) > steepest) {
                double middle = (from + to) / 2;
                halve(bar, from, middle, beside, steepest, places);
                halve(bar, middle, to, beside, steepest, places);
                return;
            }
        }
        places.add(from);
    }

    private static double change(Bar bar, double from, double to, Beside near) {
        double low = Double.POSITIVE_INFINITY;
        double high = 0;
        for (double t : new double[] {from, (from + to) / 2, to, Math.max(from, Math.min(to, near.nearest()))}) {
            double potential = near.other()
                    .evenPotential(
                            at(bar.x1(), bar.x2(), t),
                            at(bar.y1(), bar.y2(), t),
                            at(bar.depth1(), bar.depth2(), t),
                            bar.radius());
            low = Math.min(low, potential);
            high = Math.max(high, potential);
        }
        return high - low;
    }

    private static double at(double first, double second, double t) {
        if (t == 0) {
            return first;
        }
        return t == 1 ? second : first + (second - first) * t;
    }

    /** Places 0 … 1 along a bar where it begins, crosses a boundary and ends; slivers beyond a boundary are left out. */
    private static double[] cuts(SoilModel soil, Bar bar) {
        double least = SLIVER * bar.radius() / bar.length();
        double span = bar.depth2() - bar.depth1();
        List<Double> cuts = new ArrayList<>();
        cuts.add(0.0);
        double end = 1;
        int n = soil.layerCount();
        for (int i = 1; i < n; i++) {
            int layer = span > 0 ? i : n - i;
            double t = (soil.top(layer) - bar.depth1()) / span;
            if (t > 0 && t < least) {
                cuts.set(0, t);
            } else if (t >= 1 - least && t < 1) {
                end = Math.min(end, t);
            } else if (t - cuts.get(cuts.size() - 1) > least && t < 1) {
                cuts.add(t);
            }
        }
        cuts.add(end);
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
