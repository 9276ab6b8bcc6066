package earthing.fault;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import earthing.fault.line.PoleEarthChain;
import earthing.fault.line.SequenceImpedances;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Neutral and shield wire together, coupled with each other and with the phases. */
class CoupledLadderTest {

    private static final int POLE = 25;
    private static final Complex NEUTRAL = new Complex(0.31e-3, 0.78e-3).multiply(80);
    private static final Complex SHIELD = new Complex(0.90e-3, 0.82e-3).multiply(80);
    private static final Complex BETWEEN = new Complex(0.049e-3, 0.31e-3).multiply(80);
    private static final Complex TO_NEUTRAL = new Complex(0.049e-3, 0.42e-3).multiply(80);
    private static final Complex TO_SHIELD = new Complex(0.049e-3, 0.36e-3).multiply(80);

    private static ReturnConductor wire(
            Complex self, Complex mutual, double earth, int every, int spans, boolean bonded, OptionalInt broken) {
        List<ReturnConductor.Span> all = new ArrayList<>();
        for (int k = 1; k <= spans; k++) {
            boolean earthed = earth > 0 && k != POLE && Math.floorMod(k - POLE, every) == 0;
            all.add(new ReturnConductor.Span(self, mutual, earthed ? new Complex(1 / earth, 0) : Complex.ZERO));
        }
        return new ReturnConductor(all, POLE, bonded, 8, broken);
    }

    private static EarthFaultSystem system(ReturnConductor neutral, SecondWire shield) {
        return new EarthFaultSystem(
                50,
                12700,
                SequenceImpedances.of(new Complex(0.15, 1.6), new Complex(0.1, 1.3)),
                new NeutralMethod.MultiEarthed(),
                SequenceImpedances.of(new Complex(0.3e-3, 0.36e-3), new Complex(0.45e-3, 1.5e-3))
                        .times(80 * POLE),
                0,
                new Complex(0.5, 0),
                Optional.of(neutral),
                Optional.of(shield));
    }

    /**
     * Dense nodal solution of all five conductors span by span in phase coordinates (numpy, written for this test): current,
     * rise of tank and station, current into neutral and shield wire. Rows: earths of their own; shield wire ends at
     * pole 33; bonded at the neutral's earths; not bonded to the tank; parted before the pole.
     */
    @ParameterizedTest
    @CsvSource({
        "35, 40, false, true, -1, 4619.797222, 2086.0133, 267.086945, 3031.34819, 1598.474933",
        "35, 33, false, true, -1, 4600.899325, 2193.865917, 225.603642, 3082.114138, 1520.567891",
        "0, 40, true, true, -1, 4577.436601, 2338.696787, 151.760625, 3109.524501, 1473.95746",
        "35, 40, false, false, -1, 4152.730634, 3230.632289, 174.213774, 4064.106315, 0",
        "35, 40, false, true, 24, 4211.685747, 2965.969513, 285.963483, 3937.94685, 242.002055"
    })
    void denseNodalSolutionInPhaseCoordinates(
            double shieldEarth,
            int end,
            boolean tied,
            boolean bonded,
            int broken,
            double current,
            double tank,
            double station,
            double inNeutral,
            double inShield) {
        EarthFaultResult r = EarthFault.solve(
                system(
                        wire(NEUTRAL, TO_NEUTRAL, 60, 4, 40, true, OptionalInt.empty()),
                        new SecondWire(
                                wire(
                                        SHIELD,
                                        TO_SHIELD,
                                        shieldEarth,
                                        5,
                                        end,
                                        bonded,
                                        broken < 0 ? OptionalInt.empty() : OptionalInt.of(broken)),
                                BETWEEN,
                                tied)),
                PoleEarth.ofResistance("rod", 25));
        // The reference ties tank and neutral point by 1e-9 ohm and loses that many digits.
        assertThat(r.totalCurrent().abs()).isCloseTo(current, within(1e-6 * current));
        assertThat(r.earthPotentialRise().abs()).isCloseTo(tank, within(1e-6 * tank));
        assertThat(r.stationPotentialRise().abs()).isCloseTo(station, within(1e-6 * station));
        assertThat(r.wires().get(0).away().abs()).isCloseTo(inNeutral, within(1e-6 * inNeutral));
        assertThat(r.wires().get(1).away().abs()).isCloseTo(inShield, within(1e-6 * current));
        assertThat(r.tankMismatch()).isLessThan(1e-9);
        assertThat(r.quality().residual()).isLessThan(1e-12);
    }

