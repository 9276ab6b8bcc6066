package earthing.report.figure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import earthing.study.Curve;
import java.util.List;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

final class SensitivityBarsTest {

    private static final Pattern BAR = Pattern.compile("<rect x=\"([\\d.]+)\" y=\"[\\d.]+\" width=\"([\\d.]+)\"");

    private static Curve curve(double... values) {
        return new Curve(
                "sensitivity.x",
                "touch",
                "bound",
                "",
                "value",
                "V",
                List.of(new Curve.Trace("soil.resistivity", new double[] {-1, 0, 1}, values)));
    }

    @Test
    void barsReachFromTheNominalValueAsFarAsTheirBounds() {
        String svg = SensitivityBars.of(curve(100, 200, 600), OptionalDouble.of(300), "f");
        Matcher bars = BAR.matcher(svg);
        assertThat(bars.find()).isTrue();
        double low = Double.parseDouble(bars.group(2));
        double end = Double.parseDouble(bars.group(1)) + low;
        assertThat(bars.find()).isTrue();
        assertThat(Double.parseDouble(bars.group(1))).isEqualTo(end);
        assertThat(Double.parseDouble(bars.group(2)) / low).isBetween(3.98, 4.02);
        assertThat(svg).contains("limit: 300", "dashed", "100\u00a0V … 600\u00a0V");
    }

    @Test
    void aLimitFarAwayIsWrittenOnly() {
        assertThat(SensitivityBars.of(curve(100, 110, 120), OptionalDouble.of(9000), "f"))
                .contains("outside the drawing")
                .doesNotContain("3 2");
    }

    @Test
    void aTraceNeedsThreeValues() {
        Curve two = new Curve(
                "s", "t", "", "", "", "V", List.of(new Curve.Trace("a", new double[] {-1, 1}, new double[] {1, 2})));
        assertThatThrownBy(() -> SensitivityBars.of(two, OptionalDouble.empty(), "f"))
                .isInstanceOf(IllegalArgumentException.class);
    }
}
