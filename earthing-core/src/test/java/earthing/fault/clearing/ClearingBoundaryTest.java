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
import java.util.List;
import org.junit.jupiter.api.Test;

/** Exactly at pickup, at the last point, at equal times, and with the least that is allowed. */
class ClearingBoundaryTest {

    private static final Points FUSE =
            new Points(List.of(new Point(100, 2), new Point(200, 0.5), new Point(400, 0.5)), 800);

    private static ProtectionStage stage(String name, Characteristic curve) {
        return new ProtectionStage(name, curve, 0, 0);
    }

    @Test
    void aCurveOfPointsActsFromItsFirstPointToWhatItBreaks() {
        assertThat(FUSE.operatingTime(100).orElseThrow()).isEqualTo(2);
        assertThat(FUSE.operatingTime(Math.nextDown(100.0))).isEmpty();
        assertThat(FUSE.operatingTime(200).orElseThrow()).isCloseTo(0.5, within(1e-15));
        assertThat(FUSE.operatingTime(800).orElseThrow()).isEqualTo(0.5);
        assertThat(FUSE.operatingTime(Math.nextUp(800.0))).isEmpty();
        // Straight on logarithmic axes: by hand 2·(0.5/2)^(ln 1.5 / ln 2).
        assertThat(FUSE.operatingTime(150).orElseThrow()).isCloseTo(0.888889, within(1e-6));
        assertThat(FUSE.breakpoints()).containsExactly(100.0, 200.0, 400.0, 800.0);
        assertThat(new Points(List.of(new Point(100, 2), new Point(200, 1)), 200).breakpoints())
                .containsExactly(100.0, 200.0);
        assertThat(new Points(List.of(new Point(100, 2), new Point(200, 1))).breakpoints())
                .containsExactly(100.0, 200.0);
    }

    @Test
    void whatAFuseCannotDoIsToldApart() {
        ProtectionStage fuse = stage("fuse", FUSE);
        assertThat(((Never) fuse.clear(900)).reason()).contains("above what fuse breaks (800 A)");
        assertThat(((Never) fuse.clear(50)).reason()).contains("below where fuse acts (pickup 100 A)");
        ProtectionStage relay = stage("relay", new DefiniteTime(100, 0.3));
        assertThat(((Never) relay.clear(99)).reason()).contains("below where relay acts");
        assertThat(fuse.clearsForGood()).isTrue();
        assertThat(relay.clearsForGood()).isFalse();
        Protection both = Protection.of(relay, fuse);
        assertThat(both.clearsForGood("fuse")).isTrue();
        assertThat(both.clearsForGood("relay")).isFalse();
        assertThat(both.clearsForGood("no such stage")).isFalse();
    }

    @Test
    void ofEqualTimesTheFirstStageStands() {
        Protection both =
                Protection.of(stage("first", new DefiniteTime(100, 0.3)), stage("second", new DefiniteTime(100, 0.3)));
        assertThat(((Cleared) both.clear(150)).by()).isEqualTo("first");
    }

    @Test
    void stagesMeetWhereTheirTimesAreEqual() {
        // IEC very inverse at 1: 13.5/(M − 1) = 1.5 s at ten times its pickup.
        Protection both = Protection.of(
                stage("inverse", new InverseTime(100, 1, InverseCurve.IEC_VERY_INVERSE)),
                stage("definite", new DefiniteTime(300, 1.5)));
        assertThat(both.breakpoints())
                .anySatisfy(point -> assertThat(point).isCloseTo(1000, within(1e-8)))
                .contains(100.0, 300.0, 2000.0)
                .hasSize(4);
        assertThat(((Cleared) both.clear(999)).by()).isEqualTo("definite");
        assertThat(((Cleared) both.clear(1001)).by()).isEqualTo("inverse");
    }