    /** A second wire that carries nothing worth the name leaves the single ladder, whose solver is another. */
    @Property(seed = "20261125", tries = 40)
    void wireOfNoUseChangesNothing(
            @ForAll @DoubleRange(min = 1, max = 200) double ohms, @ForAll @IntRange(min = 26, max = 60) int end) {
        ReturnConductor neutral = wire(NEUTRAL, TO_NEUTRAL, 60, 4, 40, true, OptionalInt.empty());
        SecondWire idle = new SecondWire(
                wire(new Complex(1e9, 0), Complex.ZERO, 35, 1, end, true, OptionalInt.empty()), Complex.ZERO, false);
        EarthFaultSystem both = system(neutral, idle);
        EarthFaultResult with = EarthFault.solve(both, PoleEarth.ofResistance("rod", ohms));
        EarthFaultResult alone = EarthFault.solve(
                new EarthFaultSystem(
                        both.frequency(),
                        both.phaseVoltage(),
                        both.source(),
                        both.neutral(),
                        both.line(),
                        0,
                        both.stationEarth(),
                        Optional.of(neutral)),
                PoleEarth.ofResistance("rod", ohms));
        assertThat(with.totalCurrent().subtract(alone.totalCurrent()).abs())
                .isLessThan(1e-7 * alone.totalCurrent().abs());
        assertThat(with.earthPotentialRise()
                        .subtract(alone.earthPotentialRise())
                        .abs())
                .isLessThan(1e-7 * alone.earthPotentialRise().abs());
        for (int k = 0; k < alone.returnProfile().size(); k++) {
            assertThat(with.returnProfile()
                            .get(k)
                            .subtract(alone.returnProfile().get(k))
                            .abs())
                    .isLessThan(1e-7 * alone.earthPotentialRise().abs());
        }
    }

    /** Two equal wires with the same coupling are one wire of (z + z_m)/2, each earthed by half. */
    @Property(seed = "20261125", tries = 40)
    void equalWiresAreOneOfHalfTheirLoop(
            @ForAll @DoubleRange(min = 1, max = 200) double ohms,
            @ForAll @DoubleRange(min = 5, max = 200) double earth) {
        ReturnConductor each = wire(NEUTRAL, TO_NEUTRAL, earth, 1, 40, true, OptionalInt.empty());
        EarthFaultSystem pair = system(each, new SecondWire(each, BETWEEN, false));
        EarthFaultSystem one = new EarthFaultSystem(
                50,
                12700,
                pair.source(),
                pair.neutral(),
                pair.line(),
                0,
                pair.stationEarth(),
                Optional.of(
                        wire(NEUTRAL.add(BETWEEN).divide(2), TO_NEUTRAL, earth / 2, 1, 40, true, OptionalInt.empty())));
        PoleEarth rod = PoleEarth.ofResistance("rod", ohms);
        EarthFaultResult a = EarthFault.solve(pair, rod);
        EarthFaultResult b = EarthFault.solve(one, rod);
        assertThat(a.totalCurrent().subtract(b.totalCurrent()).abs())
                .isLessThan(1e-9 * b.totalCurrent().abs());
        assertThat(a.wires().get(0).away().subtract(a.wires().get(1).away()).abs())
                .isLessThan(1e-9 * b.totalCurrent().abs());
        assertThat(a.towardsStation().subtract(b.towardsStation()).abs())
                .isLessThan(1e-9 * b.totalCurrent().abs());
    }

