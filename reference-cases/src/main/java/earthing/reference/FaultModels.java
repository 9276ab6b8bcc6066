package earthing.reference;

import earthing.fault.DecrementFactor;
import earthing.fault.DoubleEarthFault;
import earthing.fault.EarthFault;
import earthing.fault.EarthFault.Kind;
import earthing.fault.EarthFault.Phase;
import earthing.fault.EarthFaultResult;
import earthing.fault.EarthFaultSystem;
import earthing.fault.NeutralMethod;
import earthing.fault.PoleEarth;
import earthing.fault.ReturnConductor;
import earthing.fault.SingleWireEarthReturn;
import earthing.fault.clearing.Characteristic.InverseTime;
import earthing.fault.clearing.InverseCurve;
import earthing.fault.clearing.Protection;
import earthing.fault.clearing.RecloseSequence;
import earthing.fault.clearing.Shot;
import earthing.fault.line.CapacitiveCurrent;
import earthing.fault.line.SequenceImpedances;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import org.apache.commons.math3.complex.Complex;

/** Binds the model names that begin with {@code fault.} to the room {@code earthing.fault}. */
final class FaultModels {

    private FaultModels() {}

    static void register(Map<String, ReferenceModel> models) {
        models.put("fault.single-phase", given -> fault(given, Kind.singlePhase(given.value("fault-resistance", 0))));
        models.put("fault.two-phase-to-earth", given -> fault(given, Kind.twoPhases(0)));
        models.put("fault.three-phase", FaultModels::threePhase);
        models.put("fault.wire-and-pole", FaultModels::wireAndPole);
        models.put("fault.pole-rise", FaultModels::poleRise);
        models.put("fault.multi-earthed", FaultModels::multiEarthed);
        models.put("fault.capacitive", FaultModels::capacitive);
        models.put("fault.double-earth-fault", FaultModels::doubleEarthFault);
        models.put("fault.single-wire", FaultModels::singleWire);
        models.put(
                "fault.neutral-resistor",
                given -> Map.of(
                        "resistance",
                        NeutralMethod.Resistor.ofCurrent(given.value("line-voltage"), given.value("current"))
                                .resistance()));
        models.put(
                "fault.decrement-factor",
                given -> Map.of(
                        "factor",
                        DecrementFactor.of(given.value("x-over-r"), given.value("frequency"), given.value("time"))));
        models.put(
                "fault.clearing.inverse",
                given -> Map.of(
                        "time",
                        new InverseTime(
                                        1,
                                        given.value("multiplier", 1),
                                        InverseCurve.valueOf(given.word("curve")
                                                .replace('-', '_')
                                                .toUpperCase(Locale.ROOT)))
                                .operatingTime(given.value("multiple"))
                                .orElse(Double.POSITIVE_INFINITY)));
        models.put("fault.reclose", FaultModels::reclose);
        models.put("fault.successive-shots", FaultModels::successiveShots);
        FaultLineModels.register(models);
        TwoWireModels.register(models);
    }

    static Complex complex(Given given, String name) {
        return new Complex(given.value(name + "-r", 0), given.value(name + "-x", 0));
    }

    private static double phaseVoltage(Given given) {
        return given.has("phase-voltage") ? given.value("phase-voltage") : given.value("line-voltage") / Math.sqrt(3);
    }

    private static PoleEarth pole(Given given) {
        return given.has("pole") ? PoleEarth.ofResistance("pole", given.value("pole")) : PoleEarth.bolted("pole");
    }

    private static Map<String, Double> fault(Given given, Kind kind) {
        Complex positive = complex(given, "z1");
        SequenceImpedances z = new SequenceImpedances(
                positive, given.has("z2-x") ? complex(given, "z2") : positive, complex(given, "z0"));
        Complex neutral = complex(given, "neutral");
        NeutralMethod method = neutral.getImaginary() > 0
                ? new NeutralMethod.Reactor(neutral.getReal(), neutral.getImaginary())
                : neutral.getReal() > 0 ? new NeutralMethod.Resistor(neutral.getReal()) : new NeutralMethod.Solid();
        EarthFaultSystem system = new EarthFaultSystem(
                given.value("frequency", 50),
                phaseVoltage(given),
                z,
                method,
                SequenceImpedances.NONE,
                0,
                Complex.ZERO,
                Optional.empty());
        return results(EarthFault.solve(system, pole(given), kind));
    }

    private static Map<String, Double> results(EarthFaultResult r) {
        Map<String, Double> values = new LinkedHashMap<>();
        values.put("current", r.totalCurrent().abs());
        values.put("zero-sequence-current", r.totalCurrent().abs() / 3);
        values.put("x-over-r", r.xOverR());
        values.put("rise", r.earthPotentialRise().abs());
        values.put("station-rise", r.stationPotentialRise().abs());
        values.put("neutral-voltage", r.neutralDisplacement().abs());
        values.put("voltage-b", r.voltage(Phase.B).abs());
        values.put("voltage-c", r.voltage(Phase.C).abs());
        values.put("overvoltage", r.temporaryOvervoltage());
        values.put("pole-current", r.earthCurrent().abs());
        values.put("pole-share", r.earthCurrent().abs() / r.totalCurrent().abs());
        values.put(
                "wire-share",
                r.towardsStation().add(r.beyond()).abs() / r.totalCurrent().abs());
        for (Phase phase : List.of(Phase.B, Phase.C)) {
            Complex current = r.phaseCurrents().getOrDefault(phase, Complex.ZERO);
            String name = "current-" + phase.name().toLowerCase(Locale.ROOT);
            values.put(name + "-real", current.getReal());
            values.put(name + "-imaginary", current.getImaginary());
        }
        return values;
    }

