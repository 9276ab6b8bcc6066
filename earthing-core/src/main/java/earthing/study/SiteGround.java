package earthing.study;

import earthing.site.Site;
import java.util.List;
import java.util.Optional;

/**
 * The ground that every study takes: layers fitted to the readings of a survey, then scaled by the reading of a built
 * electrode, where the site file asks for either.
 *
 * @param site the site with that ground
 * @param results what fitting and scaling found
 * @param readings what the readings of electrodes told, before the ground was scaled by one; empty where none scales it
 */
record SiteGround(Site site, StudyResults results, Optional<StudyResults> readings) {

    /** Finds the ground of a site. */
    static SiteGround of(Site site, EarthCache cache) {
        SurveyedSoil survey = SurveyedSoil.of(site, cache);
        if (site.soil() == null || site.soil().calibrateBy() == null) {
            return new SiteGround(survey.site(), survey.results(), Optional.empty());
        }
        StudyResults readings = TesterStudy.of(survey.site(), cache);
        CalibratedSoil calibrated = CalibratedSoil.of(survey.site(), readings, cache);
        return new SiteGround(
                calibrated.site(),
                StudyResults.join(List.of(survey.results(), calibrated.results())),
                Optional.of(readings));
    }
}
