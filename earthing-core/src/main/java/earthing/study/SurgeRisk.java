package earthing.study;

import earthing.quantity.Measure;
import earthing.quantity.Measure.Bound;
import earthing.quantity.Numbers;
import earthing.quantity.Source;
import earthing.quantity.Worked;
import earthing.site.Site;
import earthing.surge.ConcaveFront;
import earthing.surge.FlashCollection;
import earthing.surge.RampResponse;
import earthing.surge.StrikingDistance;
import earthing.surge.StrokeSampler;
import earthing.surge.StrokeStatistics;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/**
 * How often a year a cable end gets more than it bears: flashes to the line within reach, to the antenna and to the ground
 * beside the line, each with strokes drawn from the published distributions, on the site as it is. Information; no
 * verdict rests on it.
 */
final class SurgeRisk {

    /** Start of the random numbers; the same site gives the same result. */
    static final long SEED = 20_261_125L;
    /** Strokes of each kind that are drawn into the tank for the percentiles. */
    static final int TANK_STROKES = 2000;
    /** Flashes to the line that are drawn for the rate. */
    static final int LINE_FLASHES = 2000;
    /** Flashes to the ground beside it. */
    static final int NEARBY_FLASHES = 1000;
    /** Flashes to the antenna or pole top, which adds little to the line. */
    static final int POLE_FLASHES = 200;

    private static final double FARTHEST = 1000;
    private static final double MOSTLY = 0.05;
    private static final double MOSTLY_TIME = 5e-6;
    private static final int POINTS = 60;
    private static final double LEAST_STROKES = 5;
    private static final double[] PERCENTILES = {50, 90, 95, 99};

    private static final Source MODEL = Source.tool("drawn strokes on the linear pole, docs/theory/surge-risk.md");
    private static final Source STATISTICS =
            Source.tool("statistics of CIGRE TB 63 on the linear pole, docs/theory/surge-risk.md");
    private static final Source THREE_STROKES = Source.publication(
            "CIGRE TB 549, Lightning parameters for engineering applications, 2013",
            "three to five strokes a negative flash",
            Source.Status.FROM_MEMORY);

    private final Site site;
    private final StudyResults studied;
    private final EarthCache cache;
    private final Inputs in = new Inputs();
    private final List<Result> results = new ArrayList<>();
    private final List<Gap> gaps = new ArrayList<>();
    private final List<Curve> curves = new ArrayList<>();
    private final Set<String> notes = new LinkedHashSet<>();
    private final StrokeSampler sampler = new StrokeSampler(SEED);

    private SurgeRisk(Site site, StudyResults studied, EarthCache cache) {
        this.site = site;
        this.studied = studied;
        this.cache = cache;
    }

    static StudyResults of(Site site, StudyResults studied, EarthCache cache) {
        return new SurgeRisk(site, studied, cache).run();
    }

    private StudyResults run() {
        try {
            OwnPole own = OwnPole.of(site, cache, in);
            Optional<EntryInputs> line = Optional.empty();
            try {
                line = Optional.of(EntryInputs.of(site, in));
            } catch (MissingInput missing) {
                gaps.add(missing.gap("surge.risk", Case.NONE));
            }
            StrokeResponses responses = StrokeResponses.of(own.arranged(), own.earth(), line, in);
            List<RiskLimit> limits = RiskLimit.of(site, studied, gaps);
            percentiles(responses.tank().open(), limits);
            if (line.isPresent()) {
                rates(own, line.get(), responses, limits);
            }
            limits(line);
        } catch (MissingInput missing) {
            gaps.add(missing.gap("surge.risk", Case.NONE));
        }
        return new StudyResults(results, curves, gaps, in.assumptions(), List.copyOf(notes));
    }

