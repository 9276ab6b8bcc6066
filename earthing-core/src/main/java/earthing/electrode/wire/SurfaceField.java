package earthing.electrode.wire;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.IntStream;

/**
 * Potential of the surface of the ground from tables, one object for all energisations of the same electrodes.
 *
 * <p>Vertical elements of one rod act by the horizontal distance only: one table for all rods of equal depths, with a function
 * for each rod and volt on an electrode. All other elements are Gauss points, with a table for each depth that those of one depth share. Near an element, where
 * Gauss points do not serve, its images are summed. Together this stays within {@link #BOUND} of the greatest potential
 * of an electrode from the full sum.
 */
final class SurfaceField {

    /** Greatest difference from the full sum of images, per volt of the greatest electrode potential. */
    static final double BOUND = 1e-6;

    private static final int[] RULES = {2, 3, 4, 8};
    private static final int POINTS = Arrays.stream(RULES).sum();

    private final Mesh mesh;
    private final PairIntegral integral;
    private final double[][] currentPerVolt;

    private final Map<Places, double[][]> kept = new ConcurrentHashMap<>();

    private final int[][] rods;
    private final RadialTable[] rodTables;
    /** Place of the first function of each rod in its table. */
    private final int[] rodFunctions;

    /** Elements that are not vertical; the arrays below hold one entry for each, the last three one a Gauss point. */
    private final int[] lying;

    private final double[] depth2;
    private final double[] length2;
    private final double[] within2;
    private final double[] east;
    private final double[] north;
    private final RadialTable[] tables;

    /** Places on the surface; equal ones are tabulated once. */
    interface Places {
        /** Number of places. */
        int size();

        /** East of a place [m]. */
        double x(int place);

        /** North of a place [m]. */
        double y(int place);
    }

    private record Axis(double x, double y, double radius) {}

    /** What the Green's function of a rod depends on; depths of the ends of its elements, one after the other. */
    private record Kind(double radius, List<Double> depths) {}

    private record Depth(int layer, double depth) {}

    /**
     * Prepares the tables, all of them empty.
     *
     * @param mesh the elements
     * @param integral sums of images
     * @param currentPerVolt current of each element per volt on each electrode, first index the electrode [A/V]
     */
    SurfaceField(Mesh mesh, PairIntegral integral, double[][] currentPerVolt) {
        this.mesh = mesh;
        this.integral = integral;
        this.currentPerVolt = currentPerVolt;
        Map<Axis, IntStream.Builder> axes = new LinkedHashMap<>();
        for (int e = 0; e < mesh.size; e++) {
            if (mesh.vertical[e]) {
                axes.computeIfAbsent(new Axis(mesh.x1[e], mesh.y1[e], mesh.radius[e]), a -> IntStream.builder())
                        .add(e);
            }
        }
        rods = axes.values().stream().map(b -> b.build().toArray()).toArray(int[][]::new);
        rodTables = new RadialTable[rods.length];
        rodFunctions = new int[rods.length];
        Map<Kind, List<Integer>> kinds = new LinkedHashMap<>();
        for (int i = 0; i < rods.length; i++) {
            kinds.computeIfAbsent(kind(rods[i]), k -> new ArrayList<>()).add(i);
        }
        kinds.values().forEach(this::tabulate);

        lying = IntStream.range(0, mesh.size).filter(e -> !mesh.vertical[e]).toArray();
        depth2 = new double[lying.length];
        length2 = new double[lying.length];
        within2 = new double[lying.length];
        east = new double[lying.length * POINTS];
        north = new double[lying.length * POINTS];
        tables = new RadialTable[lying.length * POINTS];
        Map<Depth, RadialTable> byDepth = new HashMap<>();
        for (int i = 0; i < lying.length; i++) {
            int e = lying[i];
            double middle = (mesh.z1[e] + mesh.z2[e]) / 2;
            depth2[i] = middle * middle;
            length2[i] = mesh.length[e] * mesh.length[e];
            double around = mesh.length[e] / 2 + mesh.radius[e];
            within2[i] = around * around;
            int at = i * POINTS;
            for (int rule : RULES) {
                for (double t : GaussRule.nodes(rule)) {
                    east[at] = along(mesh.x1[e], mesh.x2[e], t);
                    north[at] = along(mesh.y1[e], mesh.y2[e], t);
                    Depth depth = new Depth(mesh.layer[e], along(mesh.z1[e], mesh.z2[e], t));
                    tables[at] = byDepth.computeIfAbsent(depth, this::pointTable);
                    at++;
                }
            }
        }
    }

    /**
     * Potential of the surface at places that are asked for again and again with other currents, from the potentials per
     * volt on each electrode, which are kept.
     *
     * @param places the places, equal for equal lists
     * @param volts potential of each electrode [V]
     * @return potential to remote earth at each place [V]
     */
    double[] potentials(Places places, double[] volts) {
        double[][] perVolt = kept.computeIfAbsent(places, this::perVolt);
        double[] sum = new double[places.size()];
        for (int k = 0; k < volts.length; k++) {
            if (volts[k] != 0) {
                double[] one = perVolt[k];
                for (int i = 0; i < sum.length; i++) {
                    sum[i] += volts[k] * one[i];
                }
            }
        }
        return sum;
    }

