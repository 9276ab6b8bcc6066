package earthing.surge;

import earthing.quantity.Source;
import earthing.surge.StrokeDistribution.LogLogistic;
import earthing.surge.StrokeDistribution.Lognormal;
import earthing.surge.StrokeDistribution.TwoSlope;

/** Published distributions of the parameters of negative downward strokes. Values in SI: A, s, A/s, C. */
public final class StrokeStatistics {

    private static final Source BROCHURE_63 = Source.publication(
            "CIGRE TB 63, 1991, after Berger, Anderson and Eriksson 1980",
            "stroke parameters",
            Source.Status.FROM_MEMORY);
    private static final Source BROCHURE_549 = Source.publication(
            "CIGRE TB 549, Lightning parameters for engineering applications, 2013",
            "summary: median 30 kA, sigma of log10 0.265",
            Source.Status.READ);
    private static final Source IEEE_1243 = Source.standard(
            "IEEE Std 1243-1997 and 1410-2010", "simplified cumulative distributions", Source.Status.FROM_MEMORY);

    /** Peak of first strokes, two slopes meeting at 20 kA: 61.1 kA with 1.33 below, 33.3 kA with 0.605 above [A]. */
    public static final TwoSlope FIRST_PEAK_TWO_SLOPE =
            new TwoSlope(new Lognormal(61.1e3, 1.33, BROCHURE_63), new Lognormal(33.3e3, 0.605, BROCHURE_63), 20e3);

    /** Peak of first strokes, one lognormal of wide spread: 30 kA, 0.265 in decades [A]. */
    public static final Lognormal FIRST_PEAK_WIDE = Lognormal.ofDecades(30e3, 0.265, BROCHURE_549);

    /** Peak of first strokes, one lognormal of the direct measurements: 31.1 kA, 0.484 [A]. */
    public static final Lognormal FIRST_PEAK_MEASURED = new Lognormal(31.1e3, 0.484, BROCHURE_63);

    /** Peak of first strokes, simplified: 31 kA, exponent 2.6; heavier tail than the lognormal sets [A]. */
    public static final LogLogistic FIRST_PEAK_SIMPLIFIED = new LogLogistic(31e3, 2.6, IEEE_1243);

    /** Peak of subsequent strokes: 12.3 kA, 0.530 [A]. */
    public static final Lognormal SUBSEQUENT_PEAK = new Lognormal(12.3e3, 0.530, BROCHURE_63);

    /** Peak of subsequent strokes, simplified: 12 kA, exponent 2.7 [A]. */
    public static final LogLogistic SUBSEQUENT_PEAK_SIMPLIFIED = new LogLogistic(12e3, 2.7, IEEE_1243);

    /** Front time (t90 − t30)/0.6 of first strokes: 3.83 µs, 0.553 [s]. */
    public static final Lognormal FIRST_FRONT = new Lognormal(3.83e-6, 0.553, BROCHURE_63);

    /** Front time of subsequent strokes: 0.67 µs, 1.013 [s]. */
    public static final Lognormal SUBSEQUENT_FRONT = new Lognormal(0.67e-6, 1.013, BROCHURE_63);

    /** Largest steepness of first strokes: 24.3 kA/µs, 0.599 [A/s]. */
    public static final Lognormal FIRST_STEEPNESS = new Lognormal(24.3e9, 0.599, BROCHURE_63);

    /** Largest steepness of subsequent strokes: 39.9 kA/µs, 0.852 [A/s]. */
    public static final Lognormal SUBSEQUENT_STEEPNESS = new Lognormal(39.9e9, 0.852, BROCHURE_63);

    /** Correlation of the logarithms of front time and peak of first strokes. */
    public static final double FIRST_FRONT_PEAK_CORRELATION = 0.47;

    /**
     * Correlation of the logarithms of largest steepness and peak of first strokes, which the exponent 0.376 of the
     * regression above 20 kA implies: 0.376 · 0.605/0.599.
     */
    public static final double FIRST_STEEPNESS_PEAK_CORRELATION = 0.38;

    /** Correlation of the logarithms of largest steepness and peak of subsequent strokes; front and peak have none. */
    public static final double SUBSEQUENT_STEEPNESS_PEAK_CORRELATION = 0.56;

    /** Median time to half value of first strokes [s]. */
    public static final double FIRST_HALF = 77.5e-6;

    /** Median time to half value of subsequent strokes [s]. */
    public static final double SUBSEQUENT_HALF = 30.2e-6;

    private StrokeStatistics() {}

    /**
     * Median of the largest steepness of first strokes of a given peak: 12.0 I^0.171 up to 20 kA, 6.50 I^0.376 above
     * (kA/µs, kA).
     *
     * @param peak peak [A], 3 kA to 200 kA
     * @return steepness [A/s]
     */
    public static double firstSteepnessGivenPeak(double peak) {
        double kiloampere = checkPeak(peak);
        return 1e9 * (kiloampere <= 20 ? 12.0 * Math.pow(kiloampere, 0.171) : 6.50 * Math.pow(kiloampere, 0.376));
    }

    /**
     * Median of the front time of first strokes of a given peak: 1.77 I^0.188 up to 20 kA, 0.906 I^0.411 above (µs, kA).
     *
     * @param peak peak [A], 3 kA to 200 kA
     * @return front time [s]
     */
    public static double firstFrontGivenPeak(double peak) {
        double kiloampere = checkPeak(peak);
        return 1e-6 * (kiloampere <= 20 ? 1.77 * Math.pow(kiloampere, 0.188) : 0.906 * Math.pow(kiloampere, 0.411));
    }

    private static double checkPeak(double peak) {
        if (!(peak >= 3e3 && peak <= 200e3)) {
            throw new IllegalArgumentException(
                    "the regressions hold for peaks from 3 kA to 200 kA; have " + peak + " A");
        }
        return peak / 1e3;
    }
}
