package earthing.study;

import earthing.network.Circuit;
import earthing.network.TimeGrid;
import earthing.network.TransientSolution;
import earthing.network.Wave;
import earthing.network.Waveform;
import earthing.quantity.Dimension;
import earthing.quantity.Numbers;
import earthing.quantity.Source;
import earthing.quantity.Worked;
import earthing.site.ControlCable;
import earthing.site.Core;
import earthing.site.Site;
import earthing.surge.ConcaveFront;
import earthing.surge.InducedVoltage;
import earthing.surge.InducedWave;
import earthing.surge.RampResponse;
import earthing.surge.SampledImpulse;
import earthing.surge.StrikingDistance;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;

/**
 * A stroke to the ground beside the line: the voltage that it induces stands on all phases alike, the arresters pass what
 * exceeds their residual voltage into the tank. The median first stroke, nominal soil, the site as it is. Information
 * beside the standard current into the tank.
 */
final class InducedStudy {

    private static final Source MODEL =
            Source.tool("induced voltage behind the line's surge impedance, arresters and pole in the time domain,"
                    + " docs/theory/surge-entry.md");
    private static final Source NEAREST = Source.tool(
            "the nearest at which a median first stroke does not end on the line, after its striking distance");
    private static final double TOLERANCE = 1e-3;
    private static final double END = 200e-6;
    private static final double FIRST_STEP = 1e-8;

    private final Site site;
    private final EarthCache cache;
    private final Inputs in = new Inputs();
    private final List<Result> results = new ArrayList<>();
    private final List<Gap> gaps = new ArrayList<>();
    private final Set<String> notes = new LinkedHashSet<>();

    private InducedStudy(Site site, EarthCache cache) {
        this.site = site;
        this.cache = cache;
    }

    static StudyResults of(Site site, EarthCache cache) {
        return new InducedStudy(site, cache).run();
    }

    private StudyResults run() {
        Case which = Case.NONE
                .with("wave", "first-stroke")
                .with("entry", Case.INDUCED)
                .with("strike", "nearby");
        try {
            OwnPole own = OwnPole.of(site, cache, in);
            for (Map.Entry<String, String> key : own.circumstances().keys().entrySet()) {
                which = which.with(key.getKey(), key.getValue());
            }
            EntryInputs line = EntryInputs.of(site, in);
            if (line.directions() != 2) {
                throw new MissingInput("the formula of the induced voltage holds where the line passes the pole, not at"
                        + " its end or at a branch");
            }
            solve(own, line, which);
        } catch (MissingInput missing) {
            gaps.add(missing.gap("surge", which));
        }
        return new StudyResults(results, List.of(), gaps, in.assumptions(), List.copyOf(notes));
    }

    private void solve(OwnPole own, EntryInputs line, Case which) throws MissingInput {
        ConcaveFront stroke = ConcaveFront.medianFirst();
        double height = RiskExposure.height(site, in);
        double nearest = StrikingDistance.nearestToGround(stroke.peak(), height);
        double distance = in.orElse(
                site.surges() == null ? null : site.surges().inducedDistance(),
                "surges.induced-distance",
                Math.ceil(nearest),
                Dimension.LENGTH,
                NEAREST);
        InducedSource source = InducedSource.of(own, line, height);
        if (!(distance > source.height())) {
            throw new MissingInput(
                    "the stroke has to be further from the line than the line's effective height, "
                            + Numbers.brief(source.height()) + " m",
                    "surges.induced-distance");
        }
        if (distance < nearest) {
            notes.add("a median first stroke so near to the line would end on the line: its striking distance reaches "
                    + Numbers.brief(nearest) + " m");
        }
        double[] times = RampResponse.knots(stroke, END);
        double[] current = new double[times.length];
        for (int k = 0; k < times.length; k++) {
            current[k] = stroke.at(times[k]);
        }
        double[] induced = new InducedWave(source.height(), distance).voltages(times, current);
        SampledImpulse sampled = new SampledImpulse(times, induced);
        double peak = sampled.shape().peak();
        Wave voltage = landing(sampled, times, induced);
        double simple = InducedVoltage.simplifiedPeak(stroke.peak(), source.height(), distance);
        results.add(number("surge.induced.distance", which, distance, "m"));
        results.add(number("surge.induced.stroke-current", which, stroke.peak(), "A"));
        results.add(Result.of(
                        "surge.induced.voltage",
                        which,
                        "nominal",
                        peak,
                        "V",
                        "voltage that a stroke to the ground induces in the line without arresters",
                        InducedVoltage.SOURCE)
                .withHandValue(simple)
                .withWorked(Worked.of("U", "38.8 * I * (h + 0.15 * r^0.5) / y")
                        .with("I", stroke.peak(), "A")
                        .with("h", height, "m")
                        .with("r", own.earth().soil().layers().get(0).resistivity(), "ohm.m")
                        .with("y", distance, "m")
                        .gives(simple, "V")));
        if (line.sides() == 0 && line.impulseLevel().isEmpty()) {
            throw new MissingInput(
                    "no arrester is fitted and the withstand of the bushings is not given, so whether the induced"
                            + " voltage enters the tank is open",
                    "tank.impulse-level");
        }
        EarthPaths paths = EarthPaths.of(own.arranged());
        Circuit open = PoleCircuit.of(own.arranged(), paths, own.earth(), voltage, false, in)
                .circuit();
        Circuit shorted = PoleCircuit.of(own.arranged(), paths, own.earth(), voltage, true, in)
                .circuit();
        TimeGrid grid = new TimeGrid(END, FIRST_STEP, TOLERANCE);
        OptionalDouble strength = OptionalDouble.empty();
        LineEntry.Joined joined = LineEntry.induced(open, line, voltage, strength);
        TransientSolution solution = TransientSolution.solve(joined.circuit(), grid);
        double worst = 0;
        for (String terminal : joined.terminals()) {
            worst = Math.max(worst, peak(solution.voltage(terminal, EarthPaths.TANK)));
        }
        results.add(number("surge.bushing.healthy.voltage", which, worst, "V"));
        if (line.impulseLevel().isPresent() && worst > line.impulseLevel().get()) {
            strength = OptionalDouble.of(line.impulseLevel().get());
            joined = LineEntry.induced(open, line, voltage, strength);
            solution = TransientSolution.solve(joined.circuit(), grid);
            flashovers(solution, which);
        }
        TransientSolution bonded = TransientSolution.solve(
                LineEntry.induced(shorted, line, voltage, strength).circuit(), grid);
        emit(open, joined, solution, bonded.current(PoleCircuit.CORE), which);
        limits(line);
    }

