package earthing.safety;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import earthing.safety.BodyImpedance.Percentile;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

/** The chance of fibrillation, its bounds, and the risk a year made of it. */
final class FibrillationChanceTest {

    private static final FibrillationChance BARE =
            new FibrillationChance(BodyImpedance.DRY_2005, BodyPath.LEFT_HAND_TO_FEET, 0);

    /** IEC/TS 60479-1:2005 table 1: 5, 50 and 95 of 100 persons have a lower impedance (from memory). */
    @Test
    void percentilesOfTableOneOfIec60479ComeBack() {
        for (double volts : new double[] {100, 220, 400, 700}) {
            assertThat(share(volts, Percentile.P5)).isCloseTo(0.05, within(1e-9));
            assertThat(share(volts, Percentile.P50)).isCloseTo(0.5, within(1e-9));
            assertThat(share(volts, Percentile.P95)).isCloseTo(0.95, within(1e-9));
        }
    }

    private static double share(double volts, Percentile percentile) {
        double ohms = BodyImpedance.DRY_2005.on(BodyPath.LEFT_HAND_TO_FEET, volts, percentile);
        return BARE.shareAbove(volts, volts / ohms);
    }

    /** Hand calculation of docs/theory/safety.md: 200 V for 0.5 s on dry skin; 30 V for 1 s harms nobody by the steps. */
    @Test
    void handCalculation() {
        assertThat(BARE.shareAbove(200, 0.200)).isCloseTo(0.562, within(5e-4));
        assertThat(BARE.shareAbove(200, 0.100)).isCloseTo(0.995, within(5e-4));
        assertThat(BARE.of(200, 0.5)).isCloseTo(0.583, within(5e-4));
        assertThat(BARE.of(30, 1)).isLessThan(1e-4);
    }

    /** ENA EG-0 (2010): 416 contacts of 4 s, 0.1 faults a year of 0.5 s; scenario from memory, the equation is exact. */
    @Test
    void coincidenceOfEg0() {
        double times = Coincidence.perYear(0.1, 416, 0.5, 4);
        assertThat(times).isCloseTo(5.936e-6, within(5e-10));
        assertThat(Coincidence.permissibleChance(Coincidence.TARGET.value(), times))
                .isCloseTo(0.1685, within(5e-5));
    }

    @Property(seed = "20261125", tries = 200)
    void risesWithVoltageAndDurationAndFallsWithShoes(
            @ForAll @DoubleRange(min = 1, max = 3000) double volts,
            @ForAll @DoubleRange(min = 0.05, max = 9) double duration,
            @ForAll @DoubleRange(min = 0, max = 5000) double shoes) {
        double chance = BARE.of(volts, duration);
        assertThat(chance).isBetween(0.0, 1.0);
        assertThat(BARE.of(1.1 * volts, duration)).isGreaterThanOrEqualTo(chance - 1e-12);
        assertThat(BARE.of(volts, 1.1 * duration)).isGreaterThanOrEqualTo(chance - 1e-12);
        assertThat(BARE.of(volts, Double.POSITIVE_INFINITY)).isGreaterThanOrEqualTo(chance - 1e-12);
        FibrillationChance shod = new FibrillationChance(BodyImpedance.DRY_2005, BodyPath.LEFT_HAND_TO_FEET, shoes);
        assertThat(shod.of(volts, duration)).isLessThanOrEqualTo(chance + 1e-12);
    }

    @Test
    void refusesWhatIsNone() {
        assertThatIllegalArgumentException().isThrownBy(() -> BARE.of(Double.NaN, 1));
        assertThatIllegalArgumentException().isThrownBy(() -> BARE.of(100, 0));
        assertThatIllegalArgumentException()
                .isThrownBy(
                        () -> new FibrillationChance(BodyImpedance.DRY_2005, BodyPath.LEFT_HAND_TO_FEET, Double.NaN));
        assertThatIllegalArgumentException().isThrownBy(() -> Coincidence.permissibleChance(1e-6, 0));
    }
}
