package earthing.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.eclipsesource.json.Json;
import com.eclipsesource.json.JsonObject;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

final class ReportCommandTest {

    @TempDir
    @SuppressWarnings("NullAway.Init") // set by JUnit
    Path folder;

    static List<Path> sites() throws IOException {
        return DemoSites.all();
    }

    @ParameterizedTest
    @MethodSource("sites")
    void everyDemoSiteHasAReportInEveryFormat(Path site) {
        CommandRun text = CommandRun.of("report", site.toString());
        assertThat(text.err()).isEmpty();
        assertThat(text.code()).isIn(0, 1, 3);
        assertThat(text.out()).startsWith("#").contains("licensed", "Never disconnect");

        CommandRun html = CommandRun.of("report", site.toString(), "--format", "html");
        assertThat(html.err()).isEmpty();
        assertThat(html.code()).isEqualTo(text.code());
        assertThat(html.out()).startsWith("<!DOCTYPE html>").endsWith("</html>\n");
        assertThat(html.out()).as("one self-contained page").doesNotContain("src=\"http", "href=\"http");

        CommandRun json = CommandRun.of("report", site.toString(), "--format", "json");
        assertThat(json.err()).isEmpty();
        assertThat(json.code()).isEqualTo(text.code());
        JsonObject root = Json.parse(json.out()).asObject();
        assertThat(root.getString("format", "")).isEqualTo("earthing-report/1");
        assertThat(root.get("input").asObject().getString("file", ""))
                .isEqualTo(site.getFileName().toString());
        List<String> statuses = root.get("findings").asArray().values().stream()
                .map(finding -> finding.asObject().getString("status", ""))
                .toList();
        assertThat(statuses).hasSizeGreaterThan(10);
        int expected = statuses.contains("not-met")
                ? 1
                : statuses.contains("not-assessed") || statuses.contains("insufficient-data") ? 3 : 0;
        assertThat(json.code()).as("the exit code follows the findings").isEqualTo(expected);
    }

    @Test
    void whatEachBoundedInputDoesIsToldUnlessItIsLeftOut() {
        String site = DemoSites.named("brackenmire-mistakes").toString();
        assertThat(CommandRun.of("report", site, "--no-sensitivity").out())
                .contains("## Which input moves the governing checks", "Left out")
                .doesNotContain("what each bounded input alone does");
        CommandRun asked = CommandRun.of("report", site);
        assertThat(asked.out())
                .contains(
                        "Figure: Resistance, electrode main: what each bounded input alone does to it",
                        "soil.resistivity");
        assertThat(asked.code()).isEqualTo(1);
        assertThat(CommandRun.of("report", site, "--format", "json").out())
                .contains("\"id\": \"sensitivity.electrode.resistance\"", "\"at\": \"soil.resistivity=low\"");
    }

    @Test
    void resultsAreVerifiedByOtherCodeWhereThatIsAskedFor() {
        String site = DemoSites.named("ternhook-wood-shared").toString();
        CommandRun asked = CommandRun.of("check", site, "--recheck");
        assertThat(asked.out()).contains("comparisons keep their", "| electrode.potential", "| surge.energy");
        assertThat(asked.out().lines()).allMatch(line -> line.length() <= 80);
        assertThat(asked.code()).isEqualTo(0);
        assertThat(CommandRun.of("check", site).out()).doesNotContain("surge.energy");
        assertThat(CommandRun.of("report", site, "--recheck").out()).contains(" – Verified by other code\n");
        assertThat(CommandRun.of("check", site, "--recheck", "--format", "json").out())
                .contains("\"id\": \"recheck.conductor.heating\"", "\"id\": \"recheck.conductor.heating.bound\"");
    }

    /** A recorded current beside the site file is studied; one that is damaged or absent is refused by file, row and column. */
    @Test
    void aRecordedCurrentIsReadBesideTheSiteFile() throws IOException {
        String text = Files.readString(DemoSites.named("ternhook-wood-shared"))
                .replace("  waves: [8/20]", "  waves: [8/20]\n  own-wave: recorded.csv");
        Path site = folder.resolve("site.yaml");
        Files.writeString(site, text);
        Path wave = folder.resolve("recorded.csv");
        Files.writeString(wave, "time [us], current [kA]\n0, 0\n8, 10\n20, 5\n60, 0\n");
        CommandRun good = CommandRun.of("report", site.toString(), "--format", "json");
        assertThat(good.err()).isEmpty();
        assertThat(good.out()).contains("\"wave\": \"own\"");
        assertThat(CommandRun.of(
                                "report",
                                DemoSites.named("ternhook-wood-shared").toString(),
                                "--format",
                                "json")
                        .out())
                .doesNotContain("\"wave\": \"own\"");
        Files.writeString(wave, "time [us], current [kA]\n0, 0\n8, ten\n20, 5\n60, 0\n");
        CommandRun bad = CommandRun.of("check", site.toString());
        assertThat(bad.code()).isEqualTo(65);
        assertThat(bad.err()).contains("recorded.csv:3:2", "is not a valid site file");
        Files.delete(wave);
        assertThat(CommandRun.of("report", site.toString()).err()).contains("there is no such file");
    }

