package earthing.fault;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import earthing.fault.EarthFault.Phase;
import earthing.fault.line.CapacitiveCurrent;
import earthing.fault.line.PoleEarthChain;
import earthing.fault.line.SequenceImpedances;
import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ReturnConductorTest {

    /**
     * Sheldrake, Handbook of Electrical Engineering, 2003, table H.1a: currents, ratio X/R and both shares against pole
     * resistance. Source impedance and driving voltage are not printed: taken from two rows (0.25 and 20 ohm), they have to give
     * the others. The printed currents follow with √3·33 kV over the sum of sequence impedances and the earth path counted
     * once, so they check the division and the loop, not the size of a 33 kV fault. 1201.92 A at 1.5 ohm is a misprint.
     */
    @ParameterizedTest
    @CsvSource({
        "0.25, 1314.73, 1.6023, 0.0683, 0.9692", "0.5, 1310.23, 1.5876, 0.0777, 0.9647",
        "1, 1301.13, 1.5602, 0.0962, 0.9555", "2, 1282.66, 1.5121, 0.1321, 0.9370",
        "4, 1245.83, 1.4383, 0.1992, 0.8993", "6, 1210.65, 1.3874, 0.2603, 0.8617",
        "8, 1178.15, 1.3532, 0.3156, 0.8248", "10, 1148.73, 1.3311, 0.3654, 0.7890",
        "15, 1088.41, 1.3094, 0.4695, 0.7065", "20, 1043.88, 1.3141, 0.5496, 0.6347",
        "25, 1010.86, 1.3307, 0.6120, 0.5734", "30, 985.98, 1.3523, 0.6611, 0.5211"
    })
    void sheldrakeTableH1a(double pole, double current, double xOverR, double wireShare, double poleShare) {
        Complex loop = new Complex(21.32490, 36.77656);
        EarthFaultResult r = EarthFault.solve(
                new EarthFaultSystem(
                        50,
                        Math.sqrt(3) * 33e3,
                        SequenceImpedances.of(loop, loop),
                        new NeutralMethod.MultiEarthed(),
                        SequenceImpedances.NONE,
                        0,
                        new Complex(1.5, 0),
                        Optional.of(EarthFaultTest.oneSpan(new Complex(10.5, 22.5), Complex.ZERO))),
                PoleEarth.ofResistance("pole", pole));
        assertThat(r.totalCurrent().abs()).isCloseTo(current, within(0.005));
        assertThat(r.xOverR()).isCloseTo(xOverR, within(0.00008));
        assertThat(r.share("pole")).isCloseTo(poleShare, within(0.00006));
        assertThat(r.towardsStation().abs() / r.totalCurrent().abs()).isCloseTo(wireShare, within(0.00006));
        assertThat(r.beyond()).isEqualTo(Complex.ZERO);
    }

    /** Sheldrake table H.1d: rise of the pole from the printed fault current, printed without decimals. */
    @ParameterizedTest
    @CsvSource({
        "4.421, 1217, 1085, 4796", "3.716, 1229, 1112, 4133", "3.215, 1238, 1132, 3638", "2.544, 1250, 1158, 2947",
        "44.13, 929, 382, 16842", "37.11, 947, 435, 16161", "32.12, 964, 483, 15523", "16.58, 1057, 722, 11968",
        "12.71, 1097, 815, 10360", "19.28, 1035, 667, 12856"
    })
    void sheldrakeTableH1dRiseOfThePole(double pole, double faultCurrent, double poleCurrent, double rise) {
        // a stiff source makes the printed fault current, so that only its division is checked
        Complex stiff = new Complex(1e9 / faultCurrent, 0);
        EarthFaultResult r = EarthFault.solve(
                new EarthFaultSystem(
                        50,
                        1e9,
                        SequenceImpedances.of(stiff, stiff),
                        new NeutralMethod.MultiEarthed(),
                        SequenceImpedances.NONE,
                        0,
                        new Complex(1.5, 0),
                        Optional.of(EarthFaultTest.oneSpan(new Complex(10.5, 22.5), Complex.ZERO))),
                PoleEarth.ofResistance("pole", pole));
        assertThat(r.branchCurrent("pole").abs()).isCloseTo(poleCurrent, within(0.7));
        assertThat(r.earthPotentialRise().abs()).isCloseTo(rise, within(0.0012 * rise));
    }

    /** IEEE Std 80-2013 annex B.1 steps 6 and 7 (from memory): grid current and rise from a division of 0.6. */
    @Test
    void ieee80AnnexBGridCurrentAndRise() {
        Complex stiff = new Complex(1e9 / 3180, 0);
        double grid = 2.78;
        // a wire of zero mutual and z = R·0.6/0.4 leaves 60 % to the grid
        EarthFaultResult r = EarthFault.solve(
                new EarthFaultSystem(
                        60,
                        1e9,
                        SequenceImpedances.of(stiff, stiff),
                        new NeutralMethod.MultiEarthed(),
                        SequenceImpedances.NONE,
                        0,
                        new Complex(1e-9, 0),
                        Optional.of(EarthFaultTest.oneSpan(new Complex(grid * 1.5, 0), Complex.ZERO))),
                PoleEarth.ofResistance("grid", grid));
        assertThat(r.branchCurrent("grid").abs()).isCloseTo(1908, within(0.5));
        assertThat(r.earthPotentialRise().abs()).isCloseTo(5304, within(0.5));
        assertThat(r.decrementFactor(0.5)).isCloseTo(1, within(1e-9));
    }

    @Test
    void farFromBothEndsInductionAloneDividesTheCurrent() {
        Complex self = new Complex(0.2484e-3, 0.7671e-3);
        Complex mutual = new Complex(0.0581e-3, 0.48e-3);
        // 30 km each way, so that the ends are far; the fault's own division stands at the pole, the middle of the
        // line to the station shows induction alone
        ReturnConductor wire = ReturnConductor.uniform(self, mutual, 75, 100, 1600, 400, 8);
        SequenceImpedances line = SequenceImpedances.of(new Complex(0.19e-3, 0.4e-3), new Complex(0.4e-3, 1.6e-3))
                .times(1600 * 75);
        EarthFaultSystem system = new EarthFaultSystem(
                60,
                7621,
                SequenceImpedances.of(new Complex(0.1, 1), new Complex(0.1, 1)),
                new NeutralMethod.MultiEarthed(),
                line,
                0,
                new Complex(0.5, 0),
                Optional.of(wire));
        EarthFaultResult r = EarthFault.solve(system, PoleEarth.ofResistance("rod", 50));
        Complex before = r.returnProfile().get(800);
        Complex after = r.returnProfile().get(801);
        Complex current = before.subtract(after)
                .subtract(mutual.multiply(75).multiply(r.totalCurrent()))
                .divide(self.multiply(75));
        Complex share = current.negate().divide(r.totalCurrent());
        Complex expected = mutual.divide(self);
        assertThat(share.subtract(expected).abs()).isLessThan(1e-6 * expected.abs());
        assertThat(before.abs()).isLessThan(1e-6 * r.earthPotentialRise().abs());
        assertThat(r.tankMismatch()).isLessThan(1e-9);
        assertThat(r.quality().residual()).isLessThan(1e-12);
    }

    @Test
    void wireWithoutInductionIsTheParallelOfBothChains() {
        Complex span = new Complex(0.38, 0.17);
        ReturnConductor wire = ReturnConductor.uniform(span, Complex.ZERO, 1, 15, 600, 500, 8);
        EarthFaultResult r = EarthFault.solve(
                new EarthFaultSystem(
                        50,
                        1e4,
                        SequenceImpedances.NONE,
                        new NeutralMethod.Resistor(1000),
                        SequenceImpedances.NONE,
                        0,
                        new Complex(15, 0),
                        Optional.of(wire)),
                PoleEarth.ofResistance("rod", 40));
        Complex chain = PoleEarthChain.infinite(span, new Complex(15, 0));
        Complex expected =
                new Complex(1.0 / 40, 0).add(chain.reciprocal().multiply(2)).reciprocal();
        Complex seen = r.earthPotentialRise().divide(r.totalCurrent());
        assertThat(seen.subtract(expected).abs()).isLessThan(1e-9 * expected.abs());
        assertThat(r.leadCurrent(10)).isEqualTo(r.totalCurrent());
        assertThat(r.leadCurrent(2)).isEqualTo(r.branchCurrent("rod"));
    }

    @Test
    void brokenNeutralLeavesTheElectrodeAlone() {
        Complex self = new Complex(0.3e-3, 0.8e-3);
        Complex mutual = new Complex(0.06e-3, 0.45e-3);
        ReturnConductor whole = ReturnConductor.uniform(self, mutual, 80, 60, 20, 0, 8);
        EarthFaultSystem system = new EarthFaultSystem(
                50,
                12.7e3,
                SequenceImpedances.of(new Complex(0.2, 1.5), new Complex(0.1, 1.2)),
                new NeutralMethod.MultiEarthed(),
                SequenceImpedances.of(new Complex(0.5, 0.6), new Complex(0.7, 2.5)),
                0,
                new Complex(0.8, 0),
                Optional.of(whole));
        PoleEarth rod = PoleEarth.ofResistance("rod", 30);
        EarthFaultResult intact = EarthFault.solve(system, rod);
        EarthFaultResult broken = EarthFault.solve(system.withReturnConductor(whole.broken(19)), rod);
        assertThat(broken.towardsStation()).isEqualTo(Complex.ZERO);
        assertThat(broken.branchCurrent("rod")).isEqualTo(broken.totalCurrent());
        assertThat(broken.earthPotentialRise().abs())
                .isGreaterThan(2 * intact.earthPotentialRise().abs());
        EarthFaultResult unbonded = EarthFault.solve(system.withReturnConductor(whole.unbonded()), rod);
        assertThat(unbonded.branchCurrent("rod")
                        .subtract(unbonded.totalCurrent())
                        .abs())
                .isLessThan(1e-9 * unbonded.totalCurrent().abs());
        assertThat(unbonded.bondHeight()).isEmpty();
        // the electrode lost instead: the neutral carries everything
        EarthFaultResult noElectrode = EarthFault.solve(system, PoleEarth.of(List.of()));
        assertThat(noElectrode.branchCurrents()).isEmpty();
        assertThat(noElectrode.tankMismatch()).isLessThan(1e-9);
        assertThatThrownBy(
                        () -> EarthFault.solve(system.withReturnConductor(whole.broken(19)), PoleEarth.of(List.of())))
                .hasMessageContaining("without any earth");
    }

    /** Dense nodal solution in phase coordinates (numpy), capacitance of 60 A at the busbar phase by phase. */
    @Test
    void lumpedCapacitanceAgainstPhaseCoordinates() {
        ReturnConductor wire = ReturnConductor.uniform(
                new Complex(0.31e-3, 0.78e-3), new Complex(0.049e-3, 0.42e-3), 80, 60, 50, 12, 8);
        EarthFaultSystem system = new EarthFaultSystem(
                50,
                12700,
                SequenceImpedances.of(new Complex(0.15, 1.6), new Complex(0.1, 1.3)),
                new NeutralMethod.Isolated(),
                SequenceImpedances.of(new Complex(0.3e-3, 0.36e-3), new Complex(0.45e-3, 1.5e-3))
                        .times(80 * 50),
                CapacitiveCurrent.capacitance(22e3, 50, 60),
                new Complex(0.5, 0),
                Optional.of(wire));
        EarthFaultResult r = EarthFault.solve(system, PoleEarth.ofResistance("rod", 25));
        // 1 %: the solver leaves the positive-sequence effect of the capacitance out
        assertThat(r.totalCurrent().abs()).isCloseTo(61.05669, within(0.6));
        assertThat(r.earthPotentialRise().abs()).isCloseTo(49.42852, within(0.5));
        assertThat(r.stationPotentialRise().abs()).isCloseTo(13.31505, within(0.13));
        assertThat(r.branchCurrent("rod").abs()).isCloseTo(1.977141, within(0.02));
        assertThat(r.voltage(Phase.B).abs()).isCloseTo(22153.59, within(220.0));
        assertThat(r.voltage(Phase.C).abs()).isCloseTo(22285.86, within(220.0));
    }
}
