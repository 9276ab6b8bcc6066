package earthing.study;

import earthing.network.Circuit;
import earthing.network.KirchhoffCheck;
import earthing.network.TimeGrid;
import earthing.network.TransientSolution;
import earthing.network.Waveform;
import earthing.quantity.Source;
import earthing.site.ControlCable;
import earthing.site.Core;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * What the declared protectors of a core let through: the nonlinear solution with each of them in the loop of the core. An
 * end without a protector is taken as conducting – bonded, or its insulation broken down – since otherwise no current flows
 * and the protector is spared. Where the loop stays open at that end, the whole open voltage stands there: a protector at
 * one end does not relieve the other.
 */
final class LetThrough {

    private static final Source MODEL = Source.tool(
            "circuit of the pole with the protectors of the core, nonlinear in the time domain, docs/theory/surge-path.md");
    private static final String BETWEEN = "core between its protectors";
    private static final List<String> ENDS = List.of("tank", "cubicle");
    /** Peaks to 0.1 %. */
    private static final double TOLERANCE = 1e-4;

    private final PoleCircuit.Built open;
    private final TimeGrid grid;
    private final Case circumstances;
    private final String at;
    private final Inputs in;
    private final Set<String> notes;
    private final Map<Map<String, CoreProtector>, Map<String, Duty>> solved = new HashMap<>();
    private final List<Result> results = new ArrayList<>();

    /** What one protector has to bear, and what it lets through. */
    private record Duty(double voltage, double leads, double current, double charge, double energy) {}

    private LetThrough(
            PoleCircuit.Built open, TimeGrid grid, Case circumstances, String at, Inputs in, Set<String> notes) {
        this.open = open;
        this.grid = grid;
        this.circumstances = circumstances;
        this.at = at;
        this.in = in;
        this.notes = notes;
    }

    /**
     * The results of every protected core end of a cable.
     *
     * @param open circuit of the pole with the core open at the cubicle
     * @param wave how long and how finely it has to be followed
     */
    static List<Result> of(
            ControlCable cable,
            PoleCircuit.Built open,
            SurgeWave wave,
            Case circumstances,
            String at,
            Inputs in,
            Set<String> notes)
            throws MissingInput {
        TimeGrid grid = new TimeGrid(wave.end(), wave.firstStep(), TOLERANCE);
        LetThrough study = new LetThrough(open, grid, circumstances, at, in, notes);
        for (Core core : cable.cores()) {
            study.core(core);
        }
        return study.results;
    }

    private void core(Core core) throws MissingInput {
        Map<String, CoreProtector> protectors = new LinkedHashMap<>();
        Optional<CoreProtector> tank = CoreProtector.of(core.tankProtector(), in);
        Optional<CoreProtector> cubicle = CoreProtector.of(core.cubicleProtector(), in);
        tank.ifPresent(p -> protectors.put("tank", p));
        cubicle.ifPresent(p -> protectors.put("cubicle", p));
        if (protectors.isEmpty()) {
            return;
        }
        Map<String, Duty> duties = solved.computeIfAbsent(protectors, this::solve);
        for (String end : ENDS) {
            Duty duty = duties.get(end);
            if (duty != null) {
                String id = "surge.cable-end." + EarthPaths.key(core.name()) + "." + end + ".";
                add(id + "let-through", duty.voltage(), "V");
                if (duty.leads() > 0) {
                    add(id + "protector-lead-voltage", duty.leads(), "V");
                }
                add(id + "protector-current", duty.current(), "A");
                add(id + "protector-charge", duty.charge(), "C");
                add(id + "protector-energy", duty.energy(), "J");
            }
        }
    }

    /** All protectors of a loop carry the same current, so they may stand in series at one place of it. */
    private Map<String, Duty> solve(Map<String, CoreProtector> protectors) {
        Circuit.Builder circuit = open.circuit().toBuilder();
        String from = PoleCircuit.CORE_END;
        Map<String, String[]> places = new LinkedHashMap<>();
        for (Map.Entry<String, CoreProtector> entry : protectors.entrySet()) {
            boolean last = places.size() == protectors.size() - 1;
            String to = last ? EarthPaths.CUBICLE : BETWEEN;
            entry.getValue().addWithLeads(circuit, name(entry.getKey()), from, to);
            places.put(entry.getKey(), new String[] {from, to});
            from = to;
        }
        TransientSolution solution = TransientSolution.solve(circuit.build(), grid);
        KirchhoffCheck check = KirchhoffCheck.of(solution);
        if (!check.within(SurgeStudy.RECHECK_BOUND)) {
            notes.add("the re-check of the circuit with protectors by Kirchhoff's laws and energy leaves "
                    + check.worst() + " (for " + circumstances.text() + ")");
        }
        Map<String, Duty> duties = new LinkedHashMap<>();
        // A loop that nothing drives lets nothing through; what the solver leaves there is rounding.
        double nothing = SurgeCase.ROUNDING
                * Math.abs(solution.potential(EarthPaths.TANK).peak().value());
        places.forEach((end, nodes) -> {
            CoreProtector protector = protectors.get(end);
            boolean leads = protector != null && protector.leadInductance() > 0;
            Waveform voltage = solution.voltage(nodes[0], nodes[1]);
            Waveform own = leads ? solution.voltage(name(end), nodes[1]) : voltage;
            Waveform current = solution.current(name(end));
            if (Math.abs(voltage.peak().value()) < nothing) {
                duties.put(end, new Duty(0, 0, 0, 0, 0));
                return;
            }
            duties.put(
                    end,
                    new Duty(
                            Math.abs(voltage.peak().value()),
                            Math.abs(voltage.minus(own).peak().value()),
                            Math.abs(current.peak().value()),
                            current.combine(current, (a, b) -> Math.abs(a)).integral(),
                            own.combine(current, (v, i) -> v * i).integral()));
        });
        Set<String> beyond = new LinkedHashSet<>(solution.beyondData());
        if (!beyond.isEmpty()) {
            notes.add(String.join(", ", beyond) + ": more than twice its rated current, its curve is extrapolated ("
                    + circumstances.text() + ")");
        }
        return duties;
    }

    private static String name(String end) {
        return "protector at " + end;
    }

    private void add(String id, double value, String unit) {
        results.add(Result.of(
                id,
                circumstances,
                at,
                value,
                unit,
                "protectors of the core in the circuit, the end without one conducting",
                MODEL));
    }
}
