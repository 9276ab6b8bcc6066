package earthing.compliance;

import static earthing.compliance.Status.DUE_LATER;
import static earthing.compliance.Status.INSUFFICIENT_DATA;
import static earthing.compliance.Status.MET;
import static earthing.compliance.Status.NOT_APPLICABLE;
import static earthing.compliance.Status.NOT_ASSESSED;
import static earthing.compliance.Status.NOT_MET;

import earthing.study.Case;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class ElectrodeTablesTest {

    private static final String RESISTANCE = "electrode.main.resistance";
    private static final String ELECTRODE = "  - {name: main, material: copper, rod: {length: 3 m, diameter: 16 mm}}\n";

    private static final String OWN = "  - {name: own, at: {x: 5 m, y: 0 m}, rod: {length: 3 m, diameter: 16 mm}}\n";

    private static Question predicted(String id) {
        return Question.of(id)
                .result(RESISTANCE, Case.NONE, "low", 18)
                .result(RESISTANCE, Case.NONE, "nominal", 20)
                .result(RESISTANCE, Case.NONE, "high", 25);
    }

    private static String allReadings() {
        return Question.SITE.substring(Question.SITE.indexOf("measurements:"));
    }

    static Stream<Question> electrodes() {
        String owner = "electrode.resistance";
        String agreement = "electrode.model-agreement";
        String survey = "soil.survey-quality";
        return Stream.of(
                predicted(owner).is(MET),
                predicted(owner)
                        .with("electrode-resistance: 25 ohm", "electrode-resistance: 24.9 ohm")
                        .is(NOT_MET),
                predicted(owner)
                        .with("electrode-resistance: 25 ohm, ", "")
                        .is(INSUFFICIENT_DATA, "criteria.electrode-resistance"),
                Question.of(owner)
                        .gap(RESISTANCE, "the soil is not known", "soil.resistivity")
                        .is(INSUFFICIENT_DATA, "soil.resistivity"),
                Question.of(owner).is(NOT_ASSESSED),
                Question.of(owner)
                        .with(allReadings(), "")
                        .with("electrodes:\n" + ELECTRODE, "")
                        .with("  electrode: main\n", "")
                        .is(INSUFFICIENT_DATA, "electrodes"),
                predicted(owner)
                        .with(ELECTRODE, ELECTRODE + ELECTRODE.replace("main", "second, at: {x: 5 m, y: 0 m}"))
                        .result("electrode.second.resistance", 20)
                        .about("electrode second")
                        .is(NOT_APPLICABLE),
                predicted(agreement).result(RESISTANCE + ".formula", 21.9).is(MET),
                predicted(agreement).result(RESISTANCE + ".formula", 22.1).is(NOT_MET),
                predicted(agreement).result(RESISTANCE + ".formula", 17.9).is(NOT_MET),
                predicted(agreement).is(NOT_APPLICABLE, "no published closed form"),
                Question.of(agreement)
                        .gap("electrode", "the soil is not known", "soil.resistivity")
                        .is(INSUFFICIENT_DATA, "soil.resistivity"),
                Question.of(survey).is(MET),
                Question.of(survey).with("origin: measured", "origin: assumed").is(INSUFFICIENT_DATA, "origin"),
                Question.of(survey).with("  survey: Four-pin survey\n", "").is(INSUFFICIENT_DATA, "soil.survey"),
                Question.of(survey).with("  survey-date: 2026-03-02\n", "").is(INSUFFICIENT_DATA, "soil.survey-date"),
                Question.of(survey)
                        .with("  season: {depth: 0.5 m, factor: \"2\"}\n", "")
                        .is(INSUFFICIENT_DATA, "soil.season"),
                Question.of(survey)
                        .with("{low: 80 ohm.m, nominal: 100 ohm.m, high: 150 ohm.m, origin: measured}", "unknown")
                        .is(INSUFFICIENT_DATA, "soil.resistivity"));
    }

    static Stream<Question> readings() {
        String validity = "test.validity";
        String agreement = "test.agreement";
        String continuity = "test.continuity";
        String probes = "    current-probe-distance: 40 m\n    potential-probe-distance: 24.8 m\n";
        String clamp = "clamp-on\n    isolated: %s\n";
        String fall = "fall-of-potential\n    isolated: yes\n" + probes;
        String readings = allReadings();
        return Stream.of(
                Question.of(validity).is(MET),
                // IEEE Std 81: potential probe at 61.8 % of the distance of the current probe (from memory).
                Question.of(validity)
                        .with("distance: 24.8 m", "distance: 26.7 m")
                        .is(MET),
                Question.of(validity).with("distance: 24.8 m", "distance: 20 m").is(NOT_MET, "62 %"),
                Question.of(validity).with("distance: 24.8 m", "distance: 36 m").is(NOT_MET, "62 %"),
                Question.of(validity).with(probes, "").is(INSUFFICIENT_DATA, "measurements.current-probe-distance"),
                Question.of(validity).with(fall, clamp.formatted("yes")).is(NOT_MET, "clamp-on"),
                Question.of(validity).with(fall, clamp.formatted("no")).is(MET, "loop"),
                Question.of(validity)
                        .with(fall, clamp.formatted("unknown"))
                        .is(INSUFFICIENT_DATA, "measurements.isolated"),
                Question.of(validity)
                        .with("fall-of-potential\n    isolated: yes", "fall-of-potential\n    isolated: no")
                        .is(NOT_MET, "not isolated"),
                Question.of(validity).with(readings, "").is(INSUFFICIENT_DATA, "measurements"),
                Question.of(validity)
                        .with(readings, "")
                        .with("in-service", "as-built")
                        .is(INSUFFICIENT_DATA, "measurements"),
                Question.of(validity)
                        .with(readings, "")
                        .with("in-service", "design")
                        .is(DUE_LATER),
                predicted(agreement).is(MET),
                predicted(agreement).with("value: 20 ohm", "value: 18 ohm").is(MET),
                predicted(agreement).with("value: 20 ohm", "value: 25 ohm").is(MET),
                predicted(agreement).with("value: 20 ohm", "value: 17.9 ohm").is(NOT_MET, "second path"),
                predicted(agreement).with("value: 20 ohm", "value: 25.1 ohm").is(NOT_MET, "joints"),
                Question.of(agreement)
                        .gap("electrode", "the soil is not known", "soil.resistivity")
                        .is(INSUFFICIENT_DATA, "soil.resistivity"),
                Question.of(agreement).with(readings, "").is(INSUFFICIENT_DATA, "measurements"),
                Question.of(agreement)
                        .with(readings, "")
                        .with("in-service", "design")
                        .is(DUE_LATER),
                Question.of(continuity)
                        .result("conductor.upper-lead.resistance", 1.5e-3)
                        .is(MET),
                // Twice the computed value once that is more than the 10 mohm of the leads.
                Question.of(continuity)
                        .with("value: 2 mohm", "value: 10.1 mohm")
                        .result("conductor.upper-lead.resistance", 1.5e-3)
                        .is(NOT_MET, "1.50 mohm"),
                Question.of(continuity)
                        .with("value: 2 mohm", "value: 13 mohm")
                        .result("conductor.upper-lead.resistance", 7e-3)
                        .is(MET),
                Question.of(continuity)
                        .with("value: 2 mohm", "value: 14.1 mohm")
                        .result("conductor.upper-lead.resistance", 7e-3)
                        .is(NOT_MET),
                // A reading of the whole main earth is held against the sum of its pieces.
                Question.of(continuity)
                        .with("value: 2 mohm", "value: 17 mohm")
                        .result("conductor.upper-lead.resistance", 6e-3)
                        .result("conductor.lower-lead.resistance", 3e-3)
                        .is(MET),
                Question.of(continuity)
                        .with("value: 2 mohm", "value: 19 mohm")
                        .result("conductor.upper-lead.resistance", 6e-3)
                        .result("conductor.lower-lead.resistance", 3e-3)
                        .is(NOT_MET),
                Question.of(continuity)
                        .with("of: main-earth", "of: tee")
                        .result("conductor.tee.resistance", 1e-3)
                        .is(MET),
                Question.of(continuity)
                        .with("of: main-earth", "of: own-lead")
                        .with("electrodes:\n" + ELECTRODE, "electrodes:\n" + ELECTRODE + OWN)
                        .with("earth: shared, tee-length: 0.2 m", "earth: separate, electrode: own")
                        .result("conductor.cubicle-s-own-lead.resistance", 1e-3)
                        .is(MET),
                Question.of(continuity).is(INSUFFICIENT_DATA, "measurements.of"),
                Question.of(continuity).with(readings, "").is(INSUFFICIENT_DATA, "measurements"),
                Question.of(continuity)
                        .with(readings, "")
                        .with("in-service", "design")
                        .is(DUE_LATER));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource({"electrodes", "readings"})
    void answers(Question question) {
        question.check();
    }
}
