package earthing.electrode.wire;

import earthing.soil.PointSource;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.concurrent.atomic.AtomicReferenceArray;

/**
 * Mean potential on one element per ampere leaving another one uniformly (Galerkin coefficient) and the potential of an
 * element at a point, each as a sum over the images of the layers.
 *
 * <p>Near images: closed line integral of the source, Gauss points on the observer; on one axis the closed double
 * integral of tubes. Far images: product Gauss rule, so that the sum over the images is the innermost loop. Level
 * elements that lie apart: the same rule with the whole Green's function of their two depths from a table over the
 * horizontal distance, within 5e-7 of it.
 */
final class PairIntegral {

    /** Distance of centres, in lengths of the longer element, beyond which the three-point rule serves (1e-6). */
    private static final double FAR = 2.5;
    /** The same for the two-point rule. */
    private static final double VERY_FAR = 8;
    /** The same for the two second moments of the elements, with an error like that of the two-point rule at 8. */
    private static final double MOMENTS_ONLY = 12.5;

    /** Distance in radii beyond which pieces of one tube may be taken at the mean of their squared distances (1e-5). */
    private static final double FAR_IN_RADII = 15;

    /** From so many images on, roots and quotients are found apart from their sum: only then the compiler groups them. */
    private static final int APART_FROM = 12;
    /** Least number of pairs of level elements for each pair of their depths that makes a table worth while. */
    private static final int PAIRS_A_TABLE = 100;

    private final Mesh mesh;
    /** Number of the depth of each level element; -1 for others. */
    private final int[] level;
    /** Number of depths of level elements, 0 where no tables are made. */
    private final int levels;

    private final AtomicReferenceArray<RadialTable> byDepths;
    private final int layers;
    private final PointSource ground;
    private final AtomicReferenceArray<LayerKernel> kernels;
    private final AtomicReferenceArray<LayerKernel> surface;

    PairIntegral(Mesh mesh, PointSource ground) {
        this.mesh = mesh;
        this.ground = ground;
        layers = ground.soil().layerCount();
        kernels = new AtomicReferenceArray<>(layers * layers);
        surface = new AtomicReferenceArray<>(layers);
        level = new int[mesh.size];
        Map<Double, Integer> depths = new LinkedHashMap<>();
        int lying = 0;
        for (int e = 0; e < mesh.size; e++) {
            level[e] = -1;
            if (mesh.z1[e] == mesh.z2[e]) {
                level[e] = depths.computeIfAbsent(mesh.z1[e], z -> depths.size());
                lying++;
            }
        }
        levels = (double) lying * lying >= PAIRS_A_TABLE * (double) depths.size() * depths.size() ? depths.size() : 0;
        byDepths = new AtomicReferenceArray<>(levels * levels);
    }

    /**
     * Mean of two level elements that lie apart: the Green's function of their two depths, which depends on the horizontal
     * distance only, from a table at the points of the product Gauss rule. NaN where they are too near.
     */
    private double levelMean(int u, int o, double r2, double a2) {
        double dz = mesh.z1[u] - mesh.z1[o];
        double longer = Math.max(mesh.length[u], mesh.length[o]);
        double apart = r2 + dz * dz;
        int n = apart > square(FAR * longer) ? apart > square(VERY_FAR * longer) ? 2 : 3 : 0;
        if (n == 0) {
            return Double.NaN;
        }
        RadialTable table = table(u, o);
        double[] t = GaussRule.nodes(n);
        double[] w = GaussRule.weights(n);
        double total = 0;
        for (int p = 0; p < n; p++) {
            double xu = along(mesh.x1[u], mesh.x2[u], t[p]);
            double yu = along(mesh.y1[u], mesh.y2[u], t[p]);
            double inner = 0;
            for (int q = 0; q < n; q++) {
                double dx = xu - along(mesh.x1[o], mesh.x2[o], t[q]);
                double dy = yu - along(mesh.y1[o], mesh.y2[o], t[q]);
                inner += w[q] * table.value(dx * dx + dy * dy + a2);
            }
            total += w[p] * inner;
        }
        return total;
    }

