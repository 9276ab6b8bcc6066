package earthing.reference;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.fail;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DynamicNode;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Runs every row of every case file through the library's public API. */
class ReferenceCasesTest {

    private static final Path CASES = Path.of("cases");

    /** Raised as rows are added, never lowered: a run that executes less has lost something. */
    private static final int LEAST_EXECUTED_ROWS = 0;

    private static List<ReferenceCase> cases = List.of();
    private static List<RowOutcome> outcomes = List.of();

    @BeforeAll
    static void run() {
        cases = CaseReader.readFolder(CASES);
        outcomes = CaseRunner.run(cases, ReferenceModels.all());
    }

    @TestFactory
    Stream<DynamicNode> everyRowAgreesWithItsPrint() {
        return outcomes.stream()
                .filter(RowOutcome::executed)
                .map(outcome -> DynamicTest.dynamicTest(
                        outcome.place() + " " + outcome.of().title(),
                        () -> outcome.failure().ifPresent(reason -> fail(outcome.place() + ": " + reason))));
    }

    @Test
    void everyCaseIsRunOrListedAsNotYet() {
        CaseReader.NotYet notYet = CaseReader.readNotYet(CASES);
        assertThat(CaseAccounts.problems(outcomes, notYet)).isEmpty();
    }

    @Test
    void noRowsAreLost() {
        Map<String, Long> byKind = new TreeMap<>(executed().stream()
                .collect(Collectors.groupingBy(o -> o.of().kind().text(), Collectors.counting())));
        Map<String, Long> byStatus = new TreeMap<>(executed().stream()
                .collect(Collectors.groupingBy(o -> o.of().status().text(), Collectors.counting())));
        List<String> lines = new ArrayList<>();
        lines.add("reference cases: " + cases.size() + " cases, " + outcomes.size() + " rows, "
                + executed().size() + " executed");
        lines.add("  by kind: " + byKind);
        lines.add("  by status: " + byStatus);
        lines.forEach(System.out::println);
        assertThat(executed()).hasSizeGreaterThanOrEqualTo(LEAST_EXECUTED_ROWS);
    }

    private static List<RowOutcome> executed() {
        return outcomes.stream().filter(RowOutcome::executed).toList();
    }
}
