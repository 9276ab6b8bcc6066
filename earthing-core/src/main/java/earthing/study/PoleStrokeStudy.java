package earthing.study;

import earthing.network.Branch;
import earthing.network.Circuit;
import earthing.network.TimeGrid;
import earthing.network.TransientSolution;
import earthing.network.Waveform;
import earthing.quantity.Dimension;
import earthing.quantity.Measure.Bound;
import earthing.quantity.Source;
import earthing.quantity.Worked;
import earthing.site.Antenna;
import earthing.site.ArresterSide;
import earthing.site.Pole;
import earthing.site.PoleMaterial;
import earthing.site.Site;
import earthing.site.YesNo;
import earthing.study.PoleCircuit.Cores;
import earthing.study.PoleCircuit.Strike;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * A stroke to the pole itself: to the metal at its top, or to the antenna. The stream runs the other way round: the tank
 * rises first, arresters and bushings conduct backwards into the line, and from an antenna the current comes down the
 * feeder to the cubicle and by the tee to the main earth. For the site's own arrangement, nominal soil. Information beside
 * the standard current into the tank.
 */
final class PoleStrokeStudy {

    private static final Source MODEL =
            Source.tool("circuit of the pole struck at its top or antenna, line and arresters in the time domain,"
                    + " docs/theory/surge-entry.md");
    /** Keeps peaks to 0.1 %. */
    private static final double TOLERANCE = 1e-3;

    private static final double MU0_OVER_2PI = 2e-7;

    private final Site site;
    private final EarthCache cache;
    private final Inputs in = new Inputs();
    private final List<Result> results = new ArrayList<>();
    private final List<Gap> gaps = new ArrayList<>();
    private final Set<String> notes = new LinkedHashSet<>();

    private PoleStrokeStudy(Site site, EarthCache cache) {
        this.site = site;
        this.cache = cache;
    }

    static StudyResults of(Site site, EarthCache cache) {
        return new PoleStrokeStudy(site, cache).run();
    }

    private StudyResults run() {
        if (site.pole() != null) {
            strike(Strike.POLE_TOP);
        }
        if (site.antenna() != null) {
            strike(Strike.ANTENNA);
        }
        return new StudyResults(results, List.of(), gaps, in.assumptions(), List.copyOf(notes));
    }

    private void strike(Strike strike) {
        Case circumstances =
                Case.NONE.with("entry", Case.POLE).with("strike", strike == Strike.POLE_TOP ? "pole-top" : "antenna");
        try {
            OwnPole own = OwnPole.of(site, cache, in);
            for (var key : own.circumstances().keys().entrySet()) {
                circumstances = circumstances.with(key.getKey(), key.getValue());
            }
            double peak = in.orElse(
                    site.surges() == null ? null : site.surges().current(),
                    "surges.current",
                    SurgeStudy.CURRENT,
                    Dimension.CURRENT,
                    SurgeStudy.STANDARD_CURRENT);
            Struck struck = struck(own, strike, peak);
            if (strike == Strike.POLE_TOP && onTheAntenna(struck)) {
                notes.add(
                        "the bracket of the antenna is the highest earthed metal of the wooden pole: a stroke to the top"
                                + " of the pole breaks down the wood above it, if any, and is that to the antenna");
                return;
            }
            for (String wave : SurgeStudy.SHOWN_WAVES) {
                if (struck.line().isEmpty() || bothSidesAlike(struck.line().get())) {
                    solve(struck, false, SurgeWave.named(wave), circumstances.with("wave", wave));
                } else {
                    for (boolean open : LineEntryStudy.switchStates(site)) {
                        solve(
                                struck,
                                open,
                                SurgeWave.named(wave),
                                circumstances.with("wave", wave).with("switch", open ? "open" : "closed"));
                    }
                }
            }
            limits(strike);
        } catch (MissingInput missing) {
            gaps.add(missing.gap("surge", circumstances));
        }
    }

    private boolean onTheAntenna(Struck struck) throws MissingInput {
        return built(struck, SurgeWave.named(SurgeStudy.SHOWN_WAVES.get(0)), Cores.OPEN)
                .circuit()
                .branch(PoleCircuit.SOURCE)
                .to()
                .equals(SecondPaths.BRACKET);
    }

    /** The tank drives both sides alike, so that nothing passes over the switch, open or closed. */
    private static boolean bothSidesAlike(EntryInputs line) {
        return line.sides() != 1 && line.directions() == 2;
    }

    /** What is struck, and where. */
    private record Struck(
            Strike strike, Site arranged, EarthPaths paths, SiteEarth earth, Optional<EntryInputs> line, double peak) {}

    private Struck struck(OwnPole own, Strike strike, double peak) throws MissingInput {
        Site arranged = own.arranged();
        Pole pole = arranged.pole();
        // What is bolted to steel is joined to it.
        if (pole != null
                && pole.material() == PoleMaterial.STEEL
                && pole.mountingClearance() == null
                && pole.bondedToMainEarth() != YesNo.YES) {
            arranged = SiteVariant.poleBonded(arranged, YesNo.YES);
            notes.add("a stroke to a steel pole: what is bolted to the steel counts as joined to it; with"
                    + " pole.mounting-clearance given the gaps of insulated mountings count instead");
        }
        return new Struck(
                strike,
                arranged,
                EarthPaths.of(arranged),
                SiteEarth.of(arranged, Bound.NOMINAL, in, cache),
                line(),
                peak);
    }

