package earthing.reference;

import earthing.fault.DrivingPoint;
import earthing.fault.EarthFault;
import earthing.fault.EarthFaultResult;
import earthing.fault.EarthFaultSystem;
import earthing.fault.NeutralMethod;
import earthing.fault.PoleEarth;
import earthing.fault.ReturnConductor;
import earthing.fault.SecondWire;
import earthing.fault.line.SequenceImpedances;
import earthing.fault.line.SeriesImpedance;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import org.apache.commons.math3.complex.Complex;

/** Binds the models of two return conductors on the same poles. */
final class TwoWireModels {

    private TwoWireModels() {}

    static void register(Map<String, ReferenceModel> models) {
        models.put("fault.two-wires", TwoWireModels::fault);
        models.put("fault.line.two-wire-chain", TwoWireModels::chain);
    }

    private static ReturnConductor wire(Complex self, Complex mutual, double earth, int every, int pole, int spans) {
        List<ReturnConductor.Span> all = new ArrayList<>();
        for (int k = 1; k <= spans; k++) {
            boolean earthed = earth > 0 && k != pole && Math.floorMod(k - pole, every) == 0;
            all.add(new ReturnConductor.Span(self, mutual, earthed ? new Complex(1 / earth, 0) : Complex.ZERO));
        }
        return new ReturnConductor(all, pole, true, 8, OptionalInt.empty());
    }

    private static Map<String, Double> fault(Given given) {
        double span = given.value("span");
        int pole = given.count("spans-to-pole");
        ReturnConductor neutral = wire(
                FaultModels.complex(given, "neutral").multiply(span),
                FaultModels.complex(given, "neutral-mutual").multiply(span),
                given.value("neutral-earth"),
                given.count("neutral-every"),
                pole,
                given.count("spans"));
        ReturnConductor shield = wire(
                FaultModels.complex(given, "shield").multiply(span),
                FaultModels.complex(given, "shield-mutual").multiply(span),
                given.value("shield-earth"),
                given.count("shield-every"),
                pole,
                given.count("shield-ends"));
        SecondWire second = new SecondWire(
                shield, FaultModels.complex(given, "between").multiply(span), given.count("bonded") == 1);
        EarthFaultResult r = EarthFault.solve(
                new EarthFaultSystem(
                        given.value("frequency"),
                        given.value("phase-voltage"),
                        SequenceImpedances.of(
                                FaultModels.complex(given, "source-z1"), FaultModels.complex(given, "source-z0")),
                        new NeutralMethod.MultiEarthed(),
                        SequenceImpedances.of(
                                        FaultModels.complex(given, "line-z1"), FaultModels.complex(given, "line-z0"))
                                .times(span * pole),
                        0,
                        new Complex(given.value("station"), 0),
                        Optional.of(neutral),
                        Optional.of(second)),
                PoleEarth.ofResistance("pole", given.value("pole")));
        return Map.of(
                "current", r.totalCurrent().abs(),
                "rise", r.earthPotentialRise().abs(),
                "station-rise", r.stationPotentialRise().abs(),
                "neutral-current", r.wires().get(0).away().abs(),
                "shield-current", r.wires().get(1).away().abs());
    }

    /** A pole far from both ends of two conductors that are bonded at every pole, without induction by the phases. */
    private static Map<String, Double> chain(Given given) {
        SeriesImpedance z = FaultLineModels.matrix(given);
        double span = given.value("span");
        double earth = given.value("pole-earth");
        int pole = given.count("spans-each-way");
        List<String> names = given.words("bonded");
        Complex first = z.at(names.get(0), names.get(0)).multiply(span);
        Complex second = z.at(names.get(1), names.get(1)).multiply(span);
        Complex between = z.at(names.get(0), names.get(1)).multiply(span);
        DrivingPoint seen = DrivingPoint.of(
                new EarthFaultSystem(
                        given.value("frequency"),
                        1,
                        SequenceImpedances.of(Complex.ONE, Complex.ONE),
                        new NeutralMethod.MultiEarthed(),
                        SequenceImpedances.NONE,
                        0,
                        new Complex(earth, 0),
                        Optional.of(wire(first, Complex.ZERO, earth, 1, pole, 2 * pole)),
                        Optional.of(new SecondWire(wire(second, Complex.ZERO, 0, 1, pole, 2 * pole), between, true))),
                PoleEarth.ofResistance("pole", earth));
        return Map.of(
                "resistance",
                seen.impedance().getReal(),
                "reactance",
                seen.impedance().getImaginary());
    }
}
