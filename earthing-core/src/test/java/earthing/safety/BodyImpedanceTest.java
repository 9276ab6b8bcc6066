package earthing.safety;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import earthing.safety.BodyImpedance.Percentile;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class BodyImpedanceTest {

    /** IEC 479-1 table 1 at 100 V, read, and IEC/TS 60479-1:2005 table 1, from memory: the editions differ. */
    @ParameterizedTest
    @CsvSource({"DRY_1984, 1200, 1875, 3200", "DRY_2005, 990, 1725, 3125"})
    void valuesAtHundredVoltsByEdition(BodyImpedance table, double p5, double p50, double p95) {
        assertThat(table.handToHand(100, Percentile.P5)).isEqualTo(p5);
        assertThat(table.handToHand(100, Percentile.P50)).isEqualTo(p50);
        assertThat(table.handToHand(100, Percentile.P95)).isEqualTo(p95);
    }

    /** Mitolo 2009 example 5.2, read: 1275 Ω hand to hand at 200 V gives 1020, 637 and 382 Ω. */
    @Test
    void mitoloExample52() {
        double handToHand = BodyImpedance.DRY_2005.handToHand(200, Percentile.P50);
        assertThat(handToHand).isEqualTo(1275);
        assertThat(BodyImpedance.DRY_2005.on(BodyPath.LEFT_HAND_TO_FOOT, 200, Percentile.P50))
                .isCloseTo(1020, within(1e-9));
        double trunk = BodyImpedance.DRY_2005.on(BodyPath.LEFT_HAND_TO_CHEST, 200, Percentile.P50);
        assertThat(Math.floor(trunk)).isEqualTo(637);
        assertThat(Math.floor(BodyImpedance.DRY_2005.on(BodyPath.FOOT_TO_FOOT, 200, Percentile.P50) / 2))
                .isEqualTo(382);
    }

    /** IEC 479-1 example and Mitolo 2009 example 5.1, read: 200 mA hand to hand act like 80 mA; feet 25 times less. */
    @Test
    void heartCurrentExamples() {
        assertThat(BodyPath.HAND_TO_HAND.referenceCurrent(0.200)).isCloseTo(0.080, within(1e-15));
        assertThat(BodyPath.LEFT_HAND_TO_FEET.heartCurrentFactor() / BodyPath.FOOT_TO_FOOT.heartCurrentFactor())
                .isCloseTo(25, within(1e-12));
        assertThat(BodyPath.RIGHT_HAND_TO_FEET.heartCurrentFactor() / BodyPath.FOOT_TO_FOOT.heartCurrentFactor())
                .isCloseTo(20, within(1e-12));
        assertThatIllegalArgumentException().isThrownBy(() -> BodyPath.HAND_TO_HAND.referenceCurrent(-1));
    }

    /**
     * The mean of four paths behind EN 50522:2010 table B.3, weights and body currents from memory. Six of the eight
     * printed voltages come out; those at 0.1 s and 0.2 s do not, so the library looks the table up.
     */
    @ParameterizedTest
    @CsvSource({"0.05, 716", "0.5, 220", "1, 117", "2, 96", "5, 86", "10, 85"})
    void meanOfFourPathsOfEn50522TableB3(double duration, double printed) {
        assertThat(meanOfFourPaths(duration)).isCloseTo(printed, within(0.5));
    }

    @ParameterizedTest
    @CsvSource({"0.1, 654, -0.062", "0.2, 537, -0.050"})
    void meanOfFourPathsMissesTwoPointsOfEn50522TableB3(double duration, double printed, double miss) {
        assertThat(meanOfFourPaths(duration) / printed - 1).isCloseTo(miss, within(0.001));
    }

    private static double meanOfFourPaths(double duration) {
        double current = BodyCurrent.EN_50522.points().at(duration);
        double[] weights = {1, 1, 1, 0.7};
        BodyPath[] paths = {
            BodyPath.LEFT_HAND_TO_FEET, BodyPath.RIGHT_HAND_TO_FEET, BodyPath.BOTH_HANDS_TO_FEET, BodyPath.HAND_TO_HAND
        };
        double sum = 0;
        for (int i = 0; i < 4; i++) {
            sum += weights[i] * BodyImpedance.DRY_2005.voltage(paths[i], paths[i].pathCurrent(current), Percentile.P50);
        }
        return sum / 4;
    }

    @Property(seed = "20261125", tries = 100)
    void impedanceFallsWithVoltageAndRisesWithPercentile(@ForAll @DoubleRange(min = 0, max = 1500) double voltage) {
        for (BodyImpedance table : BodyImpedance.values()) {
            double p5 = table.handToHand(voltage, Percentile.P5);
            double p50 = table.handToHand(voltage, Percentile.P50);
            double p95 = table.handToHand(voltage, Percentile.P95);
            assertThat(p5).isLessThan(p50);
            assertThat(p50).isLessThan(p95);
            assertThat(table.handToHand(voltage + 10, Percentile.P50)).isLessThanOrEqualTo(p50);
        }
    }

    @Property(seed = "20261125", tries = 100)
    void voltageDrivesTheCurrentItWasSolvedFor(@ForAll @DoubleRange(min = 0.01, max = 30) double current) {
        for (BodyImpedance table : BodyImpedance.values()) {
            for (BodyPath path : BodyPath.values()) {
                double voltage = table.voltage(path, current, Percentile.P5);
                assertThat(voltage / table.on(path, voltage, Percentile.P5)).isCloseTo(current, within(1e-7 * current));
            }
        }
    }

    @Test
    void refusesNonsense() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> BodyImpedance.DRY_2005.handToHand(Double.NaN, Percentile.P5));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> BodyImpedance.DRY_2005.voltage(BodyPath.HAND_TO_HAND, 0, Percentile.P5));
    }
}
