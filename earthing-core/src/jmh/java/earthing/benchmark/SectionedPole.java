package earthing.benchmark;

import earthing.conductor.inductance.InductanceMatrix;
import earthing.conductor.inductance.Point;
import earthing.conductor.inductance.RoundConductor;
import earthing.network.Circuit;
import earthing.network.InternalImpedance;
import earthing.network.NonlinearResistance;
import earthing.network.TransientSolution;
import earthing.network.Waveform;
import earthing.surge.PowerExponential;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleFunction;
import org.apache.commons.math3.complex.Complex;

/**
 * A down-lead and a control-cable core beside it, each cut into equal sections that all couple with all; above them an
 * arrester of two sections that carries 10 kA 8/20 into the tank, below them an earth electrode and the open end of the
 * core. Arrester data and electrode are those of the pole decks among the tests.
 */
final class SectionedPole {

    /** End of the solution [s]. */
    static final double END = 50e-6;

    private static final double TOP = 9;
    private static final double BOTTOM = 0.3;
    private static final double LEAD_RADIUS = 4.72e-3;
    private static final double CORE_RADIUS = 0.9e-3;
    private static final double SPACING = 0.2;
    private static final double LEAD_RESISTANCE = 0.27e-3;
    private static final double CORE_RESISTANCE = 7.4e-3;

    private static final double[] A0_CURRENT = {
        10, 100, 1000, 2000, 4000, 6000, 8000, 10000, 12000, 14000, 16000, 18000, 20000, 30000
    };
    private static final double[] A0_VOLTAGE = {
        57750, 63558, 69300, 71808, 74250, 75108, 77154, 78408, 79596, 81246, 82500, 84546, 86658, 97218
    };
    private static final double[] A1_CURRENT = {
        100, 1000, 2000, 4000, 6000, 8000, 10000, 12000, 14000, 16000, 18000, 20000, 30000
    };
    private static final double[] A1_VOLTAGE = {
        50754, 56100, 59004, 61050, 61908, 63096, 63954, 64350, 65208, 65604, 66000, 66396, 68376
    };

    private SectionedPole() {}

    /** The circuit with this many coupled sections, an even number. */
    static Circuit circuit(int sections) {
        Circuit.Builder builder = new Circuit.Builder();
        builder.currentSource("source", Circuit.REFERENCE, "line", PowerExponential.impulse820(10e3));
        arrester(builder);
        sections(builder, sections, (radius, resistance) -> Optional.empty());
        return builder.build();
    }

    /**
     * The sections without the arrester, one ampere into the tank, for phasors.
     *
     * @param internal internal impedance of a section of a radius
     */
    static Circuit phasor(int sections, DoubleFunction<InternalImpedance> internal) {
        Circuit.Builder builder = new Circuit.Builder();
        builder.currentSource("source", Circuit.REFERENCE, "tank", Complex.ONE);
        // Equal conductors share one function, which the solver then asks once a frequency.
        InternalImpedance lead = internal.apply(LEAD_RADIUS);
        InternalImpedance core = internal.apply(CORE_RADIUS);
        sections(builder, sections, (radius, resistance) -> Optional.of(radius == LEAD_RADIUS ? lead : core));
        return builder.build();
    }

    /** Internal impedance of a section of a radius; empty for its plain resistance. */
    private interface Inner {
        Optional<InternalImpedance> of(double radius, double resistance);
    }

    private static void sections(Circuit.Builder builder, int sections, Inner inner) {
        InductanceMatrix inductances = inductances(sections);
        List<String> names = new ArrayList<>();
        for (int k = 0; k < sections; k++) {
            boolean lead = k < sections / 2;
            int along = lead ? k : k - sections / 2;
            String run = lead ? "lead" : "core";
            String name = run + " section " + (along + 1);
            String from = along == 0 ? "tank" : run + along;
            double resistance = (lead ? LEAD_RESISTANCE : CORE_RESISTANCE) * length(sections);
            Optional<InternalImpedance> skin = inner.of(radius(k, sections), resistance);
            if (skin.isPresent()) {
                builder.inductor(name, from, run + (along + 1), 0, inductances.get(k, k), skin.get());
            } else {
                builder.inductor(name, from, run + (along + 1), resistance, inductances.get(k, k));
            }
            names.add(name);
        }
        for (int i = 0; i < sections; i++) {
            for (int j = i + 1; j < sections; j++) {
                builder.mutual(names.get(i), names.get(j), inductances.get(i, j));
            }
        }
        builder.resistor("electrode", "lead" + sections / 2, Circuit.REFERENCE, 33.492674);
        builder.resistor("open end", "core" + sections / 2, "lead" + sections / 2, 1e6);
    }

    /** Length of a section [m]. */
    static double length(int sections) {
        return 2 * (TOP - BOTTOM) / sections;
    }

    /** Radius of a section [m]. */
    static double radius(int section, int sections) {
        return section < sections / 2 ? LEAD_RADIUS : CORE_RADIUS;
    }

    /** Partial inductances of all sections, the lead first. */
    static InductanceMatrix inductances(int sections) {
        List<RoundConductor> pieces = new ArrayList<>();
        for (int k = 0; k < sections; k++) {
            boolean lead = k < sections / 2;
            double from = TOP - (lead ? k : k - sections / 2) * length(sections);
            double x = lead ? 0 : SPACING;
            pieces.add(RoundConductor.between(
                    new Point(x, 0, from), new Point(x, 0, from - length(sections)), radius(k, sections)));
        }
        return InductanceMatrix.of(pieces, InductanceMatrix.Ground.NONE);
    }

    private static void arrester(Circuit.Builder builder) {
        builder.inductor("arrester lead", "line", "an", 0, 0.5e-6)
                .resistor("arrester resistance", "an", "at", 1e6)
                .inductor("A0 inductance", "an", "a0", 0, 0.212121e-6)
                .nonlinear("A0", "a0", "at", new NonlinearResistance.PiecewiseLinear(A0_CURRENT, A0_VOLTAGE))
                .inductor("A1 inductance", "a0", "a1", 0, 0.636364e-6)
                .nonlinear("A1", "a1", "at", new NonlinearResistance.PiecewiseLinear(A1_CURRENT, A1_VOLTAGE))
                .capacitor("a0 capacitance", "a0", "at", 1e-12)
                .capacitor("a1 capacitance", "a1", "at", 1e-12)
                .inductor("tank lead", "at", "tank", 0, 0.5e-6);
    }

    /** The quantities that both programs are judged by: tank, head of the arrester, open end of the core. */
    static List<Waveform> judged(TransientSolution solution, int sections) {
        return List.of(
                solution.potential("tank"),
                solution.potential("line"),
                solution.voltage("core" + sections / 2, "lead" + sections / 2));
    }
}
