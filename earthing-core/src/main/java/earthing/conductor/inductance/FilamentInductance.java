package earthing.conductor.inductance;

import earthing.quantity.Source;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegrator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegratorFactory;

/**
 * Mutual partial inductance of two straight filaments in free space, Neumann's double integral in closed form.
 *
 * <p>Parallel filaments: difference formula with P(q) = q asinh(q/d) − √(q² + d²). Filaments at an angle: Campbell's
 * formula as given by Grover. Almost parallel ones, where that formula loses its digits: the inner integral in closed
 * form, the outer by Gauss quadrature on pieces that are halved until the value stands.
 */
public final class FilamentInductance {

    /** Magnetic constant over 4π [H/m]; μ0 is taken as 4π·10⁻⁷ H/m exactly. */
    static final double MU0_OVER_4PI = 1e-7;

    /** Source of the closed forms. */
    public static final Source SOURCE = Source.publication(
            "F. W. Grover, Inductance Calculations, 1946",
            "ch. 5 and 6 (parallel filaments), ch. 7 (filaments at any angle)",
            Source.Status.FROM_MEMORY);

    /** Below this sine of the angle the closed form has lost about half its digits. */
    private static final double ALMOST_PARALLEL = 2e-4;

    private static final double TOLERANCE = 1e-13;
    private static final GaussIntegrator GAUSS = new GaussIntegratorFactory().legendre(12);

    private FilamentInductance() {}

    /**
     * Two parallel filaments on one axis of measurement, with any overlap or offset.
     *
     * @param a1 coordinate at which the first begins [m]
     * @param a2 coordinate at which it ends [m]
     * @param b1 coordinate at which the second begins [m]
     * @param b2 coordinate at which it ends [m]
     * @param distance distance of the two lines [m], at least 0; with 0 the filaments must not overlap
     * @return mutual inductance [H], negative if the directions are opposite
     * @throws IllegalArgumentException if the distance is below 0, or 0 with an overlap
     */
    public static double parallel(double a1, double a2, double b1, double b2, double distance) {
        if (!(distance >= 0)) {
            throw new IllegalArgumentException("distance of filaments must be >= 0 m; have " + distance);
        }
        if (distance == 0
                && Math.min(Math.max(a1, a2), Math.max(b1, b2)) > Math.max(Math.min(a1, a2), Math.min(b1, b2))) {
            throw new IllegalArgumentException("collinear filaments that overlap have no finite mutual inductance");
        }
        return MU0_OVER_4PI
                * (primitive(b2 - a1, distance)
                        - primitive(b2 - a2, distance)
                        - primitive(b1 - a1, distance)
                        + primitive(b1 - a2, distance));
    }

    private static double primitive(double q, double d) {
        double x = Math.abs(q);
        if (x == 0) {
            return -d;
        }
        if (d == 0) {
            // The part −|q| ln d cancels in the sum of the four terms where the filaments do not overlap.
            return x * Math.log(2 * x) - x;
        }
        double r = Math.hypot(x, d);
        return x * Math.log((x + r) / d) - r;
    }

    /**
     * Two equal parallel filaments side by side.
     *
     * @param length length [m], above 0
     * @param distance distance [m], above 0
     * @return mutual inductance [H], directions alike
     */
    public static double sideBySide(double length, double distance) {
        if (!(length > 0) || !(distance > 0)) {
            throw new IllegalArgumentException(
                    "length and distance must be > 0 m; have " + length + " and " + distance);
        }
        return parallel(0, length, 0, length, distance);
    }

