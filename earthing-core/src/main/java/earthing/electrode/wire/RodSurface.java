package earthing.electrode.wire;

import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * Potential on the surface of the elements of vertical rods within one layer, per volt on each electrode. Rods of equal
 * depths and radius have one Green's function, which is found once for all of them.
 *
 * <p>Images that lie farther from the middle of the piece than one and a half of its length see it as a smooth spread of
 * sources: the whole current of the piece stands for them at the {@link #NODES} points of a Chebyshev polynomial. With
 * singularities at three half lengths that leaves (3 + √8)^−9 = 1.3e-7 of each. Near images see every element.
 */
final class RodSurface {

    private static final int NODES = 9;

    private static final double[] NODE = IntStream.range(0, NODES)
            .mapToDouble(j -> Math.cos(Math.PI * (2 * j + 1) / (2 * NODES)))
            .toArray();

    /** Distance of the middle, in lengths of the piece, from which an image counts as far. */
    private static final double FAR = 1.5;
    /** So few elements are summed as quickly without the polynomial. */
    private static final int FEWEST = 4;
    /** Points of a rule that integrates the polynomial over an element without error. */
    private static final int EXACT = 8;

    private final Mesh mesh;
    private final PairIntegral integral;
    /** Elements of the first rod, whose geometry stands for all. */
    private final int[] elements;
    /** Current of each of them, for each rod and volt on an electrode [A/V]. */
    private final double[][] currents;

    private final int layer;
    private final double[] depth = new double[NODES];
    /** Current that stands at each node, for each rod and volt on an electrode [A/V]. */
    private final double[][] weight;
    /** First far image of each family. */
    private final int[] far;

    /**
     * Gathers the current of the elements at the nodes.
     *
     * @param mesh the elements
     * @param integral sums of images
     * @param elements elements of one rod in one layer
     * @param currents current of each of them [A/V], first index the rod and the electrode that has one volt
     */
    RodSurface(Mesh mesh, PairIntegral integral, int[] elements, double[][] currents) {
        this.mesh = mesh;
        this.integral = integral;
        this.elements = elements;
        this.currents = currents;
        layer = mesh.layer[elements[0]];
        double top = Double.POSITIVE_INFINITY;
        double bottom = 0;
        for (int e : elements) {
            top = Math.min(top, Math.min(mesh.z1[e], mesh.z2[e]));
            bottom = Math.max(bottom, Math.max(mesh.z1[e], mesh.z2[e]));
        }
        double middle = (top + bottom) / 2;
        double half = (bottom - top) / 2;
        far = integral.surfaceImagesFrom(
                layer, middle, elements.length < FEWEST ? Double.POSITIVE_INFINITY : FAR * 2 * half);
        weight = new double[currents.length][NODES];
        for (int j = 0; j < NODES; j++) {
            depth[j] = middle + half * node(j);
        }
        for (int i = 0; i < elements.length; i++) {
            double[] t = GaussRule.nodes(EXACT);
            double[] w = GaussRule.weights(EXACT);
            for (int p = 0; p < EXACT; p++) {
                double place = (along(elements[i], t[p]) - middle) / half;
                for (int j = 0; j < NODES; j++) {
                    double share = w[p] * lagrange(j, place);
                    for (int k = 0; k < weight.length; k++) {
                        weight[k][j] += currents[k][i] * share;
                    }
                }
            }
        }
    }

    /** Adds the potential at a squared horizontal distance [m²], per rod and volt on an electrode. */
    void add(double r2, double[] values, ImageTerms room) {
        for (int i = 0; i < elements.length; i++) {
            double mean = mean(elements[i], r2, room);
            for (int k = 0; k < values.length; k++) {
                values[k] += currents[k][i] * mean;
            }
        }
        for (int j = 0; j < NODES; j++) {
            double point = integral.pointAtSurface(layer, depth[j], r2, far, true, room);
            for (int k = 0; k < values.length; k++) {
                values[k] += weight[k][j] * point;
            }
        }
    }

    /** Mean of the near images over an element. */
    private double mean(int e, double r2, ImageTerms room) {
        double middle = (mesh.z1[e] + mesh.z2[e]) / 2;
        int n = GaussRule.points(r2 + middle * middle, mesh.length[e] * mesh.length[e]);
        if (n == 0) {
            return integral.at(e, mesh.x1[e] + Math.sqrt(r2), mesh.y1[e], 0, 0, room) - gauss(e, r2, 2, true, room);
        }
        return gauss(e, r2, n, false, room);
    }

    private double gauss(int e, double r2, int n, boolean farOnes, ImageTerms room) {
        double[] t = GaussRule.nodes(n);
        double[] w = GaussRule.weights(n);
        double mean = 0;
        for (int p = 0; p < n; p++) {
            mean += w[p] * integral.pointAtSurface(layer, along(e, t[p]), r2, far, farOnes, room);
        }
        return mean;
    }

    private double along(int e, double t) {
        return (mesh.z1[e] + mesh.z2[e]) / 2 + (mesh.z2[e] - mesh.z1[e]) / 2 * t;
    }

    private static double node(int j) {
        return NODE[j];
    }

    private static double lagrange(int j, double t) {
        double product = 1;
        for (int i = 0; i < NODES; i++) {
            if (i != j) {
                product *= (t - node(i)) / (node(j) - node(i));
            }
        }
        return product;
    }

    /**
     * The elements of equal rods, those of each layer together.
     *
     * @param mesh the elements
     * @param integral sums of images
     * @param currentPerVolt current of each element per volt on each electrode, first index the electrode [A/V]
     * @param rods elements of each rod, in the same order
     * @return pieces whose functions are those of the first rod, one for each electrode, then of the second
     */
    static RodSurface[] ofRods(Mesh mesh, PairIntegral integral, double[][] currentPerVolt, int[][] rods) {
        int[] model = rods[0];
        int electrodes = currentPerVolt.length;
        return Arrays.stream(model)
                .map(e -> mesh.layer[e])
                .distinct()
                .mapToObj(layer -> {
                    int[] places = IntStream.range(0, model.length)
                            .filter(i -> mesh.layer[model[i]] == layer)
                            .toArray();
                    double[][] currents = new double[rods.length * electrodes][places.length];
                    for (int f = 0; f < currents.length; f++) {
                        for (int i = 0; i < places.length; i++) {
                            currents[f][i] = currentPerVolt[f % electrodes][rods[f / electrodes][places[i]]];
                        }
                    }
                    int[] elements = Arrays.stream(places).map(i -> model[i]).toArray();
                    return new RodSurface(mesh, integral, elements, currents);
                })
                .toArray(RodSurface[]::new);
    }
}
