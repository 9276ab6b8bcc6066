package earthing.study;

import earthing.network.TimeGrid;
import earthing.network.TransientSolution;
import earthing.network.Waveform;
import earthing.quantity.Dimension;
import earthing.quantity.Source;
import earthing.quantity.Worked;
import earthing.site.ControlCable;
import earthing.site.Core;
import earthing.site.Site;
import earthing.site.Surges;
import earthing.site.SwitchState;
import earthing.site.Tank;
import earthing.surge.TwoSectionArrester;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * The same stroke to a phase conductor instead of the tank: the line takes its share each way, the arrester of the struck
 * phase passes the rest into the tank, the healthy phases' arresters conduct backwards once the tank has risen above their
 * residual voltage. For the site's own arrangement, nominal soil, 8/20. Beside the standard case, not in its place.
 */
final class LineEntryStudy {

    private static final Source MODEL =
            Source.tool("circuit of the pole with line and arresters in the time domain, docs/theory/surge-entry.md");
    /** Keeps peaks to 0.1 %. */
    private static final double TOLERANCE = 1e-3;

    private final Site site;
    private final EarthCache cache;
    private final Inputs in = new Inputs();
    private final List<Result> results = new ArrayList<>();
    private final List<Gap> gaps = new ArrayList<>();
    private final Set<String> notes = new LinkedHashSet<>();

    private LineEntryStudy(Site site, EarthCache cache) {
        this.site = site;
        this.cache = cache;
    }

    static StudyResults of(Site site, EarthCache cache) {
        return new LineEntryStudy(site, cache).run();
    }

    private StudyResults run() {
        Case circumstances = Case.NONE.with("wave", Surges.STANDARD_WAVE).with("entry", Case.LINE_CONDUCTOR);
        try {
            double peak = in.orElse(
                    site.surges() == null ? null : site.surges().current(),
                    "surges.current",
                    SurgeStudy.CURRENT,
                    Dimension.CURRENT,
                    SurgeStudy.STANDARD_CURRENT);
            OwnPole own = OwnPole.of(site, cache, in);
            for (Map.Entry<String, String> key : own.circumstances().keys().entrySet()) {
                circumstances = circumstances.with(key.getKey(), key.getValue());
            }
            EntryInputs line = EntryInputs.of(site, in);
            Site arranged = own.arranged();
            SiteEarth earth = own.earth();
            SurgeWave wave = SurgeWave.named(Surges.STANDARD_WAVE);
            EarthPaths paths = EarthPaths.of(arranged);
            PoleCircuit.Built open = PoleCircuit.of(arranged, paths, earth, wave.current(peak), false, in);
            PoleCircuit.Built closed = PoleCircuit.of(arranged, paths, earth, wave.current(peak), true, in);
            for (boolean switchOpen : switchStates(site)) {
                // Without arresters at the neighbours a stroke one span away gives the same a time of travel later.
                boolean away = line.neighboursHaveArresters() && !switchOpen;
                for (boolean here : away ? new boolean[] {true, false} : new boolean[] {true}) {
                    Case which = circumstances
                            .with("strike", here ? "here" : "one-span")
                            .with("switch", switchOpen ? "open" : "closed");
                    solve(
                            open,
                            closed,
                            line,
                            earth,
                            new LineEntry.Situation(here, switchOpen, OptionalDouble.empty()),
                            wave,
                            peak,
                            which);
                }
            }
            limits(line);
        } catch (MissingInput missing) {
            gaps.add(missing.gap("surge", circumstances));
        }
        return new StudyResults(results, List.of(), gaps, in.assumptions(), List.copyOf(notes));
    }

    /** The declared state of the switch, else both: whether it is open. */
    static List<Boolean> switchStates(Site site) {
        Tank tank = site.tank();
        SwitchState state = tank == null ? null : tank.switchState();
        if (state == SwitchState.CLOSED) {
            return List.of(false);
        }
        return state == SwitchState.OPEN ? List.of(true) : List.of(false, true);
    }