    private RadialTable table(int u, int o) {
        int key = level[u] * levels + level[o];
        RadialTable known = byDepths.get(key);
        if (known == null) {
            double zu = mesh.z1[u];
            double zo = mesh.z1[o];
            LayerKernel kernel = kernel(mesh.layer[u], mesh.layer[o]);
            // Any scale will do that is below all distances at which the table is asked.
            double least = Double.POSITIVE_INFINITY;
            for (int e = 0; e < mesh.size; e++) {
                least = Math.min(least, mesh.length[e]);
            }
            known = new RadialTable(square(zu - zo), square(least / 4), 1, (r2, values, room) -> {
                double sum = 0;
                for (int f = 0; f < kernel.families; f++) {
                    double[] b = kernel.offset[f];
                    double zeta = kernel.upperSign[f] * zu + kernel.lowerSign[f] * zo;
                    sum += imageSum(b, kernel.coefficient[f], 0, b.length, r2, zeta, room);
                }
                values[0] = sum;
            });
            byDepths.set(key, known);
        }
        return known;
    }

    private LayerKernel kernel(int upper, int lower) {
        LayerKernel known = kernels.get(upper * layers + lower);
        if (known == null) {
            known = LayerKernel.of(ground.images(upper, lower));
            kernels.set(upper * layers + lower, known);
        }
        return known;
    }

    private LayerKernel surfaceKernel(int layer) {
        LayerKernel known = surface.get(layer);
        if (known == null) {
            known = LayerKernel.of(ground.surfaceImages(layer));
            surface.set(layer, known);
        }
        return known;
    }

    /** Mean potential on element j per ampere from element i [V/A]; symmetric. */
    double mean(int first, int second, ImageTerms room) {
        int u = mesh.layer[first] <= mesh.layer[second] ? first : second;
        int o = u == first ? second : first;
        LayerKernel kernel = kernel(mesh.layer[u], mesh.layer[o]);
        boolean sameBar = mesh.bar[u] == mesh.bar[o];
        boolean sameAxis = mesh.vertical[u] && mesh.vertical[o] && mesh.x1[u] == mesh.x1[o] && mesh.y1[u] == mesh.y1[o];
        double s = Math.max(mesh.length[u], mesh.length[o]);
        double dx = (mesh.x1[u] + mesh.x2[u] - mesh.x1[o] - mesh.x2[o]) / 2;
        double dy = (mesh.y1[u] + mesh.y2[u] - mesh.y1[o] - mesh.y2[o]) / 2;
        double r2 = dx * dx + dy * dy;
        double a2 = (mesh.radius[u] * mesh.radius[u] + mesh.radius[o] * mesh.radius[o]) / 2;
        if (levels > 0 && level[u] >= 0 && level[o] >= 0 && !sameBar) {
            double mean = levelMean(u, o, r2, a2);
            if (!Double.isNaN(mean)) {
                return mean;
            }
        }
        double sum = 0;
        for (int f = 0; f < kernel.families; f++) {
            int su = kernel.upperSign[f];
            int sl = kernel.lowerSign[f];
            double[] b = kernel.offset[f];
            double[] c = kernel.coefficient[f];
            double zeta = su * (mesh.z1[u] + mesh.z2[u]) / 2 + sl * (mesh.z1[o] + mesh.z2[o]) / 2;
            boolean onOneLine = sameAxis || (sameBar && b[0] == 0 && su * sl < 0);
            double nearLimit = onOneLine ? Math.max(square(FAR * s), square(FAR_IN_RADII) * a2) : square(FAR * s);
            int near = 0;
            while (near < b.length && r2 + square(b[near] + zeta) < nearLimit) {
                sum += c[near]
                        * (sameAxis
                                ? onAxis(u, o, su, sl, b[near], a2)
                                : nearMean(u, o, su, sl, b[near], a2, onOneLine && b[near] == 0));
                near++;
            }
            int middle = near;
            while (middle < b.length && r2 + square(b[middle] + zeta) < square(VERY_FAR * s)) {
                middle++;
            }
            double extra = onOneLine ? 2 * a2 : a2;
            if (middle > near) {
                sum += farSum(u, o, 3, su, sl, b, c, near, middle, extra, room);
            }
            int remote = middle;
            while (remote < b.length && r2 + square(b[remote] + zeta) < square(MOMENTS_ONLY * s)) {
                remote++;
            }
            if (remote > middle) {
                sum += farSum(u, o, 2, su, sl, b, c, middle, remote, extra, room);
            }
            if (b.length > remote) {
                sum += remoteSum(u, o, su, sl, b, c, remote, dx, dy, zeta, extra, room);
            }
        }
        return sum;
    }

