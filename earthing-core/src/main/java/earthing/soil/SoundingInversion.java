package earthing.soil;

import earthing.quantity.Source;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.distribution.TDistribution;

/**
 * From a sounding to layers: for each layer count the best fit over the logarithms of resistivities and thicknesses by
 * Levenberg–Marquardt from several starts; the layer count by the Bayesian information criterion; 90 % intervals from
 * the covariance; readings that contradict all others set aside and named.
 *
 * <p>Residuals are differences of ln ρa, so that every reading counts by its relative error. Criterion: n ln(S/n + e²) +
 * k ln n, with S the sum of squares, e the smallest error of a reading, k one for each parameter and three for each
 * reading set aside (how far it is off, and which of n it is). The fewest layers within 2 of the lowest criterion are
 * taken: a smaller difference is no evidence (Kass and Raftery 1995).
 *
 * @param sounding what was read
 * @param fits the best fit of each layer count that was tried, fewest layers first
 * @param chosen index of the supported fit
 */
public record SoundingInversion(Sounding sounding, List<SoundingFit> fits, int chosen) {

    /** Most layers of a fit [-]. */
    public static final int MOST_LAYERS = 4;

    /** Fewest readings of an inversion [-]. */
    public static final int FEWEST_READINGS = 3;

    /**
     * Relative error of a reading below which none is believed [-]. Common practice, no published source: earth testers
     * declare 1 … 3 %.
     */
    public static final double READING_ERROR = 0.01;

    /** Confidence of the intervals [-]. */
    public static final double CONFIDENCE = 0.90;

    /** Where the criterion comes from. */
    public static final Source CRITERION = Source.publication(
            "Schwarz, Estimating the dimension of a model, Annals of Statistics 6, 1978",
            "Bayesian information criterion",
            Source.Status.FROM_MEMORY);

    /** Where the grades of evidence come from. */
    public static final Source EVIDENCE = Source.publication(
            "Kass & Raftery, Bayes factors, J. American Statistical Association 90, 1995",
            "a difference below 2 is not worth more than a bare mention",
            Source.Status.FROM_MEMORY);

    /** Where the test of a single reading comes from. */
    public static final Source DELETED_RESIDUAL = Source.publication(
            "Cook & Weisberg, Residuals and Influence in Regression, 1982",
            "deleted residual with Bonferroni bound",
            Source.Status.FROM_MEMORY);

    /** Chance that any reading of a good sounding is set aside [-]. */
    static final double FALSE_ALARM = 0.01;

    /** A bad reading is off by at least this many smallest errors [-]. */
    static final double GROSS = 5;

    /** One reading in so many may be set aside [-]. */
    static final int READINGS_PER_BAD_ONE = 6;

    /** The search goes this factor beyond the readings [-]. */
    static final double BEYOND = 30;

    private static final double NO_EVIDENCE = 2;
    private static final double COST_OF_BAD_READING = 3;
    private static final double RESOLVED = Math.log(2);

    /**
     * Copies the list.
     *
     * @param sounding what was read
     * @param fits the best fit of each layer count that was tried, fewest layers first
     * @param chosen index of the supported fit
     */
    public SoundingInversion {
        fits = List.copyOf(fits);
        if (chosen < 0 || chosen >= fits.size()) {
            throw new IllegalArgumentException("the chosen fit must be one of " + fits.size() + "; have " + chosen);
        }
    }

    /**
     * Fits one to four layers, as many as the readings can carry, and chooses.
     *
     * @param sounding the readings, at least {@value #FEWEST_READINGS}
     * @return the fits
     * @throws IllegalArgumentException if there are too few readings
     */
    public static SoundingInversion of(Sounding sounding) {
        requireEnough(sounding, FEWEST_READINGS);
        Searches searches = Searches.of(sounding);
        List<SoundingFit> fits = new ArrayList<>();
        for (int layers = 1;
                layers <= searches.most() && 2 * layers <= sounding.readings().size();
                layers++) {
            fits.add(fit(searches.ofLayers(layers), sounding, layers));
            if (searches.forward().isPresent() && fits.get(layers - 1).misfit() < READING_ERROR) {
                break; // dear to go on, and the readings are not better than that
            }
        }
        double lowest = fits.stream()
                .min(Comparator.comparingDouble(SoundingFit::criterion))
                .orElseThrow()
                .criterion();
        int chosen = 0;
        while (fits.get(chosen).criterion() > lowest + NO_EVIDENCE) {
            chosen++;
        }
        return new SoundingInversion(sounding, fits, chosen);
    }

    /**
     * Fits a given number of layers.
     *
     * @param sounding the readings, at least twice as many as layers and at least {@value #FEWEST_READINGS}
     * @param layers number of layers, 1 … {@value #MOST_LAYERS}
     * @return the fit
     * @throws IllegalArgumentException if there are too few readings or the layer count is out of range
     */
    public static SoundingInversion of(Sounding sounding, int layers) {
        if (layers < 1 || layers > MOST_LAYERS) {
            throw new IllegalArgumentException("layers must be from 1 to " + MOST_LAYERS + "; have " + layers);
        }
        requireEnough(sounding, Math.max(FEWEST_READINGS, 2 * layers));
        Searches searches = Searches.of(sounding);
        if (layers > searches.most()) {
            throw new IllegalArgumentException(
                    "such readings tell no more than " + searches.most() + " layers apart; asked for " + layers);
        }
        return new SoundingInversion(sounding, List.of(fit(searches.ofLayers(layers), sounding, layers)), 0);
    }

