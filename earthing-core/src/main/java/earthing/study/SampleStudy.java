package earthing.study;

import earthing.site.Site;

/**
 * Studies one site at many points of its inputs, from any number of threads. A point has no bounds, so that soil and source
 * are studied once, in each state of the season; what depends on the arrangements that the site does not have, and on broken
 * paths, is left out. Points of the same ground share its solution.
 */
public final class SampleStudy {

    private final EarthCache cache = new EarthCache();

    /** Nothing solved yet. */
    public SampleStudy() {}

    /**
     * Studies a point.
     *
     * @param point the site, none of its values bounded
     * @return the results that findings with a value and a limit rest on
     */
    public StudyResults of(Site point) {
        return SiteStudy.of(point, StudyScope.POINT, cache);
    }
}
