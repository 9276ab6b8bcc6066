package earthing.study;

import earthing.network.Waveform;
import earthing.quantity.Dimension;
import earthing.quantity.Measure.Bound;
import earthing.quantity.Numbers;
import earthing.quantity.Source;
import earthing.site.ControlCable;
import earthing.site.Core;
import earthing.site.ElectrodeModel;
import earthing.site.ScreenBond;
import earthing.site.Site;
import earthing.site.Surges;
import earthing.site.TestedArrangement;
import earthing.surge.SampledImpulse;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.concurrent.CompletableFuture;

/**
 * The surge on the pole: the named standard case "current into the tank" for every arrangement of the cubicle's earth,
 * with the screen as it is and the other way, for slow and fast waves.
 */
final class SurgeStudy {

    /** Waves that are always shown: the verdict rests on those of the site file, 8/20 where it names none. */
    static final List<String> SHOWN_WAVES = List.of("8/20", "0.25/100");

    private static final Source CIRCUIT =
            Source.tool("partial-inductance circuit in the time domain, docs/theory/surge-path.md");
    static final Source STANDARD_CURRENT = Source.standard(
            "IEC 60099-4", "nominal discharge current of distribution arresters", Source.Status.FROM_MEMORY);

    /** Largest residual of the re-check that goes without a note [1]. */
    static final double RECHECK_BOUND = 0.01;
    /** Standard current into the tank [A]. */
    static final double CURRENT = Surges.STANDARD_CURRENT;

    private static final double NOTICEABLY = 1 + 1e-9;

    private static final String ENTRY = "current-into-tank";
    private static final int FIGURE_POINTS = 240;

    private final Site site;
    private final EarthCache cache;
    private final Inputs in = new Inputs();
    private final List<Result> results = new ArrayList<>();
    private final List<Gap> gaps = new ArrayList<>();
    /** Waveforms by bond of the screen: at both ends or not. */
    private final Map<Boolean, List<Curve.Trace>> traces = new TreeMap<>();

    private final Set<String> notes = new LinkedHashSet<>();
    private final StudyScope scope;

    private SurgeStudy(Site site, EarthCache cache, StudyScope scope) {
        this.site = site;
        this.cache = cache;
        this.scope = scope;
    }

    static StudyResults of(Site site, EarthCache cache) {
        return of(site, cache, StudyScope.ALL_ARRANGEMENTS);
    }

    static StudyResults of(Site site, EarthCache cache, StudyScope scope) {
        return new SurgeStudy(site, cache, scope).run();
    }

    /** The recorded current of the site file into the tank, for every arrangement, the screen as it is. Information. */
    static StudyResults ofRecorded(Site site, EarthCache cache, SampledImpulse impulse) {
        return new SurgeStudy(site, cache, StudyScope.ALL_ARRANGEMENTS).recorded(SurgeWave.recorded(impulse));
    }

    private StudyResults recorded(SurgeWave wave) {
        ScreenBond bond = bond(site);
        for (Arrangement arrangement : Arrangement.values()) {
            Case circumstances = Case.NONE
                    .with("wave", wave.name())
                    .with("entry", ENTRY)
                    .with("arrangement", arrangement.word())
                    .with("screen-bond", word(bond));
            try {
                if (bond == ScreenBond.UNKNOWN) {
                    throw new MissingInput("how the screen is bonded is declared unknown", "control-cable.screen.bond");
                }
                Site variant = SiteVariant.screened(SiteVariant.arranged(site, arrangement, in), bond, in);
                // Peak 1: a recorded current counts as it stands.
                SurgeCase.Outcome outcome =
                        SurgeCase.solve(variant, EarthPaths.of(variant), cache, Bound.NOMINAL, wave, 1, in);
                notes.addAll(outcome.notes());
                emit(outcome, circumstances, Bound.NOMINAL);
            } catch (MissingInput missing) {
                gaps.add(missing.gap("surge", circumstances));
            }
        }
        notes.add(
                "the recorded current is straight between its samples; a coarse record makes its steps look steep or its"
                        + " front look slow");
        return new StudyResults(results, List.of(), gaps, in.assumptions(), List.copyOf(notes));
    }