    private Optional<EntryInputs> line() {
        Inputs asked = new Inputs();
        try {
            EntryInputs line = EntryInputs.of(site, asked);
            return Optional.of(line);
        } catch (MissingInput missing) {
            notes.add("a stroke to the pole: the line and its arresters are not described, so nothing of it leaves over"
                    + " them; the currents err high");
            return Optional.empty();
        }
    }

    private void solve(Struck struck, boolean switchOpen, SurgeWave wave, Case which) throws MissingInput {
        PoleCircuit.Built pole = built(struck, wave, Cores.OPEN);
        LineEntry.Joined joined = joined(pole, struck, switchOpen);
        PoleCircuit.Built open = with(pole, joined.circuit());
        PoleCircuit.Built shorted = built(struck, wave, Cores.BONDED);
        PoleCircuit.Built bonded =
                with(shorted, joined(shorted, struck, switchOpen).circuit());
        TimeGrid grid = new TimeGrid(wave.end(), wave.firstStep(), TOLERANCE);
        TransientSolution solution = TransientSolution.solve(open.circuit(), grid);
        List<PoleGap> where = new ArrayList<>(PoleGap.of(struck.arranged(), open, in));
        PoleGap.ofAntenna(struck.arranged(), open, in).ifPresent(where::add);
        SurgeCase.Outcome outcome = SurgeCase.of(
                        struck.paths(),
                        struck.earth(),
                        open,
                        bonded,
                        pole.circuit(),
                        where,
                        solution,
                        grid,
                        wave,
                        struck.peak())
                .worked(handOfPair(struck, pole, wave, solution));
        notes.addAll(outcome.notes());
        results.add(staying(struck, joined, solution, which));
        if (struck.strike() == Strike.POLE_TOP) {
            wood(struck, pole, which);
        }
        new SurgeEmission(
                        SurgeStudy.coreKeys(site),
                        which,
                        Bound.NOMINAL,
                        results,
                        notes,
                        struck.strike() == Strike.POLE_TOP ? "stroke to the top of the pole" : "stroke to the antenna",
                        MODEL)
                .emit(outcome);
        EntryCurrents.arresters(joined, solution, (id, value, unit) -> results.add(number(id, which, value, unit)));
        bushings(joined, solution, which);
    }

    private PoleCircuit.Built built(Struck struck, SurgeWave wave, Cores cores) throws MissingInput {
        return PoleCircuit.of(
                struck.arranged(),
                struck.paths(),
                struck.earth(),
                wave.current(struck.peak()),
                cores,
                struck.strike(),
                in);
    }

    private static PoleCircuit.Built with(PoleCircuit.Built pole, Circuit joined) {
        return new PoleCircuit.Built(joined, pole.geometry(), pole.path(), pole.notes());
    }

    private static LineEntry.Joined joined(PoleCircuit.Built pole, Struck struck, boolean switchOpen) {
        if (struck.line().isEmpty()) {
            return LineEntry.without(pole.circuit());
        }
        EntryInputs line = struck.line().get();
        OptionalDouble strength = line.impulseLevel().map(OptionalDouble::of).orElse(OptionalDouble.empty());
        return LineEntry.beside(pole.circuit(), line, switchOpen, strength);
    }

    /** The stroke less what the line takes; by hand (Z·I + U_r)/(Z + R), Z of all conductors together. */
    private Result staying(Struck struck, LineEntry.Joined joined, TransientSolution solution, Case which) {
        Waveform down = solution.current(PoleCircuit.SOURCE).plus(EntryCurrents.intoTank(joined, solution));
        Result staying = number("surge.down-lead.current.peak", which, peak(down), "A");
        Optional<String> main = EarthPaths.mainElectrode(struck.arranged())
                .filter(struck.earth().names()::contains);
        Pole pole = struck.arranged().pole();
        boolean arcs = !solution.flashovers().isEmpty();
        if (main.isEmpty() || struck.line().isEmpty() || pole == null || pole.conducts() || arcs) {
            return staying;
        }
        EntryInputs line = struck.line().get();
        double r = struck.earth().resistance(main.get(), main.get());
        if (line.sides() == 0 || !(r * struck.peak() > line.residual())) {
            return staying;
        }
        double z = line.common();
        double current = (z * struck.peak() + line.residual()) / (z + r);
        return staying.withHandValue(current)
                .withWorked(Worked.of("I_l", "(Z * I + U_r) / (Z + R)")
                        .with("Z", z, "ohm")
                        .with("I", struck.peak(), "A")
                        .with("U_r", line.residual(), "V")
                        .with("R", r, "ohm")
                        .gives(current, "A"));
    }