    private void percentiles(RampResponse response, List<RiskLimit> limits) {
        ConcaveFront[] first = new ConcaveFront[TANK_STROKES];
        ConcaveFront[] subsequent = new ConcaveFront[TANK_STROKES];
        for (int k = 0; k < TANK_STROKES; k++) {
            first[k] = sampler.first();
            subsequent[k] = sampler.subsequent();
        }
        double[] ofFirst = FlashSample.sorted(first, response);
        double[] ofSubsequent = FlashSample.sorted(subsequent, response);
        List<Double> asked = new ArrayList<>();
        for (double percentile : PERCENTILES) {
            asked.add(percentile);
        }
        Measure own = site.surges() == null ? null : site.surges().percentile();
        if (own != null && own.isKnown()) {
            // Beyond that the draw holds too few strokes.
            double most = 100 * (1 - LEAST_STROKES / TANK_STROKES);
            double percentile = Math.round(1e6 * 100 * own.nominal()) / 1e6;
            if (percentile >= 1 && percentile <= most) {
                asked.add(percentile);
            } else {
                gaps.add(new Gap(
                        "surge.stroke",
                        Case.NONE,
                        "a percentile has to be from 1 % to " + Numbers.full(most) + " %, so that the draw of "
                                + TANK_STROKES + " strokes holds enough of them",
                        List.of("surges.percentile")));
            }
        }
        for (double percentile : asked.stream().sorted().distinct().toList()) {
            String at = "percentile=" + Numbers.full(percentile) + " %";
            percentile("surge.stroke.first.open-voltage", ofFirst, percentile, at);
            percentile("surge.stroke.subsequent.open-voltage", ofSubsequent, percentile, at);
        }
        List<Curve.Trace> traces = new ArrayList<>();
        traces.add(trace("first strokes", ofFirst));
        traces.add(trace("subsequent strokes", ofSubsequent));
        if (inductive(response)) {
            double m = Math.abs(response.instant());
            traces.add(line("first strokes, M·S", p -> m * StrokeStatistics.FIRST_STEEPNESS.exceededWith(p)));
        }
        Set<Double> shown = new LinkedHashSet<>();
        for (RiskLimit limit : limits) {
            if (!limit.current() && shown.add(limit.value())) {
                traces.add(line("limit, " + limit.words(), p -> limit.value()));
            }
        }
        curves.add(new Curve(
                "surge.risk.percentiles",
                "Stroke percentile against peak voltage of a core at the cubicle, the whole stroke into the tank",
                "part of the strokes that bring more",
                "",
                "open voltage",
                "V",
                traces));
    }

    private void percentile(String id, double[] sorted, double percentile, String at) {
        results.add(Result.of(
                id,
                Case.NONE,
                at,
                FlashSample.exceededBy(sorted, 1 - percentile / 100),
                "V",
                TANK_STROKES + " strokes drawn with the seed " + SEED + ", all of the stroke into the tank",
                STATISTICS));
    }

    /** Parts from a few strokes of the sample to nearly all. */
    private static Curve.Trace trace(String name, double[] sorted) {
        return line(name, p -> FlashSample.exceededBy(sorted, p));
    }

    private static Curve.Trace line(String name, java.util.function.DoubleUnaryOperator value) {
        double least = LEAST_STROKES / TANK_STROKES;
        double most = 0.95;
        double[] x = new double[POINTS];
        double[] y = new double[POINTS];
        for (int k = 0; k < POINTS; k++) {
            x[k] = least * Math.pow(most / least, (double) k / (POINTS - 1));
            y[k] = value.applyAsDouble(x[k]);
        }
        return new Curve.Trace(name, x, y);
    }

    /** Whether the voltage follows the steepness alone, so that its distribution is that of the steepness. */
    private static boolean inductive(RampResponse response) {
        return Math.abs(response.at(MOSTLY_TIME) - response.instant()) < MOSTLY * Math.abs(response.instant());
    }