    private void solve(
            PoleCircuit.Built open,
            PoleCircuit.Built closed,
            EntryInputs line,
            SiteEarth earth,
            LineEntry.Situation wanted,
            SurgeWave wave,
            double peak,
            Case which)
            throws MissingInput {
        TimeGrid grid = new TimeGrid(wave.end(), wave.firstStep(), TOLERANCE);
        LineEntry.Situation situation = wanted;
        LineEntry.Joined joined = LineEntry.join(open.circuit(), line, situation, wave.current(peak));
        TransientSolution solution = TransientSolution.solve(joined.circuit(), grid);
        double stress = peak(solution.voltage(joined.struck(), EarthPaths.TANK));
        results.add(number("surge.bushing.struck.voltage", which, stress, "V"));
        if (line.impulseLevel().isEmpty() && !hasArrester(joined)) {
            throw new MissingInput(
                    "no arrester is at the struck terminal and its withstand is not given, so what flashes over is open",
                    "tank.impulse-level");
        }
        healthy(joined, solution, which);
        if (line.impulseLevel().isPresent()
                && highest(joined, solution, line, which) > line.impulseLevel().get()) {
            situation = new LineEntry.Situation(
                    wanted.here(),
                    wanted.open(),
                    OptionalDouble.of(line.impulseLevel().get()));
            joined = LineEntry.join(open.circuit(), line, situation, wave.current(peak));
            solution = TransientSolution.solve(joined.circuit(), grid);
            flashovers(solution, which);
        }
        emitPole(open, joined, solution, line, earth, peak, which);
        EntryCurrents.arresters(joined, solution, (id, value, unit) -> results.add(number(id, which, value, unit)));
        TransientSolution shorted = TransientSolution.solve(
                LineEntry.join(closed.circuit(), line, situation, wave.current(peak))
                        .circuit(),
                grid);
        cableEnds(open, solution, shorted.current(PoleCircuit.CORE), which);
    }

    private static boolean hasArrester(LineEntry.Joined joined) {
        return joined.arresters().keySet().stream()
                .anyMatch(name -> joined.struck().equals("phase " + name.replace('-', ' ')));
    }

    private void emitPole(
            PoleCircuit.Built built,
            LineEntry.Joined joined,
            TransientSolution solution,
            EntryInputs line,
            SiteEarth earth,
            double peak,
            Case which)
            throws MissingInput {
        Waveform total = EntryCurrents.intoTank(joined, solution);
        Result entering = number("surge.down-lead.current.peak", which, peak(total), "A");
        Optional<String> main = EarthPaths.mainElectrode(site).filter(earth.names()::contains);
        if (main.isPresent()) {
            double z = line.impedance(joined.directions())[0][0];
            double r = earth.resistance(main.get(), main.get());
            boolean arc =
                    solution.flashovers().stream().anyMatch(f -> f.gap().equals(LineEntry.BUSHING + joined.struck()));
            double residual = hasArrester(joined) && !arc ? line.residual() : 0;
            double current = Math.max(0, (z * peak - residual) / (z + r));
            entering = entering.withHandValue(current)
                    .withWorked(Worked.of("I_l", "(Z * I - U_r) / (Z + R)")
                            .with("Z", z, "ohm")
                            .with("I", peak, "A")
                            .with("U_r", residual, "V")
                            .with("R", r, "ohm")
                            .gives((z * peak - residual) / (z + r), "A"));
        }
        results.add(entering);
        MemberCurrents.peaks(built.circuit(), solution, peak)
                .forEach((member, current) ->
                        results.add(number("surge." + EarthPaths.key(member) + ".current.peak", which, current, "A")));
        results.add(number("surge.tank.peak", which, peak(solution.potential(EarthPaths.TANK)), "V"));
        results.add(number("surge.cubicle.peak", which, peak(solution.potential(EarthPaths.CUBICLE)), "V"));
    }

    /** The largest prospective voltage over a bushing that is not struck. */
    private void healthy(LineEntry.Joined joined, TransientSolution solution, Case which) {
        double worst = 0;
        for (String terminal : joined.terminals()) {
            if (!terminal.equals(joined.struck())) {
                worst = Math.max(worst, peak(solution.voltage(terminal, EarthPaths.TANK)));
            }
        }
        results.add(number("surge.bushing.healthy.voltage", which, worst, "V"));
    }

