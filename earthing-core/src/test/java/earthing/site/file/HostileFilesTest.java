package earthing.site.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

import java.time.Duration;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Files made to hurt: each is refused in bounded time and memory, without an error of the machine. */
final class HostileFilesTest {

    private static final int SIZE = SiteFile.LARGEST - 1000;

    static List<String> files() {
        StringBuilder laughs = new StringBuilder("a0: &a0 [lol, lol, lol, lol, lol, lol, lol, lol, lol, lol]\n");
        for (int i = 1; i < 30; i++) {
            String before = "*a" + (i - 1);
            laughs.append("a").append(i).append(": &a").append(i).append(" [").append(before);
            laughs.append((", " + before).repeat(9)).append("]\n");
        }
        return List.of(
                laughs.toString(),
                "a: &a [*a]\n",
                "&a {*a : *a}\n",
                "<<: *x\n",
                "[".repeat(SIZE),
                "{".repeat(SIZE),
                "- ".repeat(SIZE / 2),
                "? ".repeat(SIZE / 2),
                "a: ".repeat(SIZE / 3),
                "{a: ".repeat(SIZE / 4),
                deep(900),
                "x".repeat(SIZE),
                "x: " + "9".repeat(SIZE),
                "system: {voltage: " + "9".repeat(SIZE) + "\n}",
                "tank: {height: \"" + "9".repeat(SIZE) + "\\n\"}",
                "tank: {height: 1e" + "9".repeat(100_000) + " m}",
                "arresters: {phases: " + "9".repeat(100_000) + "}",
                "colour: red\n".repeat(SIZE / 12),
                "colours: [" + "red, ".repeat(SIZE / 6) + "]",
                distinctKeys(),
                "electrodes: [" + "{name: a}, ".repeat(SIZE / 12) + "]",
                "electrodes: [" + "{name: a, rod: {length: 1}}, ".repeat(500) + "]",
                "tank: {" + "x".repeat(SIZE) + ": 1}\n",
                "electrodes: [{name: " + "x".repeat(SIZE / 2) + "}]\nmain-earth: {electrode: y}\n",
                "electrodes:\n" + " - 1\n".repeat(SIZE / 6),
                "\"" + "\\n".repeat(SIZE / 2),
                "'" + "''".repeat(SIZE / 2),
                "|\n" + " a\n".repeat(SIZE / 4),
                "#" + "\t".repeat(SIZE),
                "\t\n".repeat(SIZE / 2),
                "%YAML 9.9\n---\na: b\n",
                "%TAG ! tag:x,2000:\n---\n!a b\n",
                "--- \n".repeat(SIZE / 5),
                "!!java.lang.Object {}\n",
                "key: !!binary aGVsbG8=\n",
                "\uFEFF\uFEFF: a\n",
                "a\u0085b: c\u2028d\n",
                "? {a: b}\n: c\n",
                "? [a, b]\n: c\n",
                "\"\\ud800\": \"\\udc00\"\n",
                "site: {name: \"\\ud800\", stage: design}\n");
    }

    private static String deep(int depth) {
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < depth; i++) {
            text.append(" ".repeat(i)).append("a:\n");
        }
        return text.toString();
    }

    private static String distinctKeys() {
        StringBuilder text = new StringBuilder();
        for (int i = 0; text.length() < SIZE; i++) {
            text.append("resistivty").append(i).append(": 1\n");
        }
        return text.toString();
    }

    @ParameterizedTest
    @MethodSource("files")
    void isRefusedWithoutHarm(String text) {
        ReadOutcome outcome =
                assertTimeoutPreemptively(Duration.ofSeconds(30), () -> SiteFile.read(text, "hostile.yaml"));
        assertThat(outcome).isInstanceOf(ReadOutcome.Invalid.class);
        List<String> problems = Problems.of(outcome);
        assertThat(problems).isNotEmpty().hasSizeLessThanOrEqualTo(1001);
        assertThat(problems).allMatch(problem -> problem.length() < 2000, "stays readable");
        assertThatCode(() -> String.join("\n", problems)).doesNotThrowAnyException();
    }
}