    private void rates(OwnPole own, EntryInputs line, StrokeResponses responses, List<RiskLimit> limits)
            throws MissingInput {
        Measure density = site.surges() == null ? null : site.surges().groundFlashDensity();
        double nominal = in.need(density, "surges.ground-flash-density");
        if (density == null) {
            return;
        }
        RiskExposure exposure = RiskExposure.of(site, line, in);
        in.choice(
                "surges",
                "1 first and " + FlashSample.SUBSEQUENT + " subsequent strokes a flash, independent of one another",
                THREE_STROKES);
        exposures(density, exposure);
        if (exposure.reachesBeyond()) {
            notes.add(
                    "strokes to the line beyond the neighbouring poles that are followed are counted as if they hit at the"
                            + " last of these; the rate errs high");
        }
        boolean withCurrent = limits.stream().anyMatch(RiskLimit::current);
        FlashSample direct = new FlashSample(LINE_FLASHES);
        for (int k = 0; k < LINE_FLASHES; k++) {
            int away = exposure.away(sampler.uniform());
            direct.add(
                    exposure.lineArea(),
                    FlashSample.flash(sampler),
                    responses.line().get(away),
                    withCurrent);
        }
        FlashSample pole = new FlashSample(POLE_FLASHES);
        if (exposure.poleArea() > 0) {
            for (int k = 0; k < POLE_FLASHES; k++) {
                pole.add(exposure.poleArea(), FlashSample.flash(sampler), responses.tank(), withCurrent);
            }
        }
        FlashSample nearby = nearby(own, line, exposure, responses.tank(), withCurrent);
        for (RiskLimit limit : limits) {
            emit(limit, density, nominal, List.of(direct, pole, nearby), own, line, exposure, responses);
        }
        results.add(count("surge.risk.seed", SEED));
        results.add(count("surge.risk.flashes-drawn", direct.size() + pole.size() + nearby.size()));
        results.add(Result.of(
                "surge.risk.fronts-adjusted",
                Case.NONE,
                "nominal",
                sampler.bent(),
                "",
                "part of the strokes whose front gave way to peak and steepness",
                STATISTICS));
    }

    private void exposures(Measure density, RiskExposure exposure) {
        for (Bound bound : Bound.values()) {
            String at = at(bound);
            double n = density.at(bound);
            results.add(Result.of(
                            "surge.risk.line-flashes",
                            Case.NONE,
                            at,
                            n * exposure.lineArea(),
                            "1/a",
                            "flashes to the line within reach of this pole",
                            FlashCollection.LINE)
                    .withWorked(Worked.of("N", "N_g * (28 * h^0.6 + b) * L * (1 - S_f)")
                            .with("N_g", n, "/m2/a")
                            .with("h", exposure.height(), "m")
                            .with("b", exposure.breadth(), "m")
                            .with("L", exposure.length(), "m")
                            .with("S_f", exposure.shielding(), "")
                            .gives(n * exposure.lineArea(), "1/a")));
            if (exposure.poleArea() > 0) {
                results.add(Result.of(
                        "surge.risk.pole-flashes",
                        Case.NONE,
                        at,
                        n * exposure.poleArea(),
                        "1/a",
                        "further flashes to the antenna or pole top above the conductors",
                        FlashCollection.LINE));
            }
        }
    }

    /** Strokes to the ground beside the line: the induced voltage less the residual voltage, through line and electrode. */
    private FlashSample nearby(
            OwnPole own, EntryInputs line, RiskExposure exposure, StrokeResponses.Pair answers, boolean withCurrent)
            throws MissingInput {
        FlashSample sample = new FlashSample(NEARBY_FLASHES);
        if (line.directions() != 2) {
            notes.add("strokes beside the line are counted where the line passes the pole; the formula does not hold at"
                    + " the end of a line or at a branch");
            return sample;
        }
        InducedSource source = InducedSource.of(own, line, exposure.height());
        for (int k = 0; k < NEARBY_FLASHES; k++) {
            ConcaveFront[] strokes = FlashSample.flash(sampler);
            double nearest = StrikingDistance.nearestToGround(strokes[0].peak(), exposure.height());
            double strongest = 0;
            for (ConcaveFront stroke : strokes) {
                strongest = Math.max(strongest, stroke.peak());
            }
            double range = Math.max(0, Math.min(FARTHEST, source.reach(strongest)) - nearest);
            double distance = nearest + range * sampler.uniform();
            // Both sides of the line, as far out as this flash can still send anything into the tank.
            double area = 2 * exposure.length() * range;
            double open = 0;
            double shorted = 0;
            for (ConcaveFront stroke : strokes) {
                Optional<InducedSource.Entering> entering =
                        source.into(stroke, distance, answers.open().end());
                if (entering.isPresent()) {
                    open = Math.max(open, entering.get().peak(answers.open()));
                    shorted = withCurrent ? Math.max(shorted, entering.get().peak(answers.shorted())) : 0;
                }
            }
            sample.add(area, open, shorted);
        }
        return sample;
    }

