package earthing.reference;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class CaseReaderTest {

    private static final String HEAD = """
            - case: T-1
              title: test
              kind: published
              source: a book
              status: read now
              catches: nothing
              model: test.sum
            """;

    private static final Map<String, ReferenceModel> SUM =
            Map.of("test.sum", given -> Map.of("sum", given.value("a") + given.value("b")));

    private static List<RowOutcome> run(String rest) {
        return CaseRunner.run(CaseReader.readText("room/topic.yaml", HEAD + rest), SUM);
    }

    private static List<String> problems(String text) {
        try {
            CaseReader.readText("room/topic.yaml", text);
            return List.of();
        } catch (CaseFormatException e) {
            return e.problems();
        }
    }

    @Test
    void scalarCaseRunsWithUnits() {
        RowOutcome outcome = run("  given: {a: 2 km, b: 30 mm}\n  expect: {sum: 2000.03 m}\n")
                .get(0);
        assertThat(outcome.failure()).isEmpty();
        assertThat(outcome.executed()).isTrue();
        assertThat(outcome.of().room()).isEqualTo("room");
    }

    @Test
    void wrongValueFailsAndNamesFileLineCaseAndBothValues() {
        RowOutcome outcome =
                run("  given: {a: 2 m, b: 3 m}\n  expect: {sum: 5.1 m}\n").get(0);
        assertThat(outcome.place()).isEqualTo("room/topic.yaml:1: T-1");
        assertThat(outcome.failure())
                .hasValueSatisfying(reason -> assertThat(reason)
                        .contains("sum: computed 5.0000000, expected 5.1 m")
                        .contains("off by 2.00 tolerances"));
    }

    @Test
    void everyRowOfATableRunsAndEmptyCellsAreNotExpected() {
        List<RowOutcome> outcomes = run("""
                  given: {b: 1 cm}
                  columns: [a, sum, other]
                  units: {a: mm, sum: cm, other: kA}
                  expect-columns: [sum, other]
                  rows:
                    - [10, 2.0, '']
                    - [20, 3.1, '']
                """);
        assertThat(outcomes).hasSize(2);
        assertThat(outcomes.get(0).failure()).isEmpty();
        assertThat(outcomes.get(1).failure()).isPresent();
        assertThat(outcomes.get(1).place()).isEqualTo("room/topic.yaml:14: T-1 row 2");
    }

    @Test
    void valueThatNoModelReadsFailsTheRow() {
        RowOutcome outcome =
                run("  given: {a: 2 m, b: 3 m, c: 4 m}\n  expect: {sum: 5 m}\n").get(0);
        assertThat(outcome.failure()).hasValue("given but never read by the model: c");
    }

    @Test
    void missingOrMisspeltGivenValueFailsTheRow() {
        assertThat(run("  given: {a: 2 m}\n  expect: {sum: 5 m}\n").get(0).failure())
                .hasValueSatisfying(reason -> assertThat(reason).contains("b is not given; given are a"));
        assertThat(run("  given: {a: 2 meter, b: 3 m}\n  expect: {sum: 5 m}\n")
                        .get(0)
                        .failure())
                .hasValueSatisfying(reason -> assertThat(reason).contains("a: \"meter\" is no unit"));
    }

    @Test
    void expectedNameThatTheModelDoesNotGiveFailsTheRow() {
        assertThat(run("  given: {a: 2 m, b: 3 m}\n  expect: {total: 5 m}\n")
                        .get(0)
                        .failure())
                .hasValue("the model test.sum gives no total; it gives sum");
    }

    @Test
    void negativeCaseFailsWhenTheModelAgreesWithTheMisprint() {
        String negative = HEAD.replace("published", "negative") + "  note: misprint\n  given: {a: 2 m, b: 3 m}\n";
        List<ReferenceCase> agreeing = CaseReader.readText("f.yaml", negative + "  expect: {sum: 5 m}\n");
        assertThat(CaseRunner.run(agreeing, SUM).get(0).failure())
                .hasValueSatisfying(reason -> assertThat(reason).contains("agrees with a printed error"));
        List<ReferenceCase> disagreeing =
                CaseReader.readText("f.yaml", negative + "  expect: {sum: 7 m}\n  correct: {sum: 5 m}\n");
        assertThat(CaseRunner.run(disagreeing, SUM).get(0).failure()).isEmpty();
        List<ReferenceCase> wrong =
                CaseReader.readText("f.yaml", negative + "  expect: {sum: 7 m}\n  correct: {sum: 6 m}\n");
        assertThat(CaseRunner.run(wrong, SUM).get(0).failure()).isPresent();
    }

    @Test
    void negativeCaseNeedsItsNote() {
        assertThat(problems(HEAD.replace("published", "negative") + "  expect: {sum: 5 m}\n"))
                .containsExactly(
                        "room/topic.yaml:1:3: T-1: a negative case needs a note that says which error the print"
                                + " contains");
    }

    @Test
    void problemsNameFileLineColumnAndCase() {
        assertThat(problems(HEAD + "  expct: {sum: 5 m}\n  expect: {sum: five}\n"))
                .anySatisfy(p -> assertThat(p)
                        .startsWith("room/topic.yaml:8:10: T-1: the key expct is not known; known are because"))
                .anySatisfy(p ->
                        assertThat(p).isEqualTo("room/topic.yaml:9:17: T-1: sum: \"five\" is no number with a unit"));
    }

    @Test
    void toleranceOtherThanLastDigitNeedsItsReason() {
        assertThat(problems(HEAD + "  expect: {sum: 5 m}\n  tolerance: 1 %\n"))
                .singleElement()
                .satisfies(p -> assertThat(p).contains("needs its reason under because"));
    }

    @Test
    void toleranceOfAnotherDimensionIsRefused() {
        assertThat(problems(HEAD + "  expect: {sum: 5 m}\n  tolerance: 1 ohm\n  because: x\n"))
                .singleElement()
                .satisfies(p -> assertThat(p).contains("the tolerance 1 ohm cannot be compared with the value 5 m"));
    }

    @Test
    void missingKeysUnknownKindAndShortRowsAreProblems() {
        assertThat(problems("- case: T-2\n")).hasSizeGreaterThan(5);
        assertThat(problems(HEAD.replace("published", "printed") + "  expect: {sum: 5 m}\n"))
                .singleElement()
                .satisfies(p -> assertThat(p).startsWith("room/topic.yaml:3:9: T-1: kind \"printed\" is not one of"));
        assertThat(problems(HEAD + "  columns: [a, sum]\n  expect-columns: [sum]\n  rows:\n    - [1]\n"))
                .anySatisfy(p -> assertThat(p).contains("the row has 1 cells, there are 2 columns"));
    }

    @Test
    void brokenYamlIsAProblemWithItsPlace() {
        assertThat(problems("- case: [T-1\n"))
                .singleElement()
                .satisfies(p -> assertThat(p).startsWith("room/topic.yaml:2:1: "));
        assertThat(problems("")).containsExactly("room/topic.yaml: the file is empty");
        assertThat(problems(HEAD + "  title: twice\n  expect: {sum: 5 m}\n")).isNotEmpty();
    }

    @Test
    void caseWithoutModelMustBeListedAndListedCaseMustNotRun() {
        List<ReferenceCase> unbound =
                CaseReader.readText("f.yaml", HEAD.replace("test.sum", "test.none") + "  expect: {sum: 5 m}\n");
        List<RowOutcome> outcomes = CaseRunner.run(unbound, SUM);
        assertThat(CaseAccounts.problems(outcomes, new CaseReader.NotYet(0, Map.of())))
                .containsExactly("f.yaml:1: T-1: no model is bound to test.none and the case is not in not-yet.yaml");
        assertThat(CaseAccounts.problems(outcomes, new CaseReader.NotYet(1, Map.of("T-1", "later"))))
                .isEmpty();
        assertThat(CaseAccounts.problems(outcomes, new CaseReader.NotYet(0, Map.of("T-1", "later"))))
                .singleElement()
                .satisfies(p -> assertThat(p).contains("the list has 1 cases, at most 0 are allowed"));
        List<RowOutcome> run = run("  given: {a: 2 m, b: 3 m}\n  expect: {sum: 5 m}\n");
        assertThat(CaseAccounts.problems(run, new CaseReader.NotYet(2, Map.of("T-1", "later", "T-9", "later"))))
                .containsExactly(
                        "not-yet.yaml: T-1 is run now; take it off the list and lower at-most",
                        "not-yet.yaml: there is no case T-9");
    }

    @Test
    void knownValueThatStandsNowhereIsTold() {
        String row = "  given: {a: 2 m, b: 3 m}\n  expect: {sum: 5 m}\n";
        List<ReferenceCase> cases = CaseReader.readText("f.yaml", HEAD + "  covers: [T-3]\n" + row);
        Map<String, List<String>> known = CaseReader.readKnownValuesText(
                "- collection: all\n  ids: [T-1, T-3, T-4, T-5]\n  as-case: {T-9: T-1, T-8: T-6}\n");
        assertThat(CaseAccounts.unaccounted(known, cases, new CaseReader.NotYet(1, Map.of(), Map.of("T-4", "x"))))
                .containsExactly(
                        "known-values.yaml: T-5 of all is no case, covered by none, and not in not-yet.yaml",
                        "known-values.yaml: T-6 of all is no case, covered by none, and not in not-yet.yaml");
        assertThatThrownBy(() -> CaseReader.readKnownValuesText("- collection: all\n  ids: [T-1, T-1]\n"))
                .hasMessageContaining("stands twice");
        assertThatThrownBy(() -> CaseReader.readKnownValuesText("- collection: all\n"))
                .hasMessageContaining("expected the keys");
    }

    @Test
    void coveredCaseStandsInOnePlaceAndNotOnTheList() {
        String row = "  given: {a: 2 m, b: 3 m}\n  expect: {sum: 5 m}\n";
        String second = (HEAD + "  covers: [T-3, T-1]\n" + row).replace("case: T-1", "case: T-2");
        List<ReferenceCase> cases = CaseReader.readText("f.yaml", HEAD + "  covers: [T-3]\n" + row + second);
        assertThat(CaseReader.coveredTwice(cases))
                .containsExactly(
                        "f.yaml:11: T-2: it covers T-3, which stands also in f.yaml:1",
                        "f.yaml:11: T-2: it covers T-1, which stands also in f.yaml:1");
        List<RowOutcome> outcomes = CaseRunner.run(cases.subList(0, 1), SUM);
        assertThat(CaseAccounts.problems(outcomes, new CaseReader.NotYet(2, Map.of(), Map.of("T-3", "x", "T-4", "x"))))
                .containsExactly("not-yet.yaml: T-3 is said to have no rows, but stands in a case or in cases");
        assertThat(CaseAccounts.problems(outcomes, new CaseReader.NotYet(1, Map.of("T-3", "later"))))
                .containsExactly("not-yet.yaml: T-3 is run now; take it off the list and lower at-most");
        assertThat(CaseAccounts.problems(outcomes, new CaseReader.NotYet(0, Map.of(), Map.of("T-4", "x"))))
                .singleElement()
                .satisfies(p -> assertThat(p).contains("the list has 1 cases, at most 0 are allowed"));
        assertThat(problems(HEAD + "  covers: []\n" + row))
                .singleElement()
                .satisfies(p -> assertThat(p).contains("covers names no case"));
    }

    @Test
    void notYetListIsReadStrictly() {
        assertThat(CaseReader.readNotYetText("at-most: 3\ncases:\n  - {case: A, reason: later}\n"))
                .isEqualTo(new CaseReader.NotYet(3, Map.of("A", "later")));
        assertThatThrownBy(() -> CaseReader.readNotYetText("at-most: 3\ncases:\n  - {case: A}\n"))
                .hasMessageContaining("not-yet.yaml:3:5: expected the keys case and reason");
        assertThatThrownBy(() -> CaseReader.readNotYetText("at-most: many\ncases: []\n"))
                .hasMessageContaining("at-most must be a whole number");
    }
}
