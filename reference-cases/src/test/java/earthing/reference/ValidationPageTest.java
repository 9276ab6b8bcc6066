package earthing.reference;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class ValidationPageTest {

    private static final Path PAGE = Path.of("..", "docs", "validation.md");

    /** {@code -Dvalidation.write=true} writes the page instead of comparing it. */
    @Test
    void pageInTheDocsIsUpToDate() throws IOException {
        String page = ValidationPage.of(
                ExecutedCases.outcomes(),
                AccuracyGates.lines(),
                AccuracyTables.all(),
                CaseReader.readNotYet(ExecutedCases.FOLDER));
        if (Boolean.getBoolean("validation.write")) {
            Files.createDirectories(PAGE.toAbsolutePath().normalize().getParent());
            Files.writeString(PAGE, page);
        }
        assertThat(Files.readString(PAGE))
                .as("docs/validation.md is stale; generate it with: mvn -pl reference-cases -am test"
                        + " -Dtest=ValidationPageTest -Dsurefire.failIfNoSpecifiedTests=false -Dvalidation.write=true")
                .isEqualTo(page);
    }

    @Test
    void pageTellsWorstValueMisprintMemoryAndWhatDidNotRun() {
        List<ReferenceCase> cases = CaseReader.readText("room/topic.yaml", """
                - {case: A, title: first, kind: published, source: a book, locus: p. 1, status: from memory, catches: x,
                   model: double, given: {x: 1 m}, expect: {y: 2.04 m}, tolerance: 5 %, because: read from a curve}
                - {case: B, title: second, kind: negative, source: a leaflet, status: read now, catches: x, model: double,
                   given: {x: 2 m}, expect: {y: 5 m}, correct: {y: 4 m}, note: digits turned round}
                - {case: C, title: third, kind: exact, source: an identity, status: computed, catches: x, model: triple,
                   expect: {y: 5 m}}
                - {case: D, title: fourth, kind: baseline, source: this library, status: computed, catches: x,
                   model: double, given: {x: 3 m}, expect: {y: 6 m}}
                """);
        List<RowOutcome> outcomes = CaseRunner.run(cases, Map.of("double", given -> Map.of("y", 2 * given.value("x"))));
        String page = ValidationPage.of(outcomes, List.of(), List.of(), new CaseReader.NotYet(1, Map.of("C", "later")));
        assertThat(page)
                .contains("| room | 4 | 3 | 4 | 1 | 0 | 0 | 1 | 1 | 1 | 1 |")
                .contains("| room | 4.00 | 4.00 (A) | – | – | 0.39 |")
                .contains("| A | first | a book, p. 1 (from memory) | published | 1 | 2.0 % | 4.00 | 0.39 |")
                .contains("- A, worst y: printed 2.04 m, computed 2.0000. Read from a curve.")
                .contains("- B, a leaflet: y printed 5 m, computed 4.0000. Digits turned round.")
                .contains("- a book: A")
                .contains("- Later. C");
    }
}
