package earthing.compliance;

import java.util.List;

/** One question that a competent reviewer asks. */
@FunctionalInterface
public interface Check {

    /**
     * Looks at a design.
     *
     * @param design site, earth paths and results
     * @return at least one finding; a question that does not concern the site is answered {@code NOT_APPLICABLE}
     */
    List<Finding> examine(Design design);
}
