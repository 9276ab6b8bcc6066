package earthing.report;

import static org.assertj.core.api.Assertions.assertThat;

import earthing.compliance.Finding;
import earthing.compliance.Status;
import earthing.report.document.Block;
import earthing.report.document.Document;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

final class SummarySectionTest {

    private static final ReportInput INPUT = Fixtures.input();

    private static final Finding MET =
            Fixtures.finding("step.worst", Finding.Group.PERSONAL_SAFETY, Status.MET, 800, 3000, "V");
    private static final Finding NOT_MET =
            Fixtures.finding("touch.cubicle", Finding.Group.PERSONAL_SAFETY, Status.NOT_MET, 3400, 220, "V");
    private static final Finding RULE =
            Fixtures.plain("path.cubicle-tee", Finding.Group.EARTH_PATHS, Status.NOT_MET, Fixtures.PRACTICE);
    private static final Finding OPEN =
            Fixtures.plain("surge.screen", Finding.Group.SURGE, Status.INSUFFICIENT_DATA, Fixtures.TOOL);

    private static Block.Section summary(List<Finding> findings) {
        return (Block.Section) SummarySection.of(new ReportInput(
                INPUT.site(),
                INPUT.siteFileName(),
                INPUT.siteFileText(),
                INPUT.sha256(),
                INPUT.results(),
                findings,
                INPUT.toolVersion()));
    }

    private static String answer(List<Finding> findings) {
        return summary(findings).blocks().stream()
                .filter(block -> block instanceof Block.Facts)
                .map(block -> ((Block.Facts) block).facts().get(0))
                .map(fact -> fact.name() + " " + fact.value())
                .collect(Collectors.joining());
    }

    private static List<List<String>> rows(List<Finding> findings, String id) {
        return summary(findings).blocks().stream()
                .filter(block ->
                        block instanceof Block.Table table && table.id().equals(id))
                .flatMap(block -> ((Block.Table) block).rows().stream())
                .toList();
    }

    @Test
    void theFirstPageSaysWhetherTheCrewMayGoOutAndLeavesTheReleaseToAPerson() {
        assertThat(answer(List.of(MET, NOT_MET))).startsWith("May the crew go out? Not on these numbers.");
        assertThat(answer(List.of(MET, RULE))).contains("Not before the rules below are followed");
        assertThat(answer(List.of(MET, OPEN))).contains("Not yet:");
        assertThat(answer(List.of(MET))).contains("Nothing in this report stands against it.");
        for (List<Finding> findings : List.of(List.of(MET), List.of(MET, NOT_MET), List.of(MET, RULE, OPEN))) {
            assertThat(answer(findings)).endsWith("decides and releases, by the local rules; this report does not.");
        }
    }

    @Test
    void whatIsNotMetStandsWithItsNumbersAndWhatToDo() {
        assertThat(rows(List.of(MET, RULE, NOT_MET), "summary-not-met"))
                .containsExactly(
                        List.of(
                                "Subject of touch.cubicle",
                                "3.40\u00a0kV, limit 220\u00a0V",
                                "Lower the resistance of the main electrode."),
                        List.of(
                                "Subject of path.cubicle-tee",
                                "This was found on the drawing.",
                                "Fill in control-cable.screen.bond."));
        assertThat(rows(List.of(MET), "summary-not-met")).isEmpty();
        assertThat(rows(List.of(MET, OPEN), "summary-open"))
                .singleElement()
                .satisfies(row -> assertThat(row).startsWith("Subject of surge.screen"));
    }

    @Test
    void findingsThatTheSameChangeHelpsShareARowAndTheRestIsCounted() {
        List<Finding> same = IntStream.range(0, 6)
                .mapToObj(i -> Fixtures.finding(
                        "touch.part-" + i, Finding.Group.PERSONAL_SAFETY, Status.NOT_MET, 300 + i, 220, "V"))
                .toList();
        assertThat(rows(same, "summary-not-met"))
                .singleElement()
                .satisfies(row -> assertThat(row.get(0)).endsWith(" and 2 more"))
                .satisfies(row -> assertThat(row.get(1)).isEqualTo("worst: 305\u00a0V, limit 220\u00a0V"));
    }

    @Test
    void itStandsOnTheFirstPageAfterTheCautions() throws Exception {
        Document document = Report.document(INPUT);
        assertThat(document.blocks().get(0)).isInstanceOf(Block.Caution.class);
        assertThat(document.blocks().get(1))
                .isInstanceOfSatisfying(
                        Block.Section.class, section -> assertThat(section.id()).isEqualTo("summary"));
    }

    @Test
    void annexesFollowWhatIsSignedAndHaveLettersWithoutAGap() throws Exception {
        List<String> titles = Report.document(INPUT).blocks().stream()
                .filter(block -> block instanceof Block.Section)
                .map(block -> ((Block.Section) block).title())
                .toList();
        int first = titles.indexOf("Annex A – Inputs");
        assertThat(first).isPositive();
        assertThat(titles.subList(0, first)).noneMatch(title -> title.startsWith("Annex"));
        for (int i = first; i < titles.size(); i++) {
            assertThat(titles.get(i)).startsWith("Annex " + (char) ('A' + i - first) + " – ");
        }
    }
}