    private double farSum(
            int u,
            int o,
            int n,
            int su,
            int sl,
            double[] b,
            double[] c,
            int from,
            int to,
            double extra,
            ImageTerms room) {
        double[] t = GaussRule.nodes(n);
        double[] w = GaussRule.weights(n);
        double total = 0;
        for (int p = 0; p < n; p++) {
            double xu = along(mesh.x1[u], mesh.x2[u], t[p]);
            double yu = along(mesh.y1[u], mesh.y2[u], t[p]);
            double zu = su * along(mesh.z1[u], mesh.z2[u], t[p]);
            for (int q = 0; q < n; q++) {
                double dx = xu - along(mesh.x1[o], mesh.x2[o], t[q]);
                double dy = yu - along(mesh.y1[o], mesh.y2[o], t[q]);
                double zeta = zu + sl * along(mesh.z1[o], mesh.z2[o], t[q]);
                total += w[p] * w[q] * imageSum(b, c, from, to, dx * dx + dy * dy + extra, zeta, room);
            }
        }
        return total;
    }

    /**
     * Far images by the second moments of both elements: the mean of 1/R is 1/R₀ + ½ M:∇∇(1/R₀) up to the fourth order of
     * length over distance, with M the sum of the squares of both elements over 12.
     */
    private double remoteSum(
            int u,
            int o,
            int su,
            int sl,
            double[] b,
            double[] c,
            int from,
            double dx,
            double dy,
            double zeta,
            double extra,
            ImageTerms room) {
        double along = dx * (mesh.x2[u] - mesh.x1[u]) + dy * (mesh.y2[u] - mesh.y1[u]);
        double down = su * (mesh.z2[u] - mesh.z1[u]);
        double alongOther = -dx * (mesh.x2[o] - mesh.x1[o]) - dy * (mesh.y2[o] - mesh.y1[o]);
        double downOther = sl * (mesh.z2[o] - mesh.z1[o]);
        double trace = -(square(mesh.length[u]) + square(mesh.length[o])) / 24;
        double p0 = (along * along + alongOther * alongOther) / 8;
        double p1 = (along * down + alongOther * downOther) / 4;
        double p2 = (down * down + downOther * downOther) / 8;
        double apart = dx * dx + dy * dy + extra;
        int count = b.length - from;
        double[] terms = room.of(count);
        for (int i = 0; i < count; i++) {
            double v = b[from + i] + zeta;
            double inverse2 = 1 / (apart + v * v);
            terms[i] =
                    c[from + i] * Math.sqrt(inverse2) * (1 + inverse2 * (trace + inverse2 * (p0 + v * (p1 + p2 * v))));
        }
        return total(terms, count);
    }

    private static double imageSum(double[] b, double[] c, int from, int to, double r2, double zeta, ImageTerms room) {
        if (to - from >= APART_FROM) {
            int count = to - from;
            double[] terms = room.of(count);
            for (int i = 0; i < count; i++) {
                double v = b[from + i] + zeta;
                terms[i] = c[from + i] / Math.sqrt(r2 + v * v);
            }
            return total(terms, count);
        }
        double sum = 0;
        for (int i = from; i < to; i++) {
            double v = b[i] + zeta;
            sum += c[i] / Math.sqrt(r2 + v * v);
        }
        return sum;
    }

    private static double total(double[] terms, int count) {
        double even = 0;
        double odd = 0;
        int i = 0;
        for (; i + 1 < count; i += 2) {
            even += terms[i];
            odd += terms[i + 1];
        }
        return even + odd + (i < count ? terms[i] : 0);
    }

