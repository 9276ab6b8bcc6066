package earthing.study;

import earthing.site.Site;
import earthing.site.file.SiteEdit;
import java.util.List;

/**
 * One part of the studies alone, for a search that needs no other once this part decides. Its results are those that the
 * whole study has for it.
 */
public enum PartStudy {
    /** Electrodes, faults, touch, heating. */
    POWER_FREQUENCY,
    /** Surges. */
    SURGE;

    private static final List<String> NOT_FOR_POWER_FREQUENCY = List.of(
            "arresters.line-lead",
            "arresters.earth-lead",
            "arresters.residual-voltage",
            "arresters.steep-residual-voltage",
            "arresters.residual-curve",
            "pole.mounting-clearance",
            "surges",
            "tested-arrangement");

    private static final List<String> NOT_FOR_SURGE = List.of(
            "protection",
            "criteria.covering",
            "criteria.electrode-resistance",
            "neighbours",
            "main-earth.joint",
            "main-earth.segments[*].joint");

    /**
     * The site without what this part and the checks on it do not read. Sites that differ only there have the same
     * results and findings; a test holds that on every demo site.
     *
     * @param site the site
     * @return what is left; no site file needs to say it
     */
    public Site asked(Site site) {
        Site asked = site;
        for (String key : this == SURGE ? NOT_FOR_SURGE : NOT_FOR_POWER_FREQUENCY) {
            asked = SiteEdit.unset(asked, key);
        }
        return asked;
    }

    /**
     * Studies this part, for the pole as it is built.
     *
     * @param site the site
     * @param cache solved electrodes
     * @return results and gaps of this part
     */
    public StudyResults of(Site site, EarthCache cache) {
        SiteGround ground = SiteGround.of(site, cache);
        return StudyResults.join(List.of(
                ground.results(),
                this == SURGE
                        ? StudyResults.join(List.of(
                                SurgeStudy.of(ground.site(), cache, StudyScope.AS_BUILT),
                                ArresterStudy.of(ground.site())))
                        : StudyResults.join(List.of(
                                SiteStudy.electrodes(ground.site(), cache, StudyScope.AS_BUILT),
                                PowerStudy.of(ground.site(), cache, StudyScope.AS_BUILT)))));
    }
}
