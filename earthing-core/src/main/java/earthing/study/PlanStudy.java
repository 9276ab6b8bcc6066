package earthing.study;

import earthing.site.Site;
import java.util.List;
import java.util.Optional;

/**
 * The ground around the pole in plan. Only a report draws it, and it takes some thousand potentials, so it is a study of
 * its own that a check does without.
 */
public final class PlanStudy {

    private PlanStudy() {}

    /**
     * Adds the data of the plan view.
     *
     * @param site the site
     * @param results what the other studies found
     * @return the same with one more curve, {@code touch.plan}, where it can be computed
     */
    public static StudyResults added(Site site, StudyResults results) {
        EarthCache cache = new EarthCache();
        Site grounded = SiteGround.of(site, cache).site();
        FaultStudy.Outcome faults = FaultStudy.of(grounded, cache);
        Optional<Curve> plan = TouchStudy.plan(PowerStudy.forTouch(faults.cases()), grounded);
        return plan.map(curve -> StudyResults.join(
                        List.of(results, new StudyResults(List.of(), List.of(curve), List.of(), List.of(), List.of()))))
                .orElse(results);
    }
}
