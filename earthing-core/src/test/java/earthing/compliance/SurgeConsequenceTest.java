package earthing.compliance;

import static org.assertj.core.api.Assertions.assertThat;

import earthing.study.Case;
import org.junit.jupiter.api.Test;

/** The half sentence that says what a surge does once a path is broken: of that path, the worst that was computed. */
class SurgeConsequenceTest {

    private static final Case TEE =
            Case.NONE.with("fault", "maximum").with("arrangement", "shared").with("broken", "tee");
    private static final Case SURGE = TEE.with("wave", "8/20");
    private static final Case OTHER = SURGE.with("broken", "main-earth");
    private static final String END = "surge.cable-end.trip.cubicle";

    private static Question broken() {
        return Question.of("path.contingency").result("contingency.visible", TEE, "nominal", 0);
    }

    private static String reason(Question question) {
        return question.answer().reason();
    }

    @Test
    void nothingIsSaidWhereNoSurgeWasComputedForThePath() {
        Question other = broken().result(END + ".open-voltage", OTHER, "nominal", 9000)
                .result(END + ".short-circuit-current", OTHER, "nominal", 5000);
        assertThat(reason(other)).doesNotContain("surge");
        assertThat(reason(other)).isEqualTo(reason(broken()));
    }

    @Test
    void theWorstEndOfThePathIsTold() {
        Question question = broken().result(END + ".open-voltage", SURGE, "nominal", 6500)
                .result(END + ".short-circuit-current", SURGE, "nominal", 3900)
                .result("surge.cable-end.close.tank.open-voltage", SURGE, "nominal", 7100)
                .result("surge.cable-end.close.tank.short-circuit-current", SURGE, "nominal", 2000)
                .result(END + ".open-voltage", OTHER, "nominal", 90_000)
                .result(END + ".short-circuit-current", OTHER, "nominal", 8000)
                .result("surge.flashover.tank.time", OTHER, "nominal", 1);
        assertThat(reason(question))
                .contains("; a surge then brings 7.10 kV open and 3.90 kA short-circuited to the cores")
                .doesNotContain("flashes over");
        question.result("surge.flashover.tank.time", SURGE, "nominal", 1);
        assertThat(reason(question)).contains("short-circuited to the cores, and a gap flashes over");
    }

    @Test
    void smallVoltagesAreInVoltAndNoneIsNamedSo() {
        assertThat(reason(broken().result(END + ".open-voltage", SURGE, "nominal", 640)
                        .result(END + ".short-circuit-current", SURGE, "nominal", 390)))
                .contains("brings 640 V open and 0.390 kA short-circuited");
        assertThat(reason(broken().result(END + ".open-voltage", SURGE, "nominal", 1000)
                        .result(END + ".short-circuit-current", SURGE, "nominal", 390)))
                .contains("brings 1.00 kV open");
        assertThat(reason(broken().result(END + ".open-voltage", SURGE, "nominal", 0)
                        .result(END + ".short-circuit-current", SURGE, "nominal", 390)))
                .contains("brings no voltage open");
        assertThat(reason(broken().result(END + ".short-circuit-current", SURGE, "nominal", 3900)))
                .contains("no metal way to earth but the control cable: 3.90 kA (8/20) through what its cores end on");
    }
}
