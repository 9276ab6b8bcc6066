package earthing.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.eclipsesource.json.Json;
import com.eclipsesource.json.JsonObject;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import picocli.CommandLine;
import picocli.CommandLine.Help.Ansi;

/** {@code check}, {@code compare}, {@code new}, and what happens when the program itself is at fault. */
final class OtherCommandsTest {

    @TempDir
    @SuppressWarnings("NullAway.Init") // set by JUnit
    Path folder;

    static List<Path> sites() throws IOException {
        return DemoSites.all();
    }

    @ParameterizedTest
    @MethodSource("sites")
    void verdictsFitATerminalAndGiveTheReportsExitCode(Path site) {
        CommandRun run = CommandRun.of("check", site.toString());
        assertThat(run.err()).isEmpty();
        assertThat(run.out()).startsWith("Headline: ").contains("electrode.resistance");
        assertThat(run.out().lines()).allSatisfy(line -> assertThat(line).hasSizeLessThanOrEqualTo(80));
        CommandRun json = CommandRun.of("check", site.toString(), "--format", "json");
        assertThat(json.code()).isEqualTo(run.code());
        assertThat(Json.parse(json.out()).asObject().getString("format", "")).isEqualTo("earthing-report/1");
    }

    @ParameterizedTest
    @MethodSource("sites")
    void theFourArrangementsFitATerminal(Path site) {
        CommandRun run = CommandRun.of("compare", site.toString());
        assertThat(run.err()).isEmpty();
        assertThat(run.code()).isZero();
        assertThat(run.out()).contains("shared", "separate", "both", "unearthed");
        assertThat(run.out().lines()).allSatisfy(line -> assertThat(line).hasSizeLessThanOrEqualTo(80));
    }

    @ParameterizedTest
    @MethodSource("sites")
    void theFirstFortyLinesHoldTheFourArrangementsAndWhatTheyMean(Path site) {
        List<String> screen = CommandRun.of("compare", site.toString())
                .out()
                .lines()
                .limit(40)
                .toList();
        assertThat(screen)
                .anyMatch(line -> line.startsWith("shared: "))
                .anyMatch(line -> line.startsWith("separate: "))
                .anyMatch(line -> line.startsWith("both: "))
                .anyMatch(line -> line.startsWith("unearthed: "))
                .contains("Details");
    }

    @Test
    void twoSitesAreComparedOnOnePageFirst() {
        String a = DemoSites.named("ternhook-wood-shared").toString();
        String b = DemoSites.named("ternhook-wood-separate").toString();
        CommandRun run = CommandRun.of("compare", a, b);
        assertThat(run.err()).isEmpty();
        assertThat(run.code()).isZero();
        assertThat(run.out().lines()).allSatisfy(line -> assertThat(line).hasSizeLessThanOrEqualTo(80));
        assertThat(run.out().lines().limit(66))
                .anyMatch(line -> line.startsWith("| cubicle.earth ") && line.contains("shared"))
                .anyMatch(line -> line.startsWith("| path.cubicle-tee ") && line.contains("not met"))
                .anyMatch(line -> line.startsWith("| Quantity "))
                .contains("Everything that differs");
        JsonObject json = Json.parse(
                        CommandRun.of("compare", a, b, "--format", "json").out())
                .asObject();
        assertThat(json.getString("format", "")).isEqualTo("earthing-difference/1");
        assertThat(json.get("inputs").asArray()).isNotEmpty();
        assertThat(json.get("findings").asArray()).isNotEmpty();
        assertThat(json.get("results").asArray()).isNotEmpty();
        assertThat(json.get("cautions").asArray()).isNotEmpty();
    }

    @Test
    void aSiteComparedWithItselfDoesNotDiffer() {
        String site = DemoSites.named("ternhook-wood-shared").toString();
        assertThat(CommandRun.of("compare", site, site).out()).contains("0 inputs differ", "0 of ");
    }

