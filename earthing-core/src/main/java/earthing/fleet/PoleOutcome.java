package earthing.fleet;

import earthing.compliance.Finding;
import earthing.site.Site;
import java.util.List;

/** What came of one row: findings, or the reasons why there are none. */
public sealed interface PoleOutcome {

    /**
     * Where the row stands.
     *
     * @return number of the row in the file, from 1
     */
    int row();

    /**
     * Which pole it is.
     *
     * @return its number, or its name where it has none; empty if the row does not say
     */
    String pole();

    /**
     * The row was assessed.
     *
     * @param row number of the row in the file
     * @param pole number or name of the pole
     * @param site the site
     * @param findings what the checks found
     */
    record Assessed(int row, String pole, Site site, List<Finding> findings) implements PoleOutcome {
        /**
         * Copies the findings.
         *
         * @param row number of the row in the file
         * @param pole number or name of the pole
         * @param site the site
         * @param findings what the checks found
         */
        public Assessed {
            findings = List.copyOf(findings);
        }
    }

    /**
     * The row has no value.
     *
     * @param row number of the row in the file
     * @param pole number or name of the pole, empty if the row does not say
     * @param file name of the table
     * @param reasons why, at least one
     */
    record Refused(int row, String pole, String file, List<Reason> reasons) implements PoleOutcome {
        /**
         * Copies the reasons.
         *
         * @param row number of the row in the file
         * @param pole number or name of the pole, empty if the row does not say
         * @param file name of the table
         * @param reasons why, at least one
         */
        public Refused {
            reasons = List.copyOf(reasons);
        }
    }
}
