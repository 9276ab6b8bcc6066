package earthing.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a repository of designs asks of {@code check}. */
class GateTest {

    @TempDir
    private Path folder;

    private Path site(String name, String before, String after) throws IOException {
        String text = Files.readString(DemoSites.named(name));
        assertThat(text).contains(before);
        return Files.writeString(folder.resolve(name + ".yaml"), text.replace(before, after));
    }

    @Test
    void anExpectedResultThatIsAnotherOneEndsACheckWithItsLine() throws IOException {
        String name = "ternhook-wood-shared";
        assertThat(CommandRun.of("check", DemoSites.named(name).toString()).code())
                .isEqualTo(0);
        Path off = site(name, "value: 5.70 ohm", "value: 5.40 ohm");
        CommandRun run = CommandRun.of("check", off.toString());
        assertThat(run.code()).isEqualTo(1);
        long line = Files.readAllLines(off).stream()
                        .takeWhile(l -> !l.contains("5.40 ohm"))
                        .count()
                + 1;
        assertThat(run.out())
                .contains("2 of 3 expected results hold.")
                .contains(name + ".yaml:" + line + ": expect[3]: electrode.main.resistance")
                .contains("  expected: 5.40 ohm within 2 %\n  found: 5.69");
        assertThat(run.out().lines()).allMatch(l -> l.length() <= 80);
        assertThat(CommandRun.of("check", off.toString(), "--quiet").code()).isEqualTo(1);
        assertThat(CommandRun.of("report", off.toString(), "--format", "json").code())
                .isEqualTo(1);
    }

    @Test
    void aCaseOfAnotherArrangementIsStudiedWhereItIsExpected() throws IOException {
        Path site = site(
                "ternhook-wood-shared",
                "  - {result: touch.cubicle, value: met}",
                "  - {result: epr.main, in-case: \"fault=maximum, arrangement=separate\", value: 544 V, within: 5 %}");
        assertThat(CommandRun.of("check", site.toString()).out()).contains("expected results hold");
    }

    @Test
    void theFormatsOfBuildServersAreWrittenWithTheSameExitCode() throws IOException {
        String site = DemoSites.named("brackenmire-mistakes").toString();
        CommandRun junit = CommandRun.of("check", site, "--format", "junit");
        assertThat(junit.code()).isEqualTo(1);
        assertThat(junit.out()).startsWith("<?xml version=\"1.0\"").contains("<failure");
        CommandRun sarif = CommandRun.of("check", site, "--format", "sarif");
        assertThat(sarif.code()).isEqualTo(1);
        assertThat(sarif.out())
                .contains("\"version\": \"2.1.0\"")
                .contains("\"uri\": \"sites/brackenmire-mistakes.yaml\"");
        assertThat(CommandRun.of("report", site, "--format", "sarif").code()).isEqualTo(2);
    }
}
