package earthing.reference;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.fail;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicNode;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Runs every row of every case file through the library's public API. */
class ReferenceCasesTest {

    /** Raised as rows are added, never lowered: a run that executes less has lost something. */
    private static final int LEAST_EXECUTED_ROWS = 1_813;

    @TestFactory
    Stream<DynamicNode> everyRowAgreesWithItsPrint() {
        return executed().stream()
                .map(outcome -> DynamicTest.dynamicTest(
                        outcome.place() + " " + outcome.of().title(),
                        () -> outcome.failure().ifPresent(reason -> fail(outcome.place() + ": " + reason))));
    }

    @Test
    void everyCaseIsRunOrListedAsNotYet() {
        CaseReader.NotYet notYet = CaseReader.readNotYet(ExecutedCases.FOLDER);
        assertThat(CaseAccounts.problems(ExecutedCases.outcomes(), notYet)).isEmpty();
    }

    /** The collection itself is no part of the repository; its list of names is. */
    @Test
    void everyKnownValueIsACaseOrListed() {
        Map<String, List<String>> known = CaseReader.readKnownValues(ExecutedCases.FOLDER);
        assertThat(known.values().stream().mapToInt(List::size).sum()).isGreaterThanOrEqualTo(386);
        assertThat(CaseAccounts.unaccounted(known, ExecutedCases.cases(), CaseReader.readNotYet(ExecutedCases.FOLDER)))
                .isEmpty();
    }

    @Test
    void noRowsAreLost() {
        System.out.println("reference cases: " + ExecutedCases.cases().size() + " cases, "
                + ExecutedCases.outcomes().size() + " rows, " + executed().size() + " executed, "
                + executed().stream().mapToInt(o -> o.deviations().size()).sum() + " values compared");
        System.out.println("  by kind: " + count(o -> o.of().kind().text()));
        System.out.println("  by status: " + count(o -> o.of().status().text()));
        assertThat(executed().size()).isGreaterThanOrEqualTo(LEAST_EXECUTED_ROWS);
    }

    private static Map<String, Long> count(Function<RowOutcome, String> by) {
        return executed().stream().collect(Collectors.groupingBy(by, TreeMap::new, Collectors.counting()));
    }

    private static List<RowOutcome> executed() {
        return ExecutedCases.outcomes().stream().filter(RowOutcome::executed).toList();
    }
}