    /** Thousands of poles: without induction each uncoupled wire is an endless chain both ways (Endrenyi, from memory). */
    @Test
    void longUncoupledWiresAreEndlessChains() {
        List<ReturnConductor.Span> first = new ArrayList<>();
        List<ReturnConductor.Span> second = new ArrayList<>();
        for (int k = 1; k <= 6000; k++) {
            first.add(new ReturnConductor.Span(NEUTRAL, Complex.ZERO, new Complex(k == 3000 ? 0 : 1.0 / 40, 0)));
            second.add(new ReturnConductor.Span(SHIELD, Complex.ZERO, new Complex(k == 3000 ? 0 : 1.0 / 15, 0)));
        }
        EarthFaultSystem system = system(
                new ReturnConductor(first, 3000, true, 8, OptionalInt.empty()),
                new SecondWire(new ReturnConductor(second, 3000, true, 11, OptionalInt.empty()), Complex.ZERO, false));
        DrivingPoint seen = DrivingPoint.of(system, PoleEarth.ofResistance("rod", 30));
        Complex a = PoleEarthChain.infinite(NEUTRAL, new Complex(40, 0)).reciprocal();
        Complex b = PoleEarthChain.infinite(SHIELD, new Complex(15, 0)).reciprocal();
        Complex expected =
                new Complex(1.0 / 30, 0).add(a.multiply(2)).add(b.multiply(2)).reciprocal();
        assertThat(seen.impedance().subtract(expected).abs()).isLessThan(1e-9 * expected.abs());
        assertThat(seen.wires()
                        .get(1)
                        .away()
                        .subtract(expected.multiply(b).multiply(2))
                        .abs())
                .isLessThan(1e-9);
    }

    /** Ways back that were kept serve only conductors, stations and electrodes that are equal. */
    @Property(seed = "20261125", tries = 40)
    void waysBackThatWereKeptChangeNothing(
            @ForAll @DoubleRange(min = 1, max = 100) double ohms,
            @ForAll @DoubleRange(min = 5, max = 100) double earth,
            @ForAll boolean tied) {
        ReturnPaths paths = new ReturnPaths();
        List<EarthFaultSystem> systems = new ArrayList<>();
        for (boolean bonded : List.of(true, false)) {
            systems.add(system(
                    wire(NEUTRAL, TO_NEUTRAL, 60, 4, 40, true, OptionalInt.empty()),
                    new SecondWire(wire(SHIELD, TO_SHIELD, earth, 5, 40, bonded, OptionalInt.empty()), BETWEEN, tied)));
        }
        systems.addAll(List.copyOf(systems));
        for (EarthFaultSystem system : systems) {
            for (double resistance : new double[] {ohms, 2 * ohms}) {
                PoleEarth rod = PoleEarth.ofResistance("rod", resistance);
                EarthFault.Kind kind = EarthFault.Kind.singlePhase(1);
                EarthFaultResult kept = EarthFault.solve(system, rod, kind, paths);
                EarthFaultResult anew = EarthFault.solve(system, rod, kind);
                assertThat(kept.totalCurrent()).isEqualTo(anew.totalCurrent());
                assertThat(kept.earthPotentialRise()).isEqualTo(anew.earthPotentialRise());
                assertThat(kept.wires()).isEqualTo(anew.wires());
            }
        }
    }

    /** Whatever the neutral's and the shield wire's earths, a poorer electrode gives a higher rise. */
    @Property(seed = "20261125", tries = 60)
    void riseGrowsWithTheElectrode(
            @ForAll @DoubleRange(min = 1, max = 100) double ohms,
            @ForAll @DoubleRange(min = 1.01, max = 3) double worse,
            @ForAll @DoubleRange(min = 5, max = 100) double earth,
            @ForAll boolean tied) {
        EarthFaultSystem system = system(
                wire(NEUTRAL, TO_NEUTRAL, 60, 4, 40, true, OptionalInt.empty()),
                new SecondWire(wire(SHIELD, TO_SHIELD, earth, 5, 40, true, OptionalInt.empty()), BETWEEN, tied));
        double rise = EarthFault.solve(system, PoleEarth.ofResistance("rod", ohms))
                .earthPotentialRise()
                .abs();
        double poorer = EarthFault.solve(system, PoleEarth.ofResistance("rod", ohms * worse))
                .earthPotentialRise()
                .abs();
        assertThat(poorer).isGreaterThan(rise);
    }