    private double[][] perVolt(Places places) {
        int electrodes = currentPerVolt.length;
        double[][] values = new double[electrodes][places.size()];
        double[][] unit = new double[electrodes][electrodes];
        for (int k = 0; k < electrodes; k++) {
            unit[k][k] = 1;
        }
        ImageTerms room = new ImageTerms();
        for (int at = 0; at < places.size(); at++) {
            double x = places.x(at);
            double y = places.y(at);
            for (int i = 0; i < rods.length; i++) {
                int first = rods[i][0];
                double r2 = square(x - mesh.x1[first]) + square(y - mesh.y1[first]);
                for (int k = 0; k < electrodes; k++) {
                    double value = rodTables[i].sum(r2, rodFunctions[i], unit[k]);
                    values[k][at] += Double.isNaN(value) ? untabulated(rods[i], x, y, currentPerVolt[k]) : value;
                }
            }
            for (int i = 0; i < lying.length; i++) {
                int e = lying[i];
                double tabulated = lyingMean(i, e, x, y);
                double mean = Double.isNaN(tabulated) ? integral.at(e, x, y, 0, 0, room) : tabulated;
                for (int k = 0; k < electrodes; k++) {
                    values[k][at] += currentPerVolt[k][e] * mean;
                }
            }
        }
        return values;
    }

    private static double along(double first, double second, double t) {
        return (first + second) / 2 + (second - first) / 2 * t;
    }

    private RadialTable pointTable(Depth source) {
        double squared = source.depth() * source.depth();
        return new RadialTable(
                squared,
                squared,
                1,
                (r2, values, room) -> values[0] = integral.pointAtSurface(source.layer(), source.depth(), r2, room));
    }

    private Kind kind(int[] rod) {
        List<Double> depths = new ArrayList<>();
        for (int e : rod) {
            depths.add(mesh.z1[e]);
            depths.add(mesh.z2[e]);
        }
        return new Kind(mesh.radius[rod[0]], depths);
    }

    private void tabulate(List<Integer> equal) {
        int[] elements = rods[equal.get(0)];
        double top = Double.POSITIVE_INFINITY;
        for (int e : elements) {
            top = Math.min(top, Math.min(mesh.z1[e], mesh.z2[e]));
        }
        // Nearer than its radius to the end of a rod a point is within the metal; no piece covers that.
        double least = Math.max(top, mesh.radius[elements[0]]);
        int[][] alike = equal.stream().map(i -> rods[i]).toArray(int[][]::new);
        RodSurface[] pieces = RodSurface.ofRods(mesh, integral, currentPerVolt, alike);
        int electrodes = currentPerVolt.length;
        RadialTable table = new RadialTable(top * top, least * least, alike.length * electrodes, (r2, values, room) -> {
            Arrays.fill(values, 0);
            for (RodSurface piece : pieces) {
                piece.add(r2, values, room);
            }
        });
        for (int i = 0; i < alike.length; i++) {
            rodTables[equal.get(i)] = table;
            rodFunctions[equal.get(i)] = i * electrodes;
        }
    }

    /**
     * Potential of the surface.
     *
     * @param x east [m]
     * @param y north [m]
     * @param volts potential of each electrode [V]
     * @param amperes current of each element at these potentials [A]
     * @return potential to remote earth [V]
     */
    double potential(double x, double y, double[] volts, double[] amperes) {
        double sum = 0;
        for (int i = 0; i < rods.length; i++) {
            int first = rods[i][0];
            double r2 = square(x - mesh.x1[first]) + square(y - mesh.y1[first]);
            double value = rodTables[i].sum(r2, rodFunctions[i], volts);
            sum += Double.isNaN(value) ? untabulated(rods[i], x, y, amperes) : value;
        }
        ImageTerms room = new ImageTerms();
        for (int i = 0; i < lying.length; i++) {
            int e = lying[i];
            double mean = lyingMean(i, e, x, y);
            sum += amperes[e] * (Double.isNaN(mean) ? integral.at(e, x, y, 0, 0, room) : mean);
        }
        return sum;
    }

    private double lyingMean(int i, int e, double x, double y) {
        double middle2 = square(x - (mesh.x1[e] + mesh.x2[e]) / 2) + square(y - (mesh.y1[e] + mesh.y2[e]) / 2);
        double distance2 = middle2 + depth2[i];
        int n = distance2 > within2[i] ? GaussRule.points(distance2, length2[i]) : 0;
        if (n == 0) {
            return Double.NaN;
        }
        double[] w = GaussRule.weights(n);
        // The rules of 2, 3, 4 and 8 points lie one after the other.
        int from = i * POINTS + (n == 8 ? 9 : n == 4 ? 5 : n == 3 ? 2 : 0);
        double mean = 0;
        for (int p = 0; p < n; p++) {
            mean += w[p] * tables[from + p].value(square(x - east[from + p]) + square(y - north[from + p]));
        }
        return mean;
    }

    private double untabulated(int[] elements, double x, double y, double[] amperes) {
        double sum = 0;
        ImageTerms room = new ImageTerms();
        for (int e : elements) {
            sum += amperes[e] * integral.at(e, x, y, 0, 0, room);
        }
        return sum;
    }

    private static double square(double v) {
        return v * v;
    }
}
