package earthing.electrode.wire;

import java.util.Arrays;
import org.apache.commons.math3.complex.Complex;

/** What the phase over distance adds to the static integrals of two elements. */
final class PhaseRemainder {

    private PhaseRemainder() {}

    /** Means over both elements of (e^(−γR) − 1)/R: direct in the first two places, surface image in the others. */
    static void means(Mesh mesh, int i, int j, Complex gamma, double[] sums) {
        double[] t = GaussRule.nodes(2);
        double a2 = (mesh.radius[i] * mesh.radius[i] + mesh.radius[j] * mesh.radius[j]) / 2;
        Arrays.fill(sums, 0);
        for (double p : t) {
            double x = along(mesh.x1[i], mesh.x2[i], p);
            double y = along(mesh.y1[i], mesh.y2[i], p);
            double z = along(mesh.z1[i], mesh.z2[i], p);
            for (double q : t) {
                double dx = x - along(mesh.x1[j], mesh.x2[j], q);
                double dy = y - along(mesh.y1[j], mesh.y2[j], q);
                double other = along(mesh.z1[j], mesh.z2[j], q);
                double flat = dx * dx + dy * dy + a2;
                term(Math.sqrt(flat + (z - other) * (z - other)), gamma, sums, 0);
                term(Math.sqrt(flat + (z + other) * (z + other)), gamma, sums, 2);
            }
        }
    }

    private static void term(double r, Complex gamma, double[] sums, int at) {
        double damped = Math.exp(-gamma.getReal() * r);
        sums[at] += (damped * Math.cos(gamma.getImaginary() * r) - 1) / r / 4;
        sums[at + 1] -= damped * Math.sin(gamma.getImaginary() * r) / r / 4;
    }

    private static double along(double first, double second, double t) {
        return (first + second) / 2 + (second - first) / 2 * t;
    }
}
