package earthing.decision;

import java.util.Comparator;
import java.util.List;

/**
 * What it would tell to know one input: how likely each check is not met with this input at its low and at its high value,
 * the others spread.
 *
 * @param key path of the input
 * @param runs samples at each end
 * @param turns the checks that it turns, the furthest first
 */
public record Knowledge(String key, int runs, List<Turn> turns) {

    /** The one that turns a check furthest first. */
    static final Comparator<Knowledge> FURTHEST_FIRST = Comparator.comparingDouble((Knowledge k) -> -k.furthest());

    /**
     * Copies the list.
     *
     * @param key path of the input
     * @param runs samples at each end
     * @param turns the checks that it turns, the furthest first
     */
    public Knowledge {
        turns = turns.stream()
                .sorted(Comparator.comparingDouble((Turn t) -> -t.swing()))
                .toList();
    }

    /**
     * One check.
     *
     * @param id id of the finding
     * @param subject what was looked at
     * @param atLow probability that it is not met with the input low
     * @param atHigh probability that it is not met with the input high
     */
    public record Turn(String id, String subject, double atLow, double atHigh) {

        /**
         * How far it turns.
         *
         * @return difference of both probabilities, from 0 to 1
         */
        public double swing() {
            return Math.abs(atHigh - atLow);
        }
    }

    /**
     * How far it turns the check that it turns furthest.
     *
     * @return from 0, whatever the value no verdict changes, to 1, it alone decides
     */
    public double furthest() {
        return turns.stream().mapToDouble(Turn::swing).max().orElse(0);
    }

    /**
     * A key that is not known at all, with what cannot be assessed without it.
     *
     * @param key path in the site file
     * @param blocks ids of the findings
     */
    public record Unknown(String key, List<String> blocks) {

        /**
         * Copies the list.
         *
         * @param key path in the site file
         * @param blocks ids of the findings
         */
        public Unknown {
            blocks = List.copyOf(blocks);
        }
    }
}
