package earthing.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.eclipsesource.json.Json;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The formats that need a place of their own: PDF and a folder of tables. */
final class ReportFormatsTest {

    private static final String SITE = DemoSites.named("ternhook-wood-shared").toString();

    @TempDir
    @SuppressWarnings("NullAway.Init") // set by JUnit
    Path folder;

    @Test
    void pdfIsWrittenWithTheExitCodeOfTheCheckAndTheSameBytes() throws IOException {
        Path one = folder.resolve("one.pdf");
        Path two = folder.resolve("two.pdf");
        CommandRun run = CommandRun.of("report", SITE, "--format", "pdf", "--output", one.toString());
        assertThat(run.err()).isEmpty();
        assertThat(run.code()).isEqualTo(CommandRun.of("check", SITE, "--quiet").code());
        CommandRun.of("report", SITE, "--format", "pdf", "--output", two.toString());
        assertThat(Files.readAllBytes(one)).startsWith("%PDF-".getBytes(StandardCharsets.US_ASCII));
        assertThat(Files.mismatch(one, two)).isEqualTo(-1);
    }

    @Test
    void pdfAndTablesNeedAPlace() {
        for (String format : List.of("pdf", "csv")) {
            CommandRun run = CommandRun.of("report", SITE, "--format", format);
            assertThat(run.code()).isEqualTo(2);
            assertThat(run.out()).isEmpty();
            assertThat(run.err()).contains("--format " + format + " needs --output");
        }
    }

    @Test
    void tablesHoldWhatTheJsonHolds() throws IOException {
        Path tables = folder.resolve("tables");
        CommandRun run = CommandRun.of("report", SITE, "--format", "csv", "--output", tables.toString());
        assertThat(run.err()).isEmpty();
        int results = Json.parse(
                        CommandRun.of("report", SITE, "--format", "json").out())
                .asObject()
                .get("results")
                .asArray()
                .size();
        assertThat(Files.readAllLines(tables.resolve("results.csv"))).hasSize(results + 1);
        List<String> index = Files.readAllLines(tables.resolve("index.csv"));
        assertThat(index.get(0)).isEqualTo("file,rows,content");
        try (Stream<Path> files = Files.list(tables)) {
            assertThat(files).hasSize(index.size());
        }
        assertThat(index).anyMatch(line -> line.startsWith("figure-")).anyMatch(line -> line.startsWith("table-"));
        assertThat(Files.readString(tables.resolve("findings.csv"))).contains("touch.cubicle,");
    }

    @Test
    void aFolderOfTablesIsRenewedAndAnyOtherFolderIsLeftAlone() throws IOException {
        Path tables = folder.resolve("tables");
        CommandRun.of("report", SITE, "--format", "csv", "--output", tables.toString());
        Files.writeString(
                tables.resolve("index.csv"), Files.readString(tables.resolve("index.csv")) + "stale.csv,1,x\n");
        Files.writeString(tables.resolve("stale.csv"), "x\n");
        Files.writeString(tables.resolve("notes.txt"), "mine");
        assertThat(CommandRun.of("report", SITE, "--format", "csv", "--output", tables.toString())
                        .err())
                .isEmpty();
        assertThat(tables.resolve("stale.csv")).doesNotExist();
        assertThat(tables.resolve("notes.txt")).hasContent("mine");
        Path other = Files.createDirectory(folder.resolve("other"));
        Files.writeString(other.resolve("notes.txt"), "mine");
        CommandRun refused = CommandRun.of("report", SITE, "--format", "csv", "--output", other.toString());
        assertThat(refused.code()).isEqualTo(2);
        assertThat(refused.err()).contains("the folder holds other files");
        try (Stream<Path> files = Files.list(other)) {
            assertThat(files).hasSize(1);
        }
    }
}
