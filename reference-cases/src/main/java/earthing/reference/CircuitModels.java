package earthing.reference;

import earthing.network.Circuit;
import earthing.network.FrequencySolution;
import earthing.network.TimeGrid;
import earthing.network.TransientSolution;
import earthing.network.Wave;
import earthing.network.Waveform;
import earthing.surge.ImpulseParameters;
import earthing.surge.PowerExponential;
import earthing.surge.SampledImpulse;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Binds the model names that begin with {@code network.circuit.}: small circuits that have a closed solution. */
final class CircuitModels {

    private static final String GROUND = Circuit.REFERENCE;

    private CircuitModels() {}

    static void register(Map<String, ReferenceModel> models) {
        models.put("network.circuit.ramp", CircuitModels::ramp);
        models.put("network.circuit.series-rlc", CircuitModels::seriesRlc);
        models.put("network.circuit.coupled-branches", CircuitModels::coupledBranches);
        models.put("network.circuit.shorted-screen", CircuitModels::shortedScreen);
        models.put("network.circuit.ladder", CircuitModels::ladder);
        models.put("network.circuit.generator", CircuitModels::generator);
        models.put("network.circuit.current-into-r-l", CircuitModels::currentIntoRl);
        models.put("network.circuit.lumped-rod", CircuitModels::lumpedRod);
    }

    /** A current that rises evenly into an inductance and a resistance in series. */
    private static Map<String, Double> ramp(Given given) {
        double steepness = given.value("steepness");
        double time = given.value("time");
        TransientSolution solution = TransientSolution.solve(
                new Circuit.Builder()
                        .currentSource("source", GROUND, "top", t -> steepness * t)
                        .inductor("branch", "top", GROUND, given.value("resistance"), given.value("inductance"))
                        .build(),
                TimeGrid.equal(time, time / 1000));
        Waveform voltage = solution.potential("top");
        return Map.of("at-once", voltage.at(time / 1000), "later", voltage.at(time));
    }

    private static Map<String, Double> seriesRlc(Given given) {
        double time = given.value("time");
        TransientSolution solution = TransientSolution.solve(
                new Circuit.Builder()
                        .voltageSource("source", "in", GROUND, Wave.constant(1))
                        .inductor("coil", "in", "out", given.value("resistance"), given.value("inductance"))
                        .capacitor("store", "out", GROUND, given.value("capacitance"))
                        .build(),
                TimeGrid.equal(time, time / 20000));
        return Map.of("voltage", solution.potential("out").at(time));
    }

    /** A current step into two coupled branches side by side. */
    private static Map<String, Double> coupledBranches(Given given) {
        double[] inductance = {given.value("first-inductance"), given.value("second-inductance")};
        double[] resistance = {given.value("first-resistance"), given.value("second-resistance")};
        double mutual = given.value("mutual");
        double constant = (inductance[0] + inductance[1] - 2 * mutual) / (resistance[0] + resistance[1]);
        TransientSolution solution = TransientSolution.solve(
                new Circuit.Builder()
                        .currentSource("source", GROUND, "top", Wave.constant(1))
                        .inductor("one", "top", GROUND, resistance[0], inductance[0])
                        .inductor("other", "top", GROUND, resistance[1], inductance[1])
                        .mutual("one", "other", mutual)
                        .build(),
                TimeGrid.equal(40 * constant, constant / 2000));
        Waveform current = solution.current("one");
        return Map.of(
                "at-once", current.at(constant / 2000),
                "after-one-constant", current.at(constant),
                "in-the-end", current.at(40 * constant));
    }

    /** A current step in a lead beside a screen that is bonded at both ends. */
    private static Map<String, Double> shortedScreen(Given given) {
        double time = given.value("time");
        double own = given.value("screen-inductance");
        double current = given.value("current");
        TransientSolution solution = TransientSolution.solve(
                new Circuit.Builder()
                        .currentSource("source", GROUND, "top", Wave.constant(current))
                        .inductor("lead", "top", GROUND, 0, given.value("lead-inductance"))
                        .inductor("screen", "far", GROUND, given.value("screen-resistance"), own)
                        .tie("bond", "far", GROUND)
                        .mutual("lead", "screen", given.value("mutual"))
                        .build(),
                TimeGrid.equal(time, time / 20000));
        Waveform screen = solution.current("screen");
        return Map.of("at-once", screen.at(time / 20000), "later", screen.at(time));
    }

    /** A voltage step on a long chain of series inductances and shunt capacitances, L = C = 1. */
    private static Map<String, Double> ladder(Given given) {
        int sections = 40;
        double end = given.value("wt") / 2;
        Circuit.Builder circuit = new Circuit.Builder().voltageSource("source", "node 0", GROUND, Wave.constant(1));
        for (int k = 1; k <= sections; k++) {
            circuit.inductor("coil " + k, "node " + (k - 1), "node " + k, 0, 1)
                    .capacitor("store " + k, "node " + k, GROUND, 1);
        }
        TransientSolution solution = TransientSolution.solve(circuit.build(), TimeGrid.equal(end, end / 8000));
        Map<String, Double> result = new HashMap<>();
        for (int node : List.of(1, 2, 5)) {
            result.put("node-" + node, solution.potential("node " + node).at(end));
        }
        return result;
    }

    /** A charged capacitance with its tail resistance discharges through the front resistance into the load. */
    private static Map<String, Double> generator(Given given) {
        double end = 200e-6;
        TransientSolution solution = TransientSolution.solve(
                new Circuit.Builder()
                        .voltageSource("charge", "low", GROUND, Wave.constant(1))
                        .capacitor("store", "low", "high", given.value("store"))
                        .resistor("tail", "high", GROUND, given.value("tail-resistance"))
                        .resistor("front", "high", "out", given.value("front-resistance"))
                        .capacitor("load", "out", GROUND, given.value("load"))
                        .build(),
                TimeGrid.equal(end, 2e-9));
        Waveform out = solution.potential("out");
        double[] times = new double[out.size()];
        double[] values = new double[out.size()];
        for (int k = 0; k < times.length; k++) {
            times[k] = out.time(k);
            values[k] = out.value(k);
        }
        ImpulseParameters shape = new SampledImpulse(times, values).shape();
        return Map.of("crest", shape.peakTime(), "front", shape.voltageFront(), "tail", shape.voltageTail());
    }

    /** A current impulse 8/20 into a lead and an electrode, and what its upper end and a piece of it see. */
    private static Map<String, Double> currentIntoRl(Given given) {
        TransientSolution solution = TransientSolution.solve(
                new Circuit.Builder()
                        .currentSource("surge", GROUND, "tank", PowerExponential.impulse820(given.value("current")))
                        .inductor("lead", "tank", GROUND, given.value("resistance"), given.value("inductance"))
                        .build(),
                TimeGrid.equal(60e-6, 5e-9));
        return Map.of("peak", solution.potential("tank").maximum().value());
    }

    /** A rod as an inductance before a resistance and a capacitance side by side. */
    private static Map<String, Double> lumpedRod(Given given) {
        FrequencySolution solution = FrequencySolution.solve(
                new Circuit.Builder()
                        .currentSource("source", GROUND, "top", org.apache.commons.math3.complex.Complex.ONE)
                        .inductor("rod", "top", "soil", 0, given.value("inductance"))
                        .resistor("leak", "soil", GROUND, given.value("resistance"))
                        .capacitor("charge", "soil", GROUND, given.value("capacitance"))
                        .build(),
                given.value("frequency"));
        return Map.of("impedance", solution.potential("top").abs());
    }
}