    /**
     * Of an antenna that is not bonded the whole current comes down the feeder and along the tee. The cores see the feeder's
     * flux through the loop of cable and main earth, M = µ0/2π·l·ln((d + f)/f), less the tee's own inductance
     * L_t = µ0/2π·l_t·(ln(2·l_t/r) − 1). Where the current divides, or a line takes a part of it up the lead, there is no
     * short hand value.
     */
    private static Optional<Worked> handOfPair(
            Struck struck, PoleCircuit.Built pole, SurgeWave wave, TransientSolution solution) {
        Antenna antenna = struck.arranged().antenna();
        boolean alone = struck.strike() == Strike.ANTENNA
                && struck.line().isEmpty()
                && antenna != null
                && antenna.feederSeparation() != null
                && antenna.feederSeparation().isKnown()
                && pole.circuit().nodes().contains(StruckMetal.ANTENNA_HEAD)
                && CablePath.throughTee(pole.path(), struck.paths())
                && pole.circuit().branches().stream()
                                .filter(b -> b.from().equals(EarthPaths.CUBICLE) || b.to().equals(EarthPaths.CUBICLE))
                                .filter(b -> !(b instanceof Branch.Capacitor))
                                .count()
                        == 2;
        if (!alone || antenna == null || antenna.feederSeparation() == null) {
            return Optional.empty();
        }
        double f = antenna.feederSeparation().nominal();
        PoleGeometry g = pole.geometry();
        double run = g.tankHeight() - g.cubicleHeight();
        double m = MU0_OVER_2PI * run * Math.log((g.separation() + f) / f);
        double time = solution.voltage(PoleCircuit.CORE_END, EarthPaths.CUBICLE)
                .peak()
                .time();
        double slope = struck.peak() * wave.slope(time);
        double tee = pole.circuit().branches(Branch.Inductor.class).stream()
                .filter(b -> b.name().equals("tee"))
                .mapToDouble(Branch.Inductor::inductance)
                .sum();
        return Optional.of(Worked.of("V", m > tee ? "(M - L_t) * S" : "(L_t - M) * S")
                .with("M", m, "H")
                .with("L_t", tee, "H")
                .with("S", slope, "A/s")
                .gives(Math.abs(m - tee) * slope, "V"));
    }

    /** On wood the stroke first has to break down the wood above the metal, before the current rises. */
    private void wood(Struck struck, PoleCircuit.Built pole, Case which) throws MissingInput {
        String node = pole.circuit().branch(PoleCircuit.SOURCE).to();
        double way = StruckMetal.wood(struck.arranged(), node, pole.geometry(), in);
        if (way > 0) {
            double strength = PoleGap.WOOD_STRENGTH * way;
            results.add(number("surge.flashover.pole-top-wood.time", which, 0, "s"));
            results.add(Result.of(
                            "surge.flashover.pole-top-wood.voltage",
                            which,
                            "nominal",
                            strength,
                            "V",
                            "wet impulse strength of the wood between the top of the pole and the highest earthed metal;"
                                    + " the wood may be split",
                            PoleGap.WOOD)
                    .withWorked(Worked.of("U_b", "E * s")
                            .with("E", PoleGap.WOOD_STRENGTH, "V/m")
                            .with("s", way, "m")
                            .gives(strength, "V")));
        }
    }

    /** Bushings and open switch that the risen tank breaks down; the currents hold with these arcs. */
    private void bushings(LineEntry.Joined joined, TransientSolution solution, Case which) {
        double worst = 0;
        for (String terminal : joined.terminals()) {
            worst = Math.max(worst, peak(solution.voltage(terminal, EarthPaths.TANK)));
        }
        if (!joined.terminals().isEmpty()) {
            results.add(number("surge.bushing.healthy.voltage", which, worst, "V"));
        }
        for (TransientSolution.Flashover arc : solution.flashovers()) {
            String id = "surge.flashover." + EarthPaths.key(arc.gap()) + ".";
            results.add(number(id + "time", which, arc.time(), "s"));
            results.add(number(id + "voltage", which, Math.abs(arc.voltage()), "V"));
            results.add(number(id + "current.peak", which, peak(solution.current(arc.gap())), "A"));
        }
    }

    private void limits(Strike strike) {
        notes.add("a stroke to the pole is a current source: the impedance of its channel is left out, and the pole is"
                + " lumped, so the fast front shows the order of magnitude");
        if (strike == Strike.POLE_TOP && site.pole() != null && site.pole().material() == PoleMaterial.WOOD) {
            notes.add(
                    "at the top of a wooden pole a stroke may end on a conductor as well, which is the stroke to the line");
        }
        if (site.arresters() == null || site.arresters().side() == ArresterSide.NONE) {
            notes.add("a stroke to the pole meets no arresters: into the line only bushings lead it that strike");
        }
    }

    private static double peak(Waveform waveform) {
        return Math.abs(waveform.peak().value());
    }

    private static Result number(String id, Case which, double value, String unit) {
        return Result.of(id, which, "nominal", value, unit, "stroke to the pole itself, line and arresters", MODEL);
    }
}
