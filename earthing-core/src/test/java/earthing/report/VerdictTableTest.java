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
}
