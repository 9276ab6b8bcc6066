package earthing.report;

import static org.assertj.core.api.Assertions.assertThat;

import earthing.compliance.ComplianceRun;
import earthing.compliance.Finding;
import earthing.decision.Sensitivity;
import earthing.site.Site;
import earthing.site.file.ReadOutcome;
import earthing.site.file.SiteFile;
import earthing.study.PlanStudy;
import earthing.study.SiteStudy;
import earthing.study.StudyResults;
import earthing.study.SurgeOutlook;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Reports of two demonstration sites against the copies that are kept: a guard against changes that nobody meant, not a
 * validation. {@code -Dgolden.write=true} renews the copies.
 */
final class GoldenReportTest {

    private static final Path FOLDER = Path.of("src", "test", "resources", "golden");
    private static final int MOST_TOLD = 60;

    @ParameterizedTest
    @ValueSource(strings = {"lowgarth-short", "brackenmire-mistakes"})
    void reportIsTheOneThatIsKept(String site) throws Exception {
        String now = GoldenCopy.of(Report.document(input(site + ".yaml")));
        Path kept = FOLDER.resolve(site + ".txt");
        if (Boolean.getBoolean("golden.write")) {
            Files.writeString(kept, now);
        }
        List<String> differences = GoldenCopy.differences(site, Files.readString(kept), now);
        assertThat(differences.stream().limit(MOST_TOLD))
                .as(
                        "%d differences from %s; if they are meant, renew it as DEVELOPERS.md says",
                        differences.size(), kept)
                .isEmpty();
    }

    /** What the command line makes a report of. */
    private static ReportInput input(String name) {
        ReadOutcome.Valid file = (ReadOutcome.Valid) SiteFile.read(Path.of("..", "earthing-cli", "sites", name));
        Site site = file.site();
        StudyResults studied = SiteStudy.of(site);
        List<Finding> findings = ComplianceRun.of(site, studied);
        StudyResults results =
                Sensitivity.added(site, PlanStudy.added(site, SurgeOutlook.added(site, studied)), findings);
        return new ReportInput(site, name, file.text(), file.sha256(), results, findings, "(not packaged)");
    }

    @Test
    void aDifferenceNamesReportSectionTableRowAndColumn() {
        String was = """
                section soil = Soil
                  table layers = Layers
                    row top
                      column Resistivity = 100 Ω·m
                      column Depth = 2.00 m
                    row rest
                      column Resistivity = 400 Ω·m
                """;
        assertThat(told(was, was)).isEmpty();
        assertThat(told(was, was.replace("2.00 m", "2.01 m")))
                .containsExactly("report x, section soil, table layers, row top, column Depth: 2.00 m → 2.01 m");
        assertThat(told(was, was.replace("row rest", "row below")))
                .containsExactly(
                        "report x, section soil, table layers, row rest: is gone",
                        "report x, section soil, table layers, row below: is new");
        assertThat(told(was, was.replace("      column Depth = 2.00 m\n", "")))
                .containsExactly("report x, section soil, table layers, row top, column Depth: is gone, was 2.00 m");
    }

    @Test
    void onlyTheLastBitsOfALongNumberMayDiffer() {
        String was = "fact a = 1.234567890123 and 17 m\n";
        assertThat(told(was, was.replace("0123", "0124"))).isEmpty();
        assertThat(told(was, was.replace("1.2345", "1.2346"))).hasSize(1);
        assertThat(told(was, was.replace("17 m", "18 m"))).hasSize(1);
        assertThat(told(was, was.replace("and", "or"))).hasSize(1);
        assertThat(told("fact a = 1.5\nfact b = 2\n", "fact b = 2\nfact a = 1.5\n"))
                .containsExactly("report x: in another order from here on: fact a → fact b");
    }

    private static List<String> told(String was, String is) {
        return GoldenCopy.differences("x", was, is);
    }
}
