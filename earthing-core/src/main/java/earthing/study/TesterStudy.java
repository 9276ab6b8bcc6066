package earthing.study;

import earthing.electrode.tester.FallOfPotential;
import earthing.electrode.tester.ProbeLine;
import earthing.electrode.wire.EarthElectrodes;
import earthing.quantity.Measure.Bound;
import earthing.quantity.Numbers;
import earthing.quantity.Source;
import earthing.quantity.Worked;
import earthing.site.Electrode;
import earthing.site.Measurement;
import earthing.site.MeasurementKind;
import earthing.site.MeasurementMethod;
import earthing.site.Season;
import earthing.site.Site;
import earthing.site.SoilState;
import earthing.site.YesNo;
import earthing.soil.PointSource;
import earthing.soil.SoilModel;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * The fall-of-potential readings taken of electrodes: what the model says the instrument should have shown, what the place of the probes
 * did to the reading, and what it means at the worst season.
 */
final class TesterStudy {

    private static final Source DIRECTIONS =
            Source.tool("the direction of the probes is not told; four directions are computed");
    private static final Source SEASON = Source.tool("a reading moves with the season as the model's resistance does");

    private static final String MODEL =
            "fall of potential with the current probe as second electrode, thin-wire Galerkin";
    private static final int LINES = 4;
    private static final int POINTS = 25;

    private final Site site;
    private final EarthCache cache;
    private final Inputs in = new Inputs();
    private final List<Result> results = new ArrayList<>();
    private final List<Curve> curves = new ArrayList<>();
    private final List<Gap> gaps = new ArrayList<>();
    private final List<String> notes = new ArrayList<>();
    private final Map<SoilModel, PointSource> grounds = new HashMap<>();

    private TesterStudy(Site site, EarthCache cache) {
        this.site = site;
        this.cache = cache;
    }

    static StudyResults of(Site site, EarthCache cache) {
        TesterStudy study = new TesterStudy(site, cache);
        Map<String, Integer> numbers = new HashMap<>();
        for (Measurement reading : site.measurements()) {
            if (reading.kind() == MeasurementKind.ELECTRODE_RESISTANCE) {
                study.reading(reading, numbers.merge(reading.of(), 1, Integer::sum));
            }
        }
        return new StudyResults(study.results, study.curves, study.gaps, study.in.assumptions(), study.notes);
    }

    /** Beginning of the ids of a reading, counted from 1 among those of its electrode. */
    static String id(Measurement reading, int number) {
        return "electrode." + reading.of() + ".reading." + number;
    }

    private void reading(Measurement reading, int number) {
        String id = id(reading, number);
        Optional<Electrode> electrode = SiteVariant.electrode(site, reading.of());
        boolean tells = reading.value().isKnown()
                && reading.method() == MeasurementMethod.FALL_OF_POTENTIAL
                && reading.isolated() == YesNo.YES;
        if (electrode.isEmpty() || !tells) {
            return;
        }
        try {
            if (reading.currentProbeDistance() != null
                    && reading.potentialProbeDistance() != null
                    && hasShape(electrode.get())) {
                fallOfPotential(id, reading, electrode.get());
            } else {
                evaluate(id, reading, 0);
            }
        } catch (MissingInput missing) {
            gaps.add(missing.gap(id, Case.NONE));
        }
    }

    private boolean hasShape(Electrode electrode) throws MissingInput {
        return !ElectrodeBars.of(electrode, site.pole(), in).isEmpty();
    }

    /** The states of the ground in which the reading may have been taken, by whether it is the worst season. */
    private List<Boolean> states(@Nullable SoilState state) {
        boolean season = site.soil() != null && site.soil().season() != null;
        if (!season) {
            return List.of(false);
        }
        return state == null || state == SoilState.UNKNOWN ? List.of(false, true) : List.of(SiteEarth.worst(state));
    }

