package earthing.compliance;

import static org.assertj.core.api.Assertions.assertThat;

import earthing.site.Expectation;
import earthing.site.Site;
import earthing.site.file.ReadOutcome;
import earthing.site.file.SiteFile;
import earthing.study.SiteStudy;
import earthing.study.StudyResults;
import earthing.study.StudyScope;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Expectations on an invented site; what a correct answer is follows from the words of the site file, not from a value. */
class ExpectationsTest {

    private static final String SITE = "brackenmire-mistakes.yaml";

    private static String demo() throws IOException {
        return Files.readString(Path.of("..", "earthing-cli", "sites", SITE));
    }

    private static List<Expectations.Held> held(String... expectations) throws IOException {
        String text = demo() + "\nexpect:\n";
        for (String one : expectations) {
            text += "  - {" + one + "}\n";
        }
        ReadOutcome outcome = SiteFile.read(text, SITE);
        assertThat(outcome).as(outcome.toString()).isInstanceOf(ReadOutcome.Valid.class);
        Site site = ((ReadOutcome.Valid) outcome).site();
        StudyResults results = SiteStudy.of(
                site, Expectations.needArrangements(site) ? StudyScope.ALL_ARRANGEMENTS : StudyScope.AS_BUILT);
        return Expectations.of(site, results, ComplianceRun.of(site, results));
    }

    private static double value(String id, String at) throws IOException {
        Site site = ((ReadOutcome.Valid) SiteFile.read(demo(), SITE)).site();
        StudyResults results = SiteStudy.of(site, StudyScope.AS_BUILT);
        return Design.of(site, results).own(id).stream()
                .filter(r -> r.at().equals(at))
                .findFirst()
                .orElseThrow()
                .value();
    }

    @Test
    void theWordsOfTheFileAreThoseOfTheFindings() {
        assertThat(Expectation.STATUSES)
                .containsExactlyInAnyOrderElementsOf(
                        Arrays.stream(Status.values()).map(Status::id).toList());
    }

    @Test
    void aResultIsHeldWithinItsToleranceInAnyUnitOfItsDimension() throws IOException {
        double resistance = value("electrode.main.resistance", "nominal");
        String id = "result: electrode.main.resistance";
        List<Expectations.Held> held = held(
                id + ", value: " + resistance * 1.019 + " ohm, within: 2 %",
                id + ", value: " + resistance * 1.021 + " ohm, within: 2 %",
                id + ", value: " + (resistance + 0.9) / 1000 + " kohm, within: 1 ohm",
                id + ", value: " + (resistance + 1.1) / 1000 + " kohm, within: 1 ohm",
                id + ", value: " + Math.round(resistance) + " ohm",
                id + ", value: " + (Math.round(resistance) + 1) + " ohm",
                id + ", value: " + resistance + " V",
                id + ", value: " + resistance + " ohm, within: 1 V",
                // In uniform ground a resistance follows the resistivity, 300 and 500 ohm.m in this file.
                id + ", at: low, value: " + resistance * 300 / 500 + " ohm, within: 0.001 %");
        assertThat(held.stream().map(Expectations.Held::holds))
                .containsExactly(true, false, true, false, true, false, false, false, true);
        assertThat(held.get(6).found()).contains("another unit");
    }

    @Test
    void aStatusIsHeldAndOfSeveralFindingsTheWorstCounts() throws IOException {
        Site site = ((ReadOutcome.Valid) SiteFile.read(demo(), SITE)).site();
        List<Finding> findings = ComplianceRun.of(site, SiteStudy.of(site, StudyScope.AS_BUILT));
        Finding notMet = findings.stream()
                .filter(f -> f.status() == Status.NOT_MET)
                .findFirst()
                .orElseThrow();
        List<Expectations.Held> held = held(
                "result: " + notMet.id() + ", value: not-met",
                "result: " + notMet.id() + ", value: met",
                "result: no.such-check, value: met",
                "result: no.such-check, value: 3 V",
                "result: " + notMet.id() + ", subject: somewhere else, value: met");
        assertThat(held.stream().map(Expectations.Held::holds)).containsExactly(true, false, false, false, false);
        assertThat(held.get(1).found()).isEqualTo("not-met");
        assertThat(held.get(3).found()).contains("no result and no finding");
        assertThat(held.get(4).found()).contains("there are");
    }

    @Test
    void whatIsMeantByACaseIsAskedForWhereItIsNotClear() throws IOException {
        List<Expectations.Held> held = held(
                "result: epr.tank, at: high, value: 1 V",
                "result: epr.tank, in-case: fault=maximum, at: nowhere, value: 1 V",
                "result: epr.tank, in-case: foult=maximum, value: 1 V");
        assertThat(held.stream().map(Expectations.Held::holds)).containsOnly(false);
        assertThat(held.get(0).found()).contains("in-case").contains("fault=");
        assertThat(held.get(1).found()).contains("there are");
        assertThat(held.get(2).found()).contains("foult").contains("fault");
    }

    @Test
    void mistakesInAnExpectationAreToldWhenTheFileIsRead() throws IOException {
        String text = demo() + """

                expect:
                  - {result: touch.cubicle, value: nmet}
                  - {result: epr.tank, value: 3 kV, within: two}
                  - {result: epr.tank, value: 3 kV, in-case: maximum}
                  - {result: touch.cubicle, value: met, within: 2 %}
                """;
        ReadOutcome.Invalid outcome = (ReadOutcome.Invalid) SiteFile.read(text, SITE);
        assertThat(outcome.problems().stream().map(p -> p.text().replaceAll("^[^:]*:\\d+:\\d+: ", "")))
                .containsExactly(
                        "expect[1].value: \"nmet\" is neither a number nor a status; did you mean \"met\"?",
                        "expect[2].within: \"two\" is no tolerance; expected 2 %, or a number with its unit, such as"
                                + " 31.9 ohm",
                        "expect[3].in-case: \"maximum\" is no case; expected keys and words, such as fault=maximum,"
                                + " arrangement=shared",
                        "expect[4].within: this key does not belong here; expected it beside a value with a unit");
    }
}
