package earthing.reference;

import earthing.quantity.Numbers;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Runs cases through the bound models. */
public final class CaseRunner {

    private CaseRunner() {}

    /**
     * Runs every row of every case.
     *
     * @param cases the cases
     * @param models model name to function
     * @return one outcome a row, in the order of the cases; a row whose model is not bound is not executed
     */
    public static List<RowOutcome> run(List<ReferenceCase> cases, Map<String, ReferenceModel> models) {
        List<RowOutcome> outcomes = new ArrayList<>();
        for (ReferenceCase each : cases) {
            ReferenceModel model = models.get(each.model());
            for (ReferenceCase.Row row : each.rows()) {
                outcomes.add(
                        model == null
                                ? new RowOutcome(each, row.number(), row.line(), false, List.of(), Optional.empty())
                                : run(each, row, model));
            }
        }
        return List.copyOf(outcomes);
    }

    private static RowOutcome run(ReferenceCase of, ReferenceCase.Row row, ReferenceModel model) {
        Given given = new Given(row.given());
        List<RowOutcome.Deviation> deviations = new ArrayList<>();
        List<String> failures = new ArrayList<>();
        try {
            Map<String, Double> computed = model.compute(given);
            for (ReferenceCase.Expected expected : row.expected()) {
                Double si = computed.get(expected.name());
                if (si == null) {
                    failures.add("the model " + of.model() + " gives no " + expected.name() + "; it gives "
                            + String.join(", ", computed.keySet()));
                    continue;
                }
                RowOutcome.Deviation deviation =
                        new RowOutcome.Deviation(expected, expected.printed().inPrintedUnit(si));
                deviations.add(deviation);
                if (expected.tolerance().accepts(expected.printed(), si) == expected.misprint()) {
                    failures.add(disagreement(deviation));
                }
            }
            if (!given.unread().isEmpty()) {
                failures.add("given but never read by the model: " + String.join(", ", given.unread()));
            }
        } catch (RuntimeException e) {
            failures.add("the model " + of.model() + " failed: " + e);
        }
        Optional<String> failure = failures.isEmpty() ? Optional.empty() : Optional.of(String.join("; ", failures));
        return new RowOutcome(of, row.number(), row.line(), true, deviations, failure);
    }

    private static String disagreement(RowOutcome.Deviation deviation) {
        ReferenceCase.Expected expected = deviation.expected();
        String both = expected.name() + ": computed " + Numbers.significant(deviation.computed(), 8) + ", "
                + (expected.misprint() ? "misprint " : "expected ")
                + expected.printed().text();
        return expected.misprint()
                ? both + "; the model agrees with a printed error"
                : both + ", off by " + Numbers.significant(deviation.ofTolerance(), 3) + " tolerances";
    }
}