    @Test
    void jsonOfOneSiteIsNotAComparison() {
        CommandRun run =
                CommandRun.of("compare", DemoSites.named("ternhook-wood-shared").toString(), "--format", "json");
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.err()).contains("compares two sites");
    }

    @Test
    void anIdThatStandsTwiceCarriesItsSubject() {
        String out = CommandRun.of(
                        "check", DemoSites.named("brackenmire-mistakes").toString())
                .out();
        assertThat(out).contains("| surge.gap: gap, main ", "| touch.cubicle  ");
    }

    @Test
    void quietTellsTheOutcomeByTheExitCodeOnly() {
        CommandRun run =
                CommandRun.of("check", DemoSites.named("brackenmire-mistakes").toString(), "--quiet");
        assertThat(run.code()).isEqualTo(1);
        assertThat(run.out()).isEmpty();
        assertThat(run.err()).isEmpty();
    }

    @Test
    void aCheckIsExplainedWithAndWithoutASite() {
        CommandRun alone = CommandRun.of("check", "--explain", "touch.cubicle");
        assertThat(alone.code()).isZero();
        assertThat(alone.out()).contains("What it means", "Why it matters", "What to do", "licensed");
        CommandRun there = CommandRun.of(
                "check", DemoSites.named("brackenmire-mistakes").toString(), "--explain", "touch.cubicle");
        assertThat(there.code()).isEqualTo(1);
        assertThat(there.out()).contains("On this site", "not met", "Worked");
        assertThat(there.out().lines()).allSatisfy(line -> assertThat(line).hasSizeLessThanOrEqualTo(80));
        CommandRun unknown = CommandRun.of("check", "--explain", "touch");
        assertThat(unknown.code()).isEqualTo(2);
        assertThat(unknown.err()).contains("there is no check touch", "step.worst");
        assertThat(CommandRun.of("check").code()).isEqualTo(2);
    }

    @Test
    void aWrongWordListsThoseThatAreTakenInLowerCase() {
        CommandRun format = CommandRun.of("check", "site.yaml", "--format", "docx");
        assertThat(format.code()).isEqualTo(2);
        assertThat(format.err()).contains("expected one of text, json, junit, sarif; have docx");
        CommandRun array = CommandRun.of("soil", "survey.csv", "--array", "square");
        assertThat(array.code()).isEqualTo(2);
        assertThat(array.err()).contains("expected one of wenner, schlumberger, driven-rod; have square");
    }

    @Test
    void aRefusedFileIsToldByEveryCommand() throws IOException {
        Path site = Files.writeString(folder.resolve("empty.yaml"), "");
        for (String command : List.of("report", "check", "compare")) {
            CommandRun run = CommandRun.of(command, site.toString());
            assertThat(run.code()).as(command).isEqualTo(65);
            assertThat(run.out()).isEmpty();
            assertThat(run.err()).contains("there is nothing in this file");
        }
    }

    @Test
    void aNewFileIsValidAndCanBeChecked() {
        Path file = folder.resolve("site.yaml");
        CommandRun made = CommandRun.of("new", "--output", file.toString());
        assertThat(made.code()).as(made.err()).isZero();
        assertThat(made.out()).isEmpty();
        CommandRun check = CommandRun.of("check", file.toString());
        assertThat(check.err()).isEmpty();
        assertThat(check.code()).isIn(0, 1, 3);
        assertThat(CommandRun.of("new").out()).isEqualTo(contentOf(file));
    }

    @Test
    void aFileThatIsThereIsNotOverwritten() throws IOException {
        Path file = Files.writeString(folder.resolve("site.yaml"), "my work");
        CommandRun run = CommandRun.of("new", "--output", file.toString());
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.err()).contains("site.yaml is there already");
        assertThat(file).hasContent("my work");
    }

    @Test
    void aFaultOfTheProgramIsOneLineUnlessATraceIsAskedFor() {
        CommandRun brief = failing("fail");
        assertThat(brief.code()).isEqualTo(70);
        assertThat(brief.out()).isEmpty();
        assertThat(brief.err())
                .contains("earthing: internal error", "planted fault", "--trace")
                .doesNotContain("\tat ");
        CommandRun traced = failing("--trace", "fail");
        assertThat(traced.code()).isEqualTo(70);
        assertThat(traced.err()).contains("planted fault", "\tat ");
    }

    private static CommandRun failing(String... args) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        CommandLine bare = new CommandLine(new RootCommand()).addSubcommand("fail", new Failing());
        int code = Main.prepared(bare, new PrintWriter(out), new PrintWriter(err, true), Ansi.OFF)
                .execute(args);
        return new CommandRun(code, out.toString(), err.toString());
    }

    private static String contentOf(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @CommandLine.Command
    private static final class Failing implements Callable<Integer> {

        @Override
        public Integer call() {
            throw new IllegalStateException("planted fault");
        }
    }
}
