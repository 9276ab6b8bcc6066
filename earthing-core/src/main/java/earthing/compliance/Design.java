package earthing.compliance;

import earthing.site.BackUpUse;
import earthing.site.ScreenBond;
import earthing.site.Site;
import earthing.site.Stage;
import earthing.site.Surges;
import earthing.study.Case;
import earthing.study.EarthPaths;
import earthing.study.Gap;
import earthing.study.Result;
import earthing.study.StudyResults;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * What a check looks at.
 *
 * @param site the site
 * @param paths its earth-path graph
 * @param results what the studies found
 */
public record Design(Site site, EarthPaths paths, StudyResults results) {

    /**
     * A site with its results.
     *
     * @param site the site
     * @param results what the studies found
     * @return the design
     */
    public static Design of(Site site, StudyResults results) {
        return new Design(site, EarthPaths.of(site), results);
    }

    /**
     * Whether tests belong to a later stage.
     *
     * @return true before the site is built
     */
    public boolean beforeTests() {
        return site.site().stage() == Stage.DESIGN;
    }

    /**
     * Whether a result belongs to the site as it is: its own cubicle earth and screen bond, no path broken. What a stroke
     * to the line gives is information beside the standard current into the tank and counts for no verdict.
     *
     * @param result any result
     * @return true if it counts for the verdict on this site
     */
    public boolean asBuilt(Result result) {
        return counts(result.id(), result.circumstances());
    }

    /** What the back-up protection does counts for the verdicts that the file names. */
    private boolean counts(String id, Case circumstances) {
        if (!asBuilt(circumstances)) {
            return false;
        }
        if (!circumstances.keys().containsKey(Case.PROTECTION)) {
            return true;
        }
        BackUpUse use = site.protection() == null ? null : site.protection().backUpFor();
        return use == BackUpUse.HEATING_AND_TOUCH || (use == BackUpUse.HEATING && id.startsWith("conductor."));
    }

    private boolean asBuilt(Case circumstances) {
        Map<String, String> keys = circumstances.keys();
        return !keys.containsKey("broken")
                && !circumstances.isInformation()
                && Surges.verdictWaves(site.surges())
                        .contains(keys.getOrDefault(
                                "wave", Surges.verdictWaves(site.surges()).get(0)))
                && keys.getOrDefault("arrangement", arrangement()).equals(arrangement())
                && keys.getOrDefault("screen-bond", screenBond()).equals(screenBond());
    }

    /**
     * The results of an id that belong to the site as it is.
     *
     * @param id id of the result
     * @return the results over the remaining cases and bounds
     */
    public List<Result> own(String id) {
        return results.of(id).stream().filter(this::asBuilt).toList();
    }

    /**
     * The gaps that concern an id and the site as it is.
     *
     * @param id the id, or the beginning of an id, of a result
     * @return the gaps
     */
    public List<Gap> gapsOf(String id) {
        return results.gapsOf(id).stream()
                .filter(gap -> counts(gap.id(), gap.circumstances()))
                .toList();
    }

    /**
     * How the cubicle is earthed.
     *
     * @return the word of the contract, empty if the file does not say
     */
    public String arrangement() {
        return site.cubicle() == null ? "" : word(site.cubicle().earth());
    }

    /**
     * How the screen of the control cable is bonded.
     *
     * @return the word of the site file; {@code none} where there is no screen
     */
    public String screenBond() {
        return site.controlCable() == null
                        || site.controlCable().screen() == null
                        || site.controlCable().screen().bond() == ScreenBond.ABSENT
                ? "none"
                : word(site.controlCable().screen().bond());
    }

    private static String word(Enum<?> constant) {
        return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
