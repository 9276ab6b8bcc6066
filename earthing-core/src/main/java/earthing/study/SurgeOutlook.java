package earthing.study;

import earthing.quantity.ColumnTable;
import earthing.site.Site;
import earthing.site.file.WaveFile;
import java.util.List;
import java.util.concurrent.CompletableFuture;

/**
 * What a report tells of surges beyond the verdicts: how often a year, strokes beside the line, and what would be if one
 * input were otherwise. No verdict rests on it, so it is left out where only verdicts are asked for.
 */
public final class SurgeOutlook {

    private SurgeOutlook() {}

    /**
     * Rates a year, induced surges and variants of a site.
     *
     * @param asRead the site, its ground as the file gives it
     * @param studied what {@link SiteStudy} found of it
     * @return those results, and then these
     */
    public static StudyResults added(Site asRead, StudyResults studied) {
        return added(asRead, studied, new EarthCache());
    }

    /**
     * The same with electrodes that are solved already.
     *
     * @param asRead the site, its ground as the file gives it
     * @param studied what {@link SiteStudy} found of it
     * @param cache solved electrodes, best those of that study
     * @return those results, and then these
     */
    public static StudyResults added(Site asRead, StudyResults studied, EarthCache cache) {
        Site site = SiteGround.of(asRead, cache).site();
        // The draw takes about as long as all the rest.
        CompletableFuture<StudyResults> risk = Beside.of(() -> SurgeRisk.of(site, studied, cache));
        ColumnTable ownWave = site.surges() == null ? null : site.surges().ownWave();
        StudyResults recorded =
                ownWave == null ? StudyResults.EMPTY : SurgeStudy.ofRecorded(site, cache, WaveFile.impulse(ownWave));
        StudyResults induced = InducedStudy.of(site, cache);
        StudyResults variants = SurgeVariants.of(site, cache);
        return StudyResults.join(List.of(studied, recorded, induced, variants, risk.join()));
    }
}