    private static Map<String, Double> threePhase(Given given) {
        SequenceImpedances z = SequenceImpedances.of(complex(given, "z1"), Complex.ZERO);
        double line = phaseVoltage(given) * Math.sqrt(3);
        double twoPhase = DoubleEarthFault.atOneTank(line, z, 0).current().abs();
        return Map.of("two-phase", twoPhase, "three-phase", twoPhase * 2 / Math.sqrt(3));
    }

    private static EarthFaultSystem withWire(Given given, double phaseVoltage, Complex loop) {
        ReturnConductor wire = new ReturnConductor(
                List.of(new ReturnConductor.Span(complex(given, "wire"), Complex.ZERO, Complex.ZERO)),
                1,
                true,
                8,
                OptionalInt.empty());
        return new EarthFaultSystem(
                50,
                phaseVoltage,
                SequenceImpedances.of(loop, loop),
                new NeutralMethod.MultiEarthed(),
                SequenceImpedances.NONE,
                0,
                new Complex(given.value("station"), 0),
                Optional.of(wire));
    }

    private static Map<String, Double> wireAndPole(Given given) {
        return results(EarthFault.solve(withWire(given, phaseVoltage(given), complex(given, "loop")), pole(given)));
    }

    /** A source of so much impedance that it makes the stated fault current whatever the earths. */
    private static Map<String, Double> poleRise(Given given) {
        double voltage = 1e9;
        Complex stiff = new Complex(voltage / given.value("fault-current"), 0);
        return results(EarthFault.solve(withWire(given, voltage, stiff), pole(given)));
    }

    private static Map<String, Double> multiEarthed(Given given) {
        double span = given.value("span");
        int spans = given.count("spans-to-pole");
        ReturnConductor wire = ReturnConductor.uniform(
                complex(given, "wire"),
                complex(given, "mutual"),
                span,
                given.value("pole-earth"),
                spans,
                given.count("spans-beyond"),
                8);
        NeutralMethod method = given.has("neutral-resistor")
                ? new NeutralMethod.Resistor(given.value("neutral-resistor"))
                : new NeutralMethod.MultiEarthed();
        EarthFaultSystem system = new EarthFaultSystem(
                given.value("frequency"),
                phaseVoltage(given),
                SequenceImpedances.of(complex(given, "source-z1"), complex(given, "source-z0")),
                method,
                SequenceImpedances.of(complex(given, "line-z1"), complex(given, "line-z0"))
                        .times(span * spans),
                0,
                new Complex(given.value("station"), 0),
                Optional.of(wire));
        return results(EarthFault.solve(system, pole(given), Kind.singlePhase(given.value("fault-resistance", 0))));
    }

    private static Map<String, Double> capacitive(Given given) {
        double line = given.value("line-voltage");
        double frequency = given.value("frequency");
        double current = given.value("capacitive-current");
        double phase = line / Math.sqrt(3);
        NeutralMethod method = given.has("detuning")
                ? NeutralMethod.Resonant.detuned(phase, current, given.value("detuning"), given.value("damping"))
                : new NeutralMethod.Isolated();
        EarthFaultSystem system = new EarthFaultSystem(
                frequency,
                phase,
                SequenceImpedances.NONE,
                method,
                SequenceImpedances.NONE,
                CapacitiveCurrent.capacitance(line, frequency, current),
                Complex.ZERO,
                Optional.empty());
        return results(EarthFault.solve(system, pole(given)));
    }

    private static Map<String, Double> doubleEarthFault(Given given) {
        DoubleEarthFault fault = DoubleEarthFault.atTwoPoles(
                given.value("line-voltage"),
                SequenceImpedances.of(complex(given, "common-z1"), Complex.ZERO),
                SequenceImpedances.NONE,
                SequenceImpedances.of(complex(given, "between-z1"), complex(given, "between-z0")),
                new Complex(given.value("first"), 0),
                new Complex(given.value("second"), 0),
                0);
        return Map.of(
                "current",
                fault.current().abs(),
                "first-rise",
                fault.firstRise().abs(),
                "second-rise",
                fault.secondRise().abs());
    }

    private static Map<String, Double> singleWire(Given given) {
        SingleWireEarthReturn line = new SingleWireEarthReturn(
                given.value("voltage"),
                complex(given, "source"),
                complex(given, "line"),
                new Complex(given.value("station"), 0));
        SingleWireEarthReturn.Result result = line.fault(new Complex(given.value("pole"), 0), 0);
        return Map.of(
                "current",
                result.current().abs(),
                "rise",
                result.earthPotentialRise().abs());
    }

    private static Map<String, Double> reclose(Given given) {
        RecloseSequence.Outcome outcome = RecloseSequence.same(
                        Protection.fixed(given.value("clearing")), given.values("dead-times"))
                .run(given.value("current"));
        return Map.of(
                "shots", (double) outcome.shots().size(),
                "live-time", outcome.liveTime(),
                "elapsed", outcome.elapsedTime(),
                "joule-integral", outcome.jouleIntegral());
    }

    private static Map<String, Double> successiveShots(Given given) {
        List<Double> currents = given.values("currents");
        List<Double> times = given.values("times");
        List<Shot> shots = new ArrayList<>();
        for (int i = 0; i < currents.size(); i++) {
            shots.add(new Shot(currents.get(i), times.get(i), 1));
        }
        RecloseSequence.Outcome outcome = new RecloseSequence.Outcome.Lockout(shots);
        return Map.of(
                "joule-integral", outcome.jouleIntegral(),
                "live-time", outcome.liveTime(),
                "equivalent-current", outcome.equivalentCurrent());
    }
}
