package earthing.report;

import static org.assertj.core.api.Assertions.assertThat;

import earthing.compliance.Finding;
import earthing.compliance.Status;
import java.util.List;
import org.junit.jupiter.api.Test;

final class VerdictTableTest {

    @Test
    void fitsEightyColumns() {
        assertThat(VerdictTable.text(Fixtures.findings()).lines()).allMatch(line -> line.length() <= 80);
    }

    @Test
    void headlineIsTheWorstOfFourGroups() {
        assertThat(VerdictTable.text(Fixtures.findings())).startsWith("Headline: not met\n");
        List<Finding> electrodeOnly = List.of(
                Fixtures.plain("a", Finding.Group.PERSONAL_SAFETY, Status.MET, Fixtures.TOOL),
                Fixtures.plain("b", Finding.Group.CONDUCTOR_HEATING, Status.MET, Fixtures.TOOL),
                Fixtures.plain("c", Finding.Group.SURGE, Status.MET, Fixtures.TOOL),
                Fixtures.plain("d", Finding.Group.CONTINGENCY, Status.MET, Fixtures.TOOL),
                Fixtures.plain("e", Finding.Group.ELECTRODE, Status.NOT_MET, Fixtures.TOOL));
        assertThat(VerdictTable.text(electrodeOnly)).startsWith("Headline: met\n");
    }

    @Test
    void aGroupThatNoCheckLookedAtIsNotAssessed() {
        List<Finding> touchOnly =
                List.of(Fixtures.plain("a", Finding.Group.PERSONAL_SAFETY, Status.MET, Fixtures.TOOL));
        assertThat(VerdictTable.text(touchOnly)).startsWith("Headline: not assessed\n");
    }

    private static Finding told(String id, Status status, String reason, String advice) {
        Finding plain = Fixtures.plain(id, Finding.Group.OTHER, status, Fixtures.TOOL);
        return new Finding(
                id,
                plain.group(),
                "the subject",
                status,
                plain.value(),
                plain.limit(),
                plain.unit(),
                plain.margin(),
                plain.circumstances(),
                plain.bound(),
                plain.basis(),
                plain.worked(),
                reason,
                advice);
    }

    @Test
    void eachOpenFindingIsToldOnceWithItsReasonAndAdvice() {
        Finding open = told("x.open", Status.INSUFFICIENT_DATA, "a length is not known", "fill in cubicle.height");
        String text = VerdictTable.text(List.of(
                told("x.met", Status.MET, "all is well", "nothing to do"),
                open,
                open,
                told("x.broken", Status.NOT_MET, "the bond is missing", "bond it"),
                told("x.unseen", Status.NOT_ASSESSED, "nobody looked", ""),
                told("x.accepted", Status.ACCEPTED_DEPARTURE, "the owner accepts it", "look again"),
                told("x.later", Status.DUE_LATER, "not built", "measure it")));
        assertThat(text).containsOnlyOnce("a length is not known").containsOnlyOnce("→ fill in cubicle.height");
        assertThat(text).containsOnlyOnce("x.broken, the subject: not met\n  the bond is missing\n  → bond it\n");
        assertThat(text).endsWith("x.unseen, the subject: not assessed\n  nobody looked\n");
        assertThat(text)
                .doesNotContain("all is well")
                .doesNotContain("the owner accepts it")
                .doesNotContain("measure it");
        assertThat(text.indexOf("the bond is missing")).isLessThan(text.indexOf("a length is not known"));
    }

    @Test
    void aRowHoldsWhatItsFindingHoldsAndWhatDoesNotConcernTheSiteIsCounted() {
        List<String> lines = VerdictTable.text(Fixtures.findings()).lines().toList();
        assertThat(lines)
                .anyMatch(line ->
                        line.matches("\\| touch\\.cubicle +\\| not met +\\| +3\\.40.kV \\| +220.V \\| +-1445.% \\|"));
        assertThat(lines)
                .anyMatch(
                        line -> line.matches("\\| step\\.worst +\\| met +\\| +800.V \\| +3\\.00.kV \\| +\\+73.% \\|"));
        assertThat(lines).contains("1 check does not concern this site.");
        assertThat(lines).noneMatch(line -> line.startsWith("| antenna.suppressor"));
        int notMet = lines.indexOf(lines.stream()
                .filter(line -> line.startsWith("| touch.cubicle"))
                .findFirst()
                .orElseThrow());
        int met = lines.indexOf(lines.stream()
                .filter(line -> line.startsWith("| step.worst"))
                .findFirst()
                .orElseThrow());
        assertThat(notMet).isLessThan(met);
    }

    @Test
    void twoFindingsOfOneCheckAreToldApartByTheirSubjects() {
        Finding one = told("x.pair", Status.MET, "", "");
        assertThat(VerdictTable.text(List.of(one)))
                .containsPattern("\\| x\\.pair +\\| met")
                .doesNotContain("the subject");
        assertThat(VerdictTable.text(List.of(one, one))).contains("| x.pair: the subject");
    }
}
