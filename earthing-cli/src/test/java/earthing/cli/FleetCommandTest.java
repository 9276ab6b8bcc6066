package earthing.cli;

import static org.assertj.core.api.Assertions.assertThat;

import earthing.site.file.ReadOutcome;
import earthing.site.file.SiteFile;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class FleetCommandTest {

    private static final List<String> FILES =
            List.of("results.csv", "results.jsonl", "work-list.csv", "summary.html", "journal.txt");

    private static final int ROWS = 120;

    @TempDir
    @SuppressWarnings("NullAway.Init") // set by JUnit
    Path folder;

    private String path(String name) {
        return folder.resolve(name).toString();
    }

    @Test
    void theTemplateIsValidAsItStandsInEveryForm() {
        for (String[] form :
                new String[][] {{}, {"--separator", "semicolon"}, {"--separator", "semicolon", "--decimal", "comma"}}) {
            String table = "poles" + form.length + ".csv";
            List<String> words = new ArrayList<>(List.of("fleet", "--new", "--output", path(table)));
            words.addAll(List.of(form));
            CommandRun made = CommandRun.of(words.toArray(String[]::new));
            assertThat(made.err()).isEmpty();
            assertThat(made.code()).isZero();
            CommandRun again = CommandRun.of(words.toArray(String[]::new));
            assertThat(again.code()).isEqualTo(ExitCode.USAGE.code());
            CommandRun run = CommandRun.of("fleet", path(table), "--output", path("results" + form.length));
            assertThat(run.err()).isEmpty();
            assertThat(run.out()).contains("1 rows, 1 assessed, 0 refused");
            for (String file : FILES) {
                assertThat(folder.resolve("results" + form.length).resolve(file))
                        .isNotEmptyFile();
            }
        }
    }

    @Test
    void theTableOfEveryDemoSiteGivesTheSitesBack() throws IOException {
        List<String> words = new ArrayList<>(List.of("fleet", "--table", "--output", path("all.csv")));
        for (Path site : DemoSites.all()) {
            words.add(site.toString());
        }
        CommandRun made = CommandRun.of(words.toArray(String[]::new));
        assertThat(made.err()).isEmpty();
        for (Path site : DemoSites.all()) {
            Files.copy(site, folder.resolve(site.getFileName()));
        }
        Path sites = DemoSites.all().get(0).toAbsolutePath().getParent();
        for (String side : List.of(
                "skarrowen-survey.csv", "quernholm-recorded.csv", "thornby-owner-limits.csv", "ternhook-survey.csv")) {
            if (sites != null && Files.exists(sites.resolve(side))) {
                Files.copy(sites.resolve(side), folder.resolve(side));
            }
        }
        CommandRun row = CommandRun.of("fleet", path("all.csv"), "--write-site", "163", "--output", path("back.yaml"));
        assertThat(row.err()).isEmpty();
        ReadOutcome back = SiteFile.read(folder.resolve("back.yaml"));
        ReadOutcome original = SiteFile.read(folder.resolve("brackenmire-mistakes.yaml"));
        assertThat(((ReadOutcome.Valid) back).site().electrodes())
                .isEqualTo(((ReadOutcome.Valid) original).site().electrodes());
        assertThat(CommandRun.of("check", path("back.yaml")).out())
                .isEqualTo(CommandRun.of("check", path("brackenmire-mistakes.yaml"))
                        .out());
    }

    @Test
    void usageErrorsSayWhatToDo() throws IOException {
        assertThat(CommandRun.of("fleet").err()).contains("Missing required parameter");
        assertThat(CommandRun.of("fleet", "--table").err()).contains("needs site files");
        Files.writeString(folder.resolve("poles.csv"), "site.pole,site.name\n");
        assertThat(CommandRun.of("fleet", path("poles.csv")).err()).contains("needs --output");
        CommandRun undeclared = CommandRun.of("fleet", path("poles.csv"), "--output", path("r"));
        assertThat(undeclared.code()).isEqualTo(ExitCode.INVALID_INPUT.code());
        assertThat(undeclared.err()).contains("nothing says what stands between the cells");
        CommandRun threads = CommandRun.of("fleet", path("poles.csv"), "--output", path("r"), "--threads", "0");
        assertThat(threads.code()).isEqualTo(ExitCode.USAGE.code());
        CommandRun comma = CommandRun.of("fleet", "--new", "--decimal", "comma", "--separator", "comma");
        assertThat(comma.code()).isEqualTo(ExitCode.USAGE.code());
        assertThat(folder.resolve("r")).doesNotExist();
    }

    @Test
    void aRefusedRowGivesTheCodeOfWhatCouldNotBeAssessed() throws IOException {
        CommandRun.of("fleet", "--new", "--output", path("poles.csv"));
        String text = Files.readString(folder.resolve("poles.csv"));
        String head = text.substring(0, text.lastIndexOf('\n', text.length() - 2) + 1);
        Files.writeString(folder.resolve("bad.csv"), head + "too,short\n");
        CommandRun run = CommandRun.of("fleet", path("bad.csv"), "--output", path("r"));
        assertThat(run.code()).isEqualTo(ExitCode.NOT_ASSESSED.code());
        assertThat(run.out()).contains("refused");
    }

    @Test
    void theMachinesLanguageChangesNothing() throws IOException {
        CommandRun.of("fleet", "--new", "--output", path("poles.csv"));
        Locale before = Locale.getDefault();
        try {
            CommandRun.of("fleet", path("poles.csv"), "--output", path("english"));
            Locale.setDefault(Locale.forLanguageTag("tr-TR"));
            CommandRun.of("fleet", path("poles.csv"), "--output", path("turkish"));
            Locale.setDefault(Locale.GERMANY);
            CommandRun.of("fleet", path("poles.csv"), "--output", path("german"));
        } finally {
            Locale.setDefault(before);
        }
        for (String file : FILES) {
            assertThat(folder.resolve("german").resolve(file))
                    .hasSameBinaryContentAs(folder.resolve("english").resolve(file));
            assertThat(folder.resolve("turkish").resolve(file))
                    .hasSameBinaryContentAs(folder.resolve("english").resolve(file));
        }
    }

    /** The program itself, first interrupted, then killed without warning, then left to its end. */
    @Test
    void anInterruptedAndKilledRunGoesOnToTheSameBytes() throws IOException, InterruptedException {
        Path table = poles(ROWS);
        CommandRun whole = CommandRun.of("fleet", table.toString(), "--output", path("whole"), "--threads", "2");
        assertThat(whole.err()).isEmpty();

        Process first = start(table, "--threads", "1");
        int interrupted = rows(first, 1);
        first.destroy();
        assertThat(first.waitFor(60, TimeUnit.SECONDS)).isTrue();
        assertThat(rows()).isGreaterThanOrEqualTo(interrupted).isLessThan(ROWS);
        String said = Files.readString(folder.resolve("said.txt"));
        assertThat(said)
                .contains("stopped; " + rows() + " of " + ROWS + " rows are kept")
                .contains("--resume");

        Process second = start(table, "--resume");
        rows(second, rows() + 1);
        second.destroyForcibly();
        assertThat(second.waitFor(60, TimeUnit.SECONDS)).isTrue();
        assertThat(rows()).isLessThan(ROWS);

        CommandRun last = CommandRun.of("fleet", table.toString(), "--output", path("halves"), "--resume");
        assertThat(last.err()).isEmpty();
        assertThat(last.code()).isEqualTo(whole.code());
        for (String file : FILES) {
            assertThat(folder.resolve("halves").resolve(file))
                    .hasSameBinaryContentAs(folder.resolve("whole").resolve(file));
        }
    }

    private Path poles(int rows) throws IOException {
        String text = CommandRun.of("fleet", "--new").out();
        List<String> lines = text.lines().toList();
        String row = lines.get(lines.size() - 1);
        StringBuilder table = new StringBuilder();
        lines.subList(0, lines.size() - 1).forEach(line -> table.append(line).append('\n'));
        for (int i = 0; i < rows; i++) {
            String cells =
                    row.replace("Ternhook ridge switch 14", "Alder " + i).replace(",140,", "," + (100 + i) + ",");
            table.append(i % 20 == 3 ? cells.replace("copper", "brass") : cells).append('\n');
        }
        return Files.writeString(folder.resolve("poles.csv"), table);
    }

    private Process start(Path table, String... more) throws IOException {
        List<String> words = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:TieredStopAtLevel=1",
                "-cp",
                System.getProperty("java.class.path"),
                "earthing.cli.Main",
                "fleet",
                table.toString(),
                "--output",
                path("halves")));
        words.addAll(List.of(more));
        return new ProcessBuilder(words)
                .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                .redirectError(folder.resolve("said.txt").toFile())
                .start();
    }

    /** Waits until more rows are kept than so many, or the process has ended. */
    private int rows(Process run, int least) throws IOException, InterruptedException {
        while (run.isAlive() && rows() < least) {
            TimeUnit.MILLISECONDS.sleep(20);
        }
        return rows();
    }

    private int rows() throws IOException {
        Path journal = folder.resolve("halves").resolve("journal.txt");
        if (!Files.exists(journal)) {
            return 0;
        }
        return Files.readAllLines(journal).stream()
                .filter(line -> line.startsWith("rows "))
                .mapToInt(line -> Integer.parseInt(line.substring(5)))
                .findFirst()
                .orElse(0);
    }

    @Test
    void theLineOfProgressTellsRowsAndTime() {
        assertThat(RowWatch.line(0, 100, 0, 0)).isEqualTo("[--------------------] 0 of 100 rows");
        assertThat(RowWatch.line(50, 100, 0, 10)).isEqualTo("[##########----------] 50 of 100 rows, about 10 s left");
        assertThat(RowWatch.line(1000, 10_000, 500, 60))
                .isEqualTo("[##------------------] 1000 of 10000 rows, about 18 min left");
        assertThat(RowWatch.line(100, 100_000, 0, 36)).endsWith("about 10 h left");
        assertThat(RowWatch.line(100, 100, 40, 36)).endsWith("about 0 s left");
        assertThat(RowWatch.line(0, 0, 0, 0)).contains("0 of 0 rows");
    }
}