    /** Both elements, and therefore all images, on one vertical axis. */
    private double onAxis(int u, int o, int su, int sl, double b, double a2) {
        double source1 = -su * (b + sl * mesh.z1[o]);
        double source2 = -su * (b + sl * mesh.z2[o]);
        return CollinearTubes.mean(
                Math.min(mesh.z1[u], mesh.z2[u]),
                Math.max(mesh.z1[u], mesh.z2[u]),
                Math.min(source1, source2),
                Math.max(source1, source2),
                a2);
    }

    /** Mean over element u of the potential of the image of element o. */
    private double nearMean(int u, int o, int su, int sl, double b, double a2, boolean sameBar) {
        if (sameBar) {
            double start = projection(u, mesh.x1[o], mesh.y1[o], mesh.z1[o]);
            double end = projection(u, mesh.x2[o], mesh.y2[o], mesh.z2[o]);
            return CollinearTubes.mean(0, mesh.length[u], start, end, a2);
        }
        // The longer element is integrated in closed form.
        if (mesh.length[u] > mesh.length[o]) {
            return lineMean(o, u, sl, su, b, a2);
        }
        return lineMean(u, o, su, sl, b, a2);
    }

    private double projection(int element, double x, double y, double z) {
        return ((x - mesh.x1[element]) * (mesh.x2[element] - mesh.x1[element])
                        + (y - mesh.y1[element]) * (mesh.y2[element] - mesh.y1[element])
                        + (z - mesh.z1[element]) * (mesh.z2[element] - mesh.z1[element]))
                / mesh.length[element];
    }

    private double lineMean(int observer, int source, int so, int ss, double b, double a2) {
        double z1 = -so * (b + ss * mesh.z1[source]);
        double z2 = -so * (b + ss * mesh.z2[source]);
        double apart = square(
                        along(mesh.x1[observer], mesh.x2[observer], 0) - along(mesh.x1[source], mesh.x2[source], 0))
                + square(along(mesh.y1[observer], mesh.y2[observer], 0) - along(mesh.y1[source], mesh.y2[source], 0))
                + square(along(mesh.z1[observer], mesh.z2[observer], 0) - (z1 + z2) / 2);
        int n = apart < square(0.8 * (mesh.length[observer] + mesh.length[source])) ? 8 : 4;
        double[] t = GaussRule.nodes(n);
        double[] w = GaussRule.weights(n);
        double sum = 0;
        for (int p = 0; p < n; p++) {
            sum += w[p]
                    * line(
                            source,
                            z1,
                            z2,
                            along(mesh.x1[observer], mesh.x2[observer], t[p]),
                            along(mesh.y1[observer], mesh.y2[observer], t[p]),
                            along(mesh.z1[observer], mesh.z2[observer], t[p]),
                            a2);
        }
        return sum;
    }

    /** Mean of 1/R from a point to an element with moved depths, a2 added to all squared distances. */
    private double line(int e, double z1, double z2, double x, double y, double z, double a2) {
        double length = mesh.length[e];
        double r1 = Math.sqrt(square(x - mesh.x1[e]) + square(y - mesh.y1[e]) + square(z - z1) + a2);
        double r2 = Math.sqrt(square(x - mesh.x2[e]) + square(y - mesh.y2[e]) + square(z - z2) + a2);
        // Near elements only: the argument stays above 1.1, and the plain logarithm is several times faster than log1p.
        double sum = r1 + r2;
        return Math.log((sum + length) / (sum - length)) / length;
    }

