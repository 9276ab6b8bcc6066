package earthing.fault.line;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The least and the most that is taken, the next value beyond it, and sequence impedances from fault levels. */
class LineEdgesTest {

    private static final Complex OHM = Complex.ONE;
    private static final Complex ACTIVE = new Complex(-1e-9, 1);

    private static void close(Complex found, double real, double imaginary) {
        assertThat(found.getReal()).isCloseTo(real, within(1e-9));
        assertThat(found.getImaginary()).isCloseTo(imaginary, within(1e-9));
    }

    /** IEC 60909-0 (from memory): Z1 = U/(√3·I3) and 2·Z1 + Z0 = √3·U/I1; by hand at 10 kV with X/R of 3/4 throughout. */
    @Test
    void impedancesOfFaultLevels() {
        double threePhase = 10e3 / Math.sqrt(3) / 5;
        double earthFault = Math.sqrt(3) * 10e3 / 20;
        SequenceImpedances z = SequenceImpedances.ofFaultLevels(10e3, threePhase, 0.75, earthFault, 0.75);
        close(z.positive(), 4, 3);
        close(z.negative(), 4, 3);
        // |loop| = 20 ohm: 16 + j12, less twice 4 + j3.
        close(z.zero(), 8, 6);
        close(z.earthLoop(), 16.0 / 3, 4);
        SequenceImpedances level = SequenceImpedances.ofThreePhaseLevel(10e3, threePhase, 0.75, new Complex(1, 7));
        close(level.positive(), 4, 3);
        close(level.zero(), 1, 7);
        close(SequenceImpedances.ofThreePhaseLevel(10e3, threePhase, 0, OHM).positive(), 5, 0);
    }