    private void fallOfPotential(String id, Measurement reading, Electrode electrode) throws MissingInput {
        double current = in.need(reading.currentProbeDistance(), "measurements.current-probe-distance");
        double potential = in.need(reading.potentialProbeDistance(), "measurements.potential-probe-distance");
        if (!(potential < current)) {
            gaps.add(new Gap(
                    id,
                    Case.NONE,
                    "the potential probe must stand nearer than the current probe",
                    List.of("measurements.potential-probe-distance")));
            return;
        }
        in.choice(
                "",
                "probes in " + LINES + " directions from the electrode, at the spread of their readings",
                DIRECTIONS);
        double[] terminal = ElectrodeBars.terminal(electrode, site.pole(), in);
        double low = Double.POSITIVE_INFINITY;
        double high = 0;
        double nominal = 0;
        double worst = 0;
        double worstShown = 0;
        double worstOf = 1;
        double mean = 0;
        double place = 0;
        int placed = 0;
        List<Curve.Trace> traces = new ArrayList<>();
        List<Boolean> states = states(reading.soilState());
        for (Bound bound : Bound.values()) {
            for (boolean atWorst : states) {
                SiteEarth earth = SiteEarth.inState(site, bound, atWorst, in, cache);
                EarthElectrodes solved = earth.fields()
                        .orElseThrow(() -> new MissingInput("no electrode has a shape", "electrodes.rod"));
                for (int d = 0; d < LINES; d++) {
                    FallOfPotential test = test(
                            solved,
                            reading.of(),
                            new ProbeLine(terminal[0], terminal[1], 2 * Math.PI * d / LINES, current));
                    double shown = test.reading(potential);
                    low = Math.min(low, shown);
                    high = Math.max(high, shown);
                    if (bound == Bound.NOMINAL && atWorst == states.get(0)) {
                        double error = test.error(potential);
                        nominal += shown / LINES;
                        mean += error / LINES;
                        if (Math.abs(error) >= Math.abs(worst)) {
                            worst = error;
                            worstShown = shown;
                            worstOf = test.resistance();
                        }
                        if (test.rightPlace().isPresent()) {
                            place += test.rightPlace().getAsDouble() / current;
                            placed++;
                        }
                    }
                    if (d == 0 && atWorst == states.get(0)) {
                        trace(test, current, bound, traces);
                    }
                }
            }
        }
        add(id + ".predicted", "low", low, "ohm");
        add(id + ".predicted", "nominal", nominal, "ohm");
        add(id + ".predicted", "high", high, "ohm");
        results.add(result(id + ".probe-error", "nominal", worst, "")
                .withWorked(Worked.of("e", "R_p / R - 1")
                        .with("R_p", worstShown, "ohm")
                        .with("R", worstOf, "ohm")
                        .gives(worst, "")));
        if (placed == LINES) {
            add(id + ".right-place", "nominal", place / placed, "");
        } else {
            notes.add("reading of " + reading.of() + " on " + reading.date() + ": with the current probe at "
                    + Numbers.brief(current) + " m no place of the potential probe reads the resistance in every"
                    + " direction; the current probe stands too near");
        }
        double read = reading.value().nominal();
        traces.add(new Curve.Trace(
                "reading", new double[] {0.98 * potential, 1.02 * potential}, new double[] {read, read}));
        curves.add(new Curve(
                id + ".curve",
                "Fall of potential on " + reading.of() + " as predicted, and the reading of " + reading.date(),
                "distance of the potential probe",
                "m",
                "reading",
                "ohm",
                traces));
        evaluate(id, reading, mean);
    }

    private FallOfPotential test(EarthElectrodes solved, String name, ProbeLine line) throws MissingInput {
        try {
            return FallOfPotential.of(
                    grounds.computeIfAbsent(solved.soil(), PointSource::of), solved.bars(), name, line);
        } catch (IllegalArgumentException impossible) {
            throw new MissingInput(
                    "the probes as placed have no solution: " + impossible.getMessage(),
                    "measurements.current-probe-distance");
        }
    }

    private static void trace(FallOfPotential test, double current, Bound bound, List<Curve.Trace> traces) {
        double[] x = new double[POINTS];
        double[] y = new double[POINTS];
        for (int i = 0; i < POINTS; i++) {
            x[i] = current * (0.03 + 0.94 * i / (POINTS - 1));
            y[i] = test.reading(x[i]);
        }
        traces.add(new Curve.Trace(bound.name().toLowerCase(Locale.ROOT) + " soil", x, y));
        if (bound == Bound.NOMINAL) {
            double[] flat = new double[POINTS];
            Arrays.fill(flat, test.resistance());
            traces.add(new Curve.Trace("resistance, nominal soil", x, flat));
        }
    }

    /** What the reading says about the electrode once the probes are allowed for, about the soil, and the worst season. */
    private void evaluate(String id, Measurement reading, double error) throws MissingInput {
        double read = reading.value().nominal();
        double corrected = read / (1 + error);
        results.add(result(id + ".corrected", "nominal", corrected, "ohm")
                .withWorked(Worked.of("R", "R_m / (1 + e)")
                        .with("R_m", read, "ohm")
                        .with("e", error, "")
                        .gives(corrected, "ohm")));
        boolean state = states(reading.soilState()).get(0);
        double model = SiteEarth.inState(site, Bound.NOMINAL, state, in, cache).resistance(reading.of(), reading.of());
        boolean encased = SiteVariant.electrode(site, reading.of())
                .map(electrode -> electrode.concrete() != null)
                .orElse(false);
        if (encased) {
            gaps.add(new Gap(
                    id + ".soil-factor",
                    Case.NONE,
                    "a reading of an electrode in concrete does not tell its ground from its concrete",
                    List.of()));
        } else {
            results.add(result(id + ".soil-factor", "nominal", corrected / model, "")
                    .withWorked(Worked.of("k", "R / R_n")
                            .with("R", corrected, "ohm")
                            .with("R_n", model, "ohm")
                            .gives(corrected / model, "")));
        }
        Season season = site.soil() == null ? null : site.soil().season();
        if (season == null || reading.soilState() == null || reading.soilState() == SoilState.UNKNOWN) {
            gaps.add(new Gap(
                    id + ".worst-season",
                    Case.NONE,
                    season == null
                            ? "the season of the ground is not described, the reading cannot be brought to the worst one"
                            : "the state of the ground at the reading is not told",
                    List.of(season == null ? "soil.season" : "measurements.soil-state")));
            return;
        }
        in.choice("", "the reading is brought to the worst season by the model", SEASON);
        double dry = SiteEarth.inState(site, Bound.NOMINAL, true, in, cache).resistance(reading.of(), reading.of());
        results.add(result(id + ".worst-season", "nominal", corrected * dry / model, "ohm")
                .withWorked(Worked.of("R_w", "R * R_d / R_n")
                        .with("R", corrected, "ohm")
                        .with("R_d", dry, "ohm")
                        .with("R_n", model, "ohm")
                        .gives(corrected * dry / model, "ohm")));
    }

    private void add(String id, String at, double value, String unit) {
        results.add(result(id, at, value, unit));
    }

    private static Result result(String id, String at, double value, String unit) {
        return Result.of(id, Case.NONE, at, value, unit, MODEL, FallOfPotential.SOURCE);
    }
}