    @Test
    void aDesignFullOfMistakesIsNotMet() {
        assertThat(CommandRun.of(
                                "report",
                                DemoSites.named("brackenmire-mistakes").toString())
                        .code())
                .isEqualTo(1);
    }

    @Test
    void unknownInputsAreNotAssessedAndNeverGuessed() {
        CommandRun run =
                CommandRun.of("check", DemoSites.named("lowgarth-short").toString());
        assertThat(run.code()).isEqualTo(3);
        assertThat(run.out()).contains("insufficient data", "fill in");
    }

    @Test
    void theSameInputGivesTheSameBytesWhateverTheLocaleAndTheFolder() throws IOException {
        Path site = DemoSites.named("ternhook-wood-shared");
        Path copy = Files.copy(site, folder.resolve(site.getFileName()));
        String first = CommandRun.of("report", site.toString()).out();
        Locale before = Locale.getDefault();
        try {
            Locale.setDefault(Locale.forLanguageTag("ar-EG-u-nu-arab"));
            assertThat(CommandRun.of("report", copy.toString()).out()).isEqualTo(first);
        } finally {
            Locale.setDefault(before);
        }
    }

    @Test
    void theReportIsWrittenToAFile() throws IOException {
        Path site = DemoSites.named("ternhook-wood-shared");
        Path file = folder.resolve("report.md");
        CommandRun run = CommandRun.of("report", site.toString(), "--output", file.toString());
        assertThat(run.out()).isEmpty();
        assertThat(run.err()).isEmpty();
        assertThat(Files.readString(file))
                .isEqualTo(CommandRun.of("report", site.toString()).out());
    }

    @Test
    void anInvalidFileIsRefusedWithEveryProblemAndItsLine() throws IOException {
        String text = Files.readString(DemoSites.named("lowgarth-short"))
                .replace("height: 9 m", "hieght: 9 m")
                .replace("voltage: 22 kV", "voltage: 22");
        Path site = Files.writeString(folder.resolve("wrong.yaml"), text);
        Path report = Files.writeString(folder.resolve("report.md"), "an older report");
        CommandRun run = CommandRun.of("report", site.toString(), "--output", report.toString());
        assertThat(run.code()).isEqualTo(65);
        assertThat(run.out()).isEmpty();
        assertThat(run.err())
                .contains("wrong.yaml:7:", "system.voltage", "no unit")
                .contains("hieght", "did you mean \"height\"?")
                .contains("is not a valid site file: ");
        assertThat(report).hasContent("an older report");
    }

    @Test
    void aMissingFileIsRefused() {
        CommandRun run = CommandRun.of("report", folder.resolve("none.yaml").toString());
        assertThat(run.code()).isEqualTo(65);
        assertThat(run.out()).isEmpty();
        assertThat(run.err()).contains("none.yaml", "there is no such file");
    }

    @Test
    void withoutASiteTheCommandIsNotUnderstood() {
        CommandRun run = CommandRun.of("report");
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.out()).isEmpty();
        assertThat(run.err()).contains("SITE", "earthing report --help");
    }

    @Test
    void anUnknownFormatIsNotUnderstood() {
        CommandRun run =
                CommandRun.of("report", DemoSites.named("lowgarth-short").toString(), "--format", "docx");
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.out()).isEmpty();
        assertThat(run.err()).contains("expected one of text, html, pdf, json, csv; have docx");
    }

    @Test
    void aReportThatHasNowhereToGoIsTold() {
        Path nowhere = folder.resolve("no-such-folder").resolve("report.md");
        CommandRun run = CommandRun.of(
                "report", DemoSites.named("ternhook-wood-shared").toString(), "--output", nowhere.toString());
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.err()).contains("cannot write", "no-such-folder");
    }
}
