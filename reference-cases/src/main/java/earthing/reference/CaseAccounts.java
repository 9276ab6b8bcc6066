package earthing.reference;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Keeps the account of what was run: a case is run, or it is listed with a reason, never both and never neither. */
public final class CaseAccounts {

    private CaseAccounts() {}

    /**
     * Holds outcomes against the list of cases not run yet.
     *
     * @param outcomes what became of the rows
     * @param notYet the list
     * @return what is wrong, one sentence each; empty if the account is in order
     */
    public static List<String> problems(List<RowOutcome> outcomes, CaseReader.NotYet notYet) {
        List<String> problems = new ArrayList<>();
        Set<String> run = new LinkedHashSet<>();
        Map<String, String> reasons = notYet.reasons();
        Set<String> known = new LinkedHashSet<>();
        for (RowOutcome outcome : outcomes) {
            String id = outcome.of().id();
            known.add(id);
            known.addAll(outcome.of().covers());
            if (outcome.executed()) {
                run.add(id);
                run.addAll(outcome.of().covers());
            } else if (!reasons.containsKey(id)) {
                problems.add(outcome.place() + ": no model is bound to "
                        + outcome.of().model() + " and the case is not in " + CaseReader.NOT_YET);
            }
        }
        for (String id : reasons.keySet().stream().sorted().toList()) {
            if (run.contains(id)) {
                problems.add(CaseReader.NOT_YET + ": " + id + " is run now; take it off the list and lower at-most");
            } else if (!known.contains(id)) {
                problems.add(CaseReader.NOT_YET + ": there is no case " + id);
            }
        }
        for (String id : notYet.withoutRows().keySet().stream().sorted().toList()) {
            if (known.contains(id) || reasons.containsKey(id)) {
                problems.add(
                        CaseReader.NOT_YET + ": " + id + " is said to have no rows, but stands in a case or in cases");
            }
        }
        int listed = reasons.size() + notYet.withoutRows().size();
        if (listed > notYet.atMost()) {
            problems.add(CaseReader.NOT_YET + ": the list has " + listed + " cases, at most " + notYet.atMost()
                    + " are allowed; bind a model instead");
        }
        return problems;
    }

    /**
     * The known values that are neither a case, nor covered by one, nor listed.
     *
     * @param known identifiers, collection by collection
     * @param cases the cases
     * @param notYet the list
     * @return one line a value
     */
    static List<String> unaccounted(
            Map<String, List<String>> known, List<ReferenceCase> cases, CaseReader.NotYet notYet) {
        Set<String> accounted = new LinkedHashSet<>(notYet.withoutRows().keySet());
        for (ReferenceCase each : cases) {
            accounted.add(each.id());
            accounted.addAll(each.covers());
        }
        List<String> missing = new ArrayList<>();
        known.forEach((collection, ids) -> ids.stream()
                .filter(id -> !accounted.contains(id))
                .forEach(id -> missing.add(CaseReader.KNOWN_VALUES + ": " + id + " of " + collection
                        + " is no case, covered by none, and not in " + CaseReader.NOT_YET)));
        return missing;
    }
}