    private StudyResults run() {
        List<Curve> curves = new ArrayList<>();
        CompletableFuture<StudyResults> broken = CompletableFuture.completedFuture(StudyResults.EMPTY);
        try {
            double peak = in.orElse(
                    site.surges() == null ? null : site.surges().current(),
                    "surges.current",
                    CURRENT,
                    Dimension.CURRENT,
                    STANDARD_CURRENT);
            if (site.cubicle() == null) {
                throw new MissingInput("the file describes no cubicle", "cubicle");
            }
            Optional<Arrangement> own = Arrangement.of(site.cubicle().earth());
            ScreenBond bond = bond(site);
            if (scope != StudyScope.POINT && own.isPresent() && bond != ScreenBond.UNKNOWN) {
                Case asBuilt = Case.NONE
                        .with("entry", ENTRY)
                        .with("arrangement", own.get().word())
                        .with("screen-bond", word(bond));
                Site variant = SiteVariant.screened(SiteVariant.arranged(site, own.get(), in), bond, in);
                broken = Beside.of(() -> SurgeBreaks.of(variant, cache, peak, asBuilt));
            }
            for (Arrangement arrangement : Arrangement.values()) {
                boolean isOwn = own.isPresent() && own.get() == arrangement;
                if (isOwn || own.isEmpty() || scope == StudyScope.ALL_ARRANGEMENTS) {
                    arrangement(arrangement, bond, peak, isOwn);
                }
            }
            if (own.isEmpty()) {
                undecided("how the cubicle is earthed is declared unknown", "cubicle.earth");
            }
            if (site.controlCable() != null && site.controlCable().screen() != null && bond == ScreenBond.UNKNOWN) {
                undecided("how the screen is bonded is declared unknown", "control-cable.screen.bond");
            }
            if (Surges.circuitModel(site.surges()) == ElectrodeModel.RESISTANCE) {
                notes.add(
                        "the surge circuit holds each electrode as its resistance with the mutual ones;"
                                + " surges.electrode-model offers more, and what an electrode does over frequency is told with it");
            }
            tested();
            boolean both = bond == ScreenBond.BOTH;
            waveforms(both, peak, curves);
            waveforms(!both, peak, curves);
        } catch (MissingInput missing) {
            gaps.add(missing.gap("surge", Case.NONE));
        }
        return StudyResults.join(
                List.of(new StudyResults(results, curves, gaps, in.assumptions(), List.copyOf(notes)), broken.join()));
    }

    /** A figure for a bond of the screen; that of the site stands first. */
    private void waveforms(boolean both, double peak, List<Curve> curves) {
        List<Curve.Trace> drawn = traces.getOrDefault(both, List.of());
        if (!drawn.isEmpty()) {
            curves.add(new Curve(
                    "surge.cable-end.waveforms",
                    "Open voltage of a core at the cubicle, " + Numbers.brief(peak / 1e3) + " kA 8/20 into the tank, "
                            + screen(both),
                    "time",
                    "s",
                    "voltage",
                    "V",
                    drawn));
        }
    }

    private String screen(boolean both) {
        ControlCable cable = site.controlCable();
        return cable == null || cable.screen() == null || cable.screen().bond() == ScreenBond.ABSENT
                ? both ? "with a screen bonded at both ends" : "no screen"
                : both ? "screen bonded at both ends" : "screen not bonded at both ends";
    }

    private void undecided(String reason, String key) {
        for (String id : List.of("surge.cable-end", "surge.gap", "surge.screen")) {
            gaps.add(new Gap(id, Case.NONE, reason, List.of(key)));
        }
    }

    /** The screen's bond; a cable without a screen carries none. */
    static ScreenBond bond(Site site) {
        ControlCable cable = site.controlCable();
        return cable == null || cable.screen() == null || cable.screen().bond() == ScreenBond.ABSENT
                ? ScreenBond.NONE
                : cable.screen().bond();
    }

    /** The bond that is shown beside the site's own. */
    static ScreenBond otherBond(ScreenBond own) {
        return own == ScreenBond.BOTH ? ScreenBond.NONE : ScreenBond.BOTH;
    }

