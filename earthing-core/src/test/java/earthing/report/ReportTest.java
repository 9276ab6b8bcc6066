package earthing.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import earthing.compliance.Finding;
import earthing.compliance.Status;
import earthing.report.document.Block;
import earthing.report.document.Document;
import earthing.study.Case;
import earthing.study.Result;
import earthing.study.StudyResults;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;

final class ReportTest {

    private static final ReportInput INPUT = Fixtures.input();

    @Test
    void sectionsStandInTheOrderAReviewerReadsThem() throws Exception {
        List<String> ids = new ArrayList<>();
        for (Block block : Report.document(INPUT).blocks()) {
            if (block instanceof Block.Section section) {
                ids.add(section.id());
            }
        }
        assertThat(ids)
                .containsSubsequence(
                        "summary",
                        "control",
                        "verdict",
                        "elevation",
                        "criteria",
                        "contingencies",
                        "remedies",
                        "acceptance",
                        "assumptions",
                        "inputs",
                        "limits",
                        "soil",
                        "electrode",
                        "fault",
                        "voltages",
                        "conductors",
                        "surge",
                        "findings",
                        "references",
                        "worked",
                        "input-file");
    }

    @Test
    void htmlIsWellFormedAndItsHeadingsNestWithoutAGap() throws Exception {
        Element root = html(Report.html(INPUT));
        List<Integer> levels = new ArrayList<>();
        NodeList all = root.getElementsByTagName("*");
        for (int i = 0; i < all.getLength(); i++) {
            String name = all.item(i).getNodeName();
            if (name.length() == 2 && name.charAt(0) == 'h' && Character.isDigit(name.charAt(1))) {
                levels.add(name.charAt(1) - '0');
            }
        }
        assertThat(levels.get(0)).isEqualTo(1);
        for (int i = 1; i < levels.size(); i++) {
            assertThat(levels.get(i)).isBetween(2, levels.get(i - 1) + 1);
        }
    }

    @Test
    void htmlAnchorsAreUniqueAndEveryReferenceFindsItsAnchor() throws Exception {
        NodeList all = html(Report.html(INPUT)).getElementsByTagName("*");
        Set<String> ids = new HashSet<>();
        List<String> wanted = new ArrayList<>();
        for (int i = 0; i < all.getLength(); i++) {
            Element element = (Element) all.item(i);
            if (element.hasAttribute("id")) {
                assertThat(ids.add(element.getAttribute("id")))
                        .as(element.getAttribute("id"))
                        .isTrue();
            }
            if (element.getAttribute("href").startsWith("#")) {
                wanted.add(element.getAttribute("href").substring(1));
            }
            if (element.hasAttribute("aria-labelledby")) {
                wanted.addAll(List.of(element.getAttribute("aria-labelledby").split(" ", -1)));
            }
        }
        assertThat(wanted).isNotEmpty().allMatch(ids::contains);
    }

    @Test
    void aVerdictLeadsToItsWorking() throws Exception {
        String page = Report.html(INPUT);
        String worked = INPUT.findings().stream()
                .filter(finding -> finding.worked().isPresent())
                .map(Finding::id)
                .findFirst()
                .orElseThrow();
        assertThat(page)
                .containsPattern("<th scope=\"row\"><a href=\"#working-\\d+\">" + worked + "</a></th>")
                .containsPattern("<th scope=\"row\"><a href=\"#working-\\d+\">Subject of " + worked + "</a></th>");
    }

    @Test
    void htmlTablesHaveCaptionScopesAndAsManyCellsAsColumns() throws Exception {
        NodeList tables = html(Report.html(INPUT)).getElementsByTagName("table");
        assertThat(tables.getLength()).isGreaterThan(20);
        for (int i = 0; i < tables.getLength(); i++) {
            Element table = (Element) tables.item(i);
            assertThat(table.getElementsByTagName("caption").item(0).getTextContent())
                    .isNotBlank();
            NodeList rows = table.getElementsByTagName("tr");
            int columns = rows.item(0).getChildNodes().getLength();
            for (int row = 1; row < rows.getLength(); row++) {
                assertThat(rows.item(row).getChildNodes().getLength()).isEqualTo(columns);
            }
            NodeList heads = table.getElementsByTagName("th");
            for (int head = 0; head < heads.getLength(); head++) {
                assertThat(((Element) heads.item(head)).getAttribute("scope")).isIn("col", "row");
            }
        }
    }

