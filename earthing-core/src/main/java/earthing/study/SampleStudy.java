package earthing.study;

import earthing.site.Site;
import java.util.List;
import java.util.Optional;

/**
 * Studies one site at many points of its inputs, from any number of threads. A point has no bounds, so that soil and source
 * are studied once, in each state of the season; what depends on the arrangements that the site does not have, and on broken
 * paths, is left out. Points of the same ground share its solution; where the ground varies in a way that can be tabulated,
 * so do all points.
 */
public final class SampleStudy {

    private final EarthCache exact = new EarthCache();
    private final EarthCache cache;
    private final Optional<TabulatedSurge> surges;
    private final double bound;

    /** Without tables: everything is solved at each point. */
    public SampleStudy() {
        cache = exact;
        surges = Optional.empty();
        bound = 0;
    }

    /**
     * With tables of what depends on the ground alone: electrodes, touch, step and surges.
     *
     * @param ends the site, without bounds, at the ends of what varies of its ground, in every combination
     * @param surges whether surges depend on nothing else that varies
     */
    public SampleStudy(List<Site> ends, boolean surges) {
        TabulatedGround ground = ends.isEmpty() ? TabulatedGround.NONE : TabulatedGround.of(ends, exact);
        cache = new EarthCache(ground);
        this.surges = surges && !ends.isEmpty() ? TabulatedSurge.of(ends, cache) : Optional.empty();
        bound = Math.max(ground.bound(), this.surges.map(TabulatedSurge::bound).orElse(0.0));
    }

    /**
     * How far a number of {@link #of} may lie from that of {@link #exactly}: the greatest difference that was seen at
     * points between those of the tables.
     *
     * @return relative difference [1]; zero where nothing is interpolated
     */
    public double bound() {
        return bound;
    }

    /**
     * Studies a point, from tables where they cover it.
     *
     * @param point the site, none of its values bounded
     * @return the results that findings with a value and a limit rest on
     */
    public StudyResults of(Site point) {
        return SiteStudy.of(point, StudyScope.POINT, cache, surges);
    }

    /**
     * Studies a point without any table.
     *
     * @param point the site, none of its values bounded
     * @return the results that findings with a value and a limit rest on
     */
    public StudyResults exactly(Site point) {
        return SiteStudy.of(point, StudyScope.POINT, exact);
    }
}
