package earthing.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import picocli.CommandLine;

/** What holds for every command. */
final class CommandLineTest {

    static List<String> commands() {
        return List.copyOf(new CommandLine(new RootCommand()).getSubcommands().keySet());
    }

    @Test
    void helpGoesToStandardOutput() {
        CommandRun run = CommandRun.of("--help");
        assertThat(run.code()).isZero();
        assertThat(run.err()).isEmpty();
        assertThat(run.out()).startsWith("Usage: earthing COMMAND").contains("Exit codes:", "65", "licensed person");
        assertThat(commands())
                .isNotEmpty()
                .allSatisfy(name -> assertThat(run.out()).contains("\n  " + name));
    }

    @ParameterizedTest
    @MethodSource("commands")
    void helpOfEachCommandShowsAnExampleAndFitsEightyColumns(String command) {
        CommandRun run = CommandRun.of(command, "--help");
        assertThat(run.code()).isZero();
        assertThat(run.err()).isEmpty();
        assertThat(run.out()).contains("Usage: earthing " + command, "Example");
        assertThat(run.out().lines()).allSatisfy(line -> assertThat(line).hasSizeLessThanOrEqualTo(80));
    }

    @Test
    void helpFitsEightyColumns() {
        assertThat(CommandRun.of("--help").out().lines())
                .allSatisfy(line -> assertThat(line).hasSizeLessThanOrEqualTo(80));
    }

    @Test
    void versionGoesToStandardOutput() {
        CommandRun run = CommandRun.of("--version");
        assertThat(run.code()).isZero();
        assertThat(run.out()).startsWith("earthing ");
        assertThat(run.err()).isEmpty();
    }

    @Test
    void noCommandIsAUsageError() {
        CommandRun run = CommandRun.of();
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.out()).isEmpty();
        assertThat(run.err()).contains("a command is missing", "earthing --help");
    }

    @Test
    void unknownCommandIsAUsageErrorWithTheNearestOne() {
        CommandRun run = CommandRun.of("completio");
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.out()).isEmpty();
        assertThat(run.err()).contains("completio", "completion");
    }

    @Test
    void unknownOptionIsAUsageError() {
        CommandRun run = CommandRun.of("completion", "--colour");
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.out()).isEmpty();
        assertThat(run.err()).contains("--colour");
    }

    @Test
    void completionScriptNamesEveryCommand() {
        CommandRun run = CommandRun.of("completion");
        assertThat(run.code()).isZero();
        assertThat(run.err()).isEmpty();
        assertThat(commands()).allSatisfy(name -> assertThat(run.out()).contains(name));
        assertThat(run.out()).contains("complete -F");
    }
}
