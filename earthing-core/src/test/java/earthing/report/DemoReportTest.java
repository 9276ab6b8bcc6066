package earthing.report;

import static org.assertj.core.api.Assertions.assertThat;

import earthing.compliance.ComplianceRun;
import earthing.compliance.Finding;
import earthing.report.document.Block;
import earthing.report.document.Document;
import earthing.site.file.ReadOutcome;
import earthing.site.file.SiteFile;
import earthing.study.Case;
import earthing.study.SiteStudy;
import earthing.study.StudyResults;
import earthing.study.SurgeOutlook;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The report of demo sites with everything that studies and checks really give. */
final class DemoReportTest {

    @ParameterizedTest
    @ValueSource(strings = {"ternhook-wood-shared.yaml", "brackenmire-mistakes.yaml", "lowgarth-short.yaml"})
    void demoSitesGiveACompleteReportThatKeepsToItsWidth(String name) throws Exception {
        ReadOutcome.Valid file = (ReadOutcome.Valid) SiteFile.read(Path.of("..", "earthing-cli", "sites", name));
        StudyResults studied = SiteStudy.of(file.site());
        List<Finding> findings = ComplianceRun.of(file.site(), studied);
        StudyResults results = SurgeOutlook.added(file.site(), studied);
        ReportInput input = new ReportInput(file.site(), name, file.text(), file.sha256(), results, findings, "0.1.0");
        String text = Report.text(input);
        assertThat(text.substring(0, text.indexOf(" – Input file verbatim\n")).lines())
                .allMatch(line -> line.length() <= 100);
        assertThat(VerdictTable.text(findings).lines()).allMatch(line -> line.length() <= 80);
        assertThat(ArrangementPage.text(results).lines()).allMatch(line -> line.length() <= 80);
        boolean stroke = results.results().stream()
                .anyMatch(r -> r.circumstances().keys().containsValue(Case.LINE_CONDUCTOR));
        assertThat(text.contains("Stroke to the line")).isEqualTo(stroke);
        assertThat(stroke).isEqualTo(name.startsWith("ternhook"));
        assertThat(text).contains(" – Sharing the earth: the surge gain and the touch cost");
        boolean compared = results.under("sharing.").findAny().isPresent();
        assertThat(text.contains("could not be compared")).isNotEqualTo(compared);
        assertThat(text.contains("into the tank, screen bonded")).isEqualTo(compared);
        assertThat(compared).isNotEqualTo(name.startsWith("lowgarth"));
        assertThat(text).contains(" – How often, and what if\n");
        assertThat(text.contains("Table: How many flashes a year")).isEqualTo(stroke);
        // A resistance never stands on a page without its ground, its method and a second method.
        for (String page : List.of("## Verdict", " – Earth electrodes\n", "## Test plan and acceptance")) {
            String section = text.substring(text.indexOf(page), text.indexOf("\n## ", text.indexOf(page)));
            String flowing = section.replaceAll("\\s+", " ");
            assertThat(flowing.contains("thin-wire Galerkin") && flowing.contains("ground of"))
                    .as(page)
                    .isNotEqualTo(name.startsWith("lowgarth"));
        }
        // The other sites have a protector there, or no core at all: the open voltage is not what it bears.
        assertThat(Report.document(input).everyBlock().stream()
                        .anyMatch(block -> block instanceof Block.Figure figure
                                && figure.id().equals("figure-surge-cable-end-waveforms")
                                && figure.alternative().contains("limit, trip coil, cubicle end: highest 2.50")))
                .isEqualTo(name.startsWith("brackenmire"));
        Set<String> cells = new HashSet<>();
        for (Block block : Report.document(input).everyBlock()) {
            if (block instanceof Block.Table table) {
                table.rows().forEach(cells::addAll);
            }
        }
        numbersOfSourcesRiseAsTheyAreRead(Report.document(input));
        String read = text.substring(0, text.indexOf(" – Input file verbatim\n"));
        assertThat(read).doesNotContain("soil=").doesNotContain("current=").doesNotContain("1 inputs");
        assertThat(findings)
                .allMatch(finding -> finding.group() == Finding.Group.CONTINGENCY || cells.contains(finding.id()));
    }

    private static void numbersOfSourcesRiseAsTheyAreRead(Document document) {
        List<String> first = new ArrayList<>();
        List<String> listed = List.of();
        for (Block block : document.everyBlock()) {
            if (block instanceof Block.Table table && table.id().equals("references-table")) {
                listed = table.rows().stream().map(row -> row.get(0)).toList();
            } else {
                Matcher citation = Pattern.compile("\\[\\d+\\]").matcher(words(block));
                while (citation.find()) {
                    if (!first.contains(citation.group())) {
                        first.add(citation.group());
                    }
                }
            }
        }
        assertThat(first).hasSizeGreaterThan(5).isEqualTo(listed);
        assertThat(first)
                .isEqualTo(IntStream.rangeClosed(1, first.size())
                        .mapToObj(number -> "[" + number + "]")
                        .toList());
    }

    private static String words(Block block) {
        if (block instanceof Block.Paragraph paragraph) {
            return paragraph.text();
        } else if (block instanceof Block.Bullets bullets) {
            return bullets.items().toString();
        } else if (block instanceof Block.Facts facts) {
            return facts.facts().toString();
        } else if (block instanceof Block.Figure figure) {
            return figure.caption();
        } else if (block instanceof Block.Working working) {
            return working.basis();
        }
        // Keys of the site file with a place in a list look like a citation.
        return block instanceof Block.Table table && !table.id().startsWith("inputs-")
                ? table.caption() + table.rows().toString()
                : block instanceof Block.Table table && table.id().equals("inputs-effective")
                        ? table.rows().stream().map(row -> row.get(2)).toList().toString()
                        : "";
    }
}