    @Test
    void htmlFetchesNothing() throws Exception {
        String page = Report.html(INPUT);
        assertThat(page).doesNotContain("src=", "@import", "url(", "fetch(", "XMLHttpRequest", "import(", "<link");
        assertThat(page.replace("http://www.w3.org/", "")).doesNotContain("http:", "https:");
    }

    @Test
    void everyFigureHasMarksAndATextAlternative() throws Exception {
        Element root = html(Report.html(INPUT));
        NodeList drawings = root.getElementsByTagName("svg");
        assertThat(drawings.getLength()).isEqualTo(1 + INPUT.results().curves().size());
        for (int i = 0; i < drawings.getLength(); i++) {
            Element svg = (Element) drawings.item(i);
            assertThat(svg.getElementsByTagName("path").getLength()).isPositive();
            assertThat(svg.getElementsByTagName("text").getLength()).isPositive();
            assertThat(svg.getElementsByTagName("desc").item(0).getTextContent())
                    .isNotBlank();
        }
    }

    @Test
    void noResultAndNoFindingIsLost() throws Exception {
        Document document = Report.document(INPUT);
        Set<String> cells = new HashSet<>();
        for (Block block : document.everyBlock()) {
            if (block instanceof Block.Table table) {
                table.rows().forEach(cells::addAll);
            }
        }
        for (Result result : INPUT.results().results()) {
            assertThat(cells).contains(ResultWords.of(result.id()));
            assertThat(cells).contains(earthing.report.document.Amount.text(result.value(), result.unit()));
        }
        for (Finding finding : INPUT.findings()) {
            assertThat(cells).contains(finding.group() == Finding.Group.CONTINGENCY ? finding.subject() : finding.id());
        }
    }

    @Test
    void everySourceStandsOnceInTheReferences() throws Exception {
        List<List<String>> rows = table("references-table").rows();
        assertThat(rows.stream().map(row -> row.get(2) + row.get(3)))
                .doesNotHaveDuplicates()
                .anyMatch(text -> text.startsWith("EN 50522:2022"))
                .anyMatch(text -> text.startsWith("Sunde"));
        assertThat(rows.stream().map(row -> row.get(4))).contains("from memory");
    }

    @Test
    void coresAndEndsThatPrintAlikeShareARowAndBoundsStandApart() {
        List<Result> results = new ArrayList<>();
        for (String end : List.of("tank", "cubicle")) {
            for (String at : List.of("low", "nominal", "high")) {
                double value = at.equals("low") ? 90 : 92;
                results.add(Result.of(
                        "surge.cable-end.trip-coil." + end + ".open-voltage",
                        Fixtures.kase("wave", "8/20", "arrangement", "shared"),
                        at,
                        value,
                        "V",
                        "pole circuit",
                        Fixtures.TOOL));
            }
        }
        results.add(Result.of(
                "surge.tank.peak",
                Fixtures.kase("wave", "8/20", "arrangement", "both"),
                "nominal",
                5,
                "V",
                "pole circuit",
                Fixtures.TOOL));
        assertThat(ResultTable.sideBySide("t", "t", results, new References()).rows().stream()
                        .map(row -> row.get(0)))
                .containsExactly("trip-coil, both ends: open voltage", "potential of the tank");
        Block.Table moving = (Block.Table)
                ResultTable.moving("t", "t", results, new References()).get(0);
        assertThat(moving.rows())
                .singleElement()
                .satisfies(row -> assertThat(row)
                        .startsWith("trip-coil, both ends: open voltage")
                        .anyMatch(cell -> cell.startsWith("90.0"))
                        .anyMatch(cell -> cell.startsWith("92.0")));
    }

    @Test
    void assumedAndUnknownInputsAreMarked() throws Exception {
        assertThat(table("inputs-soil").rows()).anyMatch(row -> row.contains("ASSUMED"));
        assertThat(table("inputs-system").rows()).anyMatch(row -> row.contains("UNKNOWN"));
        assertThat(table("inputs-effective").rows()).anyMatch(row -> row.contains("line.surge-impedance"));
    }

    @Test
    void limitStandsBesideTheVerdictWithClauseAndEdition() throws Exception {
        assertThat(table("verdict-checks").rows().get(0))
                .startsWith("Subject of touch.cubicle", "not met")
                .anyMatch(cell -> cell.startsWith("EN 50522:2022, figure 4"));
    }

