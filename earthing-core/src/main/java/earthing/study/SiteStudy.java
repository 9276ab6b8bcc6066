package earthing.study;

import earthing.quantity.Measure.Bound;
import earthing.site.Site;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;

/** Runs every study of a site. */
public final class SiteStudy {

    private static final CompletableFuture<StudyResults> NOTHING =
            CompletableFuture.completedFuture(StudyResults.EMPTY);

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
        return of(site, scope, new EarthCache());
    }

    /**
     * As {@link #of(Site, StudyScope)}, with the electrodes that other sites have solved already.
     *
     * @param site the site
     * @param scope whether the arrangements are studied that the site does not have
     * @param cache solved electrodes; shared by the runs of many sites, also at the same time
     * @return the results, the same whatever the cache held before
     */
    public static StudyResults of(Site site, StudyScope scope, EarthCache cache) {
        return of(site, scope, cache, Optional.empty());
    }

    /** The same with surges from a table where it covers the ground. */
    static StudyResults of(Site site, StudyScope scope, EarthCache cache, Optional<TabulatedSurge> surges) {
        return of(SiteGround.of(site, cache), scope(site, scope), cache, surges);
    }

    /** Layers fitted to readings have bounds of their own, which are no inputs that a point could fix. */
    static StudyScope scope(Site site, StudyScope asked) {
        boolean fitted =
                site.soil() != null && (site.soil().isSurveyed() || site.soil().calibrateBy() != null);
        return asked == StudyScope.POINT && fitted ? StudyScope.AS_BUILT : asked;
    }

    /** The same in a ground that is found already. */
    static StudyResults of(SiteGround ground, StudyScope within, EarthCache cache, Optional<TabulatedSurge> surges) {
        StudyResults studied = studied(ground, cache, within, surges);
        return ground.results().equals(StudyResults.EMPTY)
                ? studied
                : StudyResults.join(List.of(ground.results(), studied));
    }

    /**
     * Bounded inputs that the studies take at their nominal value.
     *
     * @param site the site
     * @return their keys without the numbers of list items; a note among the results names them too
     */
    public static List<String> heldNominal(Site site) {
        return AdverseInputs.heldKeys(site);
    }

    private static StudyResults studied(
            SiteGround ground, EarthCache cache, StudyScope scope, Optional<TabulatedSurge> surges) {
        Site site = ground.site();
        boolean whole = scope == StudyScope.ALL_ARRANGEMENTS;
        if (scope == StudyScope.POINT) {
            return point(ground, cache, surges);
        }
        // The season makes the ground at its highest the one of most layers; it is begun before it is needed.
        CompletableFuture<Boolean> ahead =
                Beside.doing(() -> solve(AdverseInputs.of(site, new Inputs()), Bound.HIGH, cache));
        CompletableFuture<Boolean> otherwise = Beside.doing(() -> solveOtherwise(site, cache));
        // Surge and power frequency share nothing but the solved electrodes.
        CompletableFuture<StudyResults> surge = Beside.of(() -> surge(site, cache, scope, surges));
        CompletableFuture<StudyResults> line = whole ? Beside.of(() -> LineEntryStudy.of(site, cache)) : NOTHING;
        CompletableFuture<StudyResults> pole = whole ? Beside.of(() -> PoleStrokeStudy.of(site, cache)) : NOTHING;
        CompletableFuture<StudyResults> impulse = whole ? Beside.of(() -> ImpulseStudy.of(site, cache)) : NOTHING;
        CompletableFuture<StudyResults> convergence =
                whole ? Beside.of(() -> ConvergenceStudy.of(site, cache)) : NOTHING;
        CompletableFuture<StudyResults> readings = ground.readings()
                .map(CompletableFuture::completedFuture)
                .orElseGet(() -> Beside.of(() -> TesterStudy.of(site, cache)));
        StudyResults electrodes = electrodes(site, cache, scope);
        StudyResults power = PowerStudy.of(site, cache, scope);
        StudyResults found = StudyResults.join(List.of(
                electrodes,
                convergence.join(),
                readings.join(),
                impulse.join(),
                power,
                surge.join(),
                ArresterStudy.of(site),
                line.join(),
                pole.join()));
        ahead.join();
        otherwise.join();
        return whole ? StudyResults.join(List.of(found, SharingStudy.of(site, found))) : found;
    }

    /** One after the other: samples are studied side by side. */
    private static StudyResults point(SiteGround ground, EarthCache cache, Optional<TabulatedSurge> surges) {
        Site site = ground.site();
        StudyResults readings = ground.readings().orElseGet(() -> TesterStudy.of(site, cache));
        StudyResults surge = surge(site, cache, StudyScope.POINT, surges);
        return StudyResults.join(List.of(
                electrodes(site, cache, StudyScope.POINT),
                readings,
                PowerStudy.of(site, cache, StudyScope.POINT),
                surge,
                ArresterStudy.of(site)));
    }

    private static StudyResults surge(Site site, EarthCache cache, StudyScope scope, Optional<TabulatedSurge> surges) {
        try {
            Optional<StudyResults> tabulated = surges.isPresent() ? surges.get().at(site, cache) : Optional.empty();
            if (tabulated.isPresent()) {
                return tabulated.get();
            }
        } catch (MissingInput missing) {
            return SurgeStudy.of(site, cache, scope); // it tells what is missing
        }
        return SurgeStudy.of(site, cache, scope);
    }

    /** Into the cache; what is missing is told where the result is asked for. */
    private static void solve(Site site, Bound bound, EarthCache cache) {
        try {
            SiteEarth.of(site, bound, new Inputs(), cache);
        } catch (MissingInput missing) {
            return;
        }
    }

    /** The electrodes of the arrangements that the site does not have, which the control cable is told for too. */
    private static void solveOtherwise(Site site, EarthCache cache) {
        if (site.cubicle() != null) {
            for (Arrangement arrangement : Arrangement.values()) {
                arranged(site, arrangement).ifPresent(variant -> solve(variant, Bound.NOMINAL, cache));
            }
        }
    }

    private static Optional<Site> arranged(Site site, Arrangement arrangement) {
        try {
            return Optional.of(SiteVariant.arranged(site, arrangement, new Inputs()));
        } catch (MissingInput missing) {
            return Optional.empty();
        }
    }

    static StudyResults electrodes(Site given, EarthCache cache, StudyScope scope) {
        Inputs in = new Inputs();
        Site site = scope == StudyScope.POINT ? given : AdverseInputs.of(given, new Inputs());
        List<Result> results = new ArrayList<>();
        List<Gap> gaps = new ArrayList<>();
        List<String> notes = new ArrayList<>();
        try {
            for (Bound bound : Bound.values()) {
                SiteEarth earth = SiteEarth.of(site, bound, in, cache);
                results.addAll(ElectrodeStudy.of(site, earth, in));
                if (bound == Bound.LOW) {
                    notes.addAll(ElectrodeStudy.notes(site, earth));
                }
            }
            if (scope != StudyScope.POINT) {
                Map<SiteEarth, Site> beside = new LinkedHashMap<>();
                for (SoilPoints.Point point : SoilPoints.of(site)) {
                    SiteEarth earth = SiteEarth.of(point.site(), point.bound(), in, cache);
                    beside.put(earth.named(point.at()), point.site());
                }
                results.addAll(ElectrodeStudy.furtherApart(List.copyOf(results), beside, in));
            }
        } catch (MissingInput missing) {
            gaps.add(missing.gap("electrode", Case.NONE));
            gaps.add(missing.gap("soil", Case.NONE));
        }
        return new StudyResults(results, List.of(), gaps, in.assumptions(), notes);
    }
}