    /** Searches for each layer count, by the filter of points in a line or by what the arrangement brings itself. */
    private record Searches(Sounding sounding, Optional<SoundingForward> forward, Optional<SoundingFilter> filter) {

        static Searches of(Sounding sounding) {
            List<Reading> readings = sounding.readings();
            Optional<SoundingForward> forward = readings.get(0).array().forward(readings);
            return new Searches(
                    sounding,
                    forward,
                    forward.isPresent() ? Optional.empty() : Optional.of(SoundingFilter.of(readings)));
        }

        int most() {
            return forward.map(SoundingForward::mostLayers).orElse(MOST_LAYERS);
        }

        LayerSearch ofLayers(int layers) {
            return forward.isPresent()
                    ? new LayerSearch(forward.get(), sounding, layers)
                    : new LayerSearch(filter.orElseThrow(), sounding, layers);
        }
    }

    private static void requireEnough(Sounding sounding, int readings) {
        if (sounding.readings().size() < readings) {
            throw new IllegalArgumentException("the inversion needs at least " + readings + " readings; have "
                    + sounding.readings().size());
        }
    }

    /**
     * The supported fit.
     *
     * @return one of {@link #fits}
     */
    public SoundingFit best() {
        return fits.get(chosen);
    }

    private static SoundingFit fit(LayerSearch search, Sounding sounding, int layers) {
        LayerSearch.Found found = search.search(sounding.shortest(), sounding.longest());
        int parameters = found.logs().length;
        boolean[] held = search.held(found.logs());
        Spread spread = Spread.of(search.model(), found.logs(), found.kept(), held);
        List<ReadingFit> readings = new ArrayList<>();
        int kept = 0;
        double squares = 0;
        for (int i = 0; i < found.kept().length; i++) {
            ReadingFit one = new ReadingFit(
                    sounding.readings().get(i), Math.exp(search.model().value(i)), !found.kept()[i]);
            readings.add(one);
            if (found.kept()[i]) {
                kept++;
                squares += one.residual() * one.residual();
            }
        }
        int freedom = kept - parameters;
        double sigma = Math.max(READING_ERROR, Math.sqrt(found.sum() / freedom));
        double reach = sigma * new TDistribution(freedom).inverseCumulativeProbability(0.5 + CONFIDENCE / 2);
        List<FitParameter> list = new ArrayList<>();
        for (int p = 0; p < parameters; p++) {
            double[] g = new double[parameters];
            g[p] = 1;
            FitParameter.Kind kind = p < layers ? FitParameter.Kind.RESISTIVITY : FitParameter.Kind.THICKNESS;
            double log = found.logs()[p];
            double half =
                    heldLayer(held, p % layers) ? Double.POSITIVE_INFINITY : reach * Math.sqrt(spread.variance(g));
            list.add(new FitParameter(
                    kind,
                    p % layers,
                    Math.exp(log),
                    Math.exp(Math.max(log - half, search.least(p))),
                    Math.exp(Math.min(log + half, search.most(p))),
                    half <= RESOLVED));
        }
        double n = readings.size();
        double criterion = n * Math.log(found.sum() / n + READING_ERROR * READING_ERROR)
                + (parameters + COST_OF_BAD_READING * (readings.size() - kept)) * Math.log(n);
        return new SoundingFit(
                LogModel.soil(found.logs()),
                list,
                products(search, found.logs(), held, spread, reach),
                readings,
                Math.sqrt(squares / kept),
                criterion,
                spread.condition());
    }

    private static List<FitParameter> products(
            LayerSearch search, double[] logs, boolean[] held, Spread spread, double reach) {
        int layers = (logs.length + 1) / 2;
        List<FitParameter> list = new ArrayList<>();
        for (FitParameter.Kind kind :
                List.of(FitParameter.Kind.TRANSVERSE_RESISTANCE, FitParameter.Kind.LONGITUDINAL_CONDUCTANCE)) {
            int sign = kind == FitParameter.Kind.TRANSVERSE_RESISTANCE ? 1 : -1;
            for (int i = 0; i < layers - 1; i++) {
                double[] g = new double[logs.length];
                g[i] = sign;
                g[layers + i] = 1;
                double log = logs[layers + i] + sign * logs[i];
                double half = reach * Math.sqrt(spread.variance(g));
                int thickness = layers + i;
                double least = search.least(thickness) + (sign > 0 ? search.least(i) : -search.most(i));
                double most = search.most(thickness) + (sign > 0 ? search.most(i) : -search.least(i));
                boolean unknown = heldLayer(held, i) && sign != productOfThinLayer(logs, i);
                list.add(new FitParameter(
                        kind,
                        i,
                        Math.exp(log),
                        Math.exp(unknown ? least : Math.max(log - half, least)),
                        Math.exp(unknown ? most : Math.min(log + half, most)),
                        half <= RESOLVED && !unknown));
            }
        }
        return list;
    }

    /** Whether a layer ran into an end of the search with its resistivity or thickness: only one product is known. */
    private static boolean heldLayer(boolean[] held, int layer) {
        int layers = (held.length + 1) / 2;
        return held[layer] || (layer < layers - 1 && held[layers + layer]);
    }

    /**
     * Which product a thin layer makes itself felt by: 1 for ρ·h of a layer more resistive than its surroundings, -1 for
     * h/ρ of one that conducts better; 0 for a resistive layer at the surface, which hides.
     */
    static int productOfThinLayer(double[] logs, int layer) {
        double around = layer == 0 ? logs[1] : 0.5 * (logs[layer - 1] + logs[layer + 1]);
        if (logs[layer] < around) {
            return -1;
        }
        return layer == 0 ? 0 : 1;
    }
}
