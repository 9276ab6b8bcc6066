package earthing.compliance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import earthing.quantity.Source;
import earthing.site.Site;
import earthing.study.Case;
import earthing.study.DemoSite;
import earthing.study.Result;
import earthing.study.SiteStudy;
import earthing.study.StudyResults;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;

class CompliancePropertyTest {

    private static final Site SITE = DemoSite.parse(Question.SITE);

    private static final List<String> IDS = List.of(
            "electrode.main.resistance",
            "electrode.main.resistance.formula",
            "fault.maximum.detection-ratio",
            "epr.tank",
            "touch.cubicle.voltage",
            "touch.cubicle.permissible",
            "touch.between-earths.voltage",
            "touch.between-earths.permissible",
            "step.worst.voltage",
            "step.worst.permissible",
            "transfer.field-fence.voltage",
            "transfer.field-fence.limit",
            "cable.power-frequency.voltage",
            "conductor.upper-lead.final-temperature",
            "conductor.upper-lead.temperature-limit",
            "conductor.upper-lead.resistance",
            "surge.cable-end.trip.cubicle.open-voltage",
            "surge.cable-end.trip.tank.open-voltage",
            "surge.gap.lead-cable.voltage",
            "surge.gap.lead-cable.strength",
            "surge.insulation.margin",
            "surge.arrester.continuous-voltage",
            "surge.arrester.continuous-voltage.rating",
            "aux-supply.isolation.voltage",
            "contingency.visible");

    /** Results of random size, some of them left out. */
    private static StudyResults random(long seed) {
        Random random = new Random(seed);
        List<Result> results = new ArrayList<>();
        for (String id : IDS) {
            for (String at : List.of("low", "nominal", "high")) {
                if (random.nextInt(5) > 0) {
                    double value = Math.pow(10, 6 * random.nextDouble() - 1);
                    results.add(Result.of(id, Case.NONE, at, value, "V", "random", Source.tool("random")));
                }
            }
        }
        return new StudyResults(results, List.of(), List.of(), List.of(), List.of());
    }

    @Property(seed = "20261125", tries = 150)
    void signOfTheMarginAgreesWithTheStatus(@ForAll long seed) {
        List<Finding> findings = ComplianceRun.of(SITE, random(seed));
        assertThat(findings).isNotEmpty();
        for (Finding finding : findings) {
            if (finding.margin().isPresent()) {
                Status due = finding.margin().getAsDouble() >= 0 ? Status.MET : Status.NOT_MET;
                assertThat(finding.status()).as(finding.id()).isEqualTo(due);
                double span =
                        Math.abs(finding.limit().orElseThrow() - finding.value().orElseThrow());
                assertThat(Math.abs(finding.margin().getAsDouble())
                                * Math.abs(finding.limit().orElseThrow()))
                        .as(finding.id())
                        .isCloseTo(span, within(1e-9 * span + 1e-12));
            }
        }
    }

    @Property(seed = "20261125", tries = 60)
    void everyQuestionIsAnsweredWhateverTheStudiesLeaveOut(@ForAll long seed) {
        assertThat(ComplianceRun.of(SITE, random(seed)).stream().map(Finding::id))
                .contains("fault.detection", "step.worst", "surge.gap", "arrester.margin", "cable.power-frequency")
                .anyMatch(id -> id.startsWith("epr."))
                .anyMatch(id -> id.startsWith("touch."))
                .anyMatch(id -> id.startsWith("transfer."));
    }

    @Property(seed = "20261125", tries = 40)
    void lessVoltageNeverTurnsAMetTouchIntoAFailedOne(
            @ForAll @DoubleRange(min = 1, max = 500) double voltage,
            @ForAll @DoubleRange(min = 0.1, max = 1) double factor) {
        Status high = touch(voltage);
        Status low = touch(voltage * factor);
        assertThat(high == Status.MET && low == Status.NOT_MET).isFalse();
        assertThat(high).isEqualTo(voltage <= 225 ? Status.MET : Status.NOT_MET);
    }

    private static Status touch(double voltage) {
        return Question.of("touch.cubicle")
                .result("touch.cubicle.voltage", voltage)
                .result("touch.cubicle.permissible", 225)
                .answer()
                .status();
    }

    private static final String BURIED = """
            file-version: 1
            site: {name: electrodes only, stage: design}
            system: {voltage: 22 kV, frequency: 50 Hz, neutral: {method: solid}}
            soil: {resistivity: RHO ohm.m}
            main-earth: {conductor: {material: copper, area: 70 mm2}, electrode: main}
            electrodes:
              - {name: main, rod: {length: LONG m, diameter: 16 mm, top-depth: 0.5 m}}
              - {name: other, at: {x: FAR m, y: 0 m}, wire: {length: 5 m, diameter: 10 mm, depth: 0.6 m}}
            """;

    @Property(seed = "20261125", tries = 15)
    void doublingTheResistivityDoublesEveryResistanceInUniformSoil(
            @ForAll @DoubleRange(min = 10, max = 3000) double resistivity,
            @ForAll @DoubleRange(min = 1, max = 6) double length,
            @ForAll @DoubleRange(min = 2, max = 20) double distance) {
        StudyResults once = buried(resistivity, length, distance);
        StudyResults twice = buried(2 * resistivity, length, distance);
        for (String id :
                List.of("electrode.main.resistance", "electrode.other.resistance", "electrode.mutual.main.other")) {
            assertThat(once.of(id)).hasSize(3);
            double first = once.of(id).get(0).value();
            assertThat(twice.of(id).get(0).value()).isCloseTo(2 * first, within(1e-9 * first));
        }
    }

    private static StudyResults buried(double resistivity, double length, double distance) {
        return SiteStudy.of(DemoSite.parse(BURIED.replace("RHO", Double.toString(resistivity))
                .replace("LONG", Double.toString(length))
                .replace("FAR", Double.toString(distance))));
    }
}
