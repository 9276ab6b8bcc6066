package earthing.compliance;

import earthing.site.Site;
import earthing.site.Stage;
import earthing.study.EarthPaths;
import earthing.study.StudyResults;

/**
 * What a check looks at.
 *
 * @param site the site
 * @param paths its earth-path graph
 * @param results what the studies found
 */
public record Design(Site site, EarthPaths paths, StudyResults results) {

    /**
     * A site with its results.
     *
     * @param site the site
     * @param results what the studies found
     * @return the design
     */
    public static Design of(Site site, StudyResults results) {
        return new Design(site, EarthPaths.of(site), results);
    }

    /**
     * Whether tests belong to a later stage.
     *
     * @return true before the site is built
     */
    public boolean beforeTests() {
        return site.site().stage() == Stage.DESIGN;
    }
}
