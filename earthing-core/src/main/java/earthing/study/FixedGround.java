package earthing.study;

import earthing.site.MeasurementKind;
import earthing.site.Site;
import earthing.site.Soil;
import earthing.site.file.SiteEdit;
import java.util.List;

/**
 * A site whose ground no longer follows from readings at an electrode, so that the electrode may be changed: the
 * readings belong to the electrode that was measured.
 */
public final class FixedGround {

    private FixedGround() {}

    /**
     * Writes the scaled ground out and leaves out readings of electrodes.
     *
     * @param site the site
     * @param cache solved electrodes
     * @return the site without readings of electrodes; where one of them scales the ground, with the scaled layers in
     *     place of the survey
     */
    public static Site of(Site site, EarthCache cache) {
        Site grounded = site;
        if (site.soil() != null && site.soil().calibrateBy() != null) {
            Soil scaled = SiteGround.of(site, cache).site().soil();
            if (scaled != null) {
                grounded = SiteEdit.put(grounded, "soil", scaled);
                for (String reading : List.of("soundings", "survey-file", "calibrate-by")) {
                    grounded = SiteEdit.unset(grounded, "soil." + reading);
                }
            }
        }
        return SiteEdit.put(
                grounded,
                "measurements",
                site.measurements().stream()
                        .filter(reading -> reading.kind() != MeasurementKind.ELECTRODE_RESISTANCE)
                        .toList());
    }
}
