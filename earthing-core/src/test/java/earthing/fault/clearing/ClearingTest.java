package earthing.fault.clearing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import earthing.fault.clearing.Characteristic.DefiniteTime;
import earthing.fault.clearing.Characteristic.InverseTime;
import earthing.fault.clearing.Characteristic.Points;
import earthing.fault.clearing.Characteristic.Points.Point;
import earthing.fault.clearing.ClearingTime.Cleared;
import earthing.fault.clearing.ClearingTime.Never;
import earthing.fault.clearing.RecloseSequence.Outcome;
import java.util.List;
import java.util.OptionalDouble;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class ClearingTest {

    /** Operating times at a time multiplier of 1 as relay handbooks print them (from memory). */
    @ParameterizedTest
    @CsvSource({
        "IEC_NORMAL_INVERSE, 2, 10.03, 0.005", "IEC_NORMAL_INVERSE, 5, 4.28, 0.005",
        "IEC_NORMAL_INVERSE, 10, 2.97, 0.005", "IEC_NORMAL_INVERSE, 20, 2.27, 0.005",
        "IEC_VERY_INVERSE, 2, 13.5, 0.05", "IEC_VERY_INVERSE, 5, 3.375, 0.0005",
        "IEC_VERY_INVERSE, 10, 1.5, 0.05", "IEC_EXTREMELY_INVERSE, 2, 26.67, 0.005",
        "IEC_EXTREMELY_INVERSE, 5, 3.33, 0.005", "IEC_EXTREMELY_INVERSE, 10, 0.808, 0.0005",
        "LONG_TIME_INVERSE, 2, 120, 0.5", "LONG_TIME_INVERSE, 10, 13.33, 0.005",
        "SHORT_TIME_INVERSE, 10, 0.518, 0.0005"
    })
    void inverseCurvesAsRelayHandbooksPrintThem(InverseCurve curve, double multiple, double seconds, double within) {
        assertThat(curve.seconds(multiple)).isCloseTo(seconds, within(within));
    }

    /** Hand values of t = A/(M^p − 1) + B with the constants of IEEE C37.112 table 1 (constants from memory). */
    @ParameterizedTest
    @CsvSource({
        "IEEE_MODERATELY_INVERSE, 10, 1.20676",
        "IEEE_VERY_INVERSE, 10, 0.68908",
        "IEEE_EXTREMELY_INVERSE, 10, 0.40655",
        "IEEE_VERY_INVERSE, 2, 7.0277",
        "IEEE_EXTREMELY_INVERSE, 2, 9.5217"
    })
    void ieeeCurvesByHand(InverseCurve curve, double multiple, double seconds) {
        assertThat(curve.seconds(multiple)).isCloseTo(seconds, within(1e-4 * seconds));
    }

    @ParameterizedTest
    @EnumSource(InverseCurve.class)
    void curveHasNoTimeAtPickupAndASource(InverseCurve curve) {
        assertThatThrownBy(() -> curve.seconds(1)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> curve.seconds(Double.NaN)).isInstanceOf(IllegalArgumentException.class);
        assertThat(curve.source().title()).isNotBlank();
        assertThat(new InverseTime(100, 0.1, curve).operatingTime(100)).isEmpty();
        assertThat(new InverseTime(100, 0.1, curve).operatingTime(100.0001)).isPresent();
    }

    @Property(seed = "20261125", tries = 100)
    void inverseTimeFallsWithCurrentAndScalesWithItsMultiplier(
            @ForAll InverseCurve curve,
            @ForAll @DoubleRange(min = 1.05, max = 18) double multiple,
            @ForAll @DoubleRange(min = 0.05, max = 1) double multiplier) {
        InverseTime relay = new InverseTime(40, multiplier, curve);
        double time = relay.operatingTime(40 * multiple).orElseThrow();
        assertThat(relay.operatingTime(44 * multiple).orElseThrow()).isLessThan(time);
        assertThat(new InverseTime(40, 2 * multiplier, curve)
                        .operatingTime(40 * multiple)
                        .orElseThrow())
                .isCloseTo(2 * time, within(1e-12 * time));
        assertThat(relay.operatingTime(40 * 20).orElseThrow())
                .isEqualTo(relay.operatingTime(40 * 500).orElseThrow());
    }

    @Test
    void inverseTimeKeepsItsFirstMultipleAndItsMinimum() {
        InverseTime relay = new InverseTime(100, 0.05, InverseCurve.IEC_EXTREMELY_INVERSE, 1.3, 50, 0.03);
        assertThat(relay.operatingTime(129)).isEmpty();
        assertThat(relay.operatingTime(130)).isPresent();
        assertThat(relay.operatingTime(4000)).isEqualTo(OptionalDouble.of(0.03));
        assertThat(relay.breakpoints()).containsExactly(130.0, 5000.0);
        assertThatThrownBy(() -> new InverseTime(100, 0.05, InverseCurve.IEC_VERY_INVERSE, 0.9, 20, 0))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new InverseTime(100, 0, InverseCurve.IEC_VERY_INVERSE))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new InverseTime(Double.NaN, 1, InverseCurve.IEC_VERY_INVERSE))
                .isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void belowPickupTheAnswerIsNever() {
        Protection protection = Protection.of(
                new ProtectionStage("earth fault", new DefiniteTime(60, 0.5), 0.06, 0),
                new ProtectionStage("sensitive earth fault", new DefiniteTime(8, 5), 0.06, 0.1));
        assertThat(protection.clear(7.9)).isInstanceOf(Never.class);
        assertThat(((Never) protection.clear(7.9)).reason())
                .contains("earth fault")
                .contains("sensitive");
        assertThat(protection.clear(7.9).time()).isEmpty();
        assertThat(((Cleared) protection.clear(8)).by()).isEqualTo("sensitive earth fault");
        assertThat(protection.clear(8).time().orElseThrow()).isCloseTo(5.16, within(1e-12));
        assertThat(protection.clear(60)).isEqualTo(new Cleared(0.5 + 0.06, "earth fault"));
        assertThat(protection.pickup()).isEqualTo(8);
        assertThat(protection.breakpoints()).containsExactly(8.0, 60.0);
        assertThat(Protection.fixed(0.2).clear(1).time()).hasValue(0.2);
        assertThat(Protection.fixed(0.2).clear(0)).isInstanceOf(Never.class);
    }

    @Test
    void breakpointsFindWhereTheFastestStageChanges() {
        Protection protection = Protection.of(
                new ProtectionStage("inverse", new InverseTime(100, 0.2, InverseCurve.IEC_VERY_INVERSE), 0, 0),
                new ProtectionStage("definite", new DefiniteTime(150, 0.9), 0, 0));
        // 0.2·13.5/(M−1) = 0.9 at M = 4
        assertThat(protection.breakpoints()).hasSize(4);
        assertThat(protection.breakpoints().get(2)).isCloseTo(400, within(1e-6));
        assertThat(((Cleared) protection.clear(399)).by()).isEqualTo("definite");
        assertThat(((Cleared) protection.clear(401)).by()).isEqualTo("inverse");
    }

    @Test
    void fuseIsStraightOnLogarithmicAxes() {
        Points fuse = new Points(List.of(new Point(50, 100), new Point(500, 0.1), new Point(2000, 0.01)));
        assertThat(fuse.operatingTime(49)).isEmpty();
        assertThat(fuse.operatingTime(50).orElseThrow()).isCloseTo(100, within(1e-9));
        assertThat(fuse.operatingTime(Math.sqrt(50 * 500.0)).orElseThrow())
                .isCloseTo(Math.sqrt(100 * 0.1), within(1e-9));
        assertThat(fuse.operatingTime(1e5)).hasValue(0.01);
        assertThatThrownBy(() -> new Points(List.of(new Point(50, 1)))).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Points(List.of(new Point(50, 1), new Point(40, 0.5))))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Point(0, 1)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> fuse.operatingTime(Double.NaN)).isInstanceOf(IllegalArgumentException.class);
    }

    /** C. A. Gross, Power System Analysis: reclosing after 20 cycles, 15 s and 45 s, lockout after the third. */
    @Test
    void grossRecloserSequence() {
        RecloseSequence scheme = RecloseSequence.same(Protection.fixed(0.1), List.of(20 / 60.0, 15.0, 45.0));
        Outcome outcome = scheme.run(400);
        assertThat(outcome).isInstanceOf(Outcome.Lockout.class);
        assertThat(outcome.shots()).hasSize(4);
        assertThat(outcome.liveTime()).isCloseTo(0.4, within(1e-12));
        assertThat(outcome.elapsedTime()).isCloseTo(0.4 + 1 / 3.0 + 60, within(1e-12));
        assertThat(outcome.shots().get(3).deadTime()).isInfinite();
        assertThat(outcome.jouleIntegral()).isCloseTo(400 * 400 * 0.4, within(1e-6));
        assertThat(outcome.equivalentCurrent()).isCloseTo(400, within(1e-9));
    }

    /** Two fast and two delayed shots add to 2.3 s, the sum behind 259.8 °C of 35 mm² copper at 4 kA. */
    @Test
    void fastAndDelayedShotsAddTheirTimes() {
        Protection fast = Protection.fixed(0.15);
        Protection slow = Protection.fixed(1);
        Outcome outcome = new RecloseSequence(List.of(fast, fast, slow, slow), List.of(0.3, 5.0, 15.0)).run(4000);
        assertThat(outcome.liveTime()).isCloseTo(2.3, within(1e-12));
        assertThat(outcome.jouleIntegral()).isCloseTo(16e6 * 2.3, within(1e-3));
    }

    /** IEC 60909-0:2001 eqs. (102)-(105), from memory: identity for successive short circuits. */
    @Test
    void iec60909EquivalentThermalCurrentOfSuccessiveShortCircuits() {
        Outcome outcome = new Outcome.Lockout(
                List.of(new Shot(4000, 0.1, 0.3), new Shot(4000, 0.1, 1), new Shot(3000, 1, Double.POSITIVE_INFINITY)));
        assertThat(outcome.jouleIntegral()).isCloseTo(12.2e6, within(1.0));
        assertThat(outcome.liveTime()).isCloseTo(1.2, within(1e-12));
        assertThat(outcome.equivalentCurrent()).isCloseTo(3188.52, within(0.005));
        assertThat(outcome.elapsedTime()).isCloseTo(2.5, within(1e-12));
    }

    @Test
    void aShotThatNeverEndsIsSustained() {
        Protection fast = Protection.of(new ProtectionStage("fast", new DefiniteTime(200, 0.05), 0.05, 0));
        Protection slow = Protection.of(new ProtectionStage("slow", new DefiniteTime(300, 1), 0.05, 0));
        RecloseSequence scheme = new RecloseSequence(List.of(fast, slow), List.of(0.5));
        assertThat(scheme.run(250)).isInstanceOf(Outcome.Sustained.class);
        assertThat(scheme.run(250).shots()).hasSize(1);
        assertThat(((Outcome.Sustained) scheme.run(100)).reason()).contains("fast");
        assertThat(scheme.run(100).equivalentCurrent()).isZero();
        assertThat(scheme.run(300)).isInstanceOf(Outcome.Lockout.class);
        assertThat(scheme.breakpoints()).containsExactly(200.0, 300.0);
        assertThat(RecloseSequence.none(fast).run(500).elapsedTime()).isCloseTo(0.1, within(1e-12));
        assertThatThrownBy(() -> new RecloseSequence(List.of(fast), List.of(1.0)))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new RecloseSequence(List.of(fast, fast), List.of(0.0)))
                .isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void refusesTimesThatCannotBe() {
        assertThatThrownBy(() -> new Cleared(Double.NaN, "x")).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new ProtectionStage("", new DefiniteTime(1, 1), 0, 0))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new ProtectionStage("x", new DefiniteTime(1, 1), -1, 0))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new DefiniteTime(1, -1)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Protection(List.of())).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Shot(-1, 1, 1)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new DefiniteTime(1, 1).operatingTime(-2)).isInstanceOf(IllegalArgumentException.class);
    }
}