    /** Potential at a point per ampere from an element [V/A]; within a bar, that of its surface. */
    double at(int e, double x, double y, double z, int layer, ImageTerms room) {
        boolean onSurface = z == 0 && layer == 0;
        int own = mesh.layer[e];
        boolean upper = onSurface || layer <= own;
        LayerKernel kernel;
        if (onSurface) {
            kernel = surfaceKernel(own);
        } else {
            kernel = upper ? kernel(layer, own) : kernel(own, layer);
        }
        double length = mesh.length[e];
        double dx = x - (mesh.x1[e] + mesh.x2[e]) / 2;
        double dy = y - (mesh.y1[e] + mesh.y2[e]) / 2;
        double middle = (mesh.z1[e] + mesh.z2[e]) / 2;
        double r2 = dx * dx + dy * dy;
        // Farther than this from its middle no point is within the element.
        double reach = square(length / 2 + mesh.radius[e]);
        double half = 0.5773502691896258 / 2;
        double hx = (mesh.x2[e] - mesh.x1[e]) * half;
        double hy = (mesh.y2[e] - mesh.y1[e]) * half;
        double hz = (mesh.z2[e] - mesh.z1[e]) * half;
        double plus = square(dx - hx) + square(dy - hy);
        double minus = square(dx + hx) + square(dy + hy);
        double sum = 0;
        for (int f = 0; f < kernel.families; f++) {
            int sp = upper ? kernel.upperSign[f] : kernel.lowerSign[f];
            int se = upper ? kernel.lowerSign[f] : kernel.upperSign[f];
            double[] b = kernel.offset[f];
            double[] c = kernel.coefficient[f];
            double zeta = sp * z + se * middle;
            int near = 0;
            while (near < b.length && r2 + square(b[near] + zeta) < square(VERY_FAR * length)) {
                double z1 = -sp * (b[near] + se * mesh.z1[e]);
                double z2 = -sp * (b[near] + se * mesh.z2[e]);
                double apart = r2 + square(b[near] + zeta);
                double inside = apart < reach ? outside(e, z1, z2, x, y, z) : 0;
                sum += c[near] * line(e, z1, z2, x, y, z, inside);
                near++;
            }
            if (near < b.length) {
                sum += (imageSum(b, c, near, b.length, plus, zeta + se * hz, room)
                                + imageSum(b, c, near, b.length, minus, zeta - se * hz, room))
                        / 2;
            }
        }
        return sum;
    }

    /** Potential on the surface per ampere of a point source at a depth in a layer [V/A]. */
    double pointAtSurface(int layer, double depth, double r2, ImageTerms room) {
        LayerKernel kernel = surfaceKernel(layer);
        double sum = 0;
        for (int f = 0; f < kernel.families; f++) {
            sum += imageSum(
                    kernel.offset[f],
                    kernel.coefficient[f],
                    0,
                    kernel.offset[f].length,
                    r2,
                    kernel.lowerSign[f] * depth,
                    room);
        }
        return sum;
    }

    /**
     * The same of some of the images.
     *
     * @param split first far image of each family, from {@link #surfaceImagesFrom}
     * @param far whether the far images count or the near ones
     */
    double pointAtSurface(int layer, double depth, double r2, int[] split, boolean far, ImageTerms room) {
        LayerKernel kernel = surfaceKernel(layer);
        double sum = 0;
        for (int f = 0; f < kernel.families; f++) {
            int from = far ? split[f] : 0;
            int to = far ? kernel.offset[f].length : split[f];
            if (to > from) {
                sum += imageSum(
                        kernel.offset[f], kernel.coefficient[f], from, to, r2, kernel.lowerSign[f] * depth, room);
            }
        }
        return sum;
    }

    /** For each family of a source at a depth the first image that is at least so far from the surface. */
    int[] surfaceImagesFrom(int layer, double depth, double distance) {
        LayerKernel kernel = surfaceKernel(layer);
        int[] first = new int[kernel.families];
        for (int f = 0; f < kernel.families; f++) {
            double[] b = kernel.offset[f];
            while (first[f] < b.length && b[first[f]] + kernel.lowerSign[f] * depth < distance) {
                first[f]++;
            }
        }
        return first;
    }

    /** What has to be added to squared distances so that a point inside a bar counts as one on its surface. */
    private double outside(int e, double z1, double z2, double x, double y, double z) {
        double length = mesh.length[e];
        double ux = (mesh.x2[e] - mesh.x1[e]) / length;
        double uy = (mesh.y2[e] - mesh.y1[e]) / length;
        double uz = (z2 - z1) / length;
        double px = x - mesh.x1[e];
        double py = y - mesh.y1[e];
        double pz = z - z1;
        double along = px * ux + py * uy + pz * uz;
        double clamped = Math.max(0, Math.min(length, along));
        double apart = square(px - clamped * ux) + square(py - clamped * uy) + square(pz - clamped * uz);
        return Math.max(0, square(mesh.radius[e]) - apart);
    }

    private static double along(double first, double second, double t) {
        return (first + second) / 2 + (second - first) / 2 * t;
    }

    private static double square(double v) {
        return v * v;
    }
}
