package earthing.electrode.wire;

import java.util.Arrays;

/**
 * Potential on the surface of the elements of one vertical rod within one layer, per volt on each electrode.
 *
 * <p>Images that lie farther from the middle of the piece than one and a half of its length see it as a smooth spread of
 * sources: the whole current of the piece stands for them at the {@link #NODES} points of a Chebyshev polynomial. With
 * singularities at three half lengths that leaves (3 + √8)^−9 = 1.3e-7 of each. Near images see every element.
 */
final class RodSurface {

    private static final int NODES = 9;
    /** Distance of the middle, in lengths of the piece, from which an image counts as far. */
    private static final double FAR = 1.5;
    /** So few elements are summed as quickly without the polynomial. */
    private static final int FEWEST = 4;
    /** Points of a rule that integrates the polynomial over an element without error. */
    private static final int EXACT = 8;

    private final Mesh mesh;
    private final PairIntegral integral;
    private final double[][] currentPerVolt;
    private final int[] elements;
    private final int layer;
    private final double[] depth = new double[NODES];
    /** Current of each electrode's energisation that stands at each node [A/V]. */
    private final double[][] weight;
    /** First far image of each family. */
    private final int[] far;

    /**
     * Gathers the current of the elements at the nodes.
     *
     * @param mesh the elements
     * @param integral sums of images
     * @param currentPerVolt current of each element per volt on each electrode, first index the electrode [A/V]
     * @param elements elements of one rod in one layer
     */
    RodSurface(Mesh mesh, PairIntegral integral, double[][] currentPerVolt, int[] elements) {
        this.mesh = mesh;
        this.integral = integral;
        this.currentPerVolt = currentPerVolt;
        this.elements = elements;
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
        weight = new double[currentPerVolt.length][NODES];
        for (int j = 0; j < NODES; j++) {
            depth[j] = middle + half * node(j);
        }
        for (int e : elements) {
            double[] t = GaussRule.nodes(EXACT);
            double[] w = GaussRule.weights(EXACT);
            for (int p = 0; p < EXACT; p++) {
                double place = (along(e, t[p]) - middle) / half;
                for (int j = 0; j < NODES; j++) {
                    double share = w[p] * lagrange(j, place);
                    for (int k = 0; k < weight.length; k++) {
                        weight[k][j] += currentPerVolt[k][e] * share;
                    }
                }
            }
        }
    }

    /** Adds the potential at a squared horizontal distance [m²], per volt on each electrode. */
    void add(double r2, double[] values, ImageTerms room) {
        for (int e : elements) {
            double mean = mean(e, r2, room);
            for (int k = 0; k < values.length; k++) {
                values[k] += currentPerVolt[k][e] * mean;
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
        return Math.cos(Math.PI * (2 * j + 1) / (2 * NODES));
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

    /** The elements of a rod, those of each layer together. */
    static RodSurface[] ofRod(Mesh mesh, PairIntegral integral, double[][] currentPerVolt, int[] rod) {
        return Arrays.stream(rod)
                .map(e -> mesh.layer[e])
                .distinct()
                .mapToObj(layer ->
                        Arrays.stream(rod).filter(e -> mesh.layer[e] == layer).toArray())
                .map(elements -> new RodSurface(mesh, integral, currentPerVolt, elements))
                .toArray(RodSurface[]::new);
    }
}
