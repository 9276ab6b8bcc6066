package earthing.fault;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import earthing.fault.EarthFault.Kind;
import earthing.fault.EarthFault.Phase;
import earthing.fault.NeutralMethod.Solid;
import earthing.fault.line.CapacitiveCurrent;
import earthing.fault.line.SequenceImpedances;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class EarthFaultTest {

    private static final PoleEarth BOLTED = PoleEarth.bolted("fault");

    static EarthFaultSystem plain(double phaseVoltage, SequenceImpedances source, SequenceImpedances line) {
        return new EarthFaultSystem(60, phaseVoltage, source, new Solid(), line, 0, Complex.ZERO, Optional.empty());
    }

    private static EarthFaultSystem plain(double phaseVoltage, SequenceImpedances source) {
        return plain(phaseVoltage, source, SequenceImpedances.NONE);
    }

    /** IEEE Std 80-2013 annex B.1 step 2 (from memory). */
    @Test
    void ieee80AnnexBFaultCurrentAt115kV() {
        EarthFaultResult r = EarthFault.solve(
                plain(115e3 / Math.sqrt(3), SequenceImpedances.of(new Complex(4, 10), new Complex(10, 40))), BOLTED);
        assertThat(r.totalCurrent().abs()).isCloseTo(3180, within(0.5));
        assertThat(r.xOverR()).isCloseTo(3.33, within(0.005));
    }

    /** IEEE Std 80-2013 annex B.1 step 2 (from memory). */
    @Test
    void ieee80AnnexBFaultCurrentAt13kV() {
        EarthFaultResult r = EarthFault.solve(
                plain(13e3 / Math.sqrt(3), SequenceImpedances.of(new Complex(0.085, 1.142), new Complex(0.034, 1.014))),
                BOLTED);
        assertThat(r.totalCurrent().abs()).isCloseTo(6814, within(0.5));
        assertThat(r.xOverR()).isCloseTo(16.2, within(0.05));
    }

    /** T. Gonen, Electric Power Distribution System Engineering, example 10.2. */
    @Test
    void gonenExample102FaultTwoMilesOut() {
        // Z_G = (2·Z1 + Z0)/3; the currents do not depend on how source and line share it
        Complex earthLoop = new Complex(1.2868, 5.5253);
        Complex positive = new Complex(0.7199, 3.4619).add(new Complex(0.0580, 0.1208).multiply(10.56));
        Complex zero = earthLoop.multiply(3).subtract(positive.multiply(2));
        EarthFaultSystem system = plain(7200, SequenceImpedances.of(positive, zero));
        assertThat(EarthFault.solve(system, BOLTED).totalCurrent().abs()).isCloseTo(1269.1, within(0.1));
        // 7200/|Z1| and its √3/2 part are the book's 1463 A and 1267 A
        assertThat(7200 / positive.abs()).isCloseTo(1463.0, within(0.5));
        double twoPhase = DoubleEarthFault.atOneTank(7200 * Math.sqrt(3), SequenceImpedances.of(positive, zero), 0)
                .current()
                .abs();
        assertThat(twoPhase).isCloseTo(1267.0, within(0.5));
    }

    /** The same feeder with the pole's electrode in the loop: circuit identity, values recomputed by hand. */
    @ParameterizedTest
    @CsvSource({"5, 860.2, 4301", "10, 572.9, 5729", "25, 268.0, 6701", "50, 139.6, 6979", "100, 71.0, 7098"})
    void electrodeInTheLoopBoundsTheRise(double ohms, double amperes, double volts) {
        Complex loop = new Complex(1.2868, 5.5253);
        EarthFaultResult r = EarthFault.solve(
                plain(7200, SequenceImpedances.of(loop, loop)), PoleEarth.ofResistance("electrode", ohms));
        assertThat(r.totalCurrent().abs()).isCloseTo(amperes, within(0.06));
        assertThat(r.earthPotentialRise().abs()).isCloseTo(volts, within(1.0));
        assertThat(r.earthPotentialRise().abs()).isLessThan(7200);
    }

    /** Chakrabarti, Soni, Gupta, Bhatnagar, A Textbook on Power System Engineering, example 3.4.3. */
    @Test
    void chakrabartiExample343HealthyPhases() {
        EarthFaultResult r = EarthFault.solve(
                plain(
                        6600 / Math.sqrt(3),
                        new SequenceImpedances(
                                new Complex(0.86, 4.95), new Complex(0.56, 0.85), new Complex(2.90, 1.38))),
                BOLTED);
        assertThat(r.totalCurrent().abs()).isCloseTo(1364, within(0.5));
        assertThat(r.totalCurrent().abs() / 3).isCloseTo(455, within(0.5));
        // the book rounds the current to 455 A first: 0.1 %
        assertThat(r.voltage(Phase.B).abs()).isCloseTo(2638, within(2.7));
        assertThat(r.voltage(Phase.C).abs()).isCloseTo(3255, within(3.3));
        assertThat(r.voltage(Phase.A).abs()).isCloseTo(0, within(1e-9));
    }

    /** The same book, example 3.4.4: two phases to earth, neutral through j0.1 ohm. */
    @Test
    void chakrabartiExample344TwoPhasesToEarth() {
        EarthFaultSystem system = new EarthFaultSystem(
                50,
                11e3 / Math.sqrt(3),
                new SequenceImpedances(new Complex(0.4, 1.0), new Complex(0.4, 0.9), new Complex(0.7, 3.1)),
                new NeutralMethod.Reactor(0, 0.1),
                SequenceImpedances.NONE,
                0,
                Complex.ZERO,
                Optional.empty());
        EarthFaultResult r = EarthFault.solve(system, BOLTED, Kind.twoPhases(0));
        Complex y = r.phaseCurrents().getOrDefault(Phase.B, Complex.ZERO);
        Complex b = r.phaseCurrents().getOrDefault(Phase.C, Complex.ZERO);
        // integers of a hand calculation in rounded steps: 0.06 %
        assertThat(y.getReal()).isCloseTo(-5128, within(3.1));
        assertThat(y.getImaginary()).isCloseTo(-933, within(3.1));
        assertThat(b.getReal()).isCloseTo(4654, within(3.1));
        assertThat(b.getImaginary()).isCloseTo(3172, within(3.1));
        assertThat(r.neutralDisplacement().abs()).isCloseTo(229, within(0.5));
    }

    static ReturnConductor oneSpan(Complex self, Complex mutual) {
        return new ReturnConductor(
                List.of(new ReturnConductor.Span(self, mutual, Complex.ZERO)), 1, true, 8, OptionalInt.empty());
    }

    /** Wadhwa, Electrical Power Systems, example 14.4: 8 ohm at 6.6 kV, and a 1000 A resistor at 11 kV. */
    @Test
    void neutralResistorsOfTextbooks() {
        EarthFaultSystem wadhwa = new EarthFaultSystem(
                50,
                6600 / Math.sqrt(3),
                SequenceImpedances.NONE,
                new NeutralMethod.Resistor(8),
                SequenceImpedances.NONE,
                0,
                Complex.ZERO,
                Optional.empty());
        double current = EarthFault.solve(wadhwa, BOLTED).totalCurrent().abs();
        double relay = 0.25 * 5e6 / (Math.sqrt(3) * 6600);
        assertThat(100 * relay / current).isCloseTo(22.96, within(0.005));
        // common practice, no published source
        assertThat(NeutralMethod.Resistor.ofCurrent(11e3, 1000).resistance()).isCloseTo(6.35, within(0.005));
    }

    @Test
    void isolatedNetworkCarriesItsCapacitiveCurrent() {
        double capacitance = CapacitiveCurrent.capacitance(20e3, 50, 30);
        EarthFaultSystem system = compensated(new NeutralMethod.Isolated(), capacitance);
        EarthFaultResult solid = EarthFault.solve(system, BOLTED);
        assertThat(solid.totalCurrent().abs()).isCloseTo(30, within(1e-9));
        assertThat(solid.neutralDisplacement().abs()).isCloseTo(20e3 / Math.sqrt(3), within(1e-6));
        assertThat(solid.temporaryOvervoltage()).isCloseTo(Math.sqrt(3), within(1e-9));
        assertThat(solid.neutralCurrent().abs()).isLessThan(1e-12);
        assertThat(solid.decrementFactor(1)).isEqualTo(1);
        // hand value with 10 ohm in the loop: I = 3ωC·E/√(1 + (3ωC·R)²)
        double b = 2 * Math.PI * 50 * capacitance;
        EarthFaultResult earthed = EarthFault.solve(system, PoleEarth.ofResistance("rod", 10));
        assertThat(earthed.totalCurrent().abs())
                .isCloseTo(20e3 / Math.sqrt(3) * b / Math.hypot(1, 10 * b), within(1e-9));
    }

    private static EarthFaultSystem compensated(NeutralMethod method, double capacitance) {
        return new EarthFaultSystem(
                50,
                20e3 / Math.sqrt(3),
                SequenceImpedances.NONE,
                method,
                SequenceImpedances.NONE,
                capacitance,
                Complex.ZERO,
                Optional.empty());
    }

    @ParameterizedTest
    @CsvSource({"0, 0.03, 0.03", "0.04, 0.03, 0.05", "-0.04, 0.03, 0.05", "0.12, 0.05, 0.13"})
    void residualCurrentOfResonantEarthing(double detuning, double damping, double share) {
        // residual = I_C·√(v² + d²), the usual formula for the residual current
        double phase = 20e3 / Math.sqrt(3);
        double capacitive = 80;
        EarthFaultResult r = EarthFault.solve(
                compensated(
                        NeutralMethod.Resonant.detuned(phase, capacitive, detuning, damping),
                        CapacitiveCurrent.capacitance(20e3, 50, capacitive)),
                BOLTED);
        assertThat(r.totalCurrent().abs()).isCloseTo(share * capacitive, within(1e-9));
        assertThat(r.neutralCurrent().abs()).isCloseTo(capacitive * Math.hypot(1 + detuning, damping), within(1e-9));
    }

    @Test
    void branchesShareByTheirAdmittanceAndCoupledElectrodesByTheirMatrix() {
        Complex loop = new Complex(1, 3);
        EarthFaultSystem system = plain(7200, SequenceImpedances.of(loop, loop));
        EarthFaultResult r = EarthFault.solve(
                system,
                PoleEarth.of(List.of(
                        PoleEarth.Branch.ofResistance("electrode", 20),
                        PoleEarth.Branch.ofResistance("low-voltage neutral", 5),
                        new PoleEarth.Branch("cable screen", new Complex(0.4, 1.1)))));
        assertThat(r.branchCurrent("low-voltage neutral").abs())
                .isCloseTo(4 * r.branchCurrent("electrode").abs(), within(1e-9));
        assertThat(r.tankMismatch()).isLessThan(1e-12);
        assertThatThrownBy(() -> r.branchCurrent("stay")).hasMessageContaining("stay");

        Complex mutual = new Complex(4, 0);
        PoleEarth coupled = PoleEarth.coupled(
                List.of("rod", "ring"),
                List.of(List.of(new Complex(20, 0), mutual), List.of(mutual, new Complex(10, 0))));
        // two electrodes in parallel: (R1·R2 − Rm²)/(R1 + R2 − 2·Rm) = 184/22
        assertThat(coupled.impedance().getReal()).isCloseTo(184.0 / 22, within(1e-12));
        EarthFaultResult c = EarthFault.solve(system, coupled);
        assertThat(c.branchCurrent("ring").abs() / c.branchCurrent("rod").abs())
                .isCloseTo((20.0 - 4) / (10 - 4), within(1e-9));
        assertThatThrownBy(() -> PoleEarth.coupled(
                        List.of("rod", "ring"),
                        List.of(List.of(Complex.ONE, mutual), List.of(Complex.ZERO, Complex.ONE))))
                .hasMessageContaining("not symmetric");
    }

    /** IEC 60909-3:2009, two earth faults on one line (from memory): I = 3·c·U/|6·Z1d + 2·Z1f + Z0f|. */
    @Test
    void iec60909DoubleEarthFaultOnOneLine() {
        SequenceImpedances d = SequenceImpedances.of(new Complex(0.4, 1.1), new Complex(0.9, 3.2));
        SequenceImpedances f = SequenceImpedances.of(new Complex(0.3, 0.5), new Complex(0.6, 1.9));
        DoubleEarthFault bolted =
                DoubleEarthFault.atTwoPoles(22e3, d, SequenceImpedances.NONE, f, Complex.ZERO, Complex.ZERO, 0);
        Complex denominator =
                d.positive().multiply(6).add(f.positive().multiply(2)).add(f.zero());
        assertThat(bolted.current().abs()).isCloseTo(3 * 22e3 / denominator.abs(), within(1e-9));
        DoubleEarthFault earthed = DoubleEarthFault.atTwoPoles(
                22e3, d, SequenceImpedances.NONE, f, new Complex(30, 0), new Complex(3, 0), 0);
        // at two poles the rise of the poorer earth may exceed the phase voltage
        assertThat(earthed.firstRise().abs()).isGreaterThan(22e3 / Math.sqrt(3));
        DoubleEarthFault tank = DoubleEarthFault.atOneTank(22e3, d, 0);
        assertThat(tank.firstLead()).isEqualTo(Complex.ZERO);
        assertThat(tank.current().abs()).isCloseTo(22e3 / (2 * d.positive().abs()), within(1e-9));
        // the general solver, isolated with next to no capacitance, gives the same phase current and no lead current
        EarthFaultSystem isolated = new EarthFaultSystem(
                50,
                22e3 / Math.sqrt(3),
                d,
                new NeutralMethod.Isolated(),
                SequenceImpedances.NONE,
                1e-15,
                Complex.ZERO,
                Optional.empty());
        EarthFaultResult r = EarthFault.solve(isolated, PoleEarth.ofResistance("rod", 10), Kind.twoPhases(0));
        assertThat(r.phaseCurrents().getOrDefault(Phase.B, Complex.ZERO).abs())
                .isCloseTo(tank.current().abs(), within(1e-6));
        assertThat(r.totalCurrent().abs()).isLessThan(1e-6);
    }

    @Test
    void singleWireEarthReturnByHand() {
        SingleWireEarthReturn line =
                new SingleWireEarthReturn(19.1e3, new Complex(20, 60), new Complex(130, 80), new Complex(1, 0));
        SingleWireEarthReturn.Result fault = line.fault(new Complex(9, 0), 0);
        assertThat(fault.current().abs()).isCloseTo(19.1e3 / Math.hypot(160, 140), within(1e-9));
        assertThat(fault.earthPotentialRise().abs())
                .isCloseTo(9 * fault.current().abs(), within(1e-9));
        SingleWireEarthReturn.Result load = line.load(new Complex(2, 0), new Complex(18e3, 6e3));
        assertThat(load.earthPotentialRise().abs()).isBetween(1.9, 2.1);
        assertThat(load.sourcePotentialRise().abs()).isCloseTo(load.current().abs(), within(1e-12));
        assertThatThrownBy(() -> line.fault(new Complex(9, 0), -1)).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void faultLevelsGiveBackTheirCurrents() {
        SequenceImpedances source = SequenceImpedances.ofFaultLevels(22e3, 8e3, 10, 6e3, 8);
        double phase = 22e3 / Math.sqrt(3);
        assertThat(phase / source.positive().abs()).isCloseTo(8e3, within(1e-6));
        EarthFaultResult r = EarthFault.solve(plain(phase, source), BOLTED);
        assertThat(r.totalCurrent().abs()).isCloseTo(6e3, within(1e-6));
        assertThat(r.xOverR()).isCloseTo(8, within(1e-9));
        assertThatThrownBy(() -> SequenceImpedances.ofFaultLevels(22e3, 8e3, 1, 11e3, 50))
                .hasMessageContaining("contradict");
        SequenceImpedances one = SequenceImpedances.ofThreePhaseLevel(22e3, 8e3, 10, new Complex(0, 1));
        assertThat(one.positive()).isEqualTo(source.positive());
    }

    @Test
    void rangeTakesEachQuestionsOwnWorstState() {
        SequenceImpedances strong = SequenceImpedances.of(new Complex(0.1, 1), new Complex(0.1, 1));
        SequenceImpedances weak = strong.times(5);
        EarthFaultRange range = EarthFaultRange.of(
                List.of(
                        new EarthFaultRange.Named<>(
                                "largest source", plain(VoltageFactor.MAXIMUM.phaseVoltage(22e3), strong)),
                        new EarthFaultRange.Named<>(
                                "smallest source", plain(VoltageFactor.MINIMUM.phaseVoltage(22e3), weak))),
                List.of(
                        new EarthFaultRange.Named<>("wet soil", PoleEarth.ofResistance("rod", 5)),
                        new EarthFaultRange.Named<>("dry soil", PoleEarth.ofResistance("rod", 40))),
                Kind.SINGLE_PHASE);
        assertThat(range.cases()).hasSize(4);
        assertThat(range.largestCurrent().name()).isEqualTo("largest source, wet soil");
        assertThat(range.smallestCurrent().name()).isEqualTo("smallest source, dry soil");
        assertThat(range.highestRise().name()).isEqualTo("largest source, dry soil");
    }

    /** EN 50522:2010 table 1 (from memory). */
    @Test
    void en50522Table1RelevantCurrentsAtAPole() {
        RelevantCurrent isolated = RelevantCurrent.atPole(new NeutralMethod.Isolated());
        assertThat(isolated.heating()).isEqualTo(RelevantCurrent.Heating.DOUBLE_EARTH_FAULT);
        assertThat(isolated.rise()).isEqualTo(RelevantCurrent.Rise.CAPACITIVE);
        RelevantCurrent resonant = RelevantCurrent.atPole(NeutralMethod.Resonant.detuned(12e3, 50, 0.05, 0.03));
        assertThat(resonant.heating()).isEqualTo(RelevantCurrent.Heating.DOUBLE_EARTH_FAULT);
        assertThat(resonant.rise()).isEqualTo(RelevantCurrent.Rise.RESIDUAL);
        for (NeutralMethod method : List.of(
                new Solid(),
                new NeutralMethod.Resistor(6),
                new NeutralMethod.Reactor(0, 3),
                new NeutralMethod.MultiEarthed())) {
            assertThat(RelevantCurrent.atPole(method).heating()).isEqualTo(RelevantCurrent.Heating.SINGLE_EARTH_FAULT);
            assertThat(RelevantCurrent.atPole(method).rise()).isEqualTo(RelevantCurrent.Rise.SINGLE_EARTH_FAULT);
        }
        assertThat(RelevantCurrent.ROWS).hasSize(5).doesNotHaveDuplicates();
    }

    /** The figures of docs/theory/fault.md. */
    @Test
    void handCalculationOfTheTheoryPage() {
        SequenceImpedances source = SequenceImpedances.of(new Complex(0, 1.5), new Complex(0, 1.2));
        SequenceImpedances line = SequenceImpedances.of(new Complex(0.30, 0.36), new Complex(0.45, 1.5))
                .times(6);
        PoleEarth electrode = PoleEarth.ofResistance("electrode", 20);
        double phase = VoltageFactor.NOMINAL.phaseVoltage(22e3);
        EarthFaultResult solid = EarthFault.solve(theoryPage(source, new Solid(), line, 0, phase), electrode);
        assertThat(solid.totalCurrent().abs()).isCloseTo(544, within(0.5));
        assertThat(solid.earthPotentialRise().abs()).isCloseTo(10.9e3, within(50.0));
        assertThat(solid.xOverR()).isCloseTo(0.258, within(0.0005));
        assertThat(solid.decrementFactor(0.5)).isCloseTo(1.001, within(0.0005));
        assertThat(phase / source.plus(line).positive().abs()).isCloseTo(3.1e3, within(50.0));
        double capacitance = CapacitiveCurrent.capacitance(22e3, 50, 30);
        EarthFaultResult isolated =
                EarthFault.solve(theoryPage(source, new NeutralMethod.Isolated(), line, capacitance, phase), electrode);
        assertThat(isolated.earthPotentialRise().abs()).isCloseTo(607, within(0.5));
        EarthFaultResult resonant = EarthFault.solve(
                theoryPage(source, NeutralMethod.Resonant.detuned(phase, 30, 0.1, 0.05), line, capacitance, phase),
                electrode);
        assertThat(resonant.totalCurrent().abs()).isCloseTo(3.32, within(0.005));
        assertThat(resonant.earthPotentialRise().abs()).isCloseTo(66.5, within(0.05));
    }

    private static EarthFaultSystem theoryPage(
            SequenceImpedances source,
            NeutralMethod method,
            SequenceImpedances line,
            double capacitance,
            double phase) {
        return new EarthFaultSystem(
                50, phase, source, method, line, capacitance, new Complex(0.5, 0), Optional.empty());
    }

    @Test
    void refusesNetworksWithoutAnAnswer() {
        assertThatThrownBy(() -> compensated(new NeutralMethod.Isolated(), 0))
                .hasMessageContaining("cannot be computed");
        assertThatThrownBy(() -> compensated(new NeutralMethod.MultiEarthed(), 1e-6))
                .hasMessageContaining("conductor along the line");
        assertThatThrownBy(() -> plain(Double.NaN, SequenceImpedances.NONE)).hasMessageContaining("phase voltage");
        EarthFaultSystem system = plain(1e4, SequenceImpedances.of(Complex.ONE, Complex.ONE));
        assertThatThrownBy(() -> EarthFault.solve(system, PoleEarth.of(List.of())))
                .hasMessageContaining("no way to earth");
        assertThatThrownBy(() -> new Kind(java.util.Set.of(), 0)).hasMessageContaining("at least one phase");
        assertThatThrownBy(() -> Kind.singlePhase(-1)).hasMessageContaining("fault resistance");
        assertThatThrownBy(() -> new NeutralMethod.Resistor(0)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new NeutralMethod.Isolated().impedance()).isInstanceOf(IllegalStateException.class);
        assertThatThrownBy(() -> oneSpan(Complex.ZERO, Complex.ZERO)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> oneSpan(Complex.ONE, Complex.ZERO).broken(3))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> system.withReturnConductor(oneSpan(Complex.ONE, Complex.ZERO)))
                .hasMessageContaining("station earth");
        assertThatThrownBy(() -> PoleEarth.Branch.ofResistance("rod", 0)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> SequenceImpedances.of(new Complex(-1, 0), Complex.ONE))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> SequenceImpedances.NONE.times(-1)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> DoubleEarthFault.atOneTank(1e4, SequenceImpedances.NONE, 0))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new EarthFaultRange(List.of())).isInstanceOf(IllegalArgumentException.class);
    }
}
