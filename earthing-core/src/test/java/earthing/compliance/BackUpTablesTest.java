package earthing.compliance;

import static earthing.compliance.Status.INSUFFICIENT_DATA;
import static earthing.compliance.Status.MET;
import static earthing.compliance.Status.NOT_APPLICABLE;
import static earthing.compliance.Status.NOT_MET;

import earthing.study.Case;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Whether the back-up protection clears, and which verdicts its longer time decides: those that the file names. */
class BackUpTablesTest {

    private static final Case FAULT = Case.NONE.with("fault", "maximum").with("arrangement", "shared");
    private static final Case LEAST = Case.NONE.with("fault", "minimum").with("arrangement", "shared");
    private static final Case FAILED = FAULT.with(Case.PROTECTION, Case.BACK_UP);
    private static final String FACTOR = "  detection-factor: \"2\"\n";
    private static final String BACK_UP = "  back-up: {pickup: 40 A, curve: definite-time, delay: 1 s}\n";

    private static Question with(String id, String use) {
        return Question.of(id).with(FACTOR, FACTOR + BACK_UP + (use.isEmpty() ? "" : "  back-up-for: " + use + "\n"));
    }

    private static Question cleared() {
        return with("fault.back-up", "")
                .result("fault.back-up.maximum.clearing-time", FAULT, "nominal", 1.06)
                .result("fault.back-up.minimum.clearing-time", LEAST, "nominal", 1.31);
    }

    static Stream<Question> clearing() {
        return Stream.of(
                Question.of("fault.back-up").is(NOT_APPLICABLE, "no back-up protection is declared"),
                cleared().is(MET, "at the latest after 1.31 s"),
                cleared()
                        .result(
                                "fault.back-up.maximum.clearing-time",
                                FAULT.with("arrangement", "separate"),
                                "nominal",
                                9)
                        .is(MET, "at the latest after 1.31 s"),
                cleared()
                        .result("fault.back-up.maximum.clearing-time", FAULT.with("broken", "tee"), "nominal", 9)
                        .is(MET, "at the latest after 1.31 s"),
                cleared()
                        .gap("fault.back-up.minimum.clearing-time", LEAST, "never: the current is below the pickup")
                        .is(NOT_MET, "if the first protection fails: never", "lower the pickup"),
                with("fault.back-up", "")
                        .gap("fault", "the source is not known", "system.earth-fault-current")
                        .is(INSUFFICIENT_DATA, "system.earth-fault-current"));
    }

    private static Question heated(String use) {
        String conductor = "conductor.upper-lead";
        return with(conductor + ".heating", use)
                .result(conductor + ".final-temperature", FAULT, "nominal", 100)
                .result(conductor + ".temperature-limit", FAULT, "nominal", 200)
                .result(conductor + ".final-temperature", FAILED, "nominal", 201)
                .result(conductor + ".temperature-limit", FAILED, "nominal", 200);
    }

    private static Question touched(String use) {
        return with("touch.cubicle", use)
                .result("touch.cubicle.voltage", FAULT, "nominal", 100)
                .result("touch.cubicle.permissible", FAULT, "nominal", 200)
                .result("touch.cubicle.voltage", FAILED, "nominal", 100)
                .result("touch.cubicle.permissible", FAILED, "nominal", 99);
    }

    static Stream<Question> verdicts() {
        return Stream.of(
                heated("").is(MET),
                heated("information").is(MET),
                heated("heating").is(NOT_MET),
                heated("heating-and-touch").is(NOT_MET),
                touched("").is(MET),
                touched("information").is(MET),
                touched("heating").is(MET),
                touched("heating-and-touch").is(NOT_MET));
    }

    @ParameterizedTest
    @MethodSource({"clearing", "verdicts"})
    void answers(Question question) {
        question.check();
    }
}
