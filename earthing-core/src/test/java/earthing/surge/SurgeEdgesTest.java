package earthing.surge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import earthing.network.Circuit;
import earthing.network.TimeGrid;
import earthing.network.TransientSolution;
import earthing.quantity.Source;
import earthing.surge.StrokeDistribution.LogLogistic;
import earthing.surge.StrokeDistribution.Lognormal;
import java.io.StringReader;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The least and the most that is taken, the next value beyond it, and impulses before, at and after their joints. */
class SurgeEdgesTest {

    private static final Source NONE = Source.tool("test");

    @ParameterizedTest
    @ValueSource(doubles = {0, -1, Double.NaN, Double.POSITIVE_INFINITY})
    void impulsesHavePositiveFiniteParts(double bad) {
        assertThatIllegalArgumentException().isThrownBy(() -> new PowerExponential(bad, 1));
        assertThatIllegalArgumentException().isThrownBy(() -> new PowerExponential(1, bad));
        assertThatIllegalArgumentException().isThrownBy(() -> new DoubleExponential(bad, 1, 2));
        assertThatIllegalArgumentException().isThrownBy(() -> new DoubleExponential(1, bad, 2));
        assertThatIllegalArgumentException().isThrownBy(() -> new DoubleExponential(1, 1, bad));
        assertThatIllegalArgumentException().isThrownBy(() -> new Heidler(bad, 1, 1, 10));
        assertThatIllegalArgumentException().isThrownBy(() -> new Heidler(1, bad, 1, 10));
        assertThatIllegalArgumentException().isThrownBy(() -> new Heidler(1, 1, bad, 10));
        assertThatIllegalArgumentException().isThrownBy(() -> new ConcaveFront(bad, 1, 2, 10));
        assertThatIllegalArgumentException().isThrownBy(() -> new ConcaveFront(1, bad, 2, 10));
        assertThatIllegalArgumentException().isThrownBy(() -> new ConcaveFront(1, 1, bad, 10));
        assertThatIllegalArgumentException().isThrownBy(() -> new ConcaveFront(1, 1, 2, bad));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> PowerExponential.impulse820(1).withPeak(bad))
                .withMessageContaining("peak must be > 0");
        assertThatIllegalArgumentException().isThrownBy(() -> StrikingDistance.toConductor(bad));
        assertThatIllegalArgumentException().isThrownBy(() -> StrikingDistance.nearestToGround(1e4, bad));
        assertThatIllegalArgumentException().isThrownBy(() -> new Lognormal(bad, 1, NONE));
        assertThatIllegalArgumentException().isThrownBy(() -> new Lognormal(1, bad, NONE));
        assertThatIllegalArgumentException().isThrownBy(() -> new InducedWave(bad, 1));
        assertThatIllegalArgumentException().isThrownBy(() -> new InducedWave(1, bad));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, -1, Double.NaN})
    void levelsSpeedsAndHeightsArePositive(double bad) {
        assertThatIllegalArgumentException().isThrownBy(() -> ProtectiveMargin.margin(bad, 1, 0));
        assertThatIllegalArgumentException().isThrownBy(() -> ProtectiveMargin.margin(1, bad, 0));
        assertThatIllegalArgumentException().isThrownBy(() -> ProtectiveMargin.choppedWaveWithstand(bad));
        assertThatIllegalArgumentException().isThrownBy(() -> ProtectiveMargin.atDistance(bad, 1, 1, 1));
        assertThatIllegalArgumentException().isThrownBy(() -> ProtectiveMargin.atDistance(1, 1, 1, bad));
        assertThatIllegalArgumentException().isThrownBy(() -> ProtectiveMargin.longestDistance(bad, 1, 1.5, 1));
        assertThatIllegalArgumentException().isThrownBy(() -> ProtectiveMargin.longestDistance(1, bad, 1.5, 1));
        assertThatIllegalArgumentException().isThrownBy(() -> ProtectiveMargin.longestDistance(1, 1, 1.5, bad));
        assertThatIllegalArgumentException().isThrownBy(() -> TwoSectionArrester.ofHeight(1e5, bad, 1));
        assertThatIllegalArgumentException().isThrownBy(() -> TwoSectionArrester.ofHeight(bad, 1, 1));
        assertThatIllegalArgumentException().isThrownBy(() -> TwoSectionArrester.ofResidualVoltages(66e3, 73e3, bad));
        assertThatIllegalArgumentException().isThrownBy(() -> new LogLogistic(bad, 1, NONE));
        assertThatIllegalArgumentException().isThrownBy(() -> new LogLogistic(1, bad, NONE));
        assertThatIllegalArgumentException().isThrownBy(() -> new Lognormal(1, 1, NONE).exceedance(bad));
        assertThatIllegalArgumentException().isThrownBy(() -> new LogLogistic(1, 1, NONE).exceedance(bad));
        assertThatIllegalArgumentException().isThrownBy(() -> new Lognormal(1, 1, NONE).exceededWith(bad));
        assertThatIllegalArgumentException().isThrownBy(() -> new LogLogistic(1, 1, NONE).exceededWith(bad));
        assertThatIllegalArgumentException().isThrownBy(() -> FlashCollection.radius(bad));
        assertThatIllegalArgumentException().isThrownBy(() -> InducedVoltage.simplifiedPeak(1, bad, 50));
        assertThatIllegalArgumentException().isThrownBy(() -> InducedVoltage.effectiveHeight(bad, 100));
        assertThatIllegalArgumentException().isThrownBy(() -> new InducedVoltage(bad, 100, 0.4));
        assertThatIllegalArgumentException().isThrownBy(() -> new InducedVoltage(10, 100, bad));
    }

    @ParameterizedTest
    @ValueSource(doubles = {-1e-9, Double.NaN})
    void leadsDistancesAndDensitiesMayBeNothingButNotLess(double bad) {
        assertThatIllegalArgumentException().isThrownBy(() -> ProtectiveMargin.leadVoltage(bad, 1));
        assertThatIllegalArgumentException().isThrownBy(() -> ProtectiveMargin.leadVoltage(1, bad));
        assertThatIllegalArgumentException().isThrownBy(() -> ProtectiveMargin.margin(1, 1, bad));
        assertThatIllegalArgumentException().isThrownBy(() -> ProtectiveMargin.atDistance(1, bad, 1, 1));
        assertThatIllegalArgumentException().isThrownBy(() -> ProtectiveMargin.atDistance(1, 1, bad, 1));
        assertThatIllegalArgumentException().isThrownBy(() -> FlashCollection.width(10, bad));
        assertThatIllegalArgumentException().isThrownBy(() -> FlashCollection.lineRate(bad, 10, 0, 1));
        assertThatIllegalArgumentException().isThrownBy(() -> FlashCollection.lineRate(1, 10, 0, bad));
        assertThatIllegalArgumentException().isThrownBy(() -> FlashCollection.areaBeyondStrip(10, bad));
        assertThatIllegalArgumentException().isThrownBy(() -> FlashCollection.ofThunderstormDays(bad));
        assertThatIllegalArgumentException().isThrownBy(() -> InducedVoltage.simplifiedPeak(bad, 10, 50));
        assertThatIllegalArgumentException().isThrownBy(() -> InducedVoltage.effectiveHeight(10, bad));
    }

    @Test
    void nothingGivesNothing() {
        assertThat(ProtectiveMargin.leadVoltage(0, 0)).isZero();
        assertThat(ProtectiveMargin.margin(2, 1, 0)).isEqualTo(1);
        assertThat(ProtectiveMargin.atDistance(66e3, 0, 0, 3e8)).isEqualTo(66e3);
        assertThat(FlashCollection.lineRate(0, 10, 0, 0)).isZero();
        assertThat(FlashCollection.ofThunderstormDays(0)).isZero();
        assertThat(InducedVoltage.simplifiedPeak(0, 10, 50)).isZero();
        assertThat(InducedVoltage.effectiveHeight(10, 0)).isEqualTo(10);
    }

    /** IEEE Std 1410-2010, from memory: 38.8·I·h/y, and h + 0.15·√ρ. */
    @Test
    void ieee1410InducedPeak() {
        assertThat(InducedVoltage.simplifiedPeak(31e3, 10, 100)).isCloseTo(120.28e3, within(1e-6));
        assertThat(InducedVoltage.effectiveHeight(10, 400)).isCloseTo(13, within(1e-12));
        assertThatIllegalArgumentException().isThrownBy(() -> InducedVoltage.simplifiedPeak(1, 10, 10));
        assertThatIllegalArgumentException().isThrownBy(() -> new InducedVoltage(10, 10, 0.4));
        assertThatIllegalArgumentException().isThrownBy(() -> new InducedVoltage(10, 100, 1));
        assertThatIllegalArgumentException().isThrownBy(() -> new InducedVoltage(10, Double.POSITIVE_INFINITY, 0.4));
        InducedVoltage u = new InducedVoltage(10, 100, 0.4);
        assertThat(u.stepResponse(100.0 / 299_792_458)).isZero();
        assertThat(u.stepResponse(100.001 / 299_792_458)).isPositive();
    }

    /** IEC 60071-2:1996 annex (from memory): the voltage grows along the lead and doubles at most. */
    @Test
    void separationEndsAtTwiceTheLevel() {
        assertThat(ProtectiveMargin.longestDistance(66e3, 1e12, 66e3, 3e8)).isZero();
        assertThatIllegalArgumentException().isThrownBy(() -> ProtectiveMargin.longestDistance(66e3, 1e12, 132e3, 3e8));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> ProtectiveMargin.longestDistance(66e3, 1e12, 65.9e3, 3e8));
        double distance = ProtectiveMargin.longestDistance(66e3, 1e12, 100e3, 3e8);
        assertThat(ProtectiveMargin.atDistance(66e3, 1e12, distance, 3e8)).isCloseTo(100e3, within(1e-6));
        // IEEE C62.22 (from memory): chopped wave 1.15 times BIL.
        assertThat(ProtectiveMargin.choppedWaveWithstand(110e3)).isCloseTo(126.5e3, within(1e-6));
    }

    @Test
    void linesAndStripsAtTheirLimits() {
        assertThat(FlashCollection.radius(100)).isCloseTo(14 * Math.pow(100, 0.6), within(1e-9));
        assertThatIllegalArgumentException().isThrownBy(() -> FlashCollection.radius(Math.nextUp(100.0)));
        assertThat(FlashCollection.width(10, 3)).isCloseTo(2 * FlashCollection.radius(10) + 3, within(1e-12));
        assertThatIllegalArgumentException().isThrownBy(() -> FlashCollection.width(10, Double.POSITIVE_INFINITY));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> FlashCollection.lineRate(1, 10, 0, Double.POSITIVE_INFINITY));
        assertThat(FlashCollection.ofThunderstormDays(366)).isPositive();
        assertThatIllegalArgumentException().isThrownBy(() -> FlashCollection.ofThunderstormDays(366.001));
        double r = FlashCollection.radius(20);
        assertThat(FlashCollection.areaBeyondStrip(20, 0)).isCloseTo(Math.PI * r * r, within(1e-9));
        assertThat(FlashCollection.areaBeyondStrip(20, 2 * r)).isZero();
        assertThat(FlashCollection.areaBeyondStrip(20, 3 * r)).isZero();
        // A low conductor is reached from as far as the striking distance itself only if that is short.
        assertThat(StrikingDistance.nearestToGround(1e3, 30)).isEqualTo(StrikingDistance.toConductor(1e3));
        assertThat(StrikingDistance.nearestToGround(1e3, 9)).isCloseTo(10, within(1e-9));
        assertThat(StrikingDistance.nearestToGround(1e3, 5)).isCloseTo(Math.sqrt(84), within(1e-9));
    }

    @Test
    void shortestAndLongestFrontsOfTheArrester() {
        assertThat(TwoSectionArrester.validFor(0.5e-6)).isTrue();
        assertThat(TwoSectionArrester.validFor(45e-6)).isTrue();
        assertThat(TwoSectionArrester.validFor(Math.nextDown(0.5e-6))).isFalse();
        assertThat(TwoSectionArrester.validFor(Math.nextUp(45e-6))).isFalse();
        assertThatIllegalArgumentException().isThrownBy(() -> TwoSectionArrester.ofHeight(1e5, 1, 0));
        assertThatIllegalArgumentException().isThrownBy(() -> TwoSectionArrester.ofResidualVoltages(66e3, 66e3, 24e3));
        // Two columns halve the inductances and dampings and double the capacitance.
        TwoSectionArrester one = TwoSectionArrester.ofHeight(248e3, 1.45, 1);
        TwoSectionArrester two = TwoSectionArrester.ofHeight(248e3, 1.45, 2);
        assertThat(two.betweenInductance()).isCloseTo(one.betweenInductance() / 2, withinPercentage(1e-9));
        assertThat(two.seriesDamping().orElseThrow())
                .isCloseTo(one.seriesDamping().orElseThrow() / 2, within(1e-9));
        assertThat(two.shuntCapacitance().orElseThrow())
                .isCloseTo(2 * one.shuntCapacitance().orElseThrow(), withinPercentage(1e-9));
        for (int i = 0; i < 3; i++) {
            double[] v = {1e5, 1e-6, 1e-6};
            v[i] = 0;
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> new TwoSectionArrester(
                            v[0], v[1], Optional.empty(), v[2], Optional.empty(), Optional.empty(), Optional.empty()));
        }
    }

    /** With dampings, capacitance and both inductances in place: each has its name, and the whole its residual voltage. */
    @Test
    void everyBranchOfTheArresterIsInTheCircuit() {
        Circuit.Builder builder = new Circuit.Builder().currentSource("s", "0", "t", PowerExponential.impulse820(1e4));
        Circuit circuit = TwoSectionArrester.ofHeight(66e3, 0.3, 1)
                .addTo(builder, "a", "t", "0")
                .build();
        assertThat(circuit.branches())
                .extracting(branch -> branch.name())
                .contains("a L0", "a R0", "a C", "a A0", "a L1", "a R1", "a A1")
                .doesNotContain("a R");
        double peak = TransientSolution.solve(circuit, TimeGrid.adaptive(40e-6, 2e-9))
                .potential("t")
                .maximum()
                .value();
        assertThat(peak).isBetween(60e3, 72e3);
    }

    @Test
    void concaveFrontsFromStraightToNearlyAJump() {
        // At 1 the front is a straight line of the steepness.
        ConcaveFront straight = new ConcaveFront(10e3, 1e-6, 10e9, 50e-6);
        assertThat(straight.exponent()).isEqualTo(1);
        assertThat(straight.at(0.5e-6)).isCloseTo(5e3, within(1e-6));
        assertThat(straight.rate(0.5e-6)).isCloseTo(10e9, within(1.0));
        assertThatIllegalArgumentException().isThrownBy(() -> new ConcaveFront(10e3, 1e-6, 9.99e9, 50e-6));
        assertThatIllegalArgumentException().isThrownBy(() -> new ConcaveFront(1, 1, 100, 50));
        assertThat(new ConcaveFront(1, 1, 99.9, 50).normalisedSteepness()).isCloseTo(99.9, within(1e-9));
        assertThatIllegalArgumentException().isThrownBy(() -> new ConcaveFront(10e3, 1e-6, 20e9, 1e-6));
        ConcaveFront c = ConcaveFront.medianFirst();
        assertThat(c.at(0)).isZero();
        assertThat(c.at(-1e-6)).isZero();
        assertThat(c.at(1e-12)).isPositive();
        assertThat(c.rate(0)).isCloseTo(c.linearCoefficient(), within(1.0));
        assertThat(c.rate(-1e-9)).isZero();
        assertThat(c.frontScale()).isEqualTo(c.joinTime());
        assertThat(c.duration()).isCloseTo(c.joinTime() + 20 * c.slowTail(), within(1e-18));
        ConcaveFront twice = c.scaled(2);
        assertThat(twice.at(10e-6)).isCloseTo(2 * c.at(10e-6), withinPercentage(1e-9));
        // CIGRE TB 63: half of the peak at the half-value time, by the slow tail alone to a few per cent.
        assertThat(c.at(c.half())).isCloseTo(c.peak() / 2, withinPercentage(3));
    }

    @Test
    void impulsesBeginAtZeroAndHaveTheirScales() {
        PowerExponential power = new PowerExponential(1, 2);
        assertThat(power.at(0)).isZero();
        assertThat(power.at(-1)).isZero();
        assertThat(power.rate(0)).isZero();
        assertThat(power.rate(-1)).isZero();
        assertThat(power.duration()).isEqualTo(60);
        assertThat(power.frontScale()).isEqualTo(2);
        // x³·e^(−x) at x = 1.
        assertThat(power.at(2)).isCloseTo(Math.exp(-1), within(1e-15));
        DoubleExponential two = new DoubleExponential(1, 1, 4);
        assertThat(two.at(0)).isZero();
        assertThat(two.at(-1)).isZero();
        assertThat(two.rate(0)).isEqualTo(3);
        assertThat(two.rate(-1e-9)).isZero();
        assertThat(two.duration()).isEqualTo(20);
        assertThat(two.frontScale()).isEqualTo(0.25);
        assertThatIllegalArgumentException().isThrownBy(() -> new DoubleExponential(1, 2, 2));
        Heidler heidler = new Heidler(1, 2, 10, 1);
        assertThat(heidler.at(0)).isZero();
        assertThat(heidler.at(-1)).isZero();
        // With exponent 1 the current starts with a jump of its slope: amplitude / front.
        assertThat(heidler.rate(0)).isEqualTo(0.5);
        assertThat(heidler.rate(-1)).isZero();
        assertThat(new Heidler(1, 2, 10, 2).rate(0)).isZero();
        assertThat(heidler.at(2)).isCloseTo(0.5 * Math.exp(-0.2), within(1e-15));
        assertThat(heidler.duration()).isEqualTo(210);
        assertThat(heidler.frontScale()).isEqualTo(2);
        assertThat(new Heidler(1, 2, 10, 50).exponent()).isEqualTo(50);
        assertThatIllegalArgumentException().isThrownBy(() -> new Heidler(1, 2, 10, Math.nextDown(1.0)));
        assertThatIllegalArgumentException().isThrownBy(() -> new Heidler(1, 2, 10, Math.nextUp(50.0)));
        // Long after the front nothing overflows: the front is complete.
        Heidler steep = new Heidler(1, 1e-9, 1, 50);
        assertThat(steep.at(1)).isCloseTo(Math.exp(-1), within(1e-15));
        assertThat(steep.rate(1)).isCloseTo(-Math.exp(-1), within(1e-15));
    }

    /** The expression is what a circuit simulator is given; it begins with the amplitude and decays with the tail. */
    @Test
    void expressionsAreWrittenOut() {
        assertThat(new PowerExponential(2, 3).expression()).contains("2.0*pow(time/3.0,3)*exp(-time/3.0)");
        assertThat(new DoubleExponential(2, 3, 4).expression()).contains("2.0*(exp(-3.0*time)-exp(-4.0*time))");
        assertThat(new Heidler(2, 3, 4, 5).expression())
                .contains("2.0*pow(time/3.0,5.0)/(1+pow(time/3.0,5.0))*exp(-time/4.0)");
        assertThat(ConcaveFront.medianFirst().expression()).isEmpty();
    }

    @Test
    void recordedImpulsesAreStraightBetweenTheirSamples() {
        SampledImpulse wave = new SampledImpulse(new double[] {1, 2, 4, 8}, new double[] {1, 3, 2, 0.5});
        assertThat(wave.at(0.999)).isZero();
        assertThat(wave.at(1)).isEqualTo(1);
        assertThat(wave.at(1.5)).isEqualTo(2);
        assertThat(wave.at(2)).isEqualTo(3);
        assertThat(wave.at(8)).isEqualTo(0.5);
        assertThat(wave.at(8.001)).isZero();
        assertThat(wave.rate(0.999)).isZero();
        assertThat(wave.rate(1)).isEqualTo(2);
        assertThat(wave.rate(3)).isEqualTo(-0.5);
        assertThat(wave.rate(8)).isEqualTo(-0.375);
        assertThat(wave.rate(8.001)).isZero();
        assertThat(wave.jumps()).containsExactly(1.0, 8.0);
        assertThat(new SampledImpulse(new double[] {0, 1, 2}, new double[] {1, 1, 0}).jumps())
                .isEmpty();
        assertThat(new SampledImpulse(new double[] {1, 2, 3}, new double[] {0, 1, 0}).jumps())
                .isEmpty();
        assertThat(wave.size()).isEqualTo(4);
        assertThat(wave.time(2)).isEqualTo(4);
        assertThat(wave.duration()).isEqualTo(8);
        assertThat(wave.frontScale()).isEqualTo(2);
        assertThat(new SampledImpulse(new double[] {0, 1, 2}, new double[] {3, 2, 1}).frontScale())
                .isEqualTo(1);
        assertThat(wave.scaled(2).at(2)).isEqualTo(6);
        ImpulseParameters shape = wave.shape();
        assertThat(shape.peak()).isEqualTo(3);
        assertThat(shape.peakTime()).isEqualTo(2);
        assertThat(shape.steepest()).isEqualTo(2);
        // By hand: trapezia 2 + 5 + 5, and (a² + ab + b²)/3 of each piece.
        assertThat(shape.charge()).isCloseTo(12, within(1e-12));
        assertThat(shape.specificEnergy()).isCloseTo(13.0 / 3 + 2 * 19.0 / 3 + 4 * (4 + 1 + 0.25) / 3, within(1e-12));
    }

    @Test
    void recordedImpulsesAreRefusedWithTheirLine() {
        double[] times = {0, 1, 2};
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new SampledImpulse(new double[] {0, 1}, new double[] {0, 1}))
                .withMessageContaining("at least three");
        assertThatIllegalArgumentException().isThrownBy(() -> new SampledImpulse(times, new double[] {0, 1}));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new SampledImpulse(new double[] {0, 1, 1}, new double[] {0, 1, 0}))
                .withMessageContaining("sample 3");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new SampledImpulse(new double[] {-1, 1, 2}, new double[] {0, 1, 0}));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new SampledImpulse(times, new double[] {0, Double.NaN, 0}));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new SampledImpulse(times, new double[] {0, -1, 0}))
                .withMessageContaining("reverse its sign");
        SampledImpulse read = SampledImpulse.read(new StringReader("time,current\n0,0\n1,2\n2, 1\n"), 1e-6, 1e3);
        assertThat(read.at(1e-6)).isEqualTo(2e3);
        assertThat(read.duration()).isEqualTo(2e-6);
        assertThat(SampledImpulse.read(new StringReader("0,0\n1,2\n2,1\n"), 1, 1)
                        .size())
                .isEqualTo(3);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> SampledImpulse.read(new StringReader("0,0\n1,2\n2,x\n"), 1, 1))
                .withMessageContaining("line 3: expected a time and a value");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> SampledImpulse.read(new StringReader("0,0\n1,2\n2,1,7\n"), 1, 1));
    }

    @Test
    void peaksOfStrokesKeepToTheRangeOfTheRegression() {
        assertThat(StrokeStatistics.firstFrontGivenPeak(3e3)).isPositive();
        assertThat(StrokeStatistics.firstFrontGivenPeak(200e3)).isPositive();
        // CIGRE TB 63, from memory: the lower branch holds to 20 kA: 12·20^0.171 and 1.77·20^0.188.
        assertThat(StrokeStatistics.firstSteepnessGivenPeak(20e3)).isCloseTo(20.029e9, withinPercentage(0.005));
        assertThat(StrokeStatistics.firstFrontGivenPeak(20e3)).isCloseTo(3.1086e-6, withinPercentage(0.005));
        assertThatIllegalArgumentException().isThrownBy(() -> StrokeStatistics.firstFrontGivenPeak(2.99e3));
        assertThatIllegalArgumentException().isThrownBy(() -> StrokeStatistics.firstSteepnessGivenPeak(201e3));
    }

    @Test
    void distributionsAtTheirMedians() {
        Lognormal normal = new Lognormal(30, 0.6, NONE);
        assertThat(normal.exceedance(30)).isCloseTo(0.5, within(1e-12));
        assertThat(normal.atScore(1)).isCloseTo(30 * Math.exp(0.6), within(1e-12));
        assertThat(normal.times(2).median()).isEqualTo(60);
        assertThat(normal.source()).isEqualTo(NONE);
        LogLogistic logistic = new LogLogistic(31, 2.6, NONE);
        assertThat(logistic.exceedance(31)).isCloseTo(0.5, within(1e-12));
        assertThat(logistic.exceededWith(0.5)).isCloseTo(31, within(1e-12));
        assertThatIllegalArgumentException().isThrownBy(() -> normal.exceededWith(1));
        assertThatIllegalArgumentException().isThrownBy(() -> logistic.exceededWith(1));
        assertThat(StrokeStatistics.FIRST_PEAK_TWO_SLOPE.source())
                .isEqualTo(StrokeStatistics.FIRST_PEAK_TWO_SLOPE.above().source());
        // 20 kA joins the two lines; scores on either side follow their own.
        assertThat(StrokeStatistics.FIRST_PEAK_TWO_SLOPE.atScore(0)).isEqualTo(33.3e3);
        assertThat(StrokeStatistics.FIRST_PEAK_TWO_SLOPE.atScore(-2))
                .isCloseTo(61.1e3 * Math.exp(-2 * 1.33), within(1e-6));
    }

    @Test
    void theSamplerCountsWhatItBends() {
        StrokeSampler sampler = new StrokeSampler(7);
        assertThat(sampler.seed()).isEqualTo(7);
        assertThat(sampler.bent()).isZero();
        assertThat(sampler.uniform()).isBetween(0.0, 1.0);
        for (int i = 0; i < 400; i++) {
            sampler.subsequent();
        }
        assertThat(sampler.bent()).isBetween(0.001, 0.6);
    }

    @Test
    void residualCurvesReachFromTheirFirstPointToTheirLast() {
        ResidualCurve curve = new ResidualCurve(new double[] {1e3, 10e3}, new double[] {50e3, 65e3});
        assertThat(curve.at(1e3)).isCloseTo(50e3, within(1e-6));
        assertThat(curve.at(10e3)).isCloseTo(65e3, within(1e-6));
        assertThatIllegalArgumentException().isThrownBy(() -> curve.at(Math.nextDown(1e3)));
        assertThatIllegalArgumentException().isThrownBy(() -> curve.at(Math.nextUp(10e3)));
        assertThat(curve).hasToString("residual curve [1000.0, 10000.0] A, [50000.0, 65000.0] V");
    }
}
