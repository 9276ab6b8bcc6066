package earthing.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.eclipsesource.json.Json;
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
