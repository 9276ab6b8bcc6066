package earthing.electrode.tester;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Worked examples of the methods of measuring, and the least and the most that each takes. */
class TesterEdgesTest {

    /** Getting Down to Earth, p. 33, read: 58, 55 and 59 ohm; mean 57.3 ohm, deviation 4.07 %, accuracy 4.88 %. */
    @Test
    void simplifiedFallOfPotential() {
        SimplifiedTest test = SimplifiedTest.of(58, 55, 59);
        assertThat(test.resistance()).isCloseTo(57.3, within(0.05));
        assertThat(test.deviation()).isCloseTo(0.0407, within(0.00005));
        assertThat(test.accuracy()).isCloseTo(0.0488, within(0.00005));
        // Whichever reading lies farthest off counts.
        assertThat(SimplifiedTest.of(55, 58, 59).deviation()).isCloseTo(test.deviation(), within(1e-12));
        assertThat(SimplifiedTest.of(59, 58, 55).deviation()).isCloseTo(test.deviation(), within(1e-12));
        assertThat(SimplifiedTest.of(10, 10, 16).deviation()).isCloseTo(1.0 / 3, within(1e-12));
        assertThat(SimplifiedTest.of(10, 16, 10).deviation()).isCloseTo(1.0 / 3, within(1e-12));
        assertThat(SimplifiedTest.of(16, 10, 10).deviation()).isCloseTo(1.0 / 3, within(1e-12));
    }

    /** Getting Down to Earth, p. 55, read: 17 mV and 4 mA make 4.25 ohm. */
    @Test
    void attachedRod() {
        assertThat(AttachedRodTechnique.resistance(0.017, 0.004)).isCloseTo(4.25, within(1e-12));
    }

    /** Identity: 12, 30 and 45 ohm measured in pairs. */
    @Test
    void threePoints() {
        ThreePointMethod found = ThreePointMethod.of(42, 75, 57);
        assertThat(found.first()).isCloseTo(12, within(1e-12));
        assertThat(found.second()).isCloseTo(30, within(1e-12));
        assertThat(found.third()).isCloseTo(45, within(1e-12));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> ThreePointMethod.of(10, 30, 10))
                .withMessageContaining("contradict each other");
    }

    /** Ten ohm under the clamp, and two of twenty that close the loop. */
    @Test
    void clampReadsTheLoop() {
        assertThat(ClampOnLoop.reading(10, List.of(20.0, 20.0))).isCloseTo(20, within(1e-12));
        assertThatIllegalArgumentException().isThrownBy(() -> ClampOnLoop.reading(10, List.of()));
    }

    /** Tagg 1970 (from memory): the table runs from 0.40 to 1.59. */
    @Test
    void slopeMethodKeepsToItsTable() {
        assertThat(SlopeMethod.slope(1, 2, 4)).isEqualTo(2);
        assertThat(SlopeMethod.place(0.40))
                .isGreaterThan(SlopeMethod.place(1.59))
                .isBetween(0.4, 0.7);
        assertThatIllegalArgumentException().isThrownBy(() -> SlopeMethod.place(Math.nextDown(0.40)));
        assertThatIllegalArgumentException().isThrownBy(() -> SlopeMethod.place(Math.nextUp(1.59)));
        assertThatIllegalArgumentException().isThrownBy(() -> SlopeMethod.slope(0, 1, 2));
        assertThatIllegalArgumentException().isThrownBy(() -> SlopeMethod.slope(1, 1, 2));
        assertThatIllegalArgumentException().isThrownBy(() -> SlopeMethod.slope(1, 2, 2));
    }

    /** A line laid from a terminal that does not stand at the origin, thirty degrees north of east. */
    @Test
    void probesStandOnTheirLine() {
        ProbeLine line = new ProbeLine(3, -2, Math.PI / 6, 60);
        assertThat(line.east(20)).isCloseTo(3 + 10 * Math.sqrt(3), within(1e-12));
        assertThat(line.north(20)).isCloseTo(8, within(1e-12));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, -1, Double.NaN})
    void readingsArePositive(double bad) {
        assertThatIllegalArgumentException().isThrownBy(() -> SimplifiedTest.of(bad, 1, 1));
        assertThatIllegalArgumentException().isThrownBy(() -> SimplifiedTest.of(1, bad, 1));
        assertThatIllegalArgumentException().isThrownBy(() -> SimplifiedTest.of(1, 1, bad));
        assertThatIllegalArgumentException().isThrownBy(() -> AttachedRodTechnique.resistance(bad, 1));
        assertThatIllegalArgumentException().isThrownBy(() -> AttachedRodTechnique.resistance(1, bad));
        assertThatIllegalArgumentException().isThrownBy(() -> new ThreePointMethod(bad, 1, 1));
        assertThatIllegalArgumentException().isThrownBy(() -> new ThreePointMethod(1, bad, 1));
        assertThatIllegalArgumentException().isThrownBy(() -> new ThreePointMethod(1, 1, bad));
        assertThatIllegalArgumentException().isThrownBy(() -> ClampOnLoop.reading(bad, List.of(1.0)));
        assertThatIllegalArgumentException().isThrownBy(() -> ClampOnLoop.reading(1, List.of(bad)));
        assertThatIllegalArgumentException().isThrownBy(() -> new ProbeLine(0, 0, 0, bad));
        assertThatIllegalArgumentException().isThrownBy(() -> new ProbeLine(0, 0, 0, Double.POSITIVE_INFINITY));
    }
}
