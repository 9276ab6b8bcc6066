package earthing.decision;

import java.util.List;
import java.util.Map;

/**
 * Whether any point within the bounds is worse than the governing point that each check reports.
 *
 * @param corners corners of the bounds that were tried
 * @param allCorners whether these were all
 * @param points points within the bounds at random
 * @param held inputs that stood at nominal, as in the verdicts
 * @param checks what was compared, in the order of the findings
 */
public record WorstSearch(int corners, boolean allCorners, int points, List<String> held, List<Compared> checks) {

    /** A margin counts as worse if it is smaller by more than this part of the limit. */
    public static final double TOLERANCE = 1e-3;

    /**
     * Copies the lists.
     *
     * @param corners corners of the bounds that were tried
     * @param allCorners whether these were all
     * @param points points within the bounds at random
     * @param held inputs that stood at nominal, as in the verdicts
     * @param checks what was compared, in the order of the findings
     */
    public WorstSearch {
        held = List.copyOf(held);
        checks = List.copyOf(checks);
    }

    /**
     * One check.
     *
     * @param id id of the finding
     * @param subject what was looked at
     * @param unit SI unit of the value
     * @param reported value at the governing point in SI
     * @param reportedMargin its margin
     * @param worst value of the worst point that was tried, in SI
     * @param worstMargin its margin
     * @param at inputs of that point in SI
     */
    public record Compared(
            String id,
            String subject,
            String unit,
            double reported,
            double reportedMargin,
            double worst,
            double worstMargin,
            Map<String, Double> at) {

        /**
         * Whether the point is worse than the one reported.
         *
         * @return true for a counterexample
         */
        public boolean isWorse() {
            return worstMargin < reportedMargin - TOLERANCE;
        }
    }

    /**
     * The checks for which a point was found that is worse than what is reported.
     *
     * @return the counterexamples, none if the reported points hold
     */
    public List<Compared> counterexamples() {
        return checks.stream().filter(Compared::isWorse).toList();
    }
}
