package earthing.compliance;

import static earthing.compliance.Status.DUE_LATER;
import static earthing.compliance.Status.INSUFFICIENT_DATA;
import static earthing.compliance.Status.MET;
import static earthing.compliance.Status.NOT_APPLICABLE;
import static earthing.compliance.Status.NOT_ASSESSED;
import static earthing.compliance.Status.NOT_MET;
import static org.assertj.core.api.Assertions.assertThat;

import earthing.study.Case;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class PowerTablesTest {

    private static final Case FAULT = Case.NONE.with("fault", "maximum").with("arrangement", "shared");
    private static final Case LEAST = Case.NONE.with("fault", "minimum").with("arrangement", "shared");
    private static final Case SEPARATE = FAULT.with("arrangement", "separate");
    private static final Case BROKEN = FAULT.with("broken", "tee");

    private static Question pair(Question question, String id, Case circumstances, double voltage, double permissible) {
        return question.result(id + ".voltage", circumstances, "nominal", voltage)
                .result(id + ".permissible", circumstances, "nominal", permissible);
    }

    private static Question touch(double rise, double voltage, double permissible) {
        return pair(
                Question.of("epr.tank")
                        .result("criteria.proven-up-to", Case.NONE, "nominal", 2)
                        .result("epr.tank", FAULT, "nominal", rise),
                "touch.cubicle",
                FAULT,
                voltage,
                permissible);
    }

    static Stream<Question> potentialRise() {
        // EN 50522 design flow: up to twice the permissible touch voltage nothing more has to be shown (from memory).
        return Stream.of(
                touch(400, 300, 200).is(MET, "within 2.00 times"),
                touch(401, 200, 200).is(MET, "touch has been shown"),
                touch(401, 201, 200).is(NOT_MET, "touch is not met"),
                Question.of("epr.tank")
                        .result("epr.tank", FAULT, "nominal", 401)
                        .gap("touch", "no criterion is named", "criteria.touch")
                        .is(INSUFFICIENT_DATA, "touch has to be proved"),
                pair(touch(401, 100, 200), "touch.between-earths", FAULT, 300, 200)
                        .is(NOT_MET),
                touch(401, 100, 200)
                        .gap("touch.tank-handle", FAULT, "the handle is not declared bonded", "tank.handle-bonded")
                        .is(INSUFFICIENT_DATA, "touch has to be proved"),
                Question.of("epr.main")
                        .gap("epr.main", "the source is not known", "system.earth-fault-current")
                        .is(INSUFFICIENT_DATA, "system.earth-fault-current"),
                Question.of("epr.main").is(NOT_ASSESSED));
    }

    static Stream<Question> touchAndStep() {
        String cubicle = "touch.cubicle";
        String never = "the fault is never cleared";
        return Stream.of(
                pair(Question.of(cubicle), cubicle, FAULT, 100, 100).is(MET),
                pair(Question.of(cubicle), cubicle, FAULT, 101, 100).is(NOT_MET),
                // The least margin governs, not the highest voltage.
                pair(pair(Question.of(cubicle), cubicle, FAULT, 400, 500), cubicle, LEAST, 90, 80)
                        .is(NOT_MET),
                // Other arrangements and broken paths are shown and do not count.
                pair(pair(Question.of(cubicle), cubicle, FAULT, 90, 100), cubicle, SEPARATE, 900, 100)
                        .is(MET),
                pair(pair(Question.of(cubicle), cubicle, FAULT, 90, 100), cubicle, BROKEN, 900, 100)
                        .is(MET),
                Question.of(cubicle)
                        .gap("touch", "no criterion is named", "criteria.touch")
                        .is(INSUFFICIENT_DATA, "criteria.touch"),
                Question.of(cubicle).is(NOT_ASSESSED),
                // One case without a number keeps the requirement from being met; a failed case still fails it.
                pair(Question.of(cubicle), cubicle, FAULT, 90, 100)
                        .gap(cubicle, LEAST, "the limit is not known", "criteria.touch")
                        .is(INSUFFICIENT_DATA, "criteria.touch"),
                pair(Question.of(cubicle), cubicle, FAULT, 101, 100)
                        .gap(cubicle, LEAST, "the limit is not known", "criteria.touch")
                        .is(NOT_MET),
                pair(Question.of("touch.tank-handle"), cubicle, FAULT, 90, 100)
                        .gap("touch.tank-handle", FAULT, "the handle is not bonded", "tank.handle-bonded")
                        .is(INSUFFICIENT_DATA, "tank.handle-bonded"),
                pair(Question.of("touch.stay-east"), "touch.stay-east", FAULT, 101, 100)
                        .is(NOT_MET),
                Question.of("touch.between-earths").is(NOT_APPLICABLE),
                pair(Question.of("touch.between-earths"), "touch.between-earths", FAULT, 90, 100)
                        .is(MET),
                pair(Question.of("touch.between-earths"), "touch.between-earths", FAULT, 110, 100)
                        .is(NOT_MET),
                pair(Question.of("step.worst"), "step.worst", FAULT, 90, 100).is(MET),
                pair(Question.of("step.worst"), "step.worst", FAULT, 101, 100).is(NOT_MET),
                Question.of("step.worst")
                        .gap("step", "no shape", "electrodes.rod")
                        .is(INSUFFICIENT_DATA, "electrodes.rod"),
                Question.of("fault.detection")
                        .result("fault.minimum.detection-ratio", LEAST, "high", 2)
                        .is(MET),
                Question.of("fault.detection")
                        .result("fault.minimum.detection-ratio", LEAST, "high", 1.9)
                        .is(NOT_MET),
                Question.of("fault.detection")
                        .result("fault.minimum.detection-ratio", LEAST, "high", 1.9)
                        .result("fault.maximum.detection-ratio", FAULT, "low", 9)
                        .is(NOT_MET),
                Question.of("fault.detection")
                        .with("  detection-factor: \"2\"\n", "")
                        .result("fault.minimum.detection-ratio", LEAST, "high", 3)
                        .is(INSUFFICIENT_DATA, "protection.detection-factor"),
                Question.of("fault.detection")
                        .result("fault.maximum.detection-ratio", FAULT, "high", 3)
                        .gap("fault.minimum.clearing-time", LEAST, "never cleared: below the pickup")
                        .is(NOT_MET, "never cleared"),
                Question.of("fault.detection")
                        .with(
                                "  relay: {pickup: 50 A, curve: definite-time, delay: 0.2 s}\n",
                                "  clearing-time: 0.2 s\n")
                        .is(INSUFFICIENT_DATA, "protection.relay.pickup"),
                Question.of("fault.detection")
                        .gap("fault", "the source is not known", "system.earth-fault-current")
                        .is(INSUFFICIENT_DATA, "system.earth-fault-current"),
                heated(100, 200).is(MET),
                heated(201, 200).is(NOT_MET, "larger conductor"),
                heated(100, 200)
                        .gap("conductor.upper-lead.final-temperature", LEAST, never)
                        .is(NOT_ASSESSED, never),
                heated(201, 200)
                        .gap("conductor.upper-lead.final-temperature", LEAST, never)
                        .is(NOT_MET),
                Question.of("conductor.upper-lead.heating")
                        .gap("conductor.upper-lead.final-temperature", "no joint", "main-earth.joint")
                        .is(INSUFFICIENT_DATA, "main-earth.joint"),
                Question.of("conductor.lead.heating").is(NOT_ASSESSED));
    }

    private static Question heated(double temperature, double limit) {
        return Question.of("conductor.upper-lead.heating")
                .result("conductor.upper-lead.final-temperature", FAULT, "nominal", temperature)
                .result("conductor.upper-lead.temperature-limit", FAULT, "nominal", limit);
    }

    static Stream<Question> cableAndTransfer() {
        String cable = "cable.power-frequency";
        String fence = "transfer.field-fence";
        String neighbours = "neighbours:\n  - {name: field fence, kind: fence, distance: 6 m, limit: 80 V}\n";
        String supply = "auxiliary-supply: {kind: solar, earth-reference: isolated, isolation-level: 4 kV}\n";
        return Stream.of(
                Question.of(cable)
                        .result(cable + ".voltage", FAULT, "high", 2000)
                        .is(MET),
                Question.of(cable)
                        .result(cable + ".voltage", FAULT, "high", 2001)
                        .is(NOT_MET, "tee"),
                Question.of(cable)
                        .result(cable + ".voltage", FAULT, "high", 10)
                        .result(cable + ".voltage", SEPARATE, "high", 9000)
                        .is(MET, "by fault: maximum 10.0 V", "otherwise earthed, at the worst fault: separate 9000 V"),
                Question.of(cable)
                        .with("  insulation-level: 2 kV\n", "")
                        .result(cable + ".voltage", FAULT, "high", 10)
                        .is(INSUFFICIENT_DATA, "control-cable.insulation-level"),
                Question.of(cable)
                        .gap(cable, "the cubicle floats", "cubicle.earth")
                        .is(INSUFFICIENT_DATA, "cubicle.earth"),
                Question.of(cable).with(block("control-cable:", "antenna:"), "").is(INSUFFICIENT_DATA, "control-cable"),
                Question.of(fence)
                        .result(fence + ".voltage", FAULT, "nominal", 79)
                        .result(fence + ".limit", FAULT, "nominal", 80)
                        .is(MET),
                Question.of(fence)
                        .result(fence + ".voltage", FAULT, "nominal", 81)
                        .result(fence + ".limit", FAULT, "nominal", 80)
                        .is(NOT_MET, "separate the earths"),
                Question.of(fence)
                        .result(fence + ".voltage", FAULT, "nominal", 81)
                        .is(INSUFFICIENT_DATA, "neighbours.limit"),
                Question.of("transfer.none")
                        .with(neighbours, "")
                        .with(supply, "")
                        .is(NOT_APPLICABLE),
                Question.of("transfer.none").is(NOT_ASSESSED),
                broken("design", 1).is(MET, "can be seen"),
                broken("design", 0).is(DUE_LATER, "hidden"),
                broken("in-service", 0).is(INSUFFICIENT_DATA, "measurements"),
                broken("in-service", 0).with("of: main-earth", "of: tee").is(MET, "continuity reading"),
                Question.of("path.contingency").is(NOT_ASSESSED));
    }

    private static Question broken(String stage, double visible) {
        return Question.of("path.contingency")
                .with("in-service", stage)
                .result("contingency.visible", BROKEN, "nominal", visible);
    }

    private static String block(String from, String to) {
        return Question.SITE.substring(Question.SITE.indexOf(from), Question.SITE.indexOf(to));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource({"potentialRise", "touchAndStep", "cableAndTransfer"})
    void answers(Question question) {
        question.check();
    }

    @Test
    void theGoverningCaseAndBoundAreNamed() {
        Finding finding = pair(
                        Question.of("touch.cubicle").result("touch.cubicle.voltage", LEAST, "high", 95),
                        "touch.cubicle",
                        FAULT,
                        90,
                        100)
                .result("touch.cubicle.permissible", LEAST, "high", 80)
                .answer();
        assertThat(finding.circumstances()).isEqualTo(LEAST);
        assertThat(finding.bound()).isEqualTo("high");
        assertThat(finding.value()).hasValue(95);
        assertThat(finding.limit()).hasValue(80);
    }
}
