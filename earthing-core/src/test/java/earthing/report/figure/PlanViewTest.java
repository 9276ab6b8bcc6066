package earthing.report.figure;

import static org.assertj.core.api.Assertions.assertThat;

import earthing.study.Curve;
import java.util.List;
import org.junit.jupiter.api.Test;

final class PlanViewTest {

    private static final Curve PLAN = new Curve(
            PlanView.CURVE,
            "Plan",
            "east of the pole",
            "m",
            "north of the pole",
            "m",
            List.of(
                    trace("ground at 120 V", new double[] {-4, 4, 0, -4}, new double[] {-4, -4, 4, -4}),
                    trace("limit of touch, 80 V", new double[] {-2, 2}, new double[] {0, 0}),
                    trace("electrode main", new double[] {1, 1}, new double[] {0, 0}),
                    trace("reach at the cubicle", new double[] {-1, 1}, new double[] {1, 1}),
                    trace("neighbour shed, 30.0 m, direction not stated", new double[] {30, 30}, new double[] {0, 1})));

    private static Curve.Trace trace(String name, double[] x, double[] y) {
        return new Curve.Trace(name, x, y);
    }

    @Test
    void everyLineIsNamedAndToldApartWithoutColour() {
        String svg = PlanView.of(PLAN, "figure-plan");
        assertThat(svg)
                .contains("ground at 120 V", "limit of touch, 80 V", "electrode main", "reach at the cubicle", "pole")
                .contains("stroke-dasharray=\"7 4\"", "stroke-dasharray=\"2 4\"")
                .contains("(outside this view)")
                .doesNotContain("stroke=\"#");
    }

    @Test
    void aRodIsADotAndTheScaleIsTheSameBothWays() {
        String svg = PlanView.of(PLAN, "figure-plan");
        assertThat(svg).contains("r=\"4.2\"");
        assertThat(svg).containsPattern("<rect x=\"60\" y=\"30\" width=\"530\" height=\"530\"");
    }

    @Test
    void theWordsNameEveryLine() {
        assertThat(PlanView.words(PLAN)).contains("ground at 120 V", "neighbour shed, 30.0 m", "Plan");
    }
}