    /**
     * Two filaments at any position. Parallel ones nearer than {@code closest} are taken to be that far apart.
     *
     * @param a first filament
     * @param b second filament
     * @param closest least distance of parallel filaments [m], at least 0
     * @return mutual inductance [H], its sign by the directions
     * @throws IllegalArgumentException if the filaments overlap on one line and {@code closest} is 0
     */
    public static double mutual(Filament a, Filament b, double closest) {
        if (!(closest >= 0)) {
            throw new IllegalArgumentException("least distance must be >= 0 m; have " + closest);
        }
        double l = a.length();
        double m = b.length();
        double[] u = direction(a, l);
        double[] v = direction(b, m);
        double[] w = {
            b.start().x() - a.start().x(),
            b.start().y() - a.start().y(),
            b.start().z() - a.start().z()
        };
        double cosine = dot(u, v);
        double[] cross = {u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]};
        double sine = Math.sqrt(dot(cross, cross));
        if (sine < 1e-12) {
            double along = dot(w, u);
            double across = Math.sqrt(Math.max(0, dot(w, w) - along * along));
            double sizes = l + m + Math.sqrt(dot(w, w));
            if (across < 1e-12 * sizes) {
                across = 0;
            }
            return parallel(0, l, along, along + Math.signum(cosine) * m, Math.max(across, closest));
        }
        if (Math.abs(cosine) < 1e-15) {
            return 0;
        }
        if (sine < ALMOST_PARALLEL) {
            return MU0_OVER_4PI * cosine * byQuadrature(l, m, u, v, w, closest);
        }
        return MU0_OVER_4PI * cosine * atAngle(l, m, u, v, w, cosine, sine, cross);
    }

    private static double atAngle(
            double l, double m, double[] u, double[] v, double[] w, double cosine, double sine, double[] cross) {
        double sine2 = sine * sine;
        double wu = dot(w, u);
        double wv = dot(w, v);
        // Feet of the common perpendicular: where it meets line a (from its start) and line b (from its start).
        double alongA = (wu - wv * cosine) / sine2;
        double alongB = (wu * cosine - wv) / sine2;
        double mu = -alongA;
        double nu = -alongB;
        double d = Math.abs(dot(w, cross)) / sine;
        double sizes = l + m + Math.abs(mu) + Math.abs(nu) + d;
        if (d < 1e-13 * sizes) {
            d = 0;
        }
        double r1 = span(mu + l, nu + m, cosine, d);
        double r2 = span(mu + l, nu, cosine, d);
        double r3 = span(mu, nu, cosine, d);
        double r4 = span(mu, nu + m, cosine, d);
        double sum = 2
                * (weighted(mu + l, m, r1 + r2, sizes)
                        + weighted(nu + m, l, r1 + r4, sizes)
                        - weighted(mu, m, r3 + r4, sizes)
                        - weighted(nu, l, r2 + r3, sizes));
        if (d > 0) {
            double omega = angle(mu + l, nu + m, cosine, sine, d, r1)
                    - angle(mu + l, nu, cosine, sine, d, r2)
                    + angle(mu, nu, cosine, sine, d, r3)
                    - angle(mu, nu + m, cosine, sine, d, r4);
            sum -= omega * d / sine;
        }
        return sum;
    }

    private static double span(double p, double q, double cosine, double d) {
        return Math.sqrt(Math.max(0, p * p + q * q - 2 * p * q * cosine + d * d));
    }

    /** p·atanh(length / sum); where the filament passes through the point, p is 0 and so is the product. */
    private static double weighted(double p, double length, double sum, double sizes) {
        if (Math.abs(p) < 1e-15 * sizes || sum <= length) {
            return 0;
        }
        return 0.5 * p * Math.log((sum + length) / (sum - length));
    }

    private static double angle(double p, double q, double cosine, double sine, double d, double r) {
        return Math.atan2(d * d * cosine + p * q * sine * sine, d * r * sine);
    }

    /** ∬ ds dt / r with the integral over t in closed form. */
    private static double byQuadrature(double l, double m, double[] u, double[] v, double[] w, double closest) {
        double whole = piece(0, l, m, u, v, w, closest);
        double scale = Math.abs(whole) + Math.min(l, m);
        return refine(0, l, whole, m, u, v, w, closest, TOLERANCE * scale, 0);
    }

    private static double refine(
            double from,
            double to,
            double whole,
            double m,
            double[] u,
            double[] v,
            double[] w,
            double closest,
            double enough,
            int depth) {
        double mid = 0.5 * (from + to);
        double left = piece(from, mid, m, u, v, w, closest);
        double right = piece(mid, to, m, u, v, w, closest);
        if (Math.abs(left + right - whole) <= enough || depth > 40) {
            return left + right;
        }
        return refine(from, mid, left, m, u, v, w, closest, enough, depth + 1)
                + refine(mid, to, right, m, u, v, w, closest, enough, depth + 1);
    }

    private static double piece(double from, double to, double m, double[] u, double[] v, double[] w, double closest) {
        double half = 0.5 * (to - from);
        double mid = 0.5 * (to + from);
        return half * GAUSS.integrate(x -> inner(mid + half * x, m, u, v, w, closest));
    }

    private static double inner(double s, double m, double[] u, double[] v, double[] w, double closest) {
        double x = w[0] - s * u[0];
        double y = w[1] - s * u[1];
        double z = w[2] - s * u[2];
        double along = x * v[0] + y * v[1] + z * v[2];
        double across2 = Math.max(x * x + y * y + z * z - along * along, closest * closest);
        double tiny = 1e-24 * (x * x + y * y + z * z + m * m);
        double d = Math.sqrt(Math.max(across2, tiny));
        return asinh((along + m) / d) - asinh(along / d);
    }

    private static double asinh(double x) {
        double magnitude = Math.abs(x);
        double value = magnitude < 1e-2
                ? Math.log1p(magnitude + magnitude * magnitude / (1 + Math.sqrt(1 + magnitude * magnitude)))
                : Math.log(magnitude + Math.sqrt(1 + magnitude * magnitude));
        return x < 0 ? -value : value;
    }

    private static double[] direction(Filament f, double length) {
        return new double[] {
            (f.end().x() - f.start().x()) / length,
            (f.end().y() - f.start().y()) / length,
            (f.end().z() - f.start().z()) / length
        };
    }

    private static double dot(double[] a, double[] b) {
        return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
    }
}
