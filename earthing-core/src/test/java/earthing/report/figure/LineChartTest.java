package earthing.report.figure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import earthing.study.Curve;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

final class LineChartTest {

    private static Curve curve(double[] x, double[] y) {
        return new Curve("id", "title", "Time", "s", "Voltage", "V", List.of(new Curve.Trace("trace", x, y)));
    }

    @Test
    void axesCarryPrefixedUnits() {
        String svg = LineChart.of(curve(new double[] {0, 5e-6, 20e-6}, new double[] {0, 6450, 100}), "f");
        assertThat(svg).contains("Time [µs]", "Voltage [kV]", ">20<", ">6<");
    }

    @Test
    void wideRangesAreDividedInDecades() {
        String svg = LineChart.of(curve(new double[] {0.05, 1, 10}, new double[] {700, 100, 5}), "f");
        assertThat(svg).contains(">0.01<", ">0.1<", ">1<", ">10<", ">1000<");
    }

    @Test
    void aNarrowPeakSurvivesThinning() {
        double[] x = new double[50_001];
        double[] y = new double[50_001];
        for (int i = 0; i < x.length; i++) {
            x[i] = i * 1e-9;
        }
        y[31_237] = 1000;
        String svg = LineChart.of(curve(x, y), "f");
        // the top of the axis is at 30, where the peak of exactly 1 kV has to arrive
        assertThat(svg).containsPattern("L[0-9.]+ 30L");
        assertThat(svg.length()).isLessThan(40_000);
    }

    @Test
    void valuesThatAreNotFiniteAreRefused() {
        assertThatThrownBy(() -> LineChart.of(curve(new double[] {0, 1}, new double[] {0, Double.NaN}), "f"))
                .hasMessageContaining("must be finite");
        assertThatThrownBy(() -> LineChart.of(curve(new double[0], new double[0]), "f"))
                .hasMessageContaining("at least one point");
    }

    @Test
    void wordsTellTheExtremes() {
        assertThat(LineChart.words(curve(new double[] {0, 1e-6}, new double[] {-50, 2000}))
                        .replace('\u00a0', ' '))
                .isEqualTo("Chart of voltage against time. trace: highest 2.00 kV at 1.00 µs, lowest -50.0 V at 0 s.");
    }

    @Property(seed = "20261125", tries = 200)
    void everyPointLiesWithinTheAxes(
            @ForAll @DoubleRange(min = -1e6, max = 1e6) double a,
            @ForAll @DoubleRange(min = -1e6, max = 1e6) double b) {
        Axis axis = Axis.over(Math.min(a, b), Math.max(a, b), "V", false);
        assertThat(axis.place(a)).isBetween(-1e-9, 1 + 1e-9);
        assertThat(axis.place(b)).isBetween(-1e-9, 1 + 1e-9);
        assertThat(axis.ticks()).hasSizeBetween(2, 12).isSorted();
    }

    @Property(seed = "20261125", tries = 200)
    void everyPointLiesWithinTheDecades(
            @ForAll @DoubleRange(min = 0.01, max = 1e6) double a,
            @ForAll @DoubleRange(min = 1.5, max = 1e6) double ratio) {
        Axis axis = Axis.over(a, a * ratio, "ohm", true);
        assertThat(axis.place(a)).isBetween(-1e-9, 1 + 1e-9);
        assertThat(axis.place(a * ratio)).isBetween(-1e-9, 1 + 1e-9);
        assertThat(axis.ticks()).hasSizeGreaterThanOrEqualTo(2).isSorted();
    }
}
