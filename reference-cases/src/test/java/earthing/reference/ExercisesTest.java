package earthing.reference;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import earthing.exercise.Exercise;
import earthing.exercise.ExerciseBook;
import earthing.exercise.Marking;
import earthing.quantity.UnitException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

class ExercisesTest {

    private static final Path WORDS = Path.of("exercises");
    private static final Path REPOSITORY = Path.of("..");
    private static final Path FILE =
            Path.of("..", "earthing-core", "src", "main", "resources", "earthing", "exercise", "exercises.yaml");

    private static List<Exercise> pressed() {
        return ExercisePress.press(
                ExerciseReader.readFolder(WORDS), ExecutedCases.cases(), ReferenceModels.all(), REPOSITORY);
    }

    /** {@code -Dexercises.write=true} writes the file instead of comparing it. */
    @Test
    void theLibraryCarriesWhatThePressGives() throws IOException {
        String text = ExercisePress.file(pressed());
        if (Boolean.getBoolean("exercises.write")) {
            Files.writeString(FILE, text);
        }
        assertThat(Files.readString(FILE))
                .as("the exercises of the library are stale; press them with: mvn -pl reference-cases -am test"
                        + " -Dtest=ExercisesTest -Dsurefire.failIfNoSpecifiedTests=false -Dexercises.write=true")
                .isEqualTo(text);
    }

    @Test
    void thereAreExercisesForEveryRoomOfTheCases() {
        List<Exercise> all = ExerciseBook.all();
        assertThat(all).hasSizeGreaterThanOrEqualTo(60);
        Set<String> rooms = all.stream().map(Exercise::room).collect(Collectors.toSet());
        Set<String> ofCases =
                ExecutedCases.cases().stream().map(ReferenceCase::room).collect(Collectors.toSet());
        assertThat(rooms).containsAll(ofCases);
    }

    @Test
    void theRightAnswerIsRightAndEachSlipIsNamed() throws UnitException {
        for (Exercise each : ExerciseBook.all()) {
            assertThat(Marking.of(each, each.answer().text()).right())
                    .as(each.id())
                    .isTrue();
            String unit = each.answer().unit();
            double off = each.answer().value() + 1.02 * each.answer().within();
            assertThat(Marking.of(each, off + " " + unit).right()).as(each.id()).isFalse();
            for (Exercise.Slip slip : each.slips()) {
                Marking marking = Marking.of(each, slip.value() + " " + unit);
                assertThat(marking.right()).as(each.id()).isFalse();
                assertThat(marking.comment()).as(each.id()).contains(slip.because());
            }
        }
    }

    @Test
    void wordsAreShortEnoughForALine() {
        assertThat(ExerciseBook.all()).allSatisfy(each -> {
            assertThat(each.id()).hasSizeLessThanOrEqualTo(24);
            assertThat(each.title()).hasSizeLessThanOrEqualTo(52);
            assertThat(each.question()).contains("?").hasSizeLessThan(500);
            assertThat(each.hint()).doesNotEndWith(".");
            assertThat(each.formula()).doesNotEndWith(".");
        });
    }

    /** What is looked up, or asked of the solved model of a site, has no line of working. */
    @Test
    void everyFormulaIsWorkedWithItsNumbers() {
        assertThat(ExerciseBook.all().stream()
                        .filter(each -> each.worked().isEmpty())
                        .filter(each -> !each.room().equals("experiment"))
                        .map(Exercise::id))
                .containsExactly("touch-table");
        assertThat(problems(HEAD + "case: EL-01, blank: resistance, worked: 2*3}\n"))
                .containsExactly("f.yaml:1: x: the worked line gives 6.0, which is no right answer beside 32 ohm");
        assertThat(problems(HEAD + "case: EL-01, blank: resistance, worked: two}\n"))
                .singleElement()
                .satisfies(p -> assertThat(p).contains("is not understood at place 1"));
    }

