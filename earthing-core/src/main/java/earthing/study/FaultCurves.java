package earthing.study;

import earthing.fault.EarthFault;
import earthing.fault.EarthFaultResult;
import earthing.fault.EarthFaultSystem;
import earthing.fault.PoleEarth;
import earthing.quantity.Measure.Bound;
import earthing.site.Site;
import earthing.study.FaultNetwork.State;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.apache.commons.math3.complex.Complex;

/** What the fault study shows as curves: the rise against the electrode's resistance, and along the wires of the line. */
final class FaultCurves {

    private static final int CURVE_POINTS = 25;

    private FaultCurves() {}

    /** The curves of a site; {@code own} are its solved faults as it is. */
    static List<Curve> of(Site site, FaultNetwork network, List<SolvedFault> own) throws MissingInput {
        List<Curve> curves = new ArrayList<>();
        curves.add(againstResistance(network, own));
        alongTheWire(site, own).ifPresent(curves::add);
        return curves;
    }

    /** Potential of the neutral or shield wire at every pole, for the largest source at nominal soil. */
    private static Optional<Curve> alongTheWire(Site site, List<SolvedFault> own) {
        Optional<EarthFaultResult> circuit = own.stream()
                .filter(s -> s.power().at().equals("nominal"))
                .filter(s -> s.power()
                        .circumstances()
                        .keys()
                        .getOrDefault("fault", "")
                        .equals(State.MAXIMUM.word()))
                .flatMap(s -> s.circuit().stream())
                .filter(c -> c.returnProfile().size() > 1)
                .findFirst();
        if (circuit.isEmpty()) {
            return Optional.empty();
        }
        List<Curve.Trace> traces = new ArrayList<>();
        List<EarthFaultResult.Wire> wires = circuit.get().wires();
        for (int w = 0; w < wires.size(); w++) {
            List<Complex> profile = wires.get(w).profile();
            traces.add(new Curve.Trace(
                    ReturnWires.members(site).get(w),
                    IntStream.range(0, profile.size()).asDoubleStream().toArray(),
                    profile.stream().mapToDouble(Complex::abs).toArray()));
        }
        return Optional.of(new Curve(
                "fault.rise-along-the-wire",
                wires.size() == 1
                        ? "Potential of the wire along the line, largest source"
                        : "Potential of neutral and shield wire along the line, largest source",
                "poles from the station",
                "",
                "potential rise",
                "V",
                traces));
    }

    /** Potential rise against the resistance of the electrode, for the network as it is. */
    private static Curve againstResistance(FaultNetwork network, List<SolvedFault> own) throws MissingInput {
        List<Curve.Trace> traces = new ArrayList<>();
        for (State state : State.values()) {
            EarthFaultSystem system = network.at(state, Bound.NOMINAL);
            double[] x = new double[CURVE_POINTS];
            double[] y = new double[CURVE_POINTS];
            for (int i = 0; i < CURVE_POINTS; i++) {
                x[i] = Math.pow(10, 3.0 * i / (CURVE_POINTS - 1));
                EarthFaultResult result = EarthFault.solve(
                        system,
                        PoleEarth.ofResistance("electrode", x[i]),
                        EarthFault.Kind.singlePhase(network.faultResistance(state)));
                y[i] = result.earthPotentialRise().abs();
            }
            traces.add(new Curve.Trace(state.word() + " source", x, y));
        }
        List<SolvedFault> here = own.stream()
                .filter(s -> s.flows()
                        && s.power()
                                .circumstances()
                                .keys()
                                .getOrDefault("fault", "")
                                .equals(State.MAXIMUM.word())
                        && List.of("low", "nominal", "high").contains(s.power().at()))
                .sorted(java.util.Comparator.comparingDouble(
                        s -> s.pole().impedance().abs()))
                .toList();
        traces.add(new Curve.Trace(
                "this pole, maximum source, its soil and the other earths low to high",
                here.stream().mapToDouble(s -> s.pole().impedance().abs()).toArray(),
                here.stream()
                        .mapToDouble(s -> Math.abs(s.power().rise().getOrDefault(EarthPaths.TANK, 0.0)))
                        .toArray()));
        return new Curve(
                "fault.epr-against-resistance",
                "Earth potential rise against the resistance of the electrode",
                "resistance of the electrode",
                "ohm",
                "earth potential rise",
                "V",
                traces);
    }
}
