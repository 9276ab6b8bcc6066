package earthing.study;

import earthing.site.Site;
import earthing.site.file.SiteEdit;
import java.util.List;
import java.util.Objects;
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
    private final Optional<Ground> found;
    private final double bound;

    /** A site with the ground that was found from its readings. */
    private record Ground(Site site, SiteGround ground) {

        /** The same ground where nothing differs that it is found from. */
        Optional<SiteGround> at(Site point) {
            boolean same = Objects.equals(point.soil(), site.soil())
                    && point.electrodes().equals(site.electrodes())
                    && point.measurements().equals(site.measurements());
            return same
                    ? Optional.of(new SiteGround(
                            SiteEdit.put(
                                    point,
                                    "soil",
                                    Objects.requireNonNull(ground.site().soil())),
                            ground.results(),
                            ground.readings()))
                    : Optional.empty();
        }
    }

    /** Without tables: everything is solved at each point. */
    public SampleStudy() {
        cache = exact;
        surges = Optional.empty();
        found = Optional.empty();
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
        boolean fitted = !ends.isEmpty() && SiteStudy.scope(ends.get(0), StudyScope.POINT) != StudyScope.POINT;
        // Where no input of the ground varies the ground that is found from readings is found once.
        found = fitted && surges && ends.size() == 1
                ? Optional.of(new Ground(ends.get(0), SiteGround.of(ends.get(0), exact)))
                : Optional.empty();
        if (!surges || ends.isEmpty() || (fitted && found.isEmpty())) {
            this.surges = Optional.empty();
        } else {
            List<Site> grounds = found.map(one -> List.of(one.ground.site())).orElse(ends);
            this.surges = TabulatedSurge.of(grounds, SiteStudy.scope(ends.get(0), StudyScope.POINT), cache);
        }
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
        StudyScope scope = SiteStudy.scope(point, StudyScope.POINT);
        return found.flatMap(one -> one.at(point))
                .map(ground -> SiteStudy.of(ground, scope, cache, surges))
                .orElseGet(() -> SiteStudy.of(point, StudyScope.POINT, cache, surges));
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
