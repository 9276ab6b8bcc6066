package earthing.exercise;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

class AnswerSheetTest {

    @Test
    void anEmptySheetReadsBackAsBlanks() {
        List<Exercise> all = ExerciseBook.all();
        AnswerSheet.Content content = AnswerSheet.read(AnswerSheet.of(all));
        assertThat(content.problems()).isEmpty();
        assertThat(content.answers())
                .hasSameSizeAs(all)
                .allSatisfy(each -> assertThat(each.text()).isEmpty());
        assertThat(content.answers()).extracting(AnswerSheet.Filled::exercise).containsExactlyElementsOf(all);
    }

    @Test
    void aFilledSheetIsRight() throws Exception {
        List<Exercise> all = ExerciseBook.all();
        String sheet = AnswerSheet.of(all);
        for (Exercise each : all) {
            String unit = each.answer().unit();
            sheet = sheet.replace(
                    "Answer " + each.id() + ": ________" + (unit.isEmpty() ? "" : " " + unit) + "\n",
                    "Answer " + each.id() + ": " + each.answer().text() + "\n");
        }
        AnswerSheet.Content content = AnswerSheet.read(sheet);
        assertThat(content.problems()).isEmpty();
        for (AnswerSheet.Filled each : content.answers()) {
            assertThat(each.mark().right()).as(each.exercise().id()).isTrue();
        }
    }

    @Test
    void answersAreFoundHoweverTheyAreWritten() {
        AnswerSheet.Content content =
                AnswerSheet.read("- Answer ROD: __32__ ohm\r\n> Answer wenner : **4239 ohm.m**\n");
        assertThat(content.problems()).isEmpty();
        assertThat(content.answers()).extracting(AnswerSheet.Filled::text).containsExactly("32 ohm", "4239 ohm.m");
    }

    @Test
    void whatIsNotUnderstoodIsToldWithItsLine() {
        assertThat(AnswerSheet.read("Answer rod: 32 ohm\nAnswer rod: 33 ohm\nAnswer stone: 1\nAnswer wenner: 3 V\n")
                        .problems())
                .satisfiesExactly(
                        p -> assertThat(p).isEqualTo("2: rod is answered in line 1 already"),
                        p -> assertThat(p).isEqualTo("3: there is no exercise \"stone\""),
                        p -> assertThat(p).startsWith("4: wenner: \"3 V\": unit \"V\" is not one of ohm.m"));
        assertThat(AnswerSheet.read("").problems())
                .containsExactly("1: no line begins with \"Answer\" and the name of an exercise");
    }

    @Test
    void namesAreFoundInAnyCase() {
        assertThat(ExerciseBook.find(" ROD ")).isPresent();
        assertThat(ExerciseBook.find("rods")).isEmpty();
    }
}
