package earthing.safety;

import earthing.quantity.Source;
import earthing.quantity.Source.Status;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegrator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegratorFactory;

/**
 * The surface-layer factor Cs by which a thin layer under the foot counts less than ground made of it throughout. The
 * foot is a disc of radius 0.08 m.
 *
 * <p>Three ways: the printed series, which takes the current density of a lone disc for granted and averages over the
 * area (at K = −0.9 and 0.1 m 0.5 % low, at K = −0.98 and 0.02 m 5.7 % low); the printed short formula (within 3 % of the
 * series from 0.1 m on, at K = −0.98 and 0.02 m 18 % high, so not cautious on thin layers); and the disc on two layers
 * solved as such, {@link FootDisc}, against which these figures are taken.
 */
public final class SurfaceLayerFactor {

    /** The series. */
    public static final Source SERIES = Source.standard("IEEE Std 80-2000", "eq. 21 to 23", Status.FROM_MEMORY);

    /** The short formula. */
    public static final Source SHORT_FORMULA = Source.standard("IEEE Std 80-2000", "eq. 27", Status.FROM_MEMORY);

    /** The series of the older edition. */
    public static final Source SERIES_1986 =
            Source.standard("IEEE Std 80-1986", "surface-layer series with 1/0.96", Status.FROM_MEMORY);

    /** Radius of the disc that stands for a foot [m]. */
    public static final double FOOT_RADIUS = 0.08;

    /** Strongest reflection taken: a contrast of resistivities of two million to one. */
    public static final double STRONGEST = 0.999999;

    private static final double NEGLIGIBLE = 1e-13;

    /** Apart, because its nodes take milliseconds to find and only the series needs them. */
    private static final class Quadrature {
        static final GaussIntegrator RULE = new GaussIntegratorFactory().legendre(40, 0, 1);
    }

    /** Distance in radii from which the expansion takes the place of the integral. */
    private static final double FAR = 8;

    private static final double[] FAR_TERMS = farTerms(16);

    /** Sums already found: the few places of a site return with every case of a fault. */
    private static final class Known {
        static final int MOST = 256;
        static final Map<List<Double>, Double> SUMS = new ConcurrentHashMap<>();
    }

    private SurfaceLayerFactor() {}

    /**
     * The mutual term is (4/π) ∫ e^(−ζt) (sin t/t) (2 J₁(t)/t) dt; both factors expanded in powers of t and integrated
     * give (4/πζ) Σ aₖ ζ^(−2k), which converges for ζ &gt; 2. At 8 each term is below a sixteenth of the one before.
     */
    private static double[] farTerms(int count) {
        double[] sine = new double[count];
        double[] bessel = new double[count];
        sine[0] = 1;
        bessel[0] = 1;
        for (int k = 1; k < count; k++) {
            sine[k] = -sine[k - 1] / (2.0 * k * (2.0 * k + 1));
            bessel[k] = -bessel[k - 1] / (4.0 * k * (k + 1.0));
        }
        double[] terms = new double[count];
        double factorial = 1;
        for (int k = 0; k < count; k++) {
            factorial *= k == 0 ? 1 : (2.0 * k) * (2.0 * k - 1);
            for (int i = 0; i <= k; i++) {
                terms[k] += factorial * sine[i] * bessel[k - i];
            }
        }
        return terms;
    }

    /**
     * Reflection factor between the layer and the soil below.
     *
     * @param soil resistivity of the soil [Ω·m], &gt; 0
     * @param layer resistivity of the layer [Ω·m], &gt; 0
     * @return K = (ρ − ρs)/(ρ + ρs), between −1 and 1
     */
    public static double reflection(double soil, double layer) {
        if (!(soil > 0 && layer > 0)) {
            throw new IllegalArgumentException("resistivities must be > 0 ohm.m; have " + soil + " and " + layer);
        }
        return (soil - layer) / (soil + layer);
    }

    /**
     * Cs of a covering by the series.
     *
     * @param soil resistivity of the soil [Ω·m]
     * @param covering the covering
     * @return Cs; 1 for a covering of infinite thickness
     */
    public static double series(double soil, SurfaceCovering covering) {
        if (Double.isInfinite(covering.thickness())) {
            return 1;
        }
        return series(reflection(soil, covering.resistivity()), covering.thickness());
    }

