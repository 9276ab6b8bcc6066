package earthing.compliance;

import static earthing.compliance.Status.INSUFFICIENT_DATA;
import static earthing.compliance.Status.MET;
import static earthing.compliance.Status.NOT_APPLICABLE;
import static earthing.compliance.Status.NOT_ASSESSED;
import static earthing.compliance.Status.NOT_MET;

import earthing.study.Case;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class SurgeTablesTest {

    private static final String END = "surge.cable-end.trip.cubicle";
    private static final Case SLOW =
            Case.NONE.with("wave", "8/20").with("arrangement", "shared").with("screen-bond", "none");
    private static final Case STROKE =
            SLOW.with("entry", Case.LINE_CONDUCTOR).with("strike", "here").with("switch", "closed");
    private static final Case FAST = SLOW.with("wave", "0.25/100");
    private static final String CORE = "{name: trip, tank-end: coil, cubicle-end: contact}";
    private static final String WITHSTAND =
            "{name: trip, tank-end: coil, cubicle-end: contact, withstand: 6 kV, withstand-wave: 1.2/50}";
    private static final String PROTECTED = "{name: trip, tank-end: coil, cubicle-end: protector, withstand: 6 kV,"
            + " withstand-wave: 1.2/50, cubicle-protector: {level: 600 V, current: 5 kA, charge: 0.3 C,"
            + " port-withstand: 2.5 kV}}";
    private static final String TESTED =
            "tested-arrangement: {current: 10 kA, wave: 8/20, cable-length: 7 m," + " separation: 0.2 m}\nantenna:";

    private static Question stressed(Case circumstances, double volts, double amperes) {
        return Question.of(END)
                .result(END + ".open-voltage", circumstances, "nominal", volts)
                .result(END + ".short-circuit-current", circumstances, "nominal", amperes)
                .result(END + ".charge", circumstances, "nominal", amperes * 20e-6)
                .result(END + ".let-through", circumstances, "nominal", 570)
                .result(END + ".protector-current", circumstances, "nominal", 0.9 * amperes)
                .result(END + ".protector-charge", circumstances, "nominal", amperes * 18e-6);
    }

    private static Question tested(double volts, double amperes) {
        Case shared = Case.NONE.with("wave", "8/20").with("arrangement", "shared");
        return stressed(SLOW, 6500, 3900)
                .with("antenna:", TESTED)
                .result("surge.tested-arrangement.open-voltage", shared, "nominal", volts)
                .result("surge.tested-arrangement.short-circuit-current", shared, "nominal", amperes);
    }

    /** The order of the verdict: protector, tested arrangement, withstand, else the keys to fill in. */
    static Stream<Question> cableEnds() {
        return Stream.of(
                stressed(SLOW, 6500, 3900)
                        .with(CORE, PROTECTED)
                        .is(MET, "protector: it conducts 3.90 kA of its 5.00 kA"),
                stressed(SLOW, 6500, 5001).with(CORE, PROTECTED).is(NOT_MET, "protector: its current"),
                // Of a protector of known kind the current that it really carries counts.
                stressed(SLOW, 6500, 5001)
                        .with(CORE, PROTECTED.replace("current: 5 kA", "kind: clamping, current: 5 kA"))
                        .is(MET, "4.50 kA of its 5.00 kA"),
                stressed(SLOW, 6500, 5600)
                        .with(CORE, PROTECTED.replace("current: 5 kA", "kind: switching, current: 5 kA"))
                        .is(NOT_MET, "protector: its current"),
                stressed(SLOW, 6500, 3900)
                        .with(CORE, PROTECTED.replace("0.3 C", "0.07 C"))
                        .is(NOT_MET, "charge"),
                stressed(SLOW, 6500, 3900)
                        .with(CORE, PROTECTED)
                        .result(END + ".let-through", SLOW, "high", 2501)
                        .is(NOT_MET, "lower protection level"),
                // The withstand of the core stands in for that of the port, where it is declared.
                stressed(SLOW, 6500, 3900)
                        .with(CORE, PROTECTED)
                        .with(", port-withstand: 2.5 kV", "")
                        .result(END + ".let-through", SLOW, "high", 6001)
                        .is(NOT_MET, "lower protection level"),
                stressed(SLOW, 6500, 3900)
                        .with(
                                CORE,
                                PROTECTED
                                        .replace(" port-withstand: 2.5 kV", "")
                                        .replace("charge: 0.3 C,", "charge: 0.3 C")
                                        .replace(" withstand: 6 kV, withstand-wave: 1.2/50,", ""))
                        .is(INSUFFICIENT_DATA, "control-cable.cores.cubicle-protector.port-withstand"),
                stressed(SLOW, 6500, 3900)
                        .with(CORE, PROTECTED.replace("current: 5 kA", "current: unknown"))
                        .is(INSUFFICIENT_DATA, "control-cable.cores.cubicle-protector.current"),
                stressed(SLOW, 6500, 3900)
                        .with(CORE, "{name: trip, tank-end: coil, cubicle-end: protector}")
                        .is(INSUFFICIENT_DATA, "control-cable.cores.cubicle-protector"),
                // The protector decides even where tested arrangement and withstand would fail.
                tested(100, 100).with(CORE, PROTECTED).is(MET, "protector: it conducts"),
                tested(6500, 3900).is(MET, "tested arrangement"),
                tested(6499, 9000).is(NOT_MET, "open voltage against the tested arrangement"),
                tested(9000, 3899).is(NOT_MET, "short-circuit current against the tested arrangement"),
                // The tested arrangement decides before the withstand.
                tested(6499, 3900)
                        .with(CORE, WITHSTAND.replace("6 kV", "60 kV"))
                        .is(NOT_MET, "tested arrangement"),
                stressed(SLOW, 6000, 3900).with(CORE, WITHSTAND).is(MET, "1.2/50 withstand"),
                stressed(SLOW, 6001, 3900).with(CORE, WITHSTAND).is(NOT_MET, "1.2/50 withstand"),
                stressed(SLOW, 6000, 3900)
                        .is(
                                INSUFFICIENT_DATA,
                                "control-cable.cores.cubicle-protector",
                                "tested-arrangement",
                                "withstand"),
                // Waves that the file does not name are shown and do not decide.
                stressed(SLOW, 6000, 3900)
                        .with(CORE, WITHSTAND)
                        .result(END + ".open-voltage", FAST, "nominal", 240_000)
                        .is(MET),
                // A stroke to the line is shown beside the standard case and decides nothing, computed or not.
                stressed(SLOW, 6000, 3900)
                        .with(CORE, WITHSTAND)
                        .result(END + ".open-voltage", STROKE, "nominal", 240_000)
                        .is(MET),
                stressed(SLOW, 6000, 3900)
                        .with(CORE, WITHSTAND)
                        .gap("surge", STROKE, "the file describes no line", "line")
                        .is(MET),
                // A named fast wave is not what a 1.2/50 withstand speaks for, nor a test on 8/20.
                stressed(SLOW, 6000, 3900)
                        .with(CORE, WITHSTAND)
                        .with("waves: [8/20]", "waves: [8/20, 0.25/100]")
                        .result(END + ".open-voltage", FAST, "nominal", 5000)
                        .is(INSUFFICIENT_DATA, "0.25/100"),
                tested(9000, 9000)
                        .with("waves: [8/20]", "waves: [8/20, 0.25/100]")
                        .result(END + ".open-voltage", FAST, "nominal", 5000)
                        .is(INSUFFICIENT_DATA, "control-cable.cores.cubicle-protector"),
                stressed(SLOW, 6000, 3900)
                        .with(CORE, WITHSTAND.replace("1.2/50", "0.25/100"))
                        .with("waves: [8/20]", "waves: [0.25/100]")
                        .result(END + ".open-voltage", FAST, "nominal", 5000)
                        .is(MET),
                // A named wave that could not be computed keeps the end from being met.
                stressed(SLOW, 6000, 3900)
                        .with(CORE, WITHSTAND)
                        .with("waves: [8/20]", "waves: [8/20, 1/200]")
                        .gap("surge", SLOW.with("wave", "1/200"), "the wave is not known", "surges.waves")
                        .is(INSUFFICIENT_DATA, "surges.waves"),
                stressed(SLOW, 6001, 3900)
                        .with(CORE, WITHSTAND)
                        .with("waves: [8/20]", "waves: [8/20, 1/200]")
                        .gap("surge", SLOW.with("wave", "1/200"), "the wave is not known", "surges.waves")
                        .is(NOT_MET),
                stressed(SLOW.with("arrangement", "separate"), 6000, 3900)
                        .with(CORE, WITHSTAND)
                        .is(NOT_ASSESSED),
                stressed(SLOW.with("screen-bond", "both"), 6000, 3900)
                        .with(CORE, WITHSTAND)
                        .is(NOT_ASSESSED),
                stressed(SLOW, 6500, 3900)
                        .with(CORE, "{name: trip, tank-end: coil, cubicle-end: tank}")
                        .is(NOT_APPLICABLE, "bonded to chassis"),
                Question.of(END)
                        .gap("surge", "the cubicle floats", "cubicle.earth")
                        .is(INSUFFICIENT_DATA, "cubicle.earth"),
                Question.of("surge.cable-end.cores")
                        .with("  cores:\n    - " + CORE + "\n", "")
                        .is(INSUFFICIENT_DATA, "control-cable.cores"));
    }

    private static Question screened(double temperature) {
        Case both = SLOW.with("screen-bond", "both");
        return Question.of("surge.screen")
                .with("screen: {bond: none}", "screen: {bond: both}")
                .result("surge.screen.final-temperature", both, "nominal", temperature)
                .result("surge.screen.temperature-limit", both, "nominal", 200);
    }

    private static Question gap(double voltage, double strength) {
        return Question.of("surge.gap")
                .result("surge.gap.lead-cable.voltage", SLOW, "nominal", voltage)
                .result("surge.gap.lead-cable.strength", SLOW, "nominal", strength);
    }

    private static Question rated(String which, double needed, double rating) {
        return Question.of("arrester.rating")
                .about(which.replace('-', ' '))
                .result("surge.arrester." + which, needed)
                .result("surge.arrester." + which + ".rating", rating);
    }

    static Stream<Question> screenGapsAndArresters() {
        String margin = "arrester.margin";
        String rating = "arrester.rating";
        String all = "arresters: {side: both, earthed-at: tank}\n";
        return Stream.of(
                screened(45).is(MET),
                screened(201).is(NOT_MET, "larger cross-section"),
                Question.of("surge.screen").is(NOT_APPLICABLE),
                Question.of("surge.screen")
                        .with("bond: none", "bond: unknown")
                        .is(INSUFFICIENT_DATA, "control-cable.screen"),
                Question.of("surge.screen")
                        .with("  screen: {bond: none}\n", "")
                        .is(INSUFFICIENT_DATA, "control-cable.screen"),
                Question.of("surge.screen")
                        .with("bond: none", "bond: both")
                        .gap("surge", "no soil", "soil.resistivity")
                        .is(INSUFFICIENT_DATA, "soil.resistivity"),
                gap(99e3, 100e3).is(MET),
                gap(101e3, 100e3).is(NOT_MET, "wider gap"),
                Question.of("surge.gap")
                        .gap("surge", "no soil", "soil.resistivity")
                        .is(INSUFFICIENT_DATA, "soil.resistivity"),
                Question.of("surge.gap").is(NOT_ASSESSED),
                Question.of(margin).result("surge.insulation.margin", 0.2).is(MET),
                Question.of(margin).result("surge.insulation.margin", 0.19).is(NOT_MET, "shorter arrester leads"),
                Question.of(margin)
                        .about("chopped")
                        .result("surge.insulation.margin", 0.5)
                        .result("surge.insulation.chopped-margin", 0.1)
                        .is(NOT_MET),
                Question.of(margin)
                        .with(", protective-margin: 20 %", "")
                        .result("surge.insulation.margin", 0.5)
                        .is(INSUFFICIENT_DATA, "criteria.protective-margin"),
                Question.of(margin)
                        .about("lightning")
                        .gap("surge.insulation.margin", "no level", "tank.impulse-level")
                        .is(INSUFFICIENT_DATA, "tank.impulse-level"),
                Question.of(margin).with("side: both", "side: none").is(NOT_MET, "no arresters"),
                Question.of(margin).with("side: both", "side: unknown").is(INSUFFICIENT_DATA, "arresters"),
                Question.of(margin).with(all, "").is(INSUFFICIENT_DATA, "arresters"),
                rated("continuous-voltage", 14e3, 17e3).is(MET),
                rated("continuous-voltage", 24e3, 17e3).is(NOT_MET, "higher rating"),
                rated("temporary-overvoltage", 23e3, 23e3).is(MET),
                rated("temporary-overvoltage", 24e3, 23e3).is(NOT_MET),
                Question.of(rating)
                        .about("continuous voltage")
                        .gap("surge.arrester", "no rating", "arresters.continuous-voltage")
                        .is(INSUFFICIENT_DATA, "arresters.continuous-voltage"),
                Question.of(rating).about("both sides").is(MET),
                Question.of(rating)
                        .about("both sides")
                        .with("side: both", "side: source")
                        .is(NOT_MET, "other side"),
                Question.of(rating)
                        .about("both sides")
                        .with("side: both", "side: source")
                        .with("switch-state: unknown", "switch-state: closed")
                        .is(MET, "closed"),
                Question.of(rating)
                        .about("both sides")
                        .with("side: both", "side: load")
                        .with("switch-state: unknown", "switch-state: open")
                        .is(NOT_MET),
                Question.of(rating).with("side: both", "side: none").is(NOT_APPLICABLE),
                Question.of(rating).with(all, "").is(INSUFFICIENT_DATA, "arresters"));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource({"cableEnds", "screenGapsAndArresters"})
    void answers(Question question) {
        question.check();
    }
}
