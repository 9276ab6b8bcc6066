package earthing.report;

import static org.assertj.core.api.Assertions.assertThat;

import earthing.compliance.Finding;
import earthing.report.document.Block;
import earthing.report.document.Document;
import earthing.study.Case;
import earthing.study.Result;
import earthing.study.StudyResults;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;

/** The ten reasons for which reviewers send a report back: each content taken away is missed by name. */
final class ReviewGateTest {

    private static final ReportInput INPUT = Fixtures.input();

    @Test
    void nothingIsMissedInAWholeReport() throws Exception {
        assertThat(ReviewGate.problems(INPUT, Report.document(INPUT))).isEmpty();
    }

    @Test
    void reason1FaultCurrentWithoutItsCaseOrClearingTimeOfAnother() throws Exception {
        assertThat(problems(withResults(
                        INPUT,
                        results -> results.map(r -> r.id().equals("fault.single.current") ? in(r, Case.NONE) : r))))
                .anyMatch(p -> p.startsWith("fault: fault.single.current does not name the case"))
                .anyMatch(p -> p.startsWith("fault: fault.single.clearing-time") && p.contains("beside no current"));
    }

    @Test
    void reason2ReadingWithoutMethodOrDate() throws Exception {
        String file = Fixtures.SITE_FILE + """
                measurements:
                  - {kind: electrode-resistance, of: main, value: 18 ohm, method: fall-of-potential, isolated: yes, date: 2026-03-02}
                """;
        ReportInput input = new ReportInput(
                Fixtures.site(file), "fernmoor.yaml", file, Fixtures.HASH, INPUT.results(), INPUT.findings(), "0.1.0");
        Document whole = Report.document(input);
        assertThat(ReviewGate.problems(input, whole)).isEmpty();
        assertThat(ReviewGate.problems(input, column(whole, "acceptance-readings", "Method", false)))
                .contains("table acceptance-readings: a reading is shown without Method");
        assertThat(ReviewGate.problems(input, column(whole, "acceptance-readings", "Date", true)))
                .contains("table acceptance-readings: a reading has no entry under Date");
    }

    @Test
    void reason3VerdictWithoutLimitClauseAndEdition() throws Exception {
        Document whole = Report.document(INPUT);
        assertThat(ReviewGate.problems(INPUT, column(whole, "verdict-checks", "Basis of the limit", false)))
                .contains("table verdict-checks: a verdict is shown without Basis of the limit");
        assertThat(ReviewGate.problems(INPUT, without(whole, "criteria-limits")))
                .anyMatch(p -> p.startsWith("criteria: the limit of touch.cubicle is not listed"));
    }

    @Test
    void reason4PotentialRiseAsTouchVoltageOrCreditThatNobodyDeclared() throws Exception {
        assertThat(problems(withResults(
                        INPUT, results -> results.filter(r -> !r.id().equals("touch.cubicle.permissible")))))
                .anyMatch(p ->
                        p.startsWith("voltages: touch.cubicle.voltage") && p.endsWith("permissible value beside it"));
        assertThat(ReviewGate.problems(INPUT, withoutFact(Report.document(INPUT), "Footwear credited")))
                .contains("criteria: footwear credited is not told");
    }

    @Test
    void reason5DrawingMissingOrAgainstTheModel() throws Exception {
        Document whole = Report.document(INPUT);
        assertThat(ReviewGate.problems(INPUT, without(whole, SiteSections.ELEVATION_FIGURE)))
                .contains("elevation: the drawing of the earth paths is missing");
        Document other = mapped(
                whole,
                block -> block instanceof Block.Figure f && f.id().equals(SiteSections.ELEVATION_FIGURE)
                        ? new Block.Figure(
                                f.id(),
                                f.caption(),
                                f.alternative().replace("Segment lower", "Segment else"),
                                f.svg(),
                                f.data())
                        : block);
        assertThat(ReviewGate.problems(INPUT, other))
                .containsExactly("elevation: the drawing does not show segment lower, which is in the model");
    }

    @Test
    void reason6ScreenSupplyOrLowVoltageEarthNotShown() throws Exception {
        Document whole = Report.document(INPUT);
        assertThat(ReviewGate.problems(INPUT, withoutFact(whole, SiteSections.SCREEN)))
                .containsExactly("elevation: how the screen of the control cable is bonded is not shown");
        assertThat(ReviewGate.problems(INPUT, withoutFact(whole, SiteSections.SUPPLY)))
                .containsExactly("elevation: whose earth the auxiliary supply is referenced to is not shown");
        assertThat(ReviewGate.problems(INPUT, withoutFact(whole, SiteSections.LOW_VOLTAGE)))
                .containsExactly("elevation: where the low-voltage earth is, is not shown");
    }

    @Test
    void reason7AssumedValueNotMarkedOrMarginNotShown() throws Exception {
        Document whole = Report.document(INPUT);
        assertThat(ReviewGate.problems(INPUT, column(whole, "inputs-soil", "Origin, date", true)))
                .anyMatch(p -> p.startsWith("inputs: soil.layers[2].resistivity is assumed and not marked"));
        assertThat(ReviewGate.problems(INPUT, without(whole, "inputs-effective")))
                .contains("inputs: the values that were assumed in place of missing ones are not listed");
        assertThat(ReviewGate.problems(INPUT, column(whole, "verdict-checks", "Margin", false)))
                .contains("verdict: the margins are not shown");
    }

