package earthing.reference;

import earthing.network.Breakdown;
import earthing.network.Circuit;
import earthing.network.LosslessLine;
import earthing.network.TimeGrid;
import earthing.network.TransientSolution;
import earthing.network.Wave;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Binds the model names that begin with {@code network.} to the room {@code earthing.network}. */
final class NetworkModels {

    private static final double DELAY = 250e-9;
    private static final double STEP = 5e-9;

    private NetworkModels() {}

    static void register(Map<String, ReferenceModel> models) {
        models.put("network.line.junction", NetworkModels::junction);
        models.put("network.line.pole", NetworkModels::pole);
        models.put("network.gap.ramp", NetworkModels::gapOnRamp);
        models.put("network.gap.discharge", NetworkModels::gapDischarge);
        models.put(
                "network.gap.pole-level",
                given -> gapsOfPole(
                        new Breakdown.Level(given.value("first")), new Breakdown.Level(given.value("second"))));
        models.put(
                "network.gap.pole-volt-time",
                given -> gapsOfPole(
                        new Breakdown.VoltTime(given.value("first")), new Breakdown.VoltTime(given.value("second"))));
        models.put(
                "network.gap.volt-time",
                given -> Map.of(
                        "strength", new Breakdown.VoltTime(given.value("distance")).strength(given.value("time"))));
    }

    /** A wave on a matched line meets endless lines; read half a time of travel after it has arrived and come back. */
    private static Map<String, Double> junction(Given given) {
        double voltage = given.value("voltage");
        double from = given.value("from");
        List<Double> branches = given.values("branches");
        Circuit.Builder circuit = new Circuit.Builder()
                .currentSource("source", Circuit.REFERENCE, "near", Wave.constant(2 * voltage / from))
                .resistor("behind", "near", Circuit.REFERENCE, from)
                .line("line", "near", "junction", LosslessLine.single(from, DELAY));
        for (int k = 0; k < branches.size(); k++) {
            circuit.line("branch " + k, "junction", "end " + k, LosslessLine.single(branches.get(k), 100 * DELAY));
        }
        TransientSolution solution = TransientSolution.solve(circuit.build(), TimeGrid.equal(3 * DELAY, STEP));
        Map<String, Double> result = new HashMap<>();
        result.put("transmitted", solution.potential("junction").at(1.5 * DELAY));
        result.put("reflected", solution.potential("near").at(2.5 * DELAY) - voltage);
        List<String> names = List.of("first-current", "second-current");
        for (int k = 0; k < branches.size(); k++) {
            result.put(names.get(k), solution.current("branch " + k + " near").at(1.5 * DELAY));
        }
        return result;
    }

    private static Map<String, Double> pole(Given given) {
        double delay = given.value("delay");
        TransientSolution solution = TransientSolution.solve(
                new Circuit.Builder()
                        .currentSource("source", Circuit.REFERENCE, "top", Wave.constant(given.value("current")))
                        .line("pole", "top", "foot", LosslessLine.single(given.value("surge-impedance"), delay))
                        .resistor("electrode", "foot", Circuit.REFERENCE, given.value("resistance"))
                        .build(),
                TimeGrid.equal(400 * delay, delay / 4));
        return Map.of(
                "first", solution.potential("top").at(delay),
                "second", solution.potential("top").at(3 * delay),
                "third", solution.potential("top").at(5 * delay),
                "last", solution.potential("top").at(399 * delay));
    }

    private static Map<String, Double> gapOnRamp(Given given) {
        double slope = given.value("slope");
        double time = given.value("time");
        TransientSolution solution = TransientSolution.solve(
                new Circuit.Builder()
                        .voltageSource("source", "a", Circuit.REFERENCE, (Wave) t -> slope * t)
                        .gap("gap", "a", "b", new Breakdown.Level(given.value("strength")), given.value("arc"))
                        .inductor("load", "b", Circuit.REFERENCE, given.value("resistance"), given.value("inductance"))
                        .build(),
                TimeGrid.equal(1.1 * time, given.value("step")));
        return Map.of(
                "struck", solution.flashovers().get(0).time(),
                "current", solution.current("gap").at(time));
    }

    private static Map<String, Double> gapDischarge(Given given) {
        double constant = given.value("arc") * given.value("capacitance");
        double expected = given.value("capacitance") * given.value("strength") / given.value("current");
        TransientSolution solution = TransientSolution.solve(
                new Circuit.Builder()
                        .currentSource("source", Circuit.REFERENCE, "a", Wave.constant(given.value("current")))
                        .capacitor("store", "a", Circuit.REFERENCE, given.value("capacitance"))
                        .gap(
                                "gap",
                                "a",
                                Circuit.REFERENCE,
                                new Breakdown.Level(given.value("strength")),
                                given.value("arc"))
                        .build(),
                TimeGrid.adaptive(expected + 2 * constant, constant / 1e4));
        double struck = solution.flashovers().get(0).time();
        return Map.of(
                "struck", struck,
                "first", solution.current("gap").maximum().value(),
                "later", solution.current("gap").at(struck + constant));
    }

    /** A lead in two coupled pieces, a gap from its middle to a cubicle on an earth of its own, a second gap behind it. */
    private static Map<String, Double> gapsOfPole(Breakdown first, Breakdown second) {
        Circuit circuit = new Circuit.Builder()
                .currentSource(
                        "surge",
                        Circuit.REFERENCE,
                        "tank",
                        time -> 12e3 * (Math.exp(-time / 30e-6) - Math.exp(-time / 2e-6)))
                .inductor("upper", "tank", "foot", 0.001, 8e-6)
                .inductor("lower", "foot", "main", 0.001, 3e-6)
                .mutual("upper", "lower", 0.6e-6)
                .resistor("earth", "main", Circuit.REFERENCE, 30)
                .inductor("own lead", "cubicle", "own", 0.001, 3e-6)
                .resistor("own earth", "own", Circuit.REFERENCE, 60)
                .gap("gap", "foot", "cubicle", first, 1)
                .resistor("far", "beyond", Circuit.REFERENCE, 20)
                .gap("second gap", "cubicle", "beyond", second, 1)
                .build();
        TransientSolution solution = TransientSolution.solve(circuit, TimeGrid.equal(20e-6, 2e-9));
        Map<String, Double> result = new HashMap<>();
        for (String node : List.of("tank", "main", "cubicle", "beyond")) {
            result.put(node, solution.potential(node).maximum().value());
        }
        result.put("struck", solution.flashovers().get(0).time());
        return result;
    }
}
