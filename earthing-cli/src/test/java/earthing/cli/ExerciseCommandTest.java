package earthing.cli;

import static org.assertj.core.api.Assertions.assertThat;

import earthing.exercise.Exercise;
import earthing.exercise.ExerciseBook;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class ExerciseCommandTest {

    @TempDir
    @SuppressWarnings("NullAway.Init") // set by JUnit
    Path folder;

    @Test
    void theListNamesEveryExerciseInEightyColumns() {
        CommandRun run = CommandRun.of("exercise");
        assertThat(run.code()).isZero();
        assertThat(run.err()).isEmpty();
        assertThat(ExerciseBook.all())
                .hasSizeGreaterThanOrEqualTo(60)
                .allSatisfy(each -> assertThat(run.out()).contains("  " + each.id() + " "));
        assertThat(run.out().lines()).allSatisfy(line -> assertThat(line).hasSizeLessThanOrEqualTo(80));
        assertThat(CommandRun.of("exercise", "soil").out()).contains("wenner").doesNotContain("two-rods");
    }

    @Test
    void everyQuestionFitsEightyColumnsAndDoesNotTellTheAnswer() {
        for (Exercise each : ExerciseBook.all()) {
            CommandRun run = CommandRun.of("exercise", each.id());
            assertThat(run.code()).isZero();
            assertThat(run.out()).contains("formula", "________");
            assertThat(run.out().lines())
                    .as(each.id())
                    .allSatisfy(line -> assertThat(line).hasSizeLessThanOrEqualTo(80));
            if (each.answer().text().length() > 5) {
                assertThat(run.out()).doesNotContain(each.answer().text());
            }
        }
    }

    @Test
    void anAnswerIsJudgedByItsExitCode() {
        CommandRun right = CommandRun.of("exercise", "rod", "--answer", "32.1 ohm");
        assertThat(right.code()).isZero();
        assertThat(right.out()).startsWith("Right: 32.1 ohm is 0.31 % above.").contains("MIL-HDBK-419A");
        CommandRun slip = CommandRun.of("exercise", "ROD", "--answer", "36.5 ohm");
        assertThat(slip.code()).isEqualTo(1);
        assertThat(slip.out()).startsWith("Not right: 36.5 ohm").contains("if the -1 is left out");
        assertThat(slip.err()).isEmpty();
    }

    @Test
    void theVerdictGoesToAFileToo() throws IOException {
        Path file = folder.resolve("verdict.txt");
        CommandRun run = CommandRun.of("exercise", "rod", "--answer", "40 ohm", "--output", file.toString());
        assertThat(run.code()).isEqualTo(1);
        assertThat(run.out()).isEmpty();
        assertThat(Files.readString(file)).startsWith("Not right: 40 ohm is 25 % above");
    }

    @Test
    void wrongUseIsExplained() {
        CommandRun none = CommandRun.of("exercise", "horizontal", "--answer", "1 ohm");
        assertThat(none.code()).isEqualTo(2);
        assertThat(none.err()).contains("there is no exercise \"horizontal\"; did you mean horizontal-wire?");
        CommandRun unit = CommandRun.of("exercise", "rod", "--answer", "32");
        assertThat(unit.code()).isEqualTo(2);
        assertThat(unit.out()).isEmpty();
        assertThat(unit.err()).contains("rod: \"32\" has no unit; expected a resistance such as 25 ohm");
        assertThat(CommandRun.of("exercise", "--answer", "32 ohm").err()).contains("the name of one exercise");
        assertThat(CommandRun.of("exercise", "rod", "--answer", "32 ohm", "--sheet")
                        .err())
                .contains("exclude each other");
        assertThat(CommandRun.of("exercise", "rod", "--check", "x").err()).contains("name no exercise beside it");
    }

    @Test
    void aSheetIsWrittenFilledAndJudged() throws IOException {
        Path sheet = folder.resolve("soil.md");
        assertThat(CommandRun.of("exercise", "soil", "--sheet", "--output", sheet.toString())
                        .code())
                .isZero();
        String empty = Files.readString(sheet);
        assertThat(empty).contains("Answer wenner: ________ ohm.m").doesNotContain("Answer rod:");
        assertThat(CommandRun.of("exercise", "--check", sheet.toString()).code())
                .isEqualTo(3);
        Files.writeString(sheet, empty.replace("Answer wenner: ________", "Answer wenner: 4240"));
        CommandRun half = CommandRun.of("exercise", "--check", sheet.toString());
        assertThat(half.code()).isEqualTo(3);
        assertThat(half.out()).contains("1 right, 0 not right, 8 left blank");
        Files.writeString(sheet, empty.replace("Answer wenner: ________", "Answer wenner: 2120"));
        CommandRun wrong = CommandRun.of("exercise", "--check", sheet.toString());
        assertThat(wrong.code()).isEqualTo(1);
        assertThat(wrong.out()).contains("if the 2 is left out", "0 right, 1 not right, 8 left blank");
        Files.writeString(sheet, "Answer wenner: 4240 ohm.m\n");
        assertThat(CommandRun.of("exercise", "--check", sheet.toString()).code())
                .isZero();
    }

    @Test
    void anUnreadableSheetIsToldWithItsLine() throws IOException {
        Path sheet = folder.resolve("sheet.md");
        assertThat(CommandRun.of("exercise", "--check", sheet.toString()))
                .extracting(CommandRun::code)
                .isEqualTo(65);
        for (byte[] content : List.of(
                "".getBytes(StandardCharsets.UTF_8), new byte[] {'A', (byte) 0xff, (byte) 0xfe, 0, 1}, new byte[] {0
                })) {
            Files.write(sheet, content);
            CommandRun run = CommandRun.of("exercise", "--check", sheet.toString());
            assertThat(run.code()).isEqualTo(65);
            assertThat(run.out()).isEmpty();
            assertThat(run.err()).contains("sheet.md");
        }
        assertThat(CommandRun.of("exercise", "--check", folder.toString()).err())
                .contains("it is a folder");
        Files.writeString(sheet, "# Sheet\n\nAnswer rod: a lot\n");
        assertThat(CommandRun.of("exercise", "--check", sheet.toString()).err())
                .contains("sheet.md:3: rod: \"a lot\" is no number with a unit");
    }
}
