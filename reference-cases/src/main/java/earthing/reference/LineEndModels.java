package earthing.reference;

import earthing.network.Circuit;
import earthing.network.FrequencySolution;
import earthing.network.LosslessLine;
import earthing.network.NonlinearResistance;
import earthing.network.TimeGrid;
import earthing.network.TransientSolution;
import earthing.network.Wave;
import java.util.Map;
import org.apache.commons.math3.complex.Complex;

/** Binds waves that meet an arrester at the end of a line, and a stroke that divides between an earth and lines. */
final class LineEndModels {

    private static final String GROUND = Circuit.REFERENCE;
    private static final double DELAY = 250e-9;
    private static final double STEP = 5e-9;

    private LineEndModels() {}

    static void register(Map<String, ReferenceModel> models) {
        models.put("surge.arrester.line-end", given -> lineEnd(given, 1));
        models.put("surge.arrester.discharge-current", given -> lineEnd(given, given.count("lines")));
        models.put("surge.lightning.share", LineEndModels::share);
    }

    /** A wave on a matched line meets an arrester that holds its residual voltage, with no line or others behind it. */
    private static Map<String, Double> lineEnd(Given given, int lines) {
        double incident = given.value("incident");
        double impedance = given.value("surge-impedance");
        // A residual voltage of nothing is one too small to count beside the wave.
        double residual = Math.max(given.value("residual"), 1e-6 * incident);
        Circuit.Builder circuit = new Circuit.Builder()
                .currentSource("source", GROUND, "near", Wave.constant(2 * incident / impedance))
                .resistor("behind", "near", GROUND, impedance)
                .line("line", "near", "end", LosslessLine.single(impedance, DELAY))
                .nonlinear(
                        "arrester",
                        "end",
                        GROUND,
                        new NonlinearResistance.PiecewiseLinear(
                                new double[] {1e-3, 1e6}, new double[] {residual * (1 - 1e-6), residual}));
        for (int k = 1; k < lines; k++) {
            circuit.line("onward " + k, "end", "far " + k, LosslessLine.single(impedance, 100 * DELAY));
        }
        TransientSolution solution = TransientSolution.solve(circuit.build(), TimeGrid.equal(3 * DELAY, STEP));
        double current = solution.current("arrester").at(1.5 * DELAY);
        double voltage = solution.potential("end").at(1.5 * DELAY);
        return Map.of(
                "line-current",
                solution.current("line near").at(0.5 * DELAY),
                "current",
                current,
                "refraction",
                voltage / incident,
                "reflection",
                solution.potential("near").at(2.5 * DELAY) / incident - 1,
                "resistance",
                voltage / current);
    }

    private static Map<String, Double> share(Given given) {
        Circuit.Builder circuit = new Circuit.Builder()
                .currentSource("stroke", GROUND, "object", Complex.ONE)
                .resistor("earth", "object", GROUND, given.value("earth-impedance"));
        for (int k = 0; k < given.count("parallel-lines"); k++) {
            circuit.resistor("line " + k, "object", GROUND, given.value("line-impedance"));
        }
        return Map.of(
                "share",
                FrequencySolution.solve(circuit.build(), 50).current("line 0").abs());
    }
}