    private void emit(
            RiskLimit limit,
            Measure density,
            double nominal,
            List<FlashSample> samples,
            OwnPole own,
            EntryInputs line,
            RiskExposure exposure,
            StrokeResponses responses) {
        String id = "surge.risk." + limit.where() + ".";
        double ground = 0;
        double variance = 0;
        double bound = 0;
        List<FlashSample.Ground> parts = new ArrayList<>();
        for (FlashSample sample : samples) {
            FlashSample.Ground part = sample.beyond(limit);
            parts.add(part);
            ground += part.area();
            variance += part.error() * part.error();
            bound += part.bound() * part.bound();
        }
        double margin = Math.sqrt(bound);
        String what = "flashes a year that bring more than the " + limit.basis() + " ("
                + Numbers.brief(limit.value() / 1000) + (limit.current() ? " kA)" : " kV)");
        for (Bound each : Bound.values()) {
            double shift = each == Bound.LOW ? -margin : each == Bound.HIGH ? margin : 0;
            Result rate = Result.of(
                    id + "rate",
                    Case.NONE,
                    at(each),
                    density.at(each) * Math.max(0, ground + shift),
                    "1/a",
                    what,
                    MODEL);
            results.add(each == Bound.NOMINAL ? byHand(rate, limit, nominal, own, line, exposure, responses) : rate);
        }
        results.add(Result.of(
                id + "limit", Case.NONE, "nominal", limit.value(), limit.current() ? "A" : "V", limit.basis(), MODEL));
        results.add(nominal(id + "sampling-error", nominal * Math.sqrt(variance), what));
        results.add(nominal(id + "direct-rate", nominal * parts.get(0).area(), what));
        if (exposure.poleArea() > 0) {
            results.add(nominal(id + "antenna-rate", nominal * parts.get(1).area(), what));
        }
        results.add(nominal(id + "nearby-rate", nominal * parts.get(2).area(), what));
    }

    /** Where the voltage follows the steepness alone and nothing shares the stroke, its exceedance is a lognormal. */
    private Result byHand(
            Result rate,
            RiskLimit limit,
            double density,
            OwnPole own,
            EntryInputs line,
            RiskExposure exposure,
            StrokeResponses responses) {
        RampResponse open = responses.tank().open();
        if (limit.current() || line.neighboursHaveArresters() || !inductive(open)) {
            return rate;
        }
        double z = line.impedance(line.directions())[0][0];
        double share = z / (z + own.resistance());
        double m = Math.abs(open.instant()) * share;
        double first = StrokeStatistics.FIRST_STEEPNESS.times(m).exceedance(limit.value());
        double later = StrokeStatistics.SUBSEQUENT_STEEPNESS.times(m).exceedance(limit.value());
        double hand = density * exposure.lineArea() * (1 - (1 - first) * Math.pow(1 - later, FlashSample.SUBSEQUENT));
        return rate.withHandValue(hand)
                .withWorked(Worked.of("N_x", "N_g * A * (1 - (1 - P_1) * (1 - P_s)^2)")
                        .with("N_g", density, "/m2/a")
                        .with("A", exposure.lineArea(), "")
                        .with("P_1", first, "")
                        .with("P_s", later, "")
                        .gives(hand, "1/a"));
    }

    private static Result nominal(String id, double value, String what) {
        return Result.of(id, Case.NONE, "nominal", value, "1/a", what, MODEL);
    }

    private static Result count(String id, double value) {
        return Result.of(id, Case.NONE, "nominal", value, "", "what the draw rests on", MODEL);
    }

    private static String at(Bound bound) {
        return bound.name().toLowerCase(Locale.ROOT);
    }

    private void limits(Optional<EntryInputs> line) {
        notes.add(
                "the rates a year hold for negative downward flashes; positive and upward flashes are not counted, nor"
                        + " strokes to the line whose breakdown spreads them before they arrive");
        notes.add(
                "many subsequent strokes have fronts below 0.5 us, where the lumped pole is an order of magnitude only");
        notes.add("a rate compares peaks of strokes of any front with a limit that was proved on one wave");
        if (line.isPresent()) {
            notes.add("of the arresters the struck phase is taken as conducting without residual voltage, the others as"
                    + " not conducting; the rates err high");
        }
        if (site.antenna() != null) {
            notes.add("a stroke to the antenna is counted as one into the tank; what it brings down the feeder into the"
                    + " cubicle is not followed");
        }
    }
}
