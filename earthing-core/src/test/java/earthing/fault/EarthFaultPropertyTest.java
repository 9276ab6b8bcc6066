package earthing.fault;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import earthing.fault.EarthFault.Kind;
import earthing.fault.EarthFault.Phase;
import earthing.fault.line.CapacitiveCurrent;
import earthing.fault.line.SequenceImpedances;
import java.util.List;
import java.util.Optional;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.apache.commons.math3.complex.Complex;

class EarthFaultPropertyTest {

    private static final double PHASE = 22e3 / Math.sqrt(3);

    @Provide
    Arbitrary<NeutralMethod> methods() {
        return Arbitraries.of(
                new NeutralMethod.Solid(),
                new NeutralMethod.Resistor(12),
                new NeutralMethod.Reactor(0.5, 8),
                NeutralMethod.Resonant.detuned(PHASE, 60, 0.08, 0.04),
                new NeutralMethod.Isolated(),
                new NeutralMethod.MultiEarthed());
    }

    private static EarthFaultSystem system(NeutralMethod method, double kilometres) {
        Optional<ReturnConductor> wire = method instanceof NeutralMethod.MultiEarthed
                ? Optional.of(ReturnConductor.uniform(
                        new Complex(0.3e-3, 0.78e-3),
                        new Complex(0.05e-3, 0.42e-3),
                        80,
                        60,
                        (int) Math.round(kilometres * 12.5),
                        10,
                        8))
                : Optional.empty();
        return new EarthFaultSystem(
                50,
                PHASE,
                SequenceImpedances.of(new Complex(0.15, 1.6), new Complex(0.1, 1.3)),
                method,
                SequenceImpedances.of(new Complex(0.3, 0.36), new Complex(0.45, 1.5))
                        .times(kilometres),
                CapacitiveCurrent.capacitance(22e3, 50, 60),
                new Complex(0.5, 0),
                wire);
    }

    private static double rise(EarthFaultSystem system, double ohms) {
        return EarthFault.solve(system, PoleEarth.ofResistance("rod", ohms))
                .earthPotentialRise()
                .abs();
    }

    @Property(seed = "20261125", tries = 150)
    void riseGrowsWithResistanceAndCurrentFallsForEveryNeutralMethod(
            @ForAll("methods") NeutralMethod method,
            @ForAll @DoubleRange(min = 0.5, max = 200) double ohms,
            @ForAll @DoubleRange(min = 1, max = 20) double kilometres) {
        EarthFaultSystem system = system(method, kilometres);
        EarthFaultResult low = EarthFault.solve(system, PoleEarth.ofResistance("rod", ohms));
        EarthFaultResult high = EarthFault.solve(system, PoleEarth.ofResistance("rod", 1.2 * ohms));
        assertThat(high.earthPotentialRise().abs())
                .isGreaterThan(low.earthPotentialRise().abs());
        assertThat(high.branchCurrent("rod").abs())
                .isLessThan(low.branchCurrent("rod").abs());
        // never fault level times resistance
        double product = EarthFault.solve(system, PoleEarth.ofResistance("rod", 1e-3))
                        .totalCurrent()
                        .abs()
                * ohms;
        assertThat(low.earthPotentialRise().abs()).isLessThan(product);
    }

    @Property(seed = "20261125", tries = 50)
    void steepnessOfTheRiseFollowsTheNeutralMethod(@ForAll @DoubleRange(min = 20, max = 60) double ohms) {
        // a stiff source: doubling a resistance that already rules the loop changes little
        EarthFaultSystem stiff = system(new NeutralMethod.Solid(), 1);
        assertThat(rise(stiff, 2 * ohms) / rise(stiff, ohms)).isBetween(1.0, 1.1);
        // isolated or resonant: the rise is proportional while the electrode is small beside the network
        for (NeutralMethod method :
                List.of(new NeutralMethod.Isolated(), NeutralMethod.Resonant.detuned(PHASE, 60, 0.08, 0.04))) {
            EarthFaultSystem weak = system(method, 1);
            assertThat(rise(weak, ohms / 5) / rise(weak, ohms / 10)).isBetween(1.93, 2.0);
        }
    }