    private void arrangement(Arrangement arrangement, ScreenBond bond, double peak, boolean own) {
        Set<ScreenBond> bonds = new LinkedHashSet<>(List.of(bond == ScreenBond.UNKNOWN ? ScreenBond.NONE : bond));
        if (scope == StudyScope.ALL_ARRANGEMENTS) {
            bonds.add(otherBond(bond));
        }
        Set<String> waves = new LinkedHashSet<>(scope == StudyScope.ALL_ARRANGEMENTS ? SHOWN_WAVES : List.of());
        waves.addAll(Surges.verdictWaves(site.surges()));
        for (ScreenBond each : bonds) {
            for (String wave : waves) {
                Case circumstances = Case.NONE
                        .with("wave", wave)
                        .with("entry", ENTRY)
                        .with("arrangement", arrangement.word())
                        .with("screen-bond", word(each));
                List<Bound> bounds = own && each == bond ? SiteEarth.bounds(site, scope) : List.of(Bound.NOMINAL);
                for (Bound bound : bounds) {
                    try {
                        Site variant = SiteVariant.screened(SiteVariant.arranged(site, arrangement, in), each, in);
                        SurgeCase.Outcome outcome = SurgeCase.solve(
                                variant, EarthPaths.of(variant), cache, bound, SurgeWave.named(wave), peak, in);
                        notes.addAll(outcome.notes());
                        emit(outcome, circumstances, bound);
                        if (each == bond && (own || wave.equals(Surges.STANDARD_WAVE))) {
                            terminations(variant, outcome, wave, peak, circumstances, bound, own);
                        }
                        if (bound == Bound.NOMINAL && wave.equals("8/20")) {
                            trace(outcome, arrangement, each);
                        }
                    } catch (MissingInput missing) {
                        gaps.add(missing.gap("surge", circumstances));
                    }
                }
                if (own && each == bond && scope != StudyScope.POINT) {
                    inGroundBeside(arrangement, each, wave, peak, circumstances);
                }
            }
        }
    }

    /** Ends of the ids of what a core or its protector bears; each is held against a limit of its own. */
    private static final List<String> BORNE = List.of(
            ".open-voltage",
            ".short-circuit-current",
            ".charge",
            ".terminal-voltage",
            ".let-through",
            ".protector-current",
            ".protector-charge");

    private static final String CABLE_END = "surge.cable-end.";
    private static final String GAP = "surge.gap.";
    private static final String VOLTAGE = ".voltage";

    /** Layers of which some are poor and some good can give more than ground that is poor or good throughout. */
    private void inGroundBeside(
            Arrangement arrangement, ScreenBond bond, String wave, double peak, Case circumstances) {
        Map<String, List<Result>> worst = new LinkedHashMap<>();
        try {
            boolean oneResistance = Surges.circuitModel(site.surges()) == ElectrodeModel.RESISTANCE
                    && site.stays().isEmpty()
                    && SiteEarth.of(site, Bound.NOMINAL, in, cache).names().size() == 1;
            if (oneResistance) {
                return; // it lies between those at the bounds
            }
            for (SoilPoints.Point point : SoilPoints.corners(site)) {
                Site variant = SiteVariant.screened(SiteVariant.arranged(point.site(), arrangement, in), bond, in);
                SurgeWave shape = SurgeWave.named(wave);
                SurgeCase.Outcome outcome =
                        SurgeCase.solve(variant, EarthPaths.of(variant), cache, point.bound(), shape, peak, in);
                List<Result> there = new ArrayList<>();
                Set<String> told = new LinkedHashSet<>(); // the bounds tell the same notes
                new SurgeEmission(coreKeys(), circumstances, point.at(), there, told).emit(outcome);
                ControlCable cable = variant.controlCable();
                if (cable != null) {
                    there.addAll(LetThrough.of(cable, outcome.built(), shape, circumstances, point.at(), in, told));
                    there.addAll(CoreTerminals.of(cable, outcome.built(), shape, circumstances, point.at(), in, told));
                }
                for (List<Result> group : judged(there)) {
                    String id = group.get(0).id();
                    double before =
                            worst.containsKey(id) ? strain(worst.get(id)) : strainAtBounds(group, circumstances);
                    if (strain(group) > before * NOTICEABLY) {
                        worst.put(id, group);
                    }
                }
            }
        } catch (MissingInput missing) {
            return; // told at the bounds
        }
        worst.values().forEach(results::addAll);
    }

    /** What verdicts rest on: a value alone, or that of a gap with its strength. */
    private static List<List<Result>> judged(List<Result> results) {
        List<List<Result>> judged = new ArrayList<>();
        for (Result result : results) {
            String id = result.id();
            if (isBorne(id)) {
                judged.add(List.of(result));
            } else if (id.startsWith(GAP) && id.endsWith(VOLTAGE)) {
                String strength = strength(id);
                results.stream()
                        .filter(r -> r.id().equals(strength))
                        .findFirst()
                        .ifPresent(s -> judged.add(List.of(result, s)));
            }
        }
        return judged;
    }

    /** Whether a core or its protector bears this, so that a verdict rests on it. */
    static boolean isBorne(String id) {
        return id.startsWith(CABLE_END) && BORNE.stream().anyMatch(id::endsWith);
    }

    private static String strength(String voltage) {
        return voltage.substring(0, voltage.length() - VOLTAGE.length()) + ".strength";
    }