    /** Highest prospective voltage over any bushing and over the open switch; the latter is an own result. */
    private double highest(LineEntry.Joined joined, TransientSolution solution, EntryInputs line, Case which) {
        double worst = 0;
        for (String terminal : joined.terminals()) {
            worst = Math.max(worst, peak(solution.voltage(terminal, EarthPaths.TANK)));
        }
        double across = 0;
        for (String phase : LineEntry.PHASES) {
            String source = "phase " + phase + " source";
            String load = "phase " + phase + " load";
            if (joined.terminals().contains(source) && joined.terminals().contains(load)) {
                across = Math.max(across, peak(solution.voltage(source, load)));
            }
        }
        if (across > 0) {
            results.add(number("surge.gap.open-switch.voltage", which, across, "V"));
            if (line.impulseLevel().isPresent()) {
                results.add(Result.of(
                        "surge.gap.open-switch.strength",
                        which,
                        "nominal",
                        line.impulseLevel().get(),
                        "V",
                        "voltage across the open switch against the tank's impulse level",
                        MODEL));
            }
        }
        return Math.max(worst, across);
    }

    /** What strikes, when and at which voltage; the currents after it are in all other results of the case. */
    private void flashovers(TransientSolution solution, Case which) {
        for (TransientSolution.Flashover arc : solution.flashovers()) {
            String id = "surge.flashover." + EarthPaths.key(arc.gap()) + ".";
            results.add(number(id + "time", which, arc.time(), "s"));
            results.add(number(id + "voltage", which, Math.abs(arc.voltage()), "V"));
            results.add(number(id + "current.peak", which, peak(solution.current(arc.gap())), "A"));
        }
        notes.add("a stroke to the line brings bushings or the open switch beyond the tank's impulse level ("
                + which.text() + "): their voltages are prospective, the currents are those with the arcs");
    }

    private void cableEnds(PoleCircuit.Built built, TransientSolution solution, Waveform core, Case which) {
        Waveform voltage = solution.voltage(PoleCircuit.CORE_END, EarthPaths.CUBICLE);
        Waveform.Extreme top = voltage.peak();
        double sign = Math.signum(top.value());
        double resistive = sign * CablePath.resistive(built.path(), built.circuit(), solution, top.time());
        for (String key : coreKeys(site)) {
            for (String end : List.of("tank", "cubicle")) {
                String id = "surge.cable-end." + key + "." + end + ".";
                results.add(number(id + "open-voltage", which, Math.abs(top.value()), "V"));
                results.add(number(id + "time-of-peak", which, top.time(), "s"));
                results.add(number(id + "resistive", which, resistive, "V"));
                results.add(number(id + "inductive", which, Math.abs(top.value()) - resistive, "V"));
                results.add(number(id + "short-circuit-current", which, peak(core), "A"));
                results.add(number(id + "charge", which, Math.abs(core.integral()), "C"));
            }
        }
    }

    private static List<String> coreKeys(Site site) {
        ControlCable cable = site.controlCable();
        return cable == null || cable.cores().isEmpty()
                ? List.of("core")
                : cable.cores().stream().map(Core::name).map(EarthPaths::key).toList();
    }

    private void limits(EntryInputs line) {
        notes.add(
                "the stroke to the line hits an outer phase; lines are lossless, without corona, and flashovers of line"
                        + " insulators are not followed, so what arrives is on the high side");
        if (line.detailed().isPresent()) {
            notes.add(
                    "the arrester of the struck phase follows the front by the two-section model, valid for fronts from "
                            + TwoSectionArrester.SHORTEST_FRONT * 1e6 + " us; the others follow their 8/20 curve");
        } else if (line.sides() > 0) {
            notes.add(
                    "the arresters follow their 8/20 residual curve whatever the front; with the steep residual voltage"
                            + " and the rated voltage the struck one would follow the front");
        }
        if (line.neighboursHaveArresters()) {
            notes.add("neighbouring poles are followed over " + LineEntry.FOLLOWED
                    + " spans each way, with arresters on all phases; beyond them the line is endless");
        } else {
            notes.add(
                    "without arresters at the neighbouring poles a stroke one span away brings the same as one at this"
                            + " pole, a time of travel later");
        }
    }

    private static double peak(Waveform waveform) {
        return Math.abs(waveform.peak().value());
    }

    private static Result number(String id, Case which, double value, String unit) {
        return Result.of(id, which, "nominal", value, unit, "stroke to a phase conductor, line and arresters", MODEL);
    }
}