    @Test
    void leadCarriesWhatIsLeftBelowEachBond() {
        ReturnConductor neutral = wire(NEUTRAL, TO_NEUTRAL, 60, 4, 40, true, OptionalInt.empty());
        ReturnConductor shield = new ReturnConductor(neutral.spans(), POLE, true, 11, OptionalInt.empty());
        EarthFaultResult r = EarthFault.solve(
                system(neutral, new SecondWire(shield, BETWEEN, false)), PoleEarth.ofResistance("rod", 25));
        assertThat(r.leadCurrent(12)).isEqualTo(r.totalCurrent());
        assertThat(r.leadCurrent(9)
                        .subtract(r.totalCurrent().subtract(r.wires().get(1).away()))
                        .abs())
                .isLessThan(1e-9 * r.totalCurrent().abs());
        assertThat(r.leadCurrent(2).subtract(r.earthCurrent()).abs())
                .isLessThan(1e-9 * r.totalCurrent().abs());
        assertThat(r.bondHeight()).contains(8.0);
    }

    /** Parted before the pole and without an earth beyond, a bonded wire only hangs on the tank. */
    @Test
    void sectionThatHangsOnTheTankCarriesNothing() {
        ReturnConductor neutral = wire(NEUTRAL, TO_NEUTRAL, 60, 4, 40, true, OptionalInt.empty());
        ReturnConductor shield = wire(SHIELD, TO_SHIELD, 35, 30, 28, true, OptionalInt.of(POLE - 1));
        EarthFaultResult r = EarthFault.solve(
                system(neutral, new SecondWire(shield, BETWEEN, false)), PoleEarth.ofResistance("rod", 25));
        assertThat(r.wires().get(1).away().abs())
                .isLessThan(1e-9 * r.totalCurrent().abs());
        assertThat(r.tankMismatch()).isLessThan(1e-9);
        EarthFaultResult noEarth =
                EarthFault.solve(system(neutral, new SecondWire(shield, BETWEEN, false)), PoleEarth.of(List.of()));
        assertThat(noEarth.tankMismatch()).isLessThan(1e-9);
    }

    @Test
    void refusesWhatHasNoAnswer() {
        ReturnConductor neutral = wire(NEUTRAL, TO_NEUTRAL, 60, 4, 40, true, OptionalInt.empty());
        ReturnConductor bare = wire(SHIELD, TO_SHIELD, 0, 1, 40, false, OptionalInt.of(30));
        PoleEarth rod = PoleEarth.ofResistance("rod", 25);
        assertThatThrownBy(() -> EarthFault.solve(system(neutral, new SecondWire(bare, BETWEEN, false)), rod))
                .hasMessageContaining("without any earth");
        ReturnConductor elsewhere =
                ReturnConductor.uniform(SHIELD.divide(80), TO_SHIELD.divide(80), 80, 40, POLE - 1, 5, 8);
        assertThatThrownBy(() -> EarthFault.solve(system(neutral, new SecondWire(elsewhere, BETWEEN, false)), rod))
                .hasMessageContaining("as many spans");
        assertThatThrownBy(() -> EarthFault.solve(system(neutral, new SecondWire(neutral, NEUTRAL, false)), rod))
                .hasMessageContaining("coupled more closely");
        assertThatThrownBy(() -> new SecondWire(neutral, new Complex(Double.NaN, 0), false))
                .hasMessageContaining("finite");
    }
}