    private static double strain(List<Result> group) {
        return group.size() == 1
                ? group.get(0).value()
                : group.get(0).value() / group.get(1).value();
    }

    private double strainAtBounds(List<Result> group, Case circumstances) {
        List<Result> own = results.stream()
                .filter(r -> r.circumstances().equals(circumstances))
                .toList();
        double worst = 0;
        for (Result one : own) {
            if (one.id().equals(group.get(0).id())) {
                double limit = group.size() == 1
                        ? 1
                        : own.stream()
                                .filter(r -> r.id().equals(group.get(1).id()) && r.at().equals(one.at()))
                                .mapToDouble(Result::value)
                                .findFirst()
                                .orElse(Double.NaN);
                worst = Math.max(worst, one.value() / limit);
            }
        }
        return worst;
    }

    /** What the cores end on: protectors of every arrangement, and between two cores for the site as it is. */
    private void terminations(
            Site variant,
            SurgeCase.Outcome outcome,
            String wave,
            double peak,
            Case circumstances,
            Bound bound,
            boolean own)
            throws MissingInput {
        ControlCable cable = variant.controlCable();
        if (cable == null) {
            return;
        }
        String at = bound.name().toLowerCase(Locale.ROOT);
        SurgeWave shape = SurgeWave.named(wave);
        results.addAll(LetThrough.of(cable, outcome.built(), shape, circumstances, at, in, notes));
        results.addAll(CoreTerminals.of(cable, outcome.built(), shape, circumstances, at, in, notes));
        if (own && bound == Bound.NOMINAL) {
            results.addAll(CorePair.of(
                    variant,
                    EarthPaths.of(variant),
                    SiteEarth.of(variant, bound, in, cache),
                    shape,
                    peak,
                    circumstances,
                    at,
                    in));
        }
    }

    private void emit(SurgeCase.Outcome outcome, Case circumstances, Bound bound) {
        new SurgeEmission(coreKeys(), circumstances, bound, results, notes).emit(outcome);
    }

    private List<String> coreKeys() {
        return coreKeys(site);
    }

    /** Ids of the cores; one of the name "core" where none is described. */
    static List<String> coreKeys(Site site) {
        ControlCable cable = site.controlCable();
        List<String> keys = new ArrayList<>();
        if (cable != null) {
            for (Core core : cable.cores()) {
                keys.add(EarthPaths.key(core.name()));
            }
        }
        if (keys.isEmpty()) {
            keys.add("core");
        }
        return keys;
    }

    private void trace(SurgeCase.Outcome outcome, Arrangement arrangement, ScreenBond bond) {
        Waveform wave = outcome.open().waveform();
        double end = 40e-6;
        double[] x = new double[FIGURE_POINTS];
        double[] y = new double[FIGURE_POINTS];
        for (int i = 0; i < FIGURE_POINTS; i++) {
            x[i] = end * i / (FIGURE_POINTS - 1);
            y[i] = wave.at(x[i]);
        }
        traces.computeIfAbsent(bond == ScreenBond.BOTH, key -> new ArrayList<>())
                .add(new Curve.Trace(arrangement.word(), x, y));
    }

    /** What the site's own model gives in the declared tested arrangement. */
    private void tested() {
        TestedArrangement tested = site.testedArrangement();
        if (tested == null) {
            return;
        }
        Case circumstances =
                Case.NONE.with("wave", tested.wave()).with("entry", ENTRY).with("arrangement", "shared");
        try {
            Site variant = SiteVariant.asTested(site, tested, in);
            SurgeCase.Outcome outcome = SurgeCase.solve(
                    variant,
                    EarthPaths.of(variant),
                    cache,
                    Bound.NOMINAL,
                    SurgeWave.named(tested.wave()),
                    in.need(tested.current(), "tested-arrangement.current"),
                    in);
            results.add(number(
                    "surge.tested-arrangement.open-voltage",
                    circumstances,
                    "nominal",
                    outcome.open().voltage(),
                    "V"));
            results.add(number(
                    "surge.tested-arrangement.short-circuit-current",
                    circumstances,
                    "nominal",
                    outcome.shortCurrent(),
                    "A"));
        } catch (MissingInput missing) {
            gaps.add(missing.gap("surge.tested-arrangement", circumstances));
        }
    }

    private static Result number(String id, Case circumstances, String at, double value, String unit) {
        return Result.of(id, circumstances, at, value, unit, "circuit of the pole, current into the tank", CIRCUIT);
    }

    static String word(ScreenBond bond) {
        return bond.name().toLowerCase(Locale.ROOT);
    }
}
