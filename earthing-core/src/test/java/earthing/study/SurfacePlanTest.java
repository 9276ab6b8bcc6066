package earthing.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import earthing.electrode.wire.Bar;
import earthing.study.ContourLines.Point;
import java.util.List;
import java.util.Optional;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

final class SurfacePlanTest {

    private static final List<Bar> ROD = List.of(new Bar("main", 0, 0, 0.5, 0, 0, 2.5, 0.008));

    /** Point source on the surface of uniform ground, U = ρ·I/(2·π·r): Sunde, Earth conduction effects, 1949. */
    private static double pointSource(double x, double y) {
        return 100 * 10 / (2 * Math.PI * Math.max(Math.hypot(x, y), 0.05));
    }

    @Test
    void linesOfAPointSourceAreTheCirclesOfSunde1949() {
        Curve plan = plan(400, Optional.of(300.0));
        int circles = 0;
        for (Curve.Trace trace : plan.traces()) {
            if (trace.name().startsWith("ground at ")) {
                double volts = Double.parseDouble(trace.name().split(" ", -1)[2]);
                double radius = 100 * 10 / (2 * Math.PI * volts);
                // Linear interpolation over a step h errs by h²·f''/8, which for 1/r is a radius of h²/(4·r).
                double step = 14.0 / 60;
                double off = step * step / (4 * (radius - step / 2));
                for (int i = 0; radius > step && i < trace.size(); i++) {
                    assertThat(Math.hypot(trace.x(i), trace.y(i))).isCloseTo(radius, within(off + 0.005 * radius));
                }
                circles++;
            }
        }
        assertThat(circles).isGreaterThan(4);
    }

    @Test
    void theLimitOfTouchLiesWhereRiseLessGroundIsThePermissibleVoltage() {
        Curve.Trace limit = trace(plan(400, Optional.of(300.0)), "limit of touch, 300 V");
        double radius = 100 * 10 / (2 * Math.PI * (400 - 300));
        for (int i = 0; i < limit.size(); i++) {
            assertThat(Math.hypot(limit.x(i), limit.y(i))).isCloseTo(radius, within(0.02 * radius));
        }
        assertThat(plan(400, Optional.of(300.0)).title()).contains("Outside the thick line");
        assertThat(plan(400, Optional.of(399.9)).title()).contains("Nowhere in this view");
        assertThat(plan(1e6, Optional.of(100.0)).title()).contains("Everywhere in this view");
        assertThat(plan(400, Optional.empty()).title()).contains("no permissible touch voltage");
    }

    @Test
    void metalReachAndNeighboursAreThere() {
        Curve plan = plan(400, Optional.of(300.0));
        assertThat(trace(plan, "electrode main").size()).isEqualTo(2);
        assertThat(trace(plan, "reach at the cubicle").x(0)).isEqualTo(1.15, within(1e-12));
        assertThat(trace(plan, "neighbour field fence, 6.00 m, direction not stated")
                        .x(0))
                .isEqualTo(6.0);
    }

    @Property(tries = 60, seed = "20261125")
    void aPlaneIsCutInOneStraightLine(
            @ForAll @DoubleRange(min = -3, max = 3) double slopeX,
            @ForAll @DoubleRange(min = 0.1, max = 3) double slopeY,
            @ForAll @DoubleRange(min = -0.05, max = 0.05) double level) {
        double[] at = new double[21];
        for (int i = 0; i < at.length; i++) {
            at[i] = -1 + 0.1 * i;
        }
        double[][] values = new double[at.length][at.length];
        for (int i = 0; i < at.length; i++) {
            for (int j = 0; j < at.length; j++) {
                values[i][j] = slopeX * at[i] + slopeY * at[j];
            }
        }
        List<List<Point>> lines = ContourLines.of(at, at, values, level);
        assertThat(lines).hasSize(1);
        for (Point point : lines.get(0)) {
            assertThat(slopeX * point.x() + slopeY * point.y()).isCloseTo(level, within(1e-9));
        }
    }

    @Test
    void twoHillsGiveTwoClosedLines() {
        double[] at = new double[41];
        for (int i = 0; i < at.length; i++) {
            at[i] = -2 + 0.1 * i;
        }
        double[][] values = new double[at.length][at.length];
        for (int i = 0; i < at.length; i++) {
            for (int j = 0; j < at.length; j++) {
                values[i][j] = Math.exp(-8 * (Math.pow(at[i] - 1, 2) + at[j] * at[j]))
                        + Math.exp(-8 * (Math.pow(at[i] + 1, 2) + at[j] * at[j]));
            }
        }
        List<List<Point>> lines = ContourLines.of(at, at, values, 0.5);
        assertThat(lines).hasSize(2).allSatisfy(line -> assertThat(line.get(0)).isEqualTo(line.get(line.size() - 1)));
    }

    private static Curve plan(double rise, Optional<Double> permissible) {
        return SurfacePlan.of(
                SurfacePlanTest::pointSource,
                ROD,
                rise,
                permissible,
                new SurfacePlan.Nearby("cubicle", 0.15),
                1,
                List.of(new SurfacePlan.Nearby("field fence", 6)));
    }

    private static Curve.Trace trace(Curve plan, String name) {
        return plan.traces().stream()
                .filter(trace -> trace.name().equals(name))
                .findFirst()
                .orElseThrow(() -> new AssertionError("no line " + name));
    }
}