    @Property(seed = "20261125", tries = 100)
    void kirchhoffHoldsAtTheTankAndPhasesMeetTheFault(
            @ForAll("methods") NeutralMethod method,
            @ForAll @DoubleRange(min = 0.5, max = 200) double ohms,
            @ForAll @DoubleRange(min = 0, max = 50) double faultResistance,
            @ForAll boolean two) {
        EarthFaultSystem system = system(method, 6);
        Kind kind = two ? Kind.twoPhases(faultResistance) : Kind.singlePhase(faultResistance);
        EarthFaultResult r = EarthFault.solve(system, PoleEarth.ofResistance("rod", ohms), kind);
        assertThat(r.tankMismatch()).isLessThan(1e-9);
        assertThat(r.quality().residual()).isLessThan(1e-12);
        // what the faulted phase stands above the tank is the fault resistance's voltage
        for (Phase phase : kind.phases()) {
            Complex current = r.phaseCurrents().getOrDefault(phase, Complex.ZERO);
            assertThat(r.phaseToTank(phase)
                            .subtract(current.multiply(faultResistance))
                            .abs())
                    .isLessThan(1e-7 * PHASE);
        }
        // the rest of the total current returns by the network's capacitance
        Complex shunt = r.busbarZeroSequence()
                .multiply(new Complex(0, 2 * Math.PI * 50 * system.networkCapacitance()))
                .negate();
        assertThat(r.totalCurrent().subtract(r.neutralCurrent()).subtract(shunt).abs())
                .isLessThan(1e-9 * (r.totalCurrent().abs() + r.neutralCurrent().abs()));
    }

    @Property(seed = "20261125", tries = 60)
    void powerOfTheSourceIsWhatTheResistancesTake(
            @ForAll @DoubleRange(min = 0.5, max = 100) double ohms, @ForAll @IntRange(min = 1, max = 200) int spans) {
        // lossless phases, solid neutral: all power ends in wire, pole earths, rod and station earth
        double poleEarth = 40;
        Complex self = new Complex(0.02, 0.06);
        Complex mutual = new Complex(0, 0.03);
        EarthFaultSystem system = new EarthFaultSystem(
                50,
                PHASE,
                SequenceImpedances.of(new Complex(0, 1), new Complex(0, 1)),
                new NeutralMethod.MultiEarthed(),
                SequenceImpedances.of(new Complex(0, 0.4), new Complex(0, 1.2)),
                0,
                new Complex(0.7, 0),
                Optional.of(ReturnConductor.uniform(self, mutual, 1, poleEarth, spans, 3, 8)));
        EarthFaultResult r = EarthFault.solve(system, PoleEarth.ofResistance("rod", ohms));
        double given = PHASE * r.totalCurrent().getReal();
        double taken = square(r.stationPotentialRise()) / 0.7;
        List<Complex> v = r.returnProfile();
        for (int k = 1; k < v.size(); k++) {
            taken += k == spans ? square(v.get(k)) / ohms : square(v.get(k)) / poleEarth;
            Complex induced = k <= spans ? mutual.multiply(r.totalCurrent()) : Complex.ZERO;
            Complex current = v.get(k - 1).subtract(v.get(k)).subtract(induced).divide(self);
            taken += square(current) * self.getReal();
        }
        assertThat(taken).isCloseTo(given, within(1e-9 * given));
    }

    private static double square(Complex z) {
        return z.getReal() * z.getReal() + z.getImaginary() * z.getImaginary();
    }

    @Property(seed = "20261125", tries = 60)
    void currentsScaleWithVoltageAndNotWithTheNameOfThePhase(
            @ForAll("methods") NeutralMethod method, @ForAll @DoubleRange(min = 0.1, max = 5) double factor) {
        EarthFaultSystem system = system(method, 4);
        PoleEarth rod = PoleEarth.ofResistance("rod", 15);
        EarthFaultResult one = EarthFault.solve(system, rod);
        EarthFaultResult scaled = EarthFault.solve(system.withPhaseVoltage(PHASE * factor), rod);
        assertThat(scaled.totalCurrent().abs())
                .isCloseTo(
                        factor * one.totalCurrent().abs(),
                        within(1e-9 * scaled.totalCurrent().abs()));
        EarthFaultResult other = EarthFault.solve(system, rod, new Kind(java.util.Set.of(Phase.C), 0));
        assertThat(other.totalCurrent().abs())
                .isCloseTo(
                        one.totalCurrent().abs(),
                        within(1e-9 * one.totalCurrent().abs()));
        assertThat(other.loopImpedance().subtract(one.loopImpedance()).abs())
                .isLessThan(1e-9 * one.loopImpedance().abs());
    }
}