    @Test
    void reason8ReclosingLeftOutOfTheHeating() throws Exception {
        String file = Fixtures.SITE_FILE.replace(
                "protection: {clearing-time: 0.5 s}",
                "protection: {clearing-time: 0.5 s, reclose: {dead-times: [1 s]}}");
        assertThat(file).isNotEqualTo(Fixtures.SITE_FILE);
        ReportInput input = new ReportInput(
                Fixtures.site(file), "fernmoor.yaml", file, Fixtures.HASH, INPUT.results(), INPUT.findings(), "0.1.0");
        Document document = Report.document(INPUT);
        assertThat(ReviewGate.problems(input, document))
                .anyMatch(p -> p.startsWith("conductors: conductor.upper.final-temperature")
                        && p.endsWith("the first shot and the whole sequence apart"));
    }

    @Test
    void reason9NoTestsNoRetestNoDepartures() throws Exception {
        Document whole = Report.document(INPUT);
        assertThat(ReviewGate.problems(INPUT, without(whole, "acceptance-tests")))
                .containsExactly("acceptance: the test plan is missing");
        assertThat(ReviewGate.problems(INPUT, without(whole, "acceptance-departures")))
                .containsExactly("acceptance: accepted departures are not listed");
        assertThat(ReviewGate.problems(INPUT, withoutFact(whole, ClosingSections.AS_BUILT)))
                .containsExactly("acceptance: there is no line for what was built otherwise");
        Document silent = mapped(
                whole,
                block -> block instanceof Block.Paragraph p && p.text().contains("Test again")
                        ? new Block.Paragraph("Go home.")
                        : block);
        assertThat(ReviewGate.problems(INPUT, silent)).containsExactly("acceptance: it is not said when to test again");
    }

    @Test
    void reason10ToolNotStatedOrNothingToRedoByHand() throws Exception {
        Document whole = Report.document(INPUT);
        assertThat(ReviewGate.problems(INPUT, withoutFact(whole, "Tool and version")))
                .containsExactly("control block: tool and version are not stated");
        assertThat(ReviewGate.problems(INPUT, without(whole, "worked-terms")))
                .containsExactly("worked: no calculation is shown that could be redone by hand");
    }

    @Test
    void aProblemStopsTheReport() {
        ReportInput input =
                withResults(INPUT, results -> results.filter(r -> !r.id().equals("touch.cubicle.permissible")));
        Optional<String> told = Optional.empty();
        try {
            Report.text(input);
        } catch (ReportIncomplete stopped) {
            told = stopped.problems().stream().findFirst();
        }
        assertThat(told).hasValueSatisfying(problem -> assertThat(problem).contains("no permissible value"));
    }

    private static List<String> problems(ReportInput changed) throws Exception {
        return ReviewGate.problems(changed, Report.document(INPUT));
    }

    private static Result in(Result r, Case circumstances) {
        return Result.of(r.id(), circumstances, r.at(), r.value(), r.unit(), r.model(), r.source());
    }

    private static ReportInput withResults(ReportInput input, UnaryOperator<java.util.stream.Stream<Result>> change) {
        StudyResults old = input.results();
        StudyResults results = new StudyResults(
                change.apply(old.results().stream()).toList(),
                old.curves(),
                old.gaps(),
                old.assumptions(),
                old.notes());
        List<Finding> findings = input.findings();
        return new ReportInput(
                input.site(), input.siteFileName(), input.siteFileText(), input.sha256(), results, findings, "0.1.0");
    }

    private static Document mapped(Document document, UnaryOperator<Block> change) {
        return new Document(document.title(), document.language(), mapped(document.blocks(), change));
    }

    private static List<Block> mapped(List<Block> blocks, UnaryOperator<Block> change) {
        List<Block> all = new ArrayList<>();
        for (Block block : blocks) {
            all.add(
                    block instanceof Block.Section s
                            ? new Block.Section(s.id(), s.level(), s.title(), mapped(s.blocks(), change))
                            : change.apply(block));
        }
        return all;
    }

    /** The document without one table or figure. */
    private static Document without(Document document, String id) {
        return mapped(document, block -> {
            boolean gone = (block instanceof Block.Table t && t.id().equals(id))
                    || (block instanceof Block.Figure f && f.id().equals(id));
            return gone ? new Block.Paragraph("taken away") : block;
        });
    }

    private static Document withoutFact(Document document, String name) {
        return mapped(
                document,
                block -> block instanceof Block.Facts facts
                        ? new Block.Facts(facts.facts().stream()
                                .filter(fact -> !fact.name().equals(name))
                                .toList())
                        : block);
    }

    /** The document with one column of a table left out, or emptied. */
    private static Document column(Document document, String id, String head, boolean emptied) {
        return mapped(document, block -> {
            if (!(block instanceof Block.Table table) || !table.id().equals(id)) {
                return block;
            }
            int at = table.columns().stream().map(Block.Column::head).toList().indexOf(head);
            assertThat(at).as(head).isNotNegative();
            List<Block.Column> columns = new ArrayList<>(table.columns());
            List<List<String>> rows = new ArrayList<>();
            for (List<String> row : table.rows()) {
                List<String> cells = new ArrayList<>(row);
                if (emptied) {
                    cells.set(at, "");
                } else {
                    cells.remove(at);
                }
                rows.add(cells);
            }
            if (!emptied) {
                columns.remove(at);
            }
            return new Block.Table(table.id(), table.caption(), columns, rows);
        });
    }
}