    /**
     * The solver is to land on the peak: behind surge impedances alone nothing lags, and its steps, which follow what
     * lags, could pass over it.
     */
    private static Wave landing(SampledImpulse sampled, double[] times, double[] values) {
        int top = 0;
        for (int k = 1; k < values.length; k++) {
            top = Math.abs(values[k]) > Math.abs(values[top]) ? k : top;
        }
        TreeSet<Double> stops = new TreeSet<>(sampled.jumps());
        stops.add(times[top]);
        List<Double> ascending = List.copyOf(stops);
        return new Wave() {
            @Override
            public double at(double time) {
                return sampled.at(time);
            }

            @Override
            public List<Double> jumps() {
                return ascending;
            }
        };
    }

    /** What strikes, when and at which voltage; the currents after it are in all other results of the case. */
    private void flashovers(TransientSolution solution, Case which) {
        for (TransientSolution.Flashover arc : solution.flashovers()) {
            String id = "surge.flashover." + EarthPaths.key(arc.gap()) + ".";
            results.add(number(id + "time", which, arc.time(), "s"));
            results.add(number(id + "voltage", which, Math.abs(arc.voltage()), "V"));
            results.add(number(id + "current.peak", which, peak(solution.current(arc.gap())), "A"));
        }
        notes.add(
                "the induced voltage brings bushings beyond the tank's impulse level: their voltage is prospective, the"
                        + " currents are those with the arcs");
    }

    private void emit(Circuit pole, LineEntry.Joined joined, TransientSolution solution, Waveform core, Case which) {
        Waveform entering = solution.potential(EarthPaths.TANK).times(0);
        for (Map.Entry<String, LineEntry.Fitted> entry : joined.arresters().entrySet()) {
            LineEntry.Fitted fitted = entry.getValue();
            String id = "surge.arrester." + entry.getKey() + ".";
            for (String branch : fitted.branches()) {
                entering = entering.plus(solution.current(branch));
            }
            Waveform each = solution.current(fitted.branches().get(0)).times(1.0 / fitted.parallel());
            Waveform across = solution.voltage(fitted.top(), EarthPaths.TANK);
            results.add(number(
                    id + "current.peak", which, Math.max(0, each.maximum().value()), "A"));
            results.add(number(
                    id + "energy", which, across.combine(each, (a, b) -> a * b).integral(), "J"));
            results.add(number(id + "charge", which, Math.abs(each.integral()), "C"));
        }
        for (TransientSolution.Flashover arc : solution.flashovers()) {
            entering = entering.plus(solution.current(arc.gap()));
        }
        double total = peak(entering);
        results.add(number("surge.down-lead.current.peak", which, total, "A"));
        MemberCurrents.peaks(pole, solution, total)
                .forEach((member, current) ->
                        results.add(number("surge." + EarthPaths.key(member) + ".current.peak", which, current, "A")));
        results.add(number("surge.tank.peak", which, peak(solution.potential(EarthPaths.TANK)), "V"));
        results.add(number("surge.cubicle.peak", which, peak(solution.potential(EarthPaths.CUBICLE)), "V"));
        Waveform.Extreme top =
                solution.voltage(PoleCircuit.CORE_END, EarthPaths.CUBICLE).peak();
        for (String key : cores(site)) {
            for (String end : List.of("tank", "cubicle")) {
                String id = "surge.cable-end." + key + "." + end + ".";
                results.add(number(id + "open-voltage", which, Math.abs(top.value()), "V"));
                results.add(number(id + "time-of-peak", which, top.time(), "s"));
                results.add(number(id + "short-circuit-current", which, peak(core), "A"));
                results.add(number(id + "charge", which, Math.abs(core.integral()), "C"));
            }
        }
    }

    private static List<String> cores(Site site) {
        ControlCable cable = site.controlCable();
        return cable == null || cable.cores().isEmpty()
                ? List.of("core")
                : cable.cores().stream().map(Core::name).map(EarthPaths::key).toList();
    }

    private void limits(EntryInputs line) {
        notes.add(
                "the induced voltage holds for a straight lossless line without end, a vertical channel and a return"
                        + " stroke at 0.4 of the speed of light; poorly conducting ground counts as a greater height of the line");
        if (line.neighboursHaveArresters()) {
            notes.add("arresters at the neighbouring poles lower an induced surge; they are left out of it here");
        }
    }

    private static double peak(Waveform waveform) {
        return Math.abs(waveform.peak().value());
    }

    private static Result number(String id, Case which, double value, String unit) {
        return Result.of(
                id, which, "nominal", value, unit, "stroke to the ground beside the line, line and arresters", MODEL);
    }
}