    @Test
    void theLeastThatIsAllowedIsAllowed() {
        assertThat(new ProtectionStage("s", new DefiniteTime(100, 0), 0, 0).clear(100))
                .isEqualTo(new Cleared(0, "s"));
        assertThat(((Cleared) new ProtectionStage("s", new DefiniteTime(100, 0.2), 0.06, 0.03).clear(100)).seconds())
                .isCloseTo(0.29, within(1e-15));
        assertThat(new Shot(0, 0, 0).jouleIntegral()).isZero();
        assertThat(new InverseTime(100, 1, InverseCurve.IEC_VERY_INVERSE, 1, 20, 0).operatingTime(0))
                .isEmpty();
        assertThat(new InverseTime(100, 1, InverseCurve.IEC_VERY_INVERSE, 1.3, 20, 0).operatingTime(Math.nextUp(130.0)))
                .isPresent();
        assertThat(FUSE.operatingTime(0)).isEmpty();
    }

    @Test
    void lessIsRefused() {
        for (double bad : new double[] {-1e-9, Double.NaN, Double.POSITIVE_INFINITY}) {
            assertThatThrownBy(() -> new ProtectionStage("s", new DefiniteTime(100, 0), bad, 0))
                    .isInstanceOf(IllegalArgumentException.class);
            assertThatThrownBy(() -> new ProtectionStage("s", new DefiniteTime(100, 0), 0, bad))
                    .isInstanceOf(IllegalArgumentException.class);
            assertThatThrownBy(() -> new Shot(bad, 0, 0)).isInstanceOf(IllegalArgumentException.class);
            assertThatThrownBy(() -> new Shot(0, bad, 0)).isInstanceOf(IllegalArgumentException.class);
            assertThatThrownBy(() -> new DefiniteTime(100, bad)).isInstanceOf(IllegalArgumentException.class);
            assertThatThrownBy(() -> new InverseTime(100, 1, InverseCurve.IEC_VERY_INVERSE, 1, 20, bad))
                    .isInstanceOf(IllegalArgumentException.class);
            assertThatThrownBy(() -> new InverseTime(100, bad, InverseCurve.IEC_VERY_INVERSE))
                    .isInstanceOf(IllegalArgumentException.class);
            assertThatThrownBy(() -> new Point(bad, 1)).isInstanceOf(IllegalArgumentException.class);
            assertThatThrownBy(() -> new Point(1, bad)).isInstanceOf(IllegalArgumentException.class);
        }
        for (double bad : new double[] {0, -1, Double.NaN, Double.POSITIVE_INFINITY}) {
            assertThatThrownBy(() -> new DefiniteTime(bad, 1)).isInstanceOf(IllegalArgumentException.class);
            assertThatThrownBy(() -> new InverseTime(bad, 1, InverseCurve.IEC_VERY_INVERSE))
                    .isInstanceOf(IllegalArgumentException.class);
        }
        assertThatThrownBy(() -> new Point(0, 1)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Point(1, 0)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Shot(0, 0, -1)).isInstanceOf(IllegalArgumentException.class);
        for (Characteristic curve :
                List.of(new DefiniteTime(100, 1), new InverseTime(100, 1, InverseCurve.IEC_VERY_INVERSE), FUSE)) {
            assertThatThrownBy(() -> curve.operatingTime(-1)).isInstanceOf(IllegalArgumentException.class);
            assertThatThrownBy(() -> curve.operatingTime(Double.NaN)).isInstanceOf(IllegalArgumentException.class);
        }
        assertThatThrownBy(() -> new Points(List.of(new Point(100, 2)))).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Points(List.of(new Point(100, 2), new Point(100, 1))))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Points(List.of(new Point(100, 2), new Point(200, 3))))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Points(List.of(new Point(100, 2), new Point(200, 1)), 199))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new InverseTime(100, 1, InverseCurve.IEC_VERY_INVERSE, 20, 20, 0))
                .isInstanceOf(IllegalArgumentException.class);
    }
}
