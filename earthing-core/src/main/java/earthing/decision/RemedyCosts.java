package earthing.decision;

import java.util.Map;
import java.util.OptionalDouble;

/**
 * What the changes of the catalogue cost the owner, in a unit of the owner's own: money, days, visits.
 *
 * @param unit the unit, empty if it was not named
 * @param of cost by id of the change
 */
public record RemedyCosts(String unit, Map<String, Double> of) {

    /** No costs. */
    public static final RemedyCosts NONE = new RemedyCosts("", Map.of());

    /**
     * Refuses costs that are no cost.
     *
     * @param unit the unit, empty if it was not named
     * @param of cost by id of the change
     */
    public RemedyCosts {
        of = Map.copyOf(of);
        of.forEach((id, cost) -> {
            if (!(cost >= 0 && cost < Double.POSITIVE_INFINITY)) {
                throw new IllegalArgumentException("the cost of " + id + " must be >= 0; have " + cost);
            }
        });
    }

    /**
     * Cost of a trial.
     *
     * @param trial the changes
     * @return the sum, empty if the cost of one of them is not known
     */
    public OptionalDouble of(RemedyTrial trial) {
        double sum = 0;
        for (RemedyTrial.Change change : trial.changes()) {
            Double cost = of.get(change.remedy().id());
            if (cost == null) {
                return OptionalDouble.empty();
            }
            sum += cost;
        }
        return OptionalDouble.of(sum);
    }
}