    /**
     * Cs by the series, IEEE Std 80-2000 eq. 21: 1 + (16 b/ρs) Σ Kⁿ Rm(2 n hs).
     *
     * @param reflection reflection factor K, |K| ≤ 0.999999
     * @param thickness thickness hs [m], &gt; 0
     * @return Cs
     */
    public static double series(double reflection, double thickness) {
        check(reflection, thickness);
        if (Known.SUMS.size() > Known.MOST) {
            Known.SUMS.clear();
        }
        return Known.SUMS.computeIfAbsent(List.of(reflection, thickness), place -> summed(reflection, thickness));
    }

    static double summed(double reflection, double thickness) {
        double sum = 0;
        double power = 1;
        // The mutual term falls as 1/n, so the power of K alone bounds what is left out: |K|^n/(1 − |K|).
        double enough = NEGLIGIBLE * (1 - Math.abs(reflection));
        for (int n = 1; Math.abs(power) > enough; n++) {
            power *= reflection;
            sum += power * mutual(2 * n * thickness / FOOT_RADIUS);
        }
        return 1 + sum;
    }

    /**
     * Cs by the short formula, IEEE Std 80-2000 eq. 27: 1 − 0.09 (1 − ρ/ρs)/(2 hs + 0.09).
     *
     * @param soil resistivity of the soil ρ [Ω·m], &gt; 0
     * @param layer resistivity of the layer ρs [Ω·m], &gt; 0
     * @param thickness thickness hs [m], &gt; 0
     * @return Cs
     */
    public static double shortFormula(double soil, double layer, double thickness) {
        check(reflection(soil, layer), thickness);
        return 1 - 0.09 * (1 - soil / layer) / (2 * thickness + 0.09);
    }

    /**
     * Cs as the 1986 edition had it: (1/0.96)(1 + 2 Σ Kⁿ/√(1 + (2 n hs/0.08)²)). Only to re-read old reports.
     *
     * @param reflection reflection factor K, |K| ≤ 0.999999
     * @param thickness thickness hs [m], &gt; 0
     * @return Cs
     */
    public static double series1986(double reflection, double thickness) {
        check(reflection, thickness);
        double sum = 0;
        double power = 1;
        double enough = NEGLIGIBLE * (1 - Math.abs(reflection));
        for (int n = 1; Math.abs(power) > enough; n++) {
            power *= reflection;
            sum += power / Math.hypot(1, 2 * n * thickness / FOOT_RADIUS);
        }
        return (1 + 2 * sum) / 0.96;
    }

    /**
     * (16 b/ρs) Rm of eq. 22 and 23: the potential of a disc averaged over the coaxial disc at a distance, 2 at distance
     * zero, 4/(π ζ) far away.
     *
     * @param distance distance in radii, ζ = z/b
     * @return the dimensionless mutual term
     */
    private static double mutual(double distance) {
        if (distance >= FAR) {
            double inverse = 1 / (distance * distance);
            double sum = 0;
            for (int k = FAR_TERMS.length - 1; k >= 0; k--) {
                sum = sum * inverse + FAR_TERMS[k];
            }
            return 4 / (Math.PI * distance) * sum;
        }
        // r = 1 − s² takes the square-root edge of the thin case out of the integrand.
        return 8
                / Math.PI
                * Quadrature.RULE.integrate(s -> {
                    double r = 1 - s * s;
                    double z2 = distance * distance;
                    double near = Math.sqrt((1 - r) * (1 - r) + z2);
                    double far = Math.sqrt((1 + r) * (1 + r) + z2);
                    double angle = Math.asin(Math.min(1, 2 / (near + far)));
                    return r * angle * 2 * s;
                });
    }

    private static void check(double reflection, double thickness) {
        if (!(Math.abs(reflection) <= STRONGEST)) {
            throw new IllegalArgumentException(
                    "reflection factor must be within -" + STRONGEST + " and " + STRONGEST + "; have " + reflection);
        }
        if (!(thickness > 0 && thickness < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("layer thickness must be > 0 m and finite; have " + thickness);
        }
    }
}