    @Test
    void levelsThatContradictEachOtherAreRefused() {
        // A loop of pure reactance beside a source with resistance would need a negative one.
        assertThatIllegalArgumentException()
                .isThrownBy(() -> SequenceImpedances.ofFaultLevels(10e3, 1000, 0.75, 900, 1e6))
                .withMessageContaining("contradict each other");
        // A resistance that vanishes but for rounding is none: loop 8 + j20, source 4 + j3.
        double threePhase = 10e3 / Math.sqrt(3) / 5;
        double earthFault = Math.sqrt(3) * 10e3 / Math.hypot(8, 20);
        Complex zero = SequenceImpedances.ofFaultLevels(10e3, threePhase, 0.75, earthFault, 20.0 / 8)
                .zero();
        assertThat(zero.getReal()).isBetween(0.0, 1e-9);
        assertThat(zero.getImaginary()).isCloseTo(14, within(1e-9));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, -1, Double.NaN, Double.POSITIVE_INFINITY})
    void levelsAndSizesArePositiveAndFinite(double bad) {
        assertThatIllegalArgumentException().isThrownBy(() -> SequenceImpedances.ofFaultLevels(bad, 1000, 1, 900, 1));
        assertThatIllegalArgumentException().isThrownBy(() -> SequenceImpedances.ofFaultLevels(10e3, bad, 1, 900, 1));
        assertThatIllegalArgumentException().isThrownBy(() -> SequenceImpedances.ofFaultLevels(10e3, 1000, 1, bad, 1));
        assertThatIllegalArgumentException().isThrownBy(() -> SequenceImpedances.ofThreePhaseLevel(10e3, bad, 1, OHM));
        assertThatIllegalArgumentException().isThrownBy(() -> new LineConductor("a", 0, bad, 0, 0.01, 0.01));
        assertThatIllegalArgumentException().isThrownBy(() -> new LineConductor("a", 0, 5, 0, bad, 0.01));
        assertThatIllegalArgumentException().isThrownBy(() -> new LineConductor("a", 0, 5, 0, 0.01, bad));
        LineConductor a = LineConductor.solid("a", 0, 5, 0, 0.01);
        assertThatIllegalArgumentException().isThrownBy(() -> EarthReturn.CARSON_SERIES.self(a, bad, 100));
        assertThatIllegalArgumentException().isThrownBy(() -> EarthReturn.CARSON_SERIES.self(a, 50, bad));
        assertThatIllegalArgumentException().isThrownBy(() -> EarthReturn.returnDepth(50, bad));
    }

    @ParameterizedTest
    @ValueSource(doubles = {-1e-9, Double.NaN})
    void ratiosFactorsAndCurrentsMayBeNothingButNotLess(double bad) {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> SequenceImpedances.ofFaultLevels(10e3, 1000, bad, 900, 1));
        assertThatIllegalArgumentException().isThrownBy(() -> SequenceImpedances.NONE.times(bad));
        assertThatIllegalArgumentException().isThrownBy(() -> CapacitiveCurrent.of(bad, 50, 1e-6));
        assertThatIllegalArgumentException().isThrownBy(() -> CapacitiveCurrent.of(10e3, 50, bad));
        assertThatIllegalArgumentException().isThrownBy(() -> CapacitiveCurrent.of(10e3, bad, 1e-6));
        assertThatIllegalArgumentException().isThrownBy(() -> CapacitiveCurrent.capacitance(10e3, 50, bad));
        assertThatIllegalArgumentException().isThrownBy(() -> CapacitiveCurrent.overheadLineRule(bad, 1));
        assertThatIllegalArgumentException().isThrownBy(() -> CapacitiveCurrent.overheadLineRule(1, bad));
    }

    @Test
    void nothingGivesNothing() {
        assertThat(CapacitiveCurrent.of(0, 50, 0)).isZero();
        assertThat(CapacitiveCurrent.capacitance(10e3, 50, 0)).isZero();
        assertThat(CapacitiveCurrent.overheadLineRule(0, 0)).isZero();
        assertThatIllegalArgumentException().isThrownBy(() -> CapacitiveCurrent.of(10e3, 0, 1e-6));
        assertThatIllegalArgumentException().isThrownBy(() -> CapacitiveCurrent.capacitance(0, 50, 1));
        assertThatIllegalArgumentException().isThrownBy(() -> CapacitiveCurrent.capacitance(10e3, 0, 1));
        close(SequenceImpedances.NONE.earthLoop(), 0, 0);
        SequenceImpedances z = new SequenceImpedances(new Complex(1, 2), new Complex(3, 4), new Complex(5, 6));
        SequenceImpedances twice = z.plus(z);
        close(twice.positive(), 2, 4);
        close(twice.negative(), 6, 8);
        close(twice.zero(), 10, 12);
        close(z.times(3).positive(), 3, 6);
        close(z.times(3).negative(), 9, 12);
        close(z.times(3).zero(), 15, 18);
        close(z.times(0).zero(), 0, 0);
        assertThatIllegalArgumentException().isThrownBy(() -> new SequenceImpedances(ACTIVE, OHM, OHM));
        assertThatIllegalArgumentException().isThrownBy(() -> new SequenceImpedances(OHM, ACTIVE, OHM));
        assertThatIllegalArgumentException().isThrownBy(() -> new SequenceImpedances(OHM, OHM, ACTIVE));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new SequenceImpedances(new Complex(Double.POSITIVE_INFINITY, 0), OHM, OHM));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new SequenceImpedances(new Complex(0, Double.NaN), OHM, OHM));
    }

    @Test
    void chainsAreOfPassiveParts() {
        assertThatIllegalArgumentException().isThrownBy(() -> PoleEarthChain.infinite(OHM, ACTIVE));
        assertThatIllegalArgumentException().isThrownBy(() -> PoleEarthChain.finite(ACTIVE, OHM, 3));
        assertThatIllegalArgumentException().isThrownBy(() -> PoleEarthChain.finite(OHM, ACTIVE, 3));
        assertThatIllegalArgumentException().isThrownBy(() -> PoleEarthChain.splitFactor(ACTIVE, OHM));
        assertThatIllegalArgumentException().isThrownBy(() -> PoleEarthChain.splitFactor(OHM, ACTIVE));
        assertThatIllegalArgumentException().isThrownBy(() -> PoleEarthChain.reductionFactor(OHM, ACTIVE));
        // One span is the span and the pole behind it.
        close(PoleEarthChain.finite(new Complex(1, 2), new Complex(10, 0), 1), 11, 2);
        close(PoleEarthChain.finite(Complex.I, OHM, 1), 1, 1);
        close(PoleEarthChain.parallel(new Complex(6, 0), new Complex(3, 0)), 2, 0);
    }

    /** Between wires on either side of the pole the whole distance counts, also for the way through the ground. */
    @Test
    void onlyTheDistanceBetweenTwoWiresCounts() {
        LineConductor left = LineConductor.solid("left", -30, 8, 0, 0.005);
        LineConductor right = LineConductor.solid("right", 20, 9, 0, 0.005);
        LineConductor origin = LineConductor.solid("origin", 0, 8, 0, 0.005);
        LineConductor apart = LineConductor.solid("apart", 50, 9, 0, 0.005);
        for (EarthReturn form : EarthReturn.values()) {
            assertThat(form.mutual(left, right, 50, 10)
                            .subtract(form.mutual(origin, apart, 50, 10))
                            .abs())
                    .as(form.name())
                    .isLessThan(1e-18);
            assertThat(form.source().text()).contains("from memory");
        }
        // The geometric mean radius of a solid wire is exp(−1/4) of its radius.
        assertThat(origin.geometricMeanRadius()).isCloseTo(0.7788 * 0.005, within(0.00005 * 0.005));
        assertThatIllegalArgumentException().isThrownBy(() -> new LineConductor("a", 0, 1, 0, 0.5, 1));
        assertThatIllegalArgumentException().isThrownBy(() -> new LineConductor("a", 0, 1, 0, 1, 0.5));
        assertThatIllegalArgumentException().isThrownBy(() -> new LineConductor("a", 0, 5, -1e-9, 0.1, 0.1));
        // IEC 60909-3 (from memory): δ = 1.851/√(ωµ0/ρ), half a unit of its last digit; Carson 1926: ωµ0/8 a metre.
        double perMetre = Math.sqrt(2 * Math.PI * 50 * EarthReturn.MU_0 / 100);
        assertThat(EarthReturn.returnDepth(50, 100) * perMetre).isCloseTo(1.851, within(0.0005));
        assertThat(EarthReturn.returnResistance(50)).isCloseTo(4.935e-5, within(0.0005e-5));
    }
}