    @Test
    void cautionsStandAtHeadAndFootAndNothingIsCalledSafe() throws Exception {
        Document document = Report.document(INPUT);
        assertThat(document.blocks().get(0)).isInstanceOf(Block.Caution.class);
        assertThat(document.blocks().get(document.blocks().size() - 1)).isInstanceOf(Block.Caution.class);
        for (String text : List.of(
                Report.text(INPUT),
                Report.html(INPUT),
                VerdictTable.text(INPUT.findings()),
                ArrangementPage.text(INPUT.results()))) {
            assertThat(text.toLowerCase(Locale.ROOT)).doesNotContainPattern("\\bsafe\\b");
        }
    }

    @Test
    void textKeepsToAHundredColumnsBeforeTheFileItself() throws Exception {
        String text = Report.text(INPUT);
        assertThat(text.substring(0, text.indexOf(" – Input file verbatim\n")).lines())
                .allMatch(line -> line.length() <= 100);
    }

    @Test
    void textHoldsTheFileVerbatim() throws Exception {
        assertThat(Report.text(INPUT)).contains("```\n" + Fixtures.SITE_FILE + "```\n");
    }

    @Test
    void sameInputSameBytesInAnyLocale() throws Exception {
        String text = Report.text(INPUT);
        String html = Report.html(INPUT);
        String json = Report.json(INPUT);
        Locale before = Locale.getDefault();
        try {
            Locale.setDefault(Locale.GERMANY);
            assertThat(Report.text(Fixtures.input())).isEqualTo(text);
            assertThat(Report.html(Fixtures.input())).isEqualTo(html);
            assertThat(Report.json(Fixtures.input())).isEqualTo(json);
            Locale.setDefault(Locale.forLanguageTag("tr-TR"));
            assertThat(Report.text(Fixtures.input())).isEqualTo(text);
        } finally {
            Locale.setDefault(before);
        }
    }

    @Test
    void missingPartsStopTheReportByName() {
        String noTank = Fixtures.SITE_FILE.replace("tank: {height: 9 m}\n", "");
        ReportInput input = new ReportInput(Fixtures.site(noTank), "", noTank, "abc", INPUT.results(), List.of(), "");
        ReportIncomplete stopped = catchThrowableOfType(ReportIncomplete.class, () -> Report.text(input));
        assertThat(stopped.problems())
                .anyMatch(problem -> problem.contains("tank.height is not given"))
                .anyMatch(problem -> problem.contains("name of the site file"))
                .anyMatch(problem -> problem.contains("version of the tool"))
                .anyMatch(problem -> problem.contains("hash"))
                .anyMatch(problem -> problem.contains("no check has been made"));
        assertThat(Report.json(input)).contains("\"format\": \"earthing-report/1\"");
    }

    @Test
    void anOpenFindingNeedsAReason() {
        Finding mute = new Finding(
                "touch.pole",
                Finding.Group.PERSONAL_SAFETY,
                "touch voltage at the pole",
                Status.NOT_ASSESSED,
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                "",
                OptionalDouble.empty(),
                Case.NONE,
                "",
                Fixtures.TOOL,
                Optional.empty(),
                " ",
                "");
        assertThatThrownBy(() -> Report.text(with(INPUT.results(), List.of(mute))))
                .isInstanceOf(ReportIncomplete.class)
                .hasMessageContaining("touch.pole is not assessed without a reason");
    }

    @Test
    void aReportWithoutResultsSaysSoInEverySection() throws Exception {
        String text = Report.text(with(StudyResults.EMPTY, Fixtures.findings()));
        assertThat(text).contains("There is no result of this kind.");
        assertThat(text).contains("No value was taken that the file does not give.");
    }

    @Test
    void aFenceInTheFileDoesNotEndTheVerbatimText() throws Exception {
        String file = Fixtures.SITE_FILE + "# ```\n# ````\n";
        ReportInput input = new ReportInput(
                INPUT.site(), "fernmoor.yaml", file, Fixtures.HASH, INPUT.results(), INPUT.findings(), "0.1.0");
        assertThat(Report.text(input)).contains("\n`````\n" + file + "`````\n");
    }

    private static ReportInput with(StudyResults results, List<Finding> findings) {
        return new ReportInput(
                INPUT.site(), INPUT.siteFileName(), INPUT.siteFileText(), INPUT.sha256(), results, findings, "0.1.0");
    }

    private static Block.Table table(String id) throws ReportIncomplete {
        for (Block block : Report.document(INPUT).everyBlock()) {
            if (block instanceof Block.Table table && table.id().equals(id)) {
                return table;
            }
        }
        throw new AssertionError("no table " + id);
    }

    private static Element html(String page) throws Exception {
        return DocumentBuilderFactory.newDefaultInstance()
                .newDocumentBuilder()
                .parse(new InputSource(new StringReader(page)))
                .getDocumentElement();
    }
}