    private static List<String> problems(String text) {
        List<String> problems = new ArrayList<>();
        List<ExerciseText> read = ExerciseReader.read("f.yaml", text, problems);
        if (problems.isEmpty()) {
            try {
                ExercisePress.press(read, ExecutedCases.cases(), ReferenceModels.all(), REPOSITORY);
            } catch (CaseFormatException e) {
                problems.addAll(e.problems());
            }
        }
        return problems;
    }

    private static final String HEAD = "- {exercise: x, title: t, question: 'q?', formula: f, ";

    @Test
    void whatDoesNotFitIsToldWithItsLine() {
        assertThat(problems(HEAD + "case: NO-1, blank: resistance}\n"))
                .containsExactly("f.yaml:1: x: there is no case NO-1");
        assertThat(problems(HEAD + "case: EL-06, blank: resistance}\n"))
                .singleElement()
                .satisfies(p -> assertThat(p).contains("EL-06 is negative"));
        assertThat(problems(HEAD + "case: EL-01, blank: reactance}\n"))
                .containsExactly("f.yaml:1: x: EL-01 expects no reactance");
        assertThat(problems(HEAD + "case: EL-07, blank: resistance, row: {diameter: 3 m}}\n"))
                .singleElement()
                .satisfies(p -> assertThat(p).contains("EL-07 has 0 rows where {diameter=3 m}"));
        assertThat(problems(HEAD + "case: EL-01, blank: resistance, slips: [{times: 1.001, because: b}]}\n"))
                .singleElement()
                .satisfies(p -> assertThat(p).contains("passes for right beside 32 ohm: b"));
        assertThat(problems(HEAD + "case: EL-01, blank: resistance, slips: [{given: {x: 1 m}, because: b}]}\n"))
                .containsExactly("f.yaml:1: x: a slip changes x, which is not given");
        assertThat(problems(HEAD + "case: SC-K01, blank: constant, row: {material: copper}}\n"))
                .singleElement()
                .satisfies(p -> assertThat(p).contains("none that an answer can be read in"));
        assertThat(problems(HEAD + "case: EL-01, blank: resistance, colour: red}\n"))
                .singleElement()
                .satisfies(p -> assertThat(p).contains("the key colour is not known"));
        assertThat(problems("- {exercise: Big One}\n")).hasSizeGreaterThan(3);
    }

    private static final String SITE = "site: earthing-cli/sites/ternhook-wood-shared.yaml, page: p.md, hint: h, ";

    @Test
    void aResultOfASiteIsAnAnswer() {
        List<String> problems = new ArrayList<>();
        List<ExerciseText> read = ExerciseReader.read(
                "f.yaml",
                HEAD + SITE + "blank: resistance, result: electrode.main.resistance, unit: ohm, tolerance: 2 %,"
                        + " slips: [{times: 2, because: b}]}\n",
                problems);
        assertThat(problems).isEmpty();
        Exercise exercise = ExercisePress.press(read, List.of(), ReferenceModels.all(), REPOSITORY)
                .get(0);
        assertThat(exercise.answer().unit()).isEqualTo("ohm");
        assertThat(exercise.answer().printed()).isFalse();
        assertThat(exercise.slips().get(0).value())
                .isEqualTo(2 * exercise.answer().value());
        assertThat(problems(HEAD + SITE
                        + "blank: resistance, result: electrode.none.resistance, unit: ohm, tolerance: 2 %}\n"))
                .singleElement()
                .satisfies(p ->
                        assertThat(p).contains("has 0 results electrode.none.resistance at nominal; there are: none"));
        assertThat(problems(HEAD + SITE
                        + "blank: resistance, result: electrode.main.resistance, unit: kV, tolerance: 2 %}\n"))
                .singleElement()
                .satisfies(p -> assertThat(p).contains("which is no \"kV\""));
        assertThatThrownBy(() -> ExerciseReader.readFolder(Path.of("nowhere"))).isInstanceOf(RuntimeException.class);
    }
}
