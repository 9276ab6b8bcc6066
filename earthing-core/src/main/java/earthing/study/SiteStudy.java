package earthing.study;

import earthing.quantity.Measure.Bound;
import earthing.site.Site;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;

/** Runs every study of a site. */
public final class SiteStudy {

    private SiteStudy() {}

    /**
     * From a site to results: soil and electrode, fault, touch and heating, surge, earth paths broken in turn.
     *
     * @param site the site
     * @return all results; what could not be computed stands among the gaps with the keys to fill in
     */
    public static StudyResults of(Site site) {
        return of(site, StudyScope.ALL_ARRANGEMENTS);
    }

    /**
     * As {@link #of(Site)}, with what no finding rests on or without it.
     *
     * @param site the site
     * @param scope whether the arrangements are studied that the site does not have
     * @return the results
     */
    public static StudyResults of(Site site, StudyScope scope) {
        EarthCache cache = new EarthCache();
        SiteGround ground = SiteGround.of(site, cache);
        StudyResults studied = studied(ground, cache, scope);
        return ground.results().equals(StudyResults.EMPTY)
                ? studied
                : StudyResults.join(List.of(ground.results(), studied));
    }

    private static StudyResults studied(SiteGround ground, EarthCache cache, StudyScope scope) {
        Site site = ground.site();
        List<StudyResults> parts = new ArrayList<>();
        // The season makes the ground at its highest the one of most layers; it is begun before it is needed.
        CompletableFuture<Void> ahead = CompletableFuture.runAsync(() -> solve(site, Bound.HIGH, cache));
        // Surge and power frequency share nothing but the solved electrodes.
        CompletableFuture<StudyResults> surge = CompletableFuture.supplyAsync(() -> StudyResults.join(
                List.of(SurgeStudy.of(site, cache, scope), ArresterStudy.of(site), LineEntryStudy.of(site, cache))));
        CompletableFuture<StudyResults> readings = ground.readings()
                .map(CompletableFuture::completedFuture)
                .orElseGet(() -> CompletableFuture.supplyAsync(() -> TesterStudy.of(site, cache)));
        parts.add(electrodes(site, cache));
        if (scope == StudyScope.ALL_ARRANGEMENTS) {
            parts.add(ImpulseStudy.of(site, cache));
        }
        parts.add(PowerStudy.of(site, cache, scope));
        parts.add(1, readings.join());
        parts.add(surge.join());
        ahead.join();
        StudyResults found = StudyResults.join(parts);
        return scope == StudyScope.AS_BUILT ? found : StudyResults.join(List.of(found, SharingStudy.of(site, found)));
    }

    /** Into the cache; what is missing is told where the result is asked for. */
    private static void solve(Site site, Bound bound, EarthCache cache) {
        try {
            SiteEarth.of(site, bound, new Inputs(), cache);
        } catch (MissingInput missing) {
            return;
        }
    }

    private static StudyResults electrodes(Site site, EarthCache cache) {
        Inputs in = new Inputs();
        List<Result> results = new ArrayList<>();
        List<Gap> gaps = new ArrayList<>();
        for (Bound bound : Bound.values()) {
            try {
                results.addAll(ElectrodeStudy.of(site, SiteEarth.of(site, bound, in, cache), in));
            } catch (MissingInput missing) {
                gaps.add(missing.gap("electrode", Case.NONE));
                gaps.add(missing.gap("soil", Case.NONE));
                break;
            }
        }
        return new StudyResults(results, List.of(), gaps, in.assumptions(), List.of());
    }
}
