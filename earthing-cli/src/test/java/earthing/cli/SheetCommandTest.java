package earthing.cli;

import static org.assertj.core.api.Assertions.assertThat;

import earthing.site.Measurement;
import earthing.site.Site;
import earthing.site.file.ReadOutcome;
import earthing.site.file.SideFiles;
import earthing.site.file.SiteFile;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

final class SheetCommandTest {

    @TempDir
    @SuppressWarnings("NullAway.Init") // set by JUnit
    Path folder;

    static List<Path> sites() throws IOException {
        return DemoSites.all();
    }

    @ParameterizedTest
    @MethodSource("sites")
    void bothSheetsOfEverySiteFitOnOnePage(Path site) throws IOException {
        for (String kind : List.of("build", "test")) {
            Path pdf = folder.resolve(kind + ".pdf");
            CommandRun run = CommandRun.of(
                    "sheet", site.toString(), "--kind", kind, "--format", "pdf", "--output", pdf.toString());
            assertThat(run.err()).isEmpty();
            assertThat(run.code()).isZero();
            try (PDDocument pages = Loader.loadPDF(pdf.toFile())) {
                assertThat(pages.getNumberOfPages()).as(kind + " of " + site).isEqualTo(1);
            }
            String text =
                    CommandRun.of("sheet", site.toString(), "--kind", kind).out();
            assertThat(text).contains("never disconnect", "licensed", "signature");
        }
    }

    @ParameterizedTest
    @MethodSource("sites")
    void aFilledTableBecomesMeasurementsAndLeavesTheRestAsItWas(Path site) throws IOException {
        Path table = folder.resolve("readings.csv");
        CommandRun made = CommandRun.of("sheet", site.toString(), "--format", "csv", "--output", table.toString());
        assertThat(made.err()).isEmpty();
        StringBuilder filled = new StringBuilder();
        int rows = 0;
        for (String line : Files.readAllLines(table)) {
            String of = line.split(",", -1)[1];
            if (line.startsWith("electrode-resistance")) {
                filled.append("electrode-resistance,")
                        .append(of)
                        .append(",8.4 ohm,fall-of-potential,yes,60 m,37 m,2026-09-01,dry,\n");
                rows++;
            } else if (line.startsWith("bond-continuity")) {
                filled.append("bond-continuity,").append(of).append(",2 mohm,four-wire,yes,,,2026-09-01,,\n");
                rows++;
            } else {
                filled.append(line).append('\n');
            }
        }
        Files.writeString(table, filled);
        Path after = folder.resolve("after.yaml");
        CommandRun read = CommandRun.of("sheet", site.toString(), "--read", table.toString());
        assertThat(read.err()).isEmpty();
        assertThat(read.code()).isZero();
        Files.writeString(after, read.out());
        Site before = ((ReadOutcome.Valid) SiteFile.read(site)).site();
        Site merged = ((ReadOutcome.Valid) SiteFile.read(
                        read.out().getBytes(StandardCharsets.UTF_8), site.toString(), SideFiles.beside(site)))
                .site();
        int old = before.measurements().size();
        assertThat(merged.measurements()).hasSize(old + rows);
        Measurement first = merged.measurements().get(old);
        assertThat(first.value().nominal()).isEqualTo(8.4);
        assertThat(first.date()).isEqualTo("2026-09-01");
        List<String> left = Files.readAllLines(after);
        assertThat(left).containsSubsequence(Files.readAllLines(site));
    }

    @Test
    void aMainEarthInOnePieceStandsOnTheBuildSheetToo() {
        assertThat(CommandRun.of("sheet", DemoSites.named("thornby-shield-wire").toString(), "--kind", "build")
                        .out())
                .contains("| Main earth", "one unbroken conductor");
    }

    @Test
    void aMainEarthInOnePieceIsMeasuredAsOneBond() {
        String sheet = CommandRun.of(
                        "sheet", DemoSites.named("thornby-shield-wire").toString())
                .out();
        assertThat(sheet).containsPattern("bond continuity, *\\| [0-9.]+ mΩ[^\n]*\n\\| main-earth ");
    }

    @Test
    void aWrongReadingIsToldAtItsRow() throws IOException {
        String site = DemoSites.named("ternhook-wood-shared").toString();
        Path table = folder.resolve("readings.csv");
        Files.writeString(table, """
                kind,of,value,method,isolated,date
                electrode-resistance,main,8.4,fall-of-potential,yes,2026-09-01
                electrode-resistance,main,8.4 ohm,by-guess,yes,2026-09-01
                bond-continuity,upper,,four-wire,yes,
                """);
        CommandRun run = CommandRun.of("sheet", site, "--read", table.toString());
        assertThat(run.code()).isEqualTo(65);
        assertThat(run.out()).isEmpty();
        assertThat(run.err()).contains("readings.csv:2:", "no unit", "readings.csv:3:", "by-guess");
    }

    @Test
    void anEmptyOrForeignTableIsRefused() throws IOException {
        String site = DemoSites.named("ternhook-wood-shared").toString();
        Path table = Files.writeString(folder.resolve("readings.csv"), "kind,of,value,method,isolated,date\n");
        assertThat(CommandRun.of("sheet", site, "--read", table.toString()).err())
                .contains("no row of this sheet has a value");
        Files.writeString(table, "colour,of\nred,main\n");
        assertThat(CommandRun.of("sheet", site, "--read", table.toString()).err())
                .contains("colour: unknown column", "missing column");
        Files.writeString(table, "");
        assertThat(CommandRun.of("sheet", site, "--read", table.toString()).code())
                .isEqualTo(65);
    }
}
