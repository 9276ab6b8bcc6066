package earthing.study;

import earthing.network.Circuit;
import earthing.network.KirchhoffCheck;
import earthing.network.TimeGrid;
import earthing.network.TransientSolution;
import earthing.quantity.Source;
import earthing.site.ControlCable;
import earthing.site.Core;
import earthing.site.EndImpedance;
import earthing.site.Protector;
import earthing.site.Termination;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * What stands at the two ends of a core and what flows there with the devices in the circuit that it really ends on: a
 * coil or an instrument transformer by its impedance, a protector beside it, an open contact. Between the open voltage
 * and the short-circuit current of the pair, and for the cores only whose impedance is declared.
 */
final class CoreTerminals {

    private static final Source MODEL = Source.tool(
            "circuit of the pole with the declared devices at both ends of the core, docs/theory/surge-path.md");
    private static final String BETWEEN = "core between its devices";
    private static final List<String> ENDS = List.of("tank", "cubicle");
    private static final double TOLERANCE = 1e-4;
    /** What an open contact leaks through [Ω]; large against every winding at the frequencies of a surge. */
    private static final double OPEN = 10e6;

    private final PoleCircuit.Built pole;
    private final TimeGrid grid;
    private final Case circumstances;
    private final String at;
    private final Inputs in;
    private final Set<String> notes;
    private final Map<List<Device>, List<Stress>> solved = new HashMap<>();
    private final List<Result> results = new ArrayList<>();

    /** Resistance [Ω], inductance [H] and capacitance [F] of a winding; 0 for what is not declared. */
    private record Winding(double resistance, double inductance, double capacitance) {}

    /** What stands between core and chassis at one end; with nothing known of it the end conducts. */
    private record Device(Optional<Winding> winding, Optional<CoreProtector> protector, boolean open) {

        boolean conducts() {
            return winding.isEmpty() && protector.isEmpty() && !open;
        }
    }

    /** Largest voltage over the device and current through the core. */
    private record Stress(double voltage, double current) {}

    private CoreTerminals(
            PoleCircuit.Built pole, TimeGrid grid, Case circumstances, String at, Inputs in, Set<String> notes) {
        this.pole = pole;
        this.grid = grid;
        this.circumstances = circumstances;
        this.at = at;
        this.in = in;
        this.notes = notes;
    }

    /**
     * The results of every core with a declared impedance.
     *
     * @param pole circuit of the pole with the core open at the cubicle
     * @param wave how long and how finely it has to be followed
     */
    static List<Result> of(
            ControlCable cable,
            PoleCircuit.Built pole,
            SurgeWave wave,
            Case circumstances,
            String at,
            Inputs in,
            Set<String> notes)
            throws MissingInput {
        TimeGrid grid = new TimeGrid(wave.end(), wave.firstStep(), TOLERANCE);
        CoreTerminals study = new CoreTerminals(pole, grid, circumstances, at, in, notes);
        for (Core core : cable.cores()) {
            if (core.tankImpedance() != null || core.cubicleImpedance() != null) {
                study.core(core);
            }
        }
        return study.results;
    }

    private void core(Core core) throws MissingInput {
        List<Device> devices = List.of(
                device(core.tankEnd(), core.tankProtector(), core.tankImpedance(), "tank"),
                device(core.cubicleEnd(), core.cubicleProtector(), core.cubicleImpedance(), "cubicle"));
        List<Stress> stresses = solved.get(devices);
        if (stresses == null) {
            stresses = solve(devices);
            solved.put(devices, stresses);
        }
        for (int k = 0; k < 2; k++) {
            if (devices.get(k).conducts()) {
                continue;
            }
            String id = "surge.cable-end." + EarthPaths.key(core.name()) + "." + ENDS.get(k) + ".";
            add(id + "terminal-voltage", stresses.get(k).voltage(), "V");
            add(id + "terminal-current", stresses.get(k).current(), "A");
        }
    }

    private Device device(
            Termination termination, @Nullable Protector protector, @Nullable EndImpedance impedance, String end)
            throws MissingInput {
        if (termination == Termination.TANK) {
            return new Device(Optional.empty(), Optional.empty(), false);
        }
        Optional<Winding> winding = Optional.empty();
        if (impedance != null) {
            String key = "control-cable.cores." + end + "-impedance.";
            winding = Optional.of(new Winding(
                    impedance.resistance() == null ? 0 : in.need(impedance.resistance(), key + "resistance"),
                    impedance.inductance() == null ? 0 : in.need(impedance.inductance(), key + "inductance"),
                    impedance.capacitance() == null ? 0 : in.need(impedance.capacitance(), key + "capacitance")));
        }
        Optional<CoreProtector> fitted = CoreProtector.of(protector, in);
        boolean open = winding.isEmpty() && (termination == Termination.CONTACT || termination == Termination.OPEN);
        return new Device(winding, fitted, open);
    }

    /** One current flows through both devices, so both may stand at one place of the loop. */
    private List<Stress> solve(List<Device> devices) {
        Circuit.Builder circuit = pole.circuit().toBuilder();
        boolean both = devices.stream().noneMatch(Device::conducts);
        String[] nodes = {PoleCircuit.CORE_END, both ? BETWEEN : EarthPaths.CUBICLE, EarthPaths.CUBICLE};
        String from = nodes[0];
        List<String[]> places = new ArrayList<>();
        for (int k = 0; k < 2; k++) {
            if (devices.get(k).conducts()) {
                places.add(new String[] {from, from});
                continue;
            }
            String to = both && k == 0 ? BETWEEN : EarthPaths.CUBICLE;
            add(circuit, devices.get(k), "at " + ENDS.get(k), from, to);
            places.add(new String[] {from, to});
            from = to;
        }
        TransientSolution solution = TransientSolution.solve(circuit.build(), grid);
        KirchhoffCheck check = KirchhoffCheck.of(solution);
        if (!check.within(SurgeStudy.RECHECK_BOUND)) {
            notes.add("the re-check of the circuit with the devices of a core by Kirchhoff's laws and energy leaves "
                    + check.worst() + " (for " + circumstances.text() + ")");
        }
        double scale = Math.abs(solution.potential(EarthPaths.TANK).peak().value());
        double driving = Math.abs(solution.current(PoleCircuit.SOURCE).peak().value());
        double current = SurgeCase.settled(
                Math.abs(solution.current(PoleCircuit.CORE).peak().value()), driving);
        List<Stress> stresses = new ArrayList<>();
        for (String[] place : places) {
            double voltage = place[0].equals(place[1])
                    ? 0
                    : Math.abs(solution.voltage(place[0], place[1]).peak().value());
            stresses.add(new Stress(SurgeCase.settled(voltage, scale), current));
        }
        return stresses;
    }

    private static void add(Circuit.Builder circuit, Device device, String where, String from, String to) {
        if (device.open()) {
            circuit.resistor("open contact " + where, from, to, OPEN);
        }
        device.winding().ifPresent(winding -> {
            if (winding.inductance() > 0) {
                circuit.inductor("winding " + where, from, to, winding.resistance(), winding.inductance());
            } else if (winding.resistance() > 0) {
                circuit.resistor("winding " + where, from, to, winding.resistance());
            }
            if (winding.capacitance() > 0) {
                circuit.capacitor("capacitance " + where, from, to, winding.capacitance());
            }
        });
        device.protector().ifPresent(protector -> protector.addWithLeads(circuit, "protector " + where, from, to));
    }

    private void add(String id, double value, String unit) {
        results.add(Result.of(
                id,
                circumstances,
                at,
                value,
                unit,
                "the declared devices at both ends of the core in the circuit",
                MODEL));
    }
}
