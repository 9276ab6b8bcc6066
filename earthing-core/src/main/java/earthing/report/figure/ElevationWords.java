package earthing.report.figure;

import static earthing.report.figure.PoleElevation.text;
import static earthing.report.figure.PoleElevation.word;

import earthing.site.ArresterEarth;
import earthing.site.EarthSegment;
import earthing.site.Electrode;
import earthing.site.EquipmentEarth;
import earthing.site.MainEarth;
import earthing.site.PlateLie;
import earthing.site.Site;
import earthing.site.YesNo;

/** The elevation in words, for a reader who does not see it. */
public final class ElevationWords {

    private ElevationWords() {}

    /**
     * Describes the earth paths from the top down.
     *
     * @param site the site
     * @return sentences
     */
    public static String of(Site site) {
        StringBuilder words = new StringBuilder();
        if (site.pole() != null) {
            words.append("Pole of ")
                    .append(word(site.pole().material()))
                    .append(", ")
                    .append(text(site.pole().height()))
                    .append(" above ground. ");
        }
        if (site.tank() != null) {
            words.append("Tank with its earth terminal at ")
                    .append(text(site.tank().height()))
                    .append(". ");
        }
        words.append(
                site.arresters() == null
                        ? "No arresters are described. "
                        : "Arresters " + earthed(site.arresters().earthedAt()) + ". ");
        mainEarth(site, words);
        if (site.cubicle() != null) {
            words.append("Cubicle with its earth terminal at ")
                    .append(text(site.cubicle().height()))
                    .append(", earth ")
                    .append(word(site.cubicle().earth()))
                    .append(". ");
            for (String path : site.cubicle().otherPaths()) {
                words.append("Other path from the cubicle to earth: ")
                        .append(path)
                        .append(". ");
            }
        }
        if (site.controlCable() != null && site.controlCable().separation() != null) {
            words.append("Control cable ")
                    .append(text(site.controlCable().separation()))
                    .append(" away from the main earth. ");
        }
        for (Electrode electrode : site.electrodes()) {
            words.append("Electrode ")
                    .append(electrode.name())
                    .append(": ")
                    .append(shape(electrode))
                    .append(". ");
        }
        return words.toString().strip();
    }

    /**
     * Where the screen of the control cable is bonded.
     *
     * @param word word of the site file for it
     * @return for example {@code bonded at both ends}
     */
    public static String bond(String word) {
        return switch (word) {
            case "tank" -> "bonded at the tank";
            case "cubicle" -> "bonded at the cubicle";
            case "both" -> "bonded at both ends";
            case "none" -> "bonded nowhere";
            default -> "bond " + word;
        };
    }

    /**
     * Where the arresters are earthed.
     *
     * @param place the place
     * @return for example {@code earthed at the tank}
     */
    public static String earthed(ArresterEarth place) {
        return switch (place) {
            case TANK -> "earthed at the tank";
            case MAIN_EARTH -> "earthed on the main earth, past the tank";
            case OWN_LEAD -> "earthed by a lead of their own";
            case UNKNOWN -> "where earthed: not known";
        };
    }

    /**
     * Where other equipment is earthed.
     *
     * @param place the place
     * @return for example {@code earthed at the tank's earth point}
     */
    public static String earthed(EquipmentEarth place) {
        return switch (place) {
            case TANK_EARTH_POINT -> "earthed at the tank's earth point";
            case MAIN_EARTH -> "earthed on the main earth, away from the tank";
            case OWN_ELECTRODE -> "earthed at an electrode of its own";
            case NONE -> "not earthed";
            case UNKNOWN -> "where earthed: not known";
        };
    }

    private static void mainEarth(Site site, StringBuilder words) {
        MainEarth main = site.mainEarth();
        if (main == null) {
            words.append("No main earth is described. ");
            return;
        }
        words.append("Main earth of ")
                .append(PoleElevation.conductor(main.conductor()))
                .append(main.electrode() == null ? "" : " to electrode " + main.electrode())
                .append(". ");
        for (EarthSegment segment : main.segments()) {
            words.append("Segment ")
                    .append(segment.name())
                    .append(" from ")
                    .append(text(segment.fromHeight()))
                    .append(" to ")
                    .append(text(segment.toHeight()))
                    .append(segment.intact() == YesNo.NO ? ", broken or missing" : "")
                    .append(". ");
        }
        if (main.secondLeadElectrode() != null) {
            words.append("A second lead runs from the tank to electrode ")
                    .append(main.secondLeadElectrode())
                    .append(". ");
        }
    }

    /**
     * The shape of an electrode.
     *
     * @param electrode the electrode
     * @return for example {@code rod, 3 m long, 16 mm thick}
     */
    public static String shape(Electrode electrode) {
        return electrode.concrete() == null
                ? metal(electrode)
                : metal(electrode) + ", in concrete "
                        + text(electrode.concrete().diameter()) + " thick";
    }

    private static String metal(Electrode electrode) {
        if (electrode.rod() != null) {
            return "rod, " + text(electrode.rod().length()) + " long, "
                    + text(electrode.rod().diameter()) + " thick"
                    + (electrode.rod().topDepth() == null
                            ? ""
                            : ", top at " + text(electrode.rod().topDepth()));
        }
        if (electrode.rodsInLine() != null) {
            return electrode.rodsInLine().count() + " rods in line, "
                    + text(electrode.rodsInLine().length()) + " long, "
                    + text(electrode.rodsInLine().spacing()) + " apart";
        }
        if (electrode.rodsInRing() != null) {
            return electrode.rodsInRing().count() + " rods on a circle of radius "
                    + text(electrode.rodsInRing().radius()) + ", "
                    + text(electrode.rodsInRing().length()) + " long";
        }
        if (electrode.wire() != null) {
            return "horizontal wire, " + text(electrode.wire().length()) + " long, "
                    + text(electrode.wire().depth()) + " deep";
        }
        if (electrode.star() != null) {
            return "star of " + electrode.star().arms() + " wires of "
                    + text(electrode.star().length()) + ", "
                    + text(electrode.star().depth()) + " deep";
        }
        if (electrode.ring() != null) {
            return "ring of radius " + text(electrode.ring().radius()) + ", "
                    + text(electrode.ring().depth()) + " deep";
        }
        if (electrode.mat() != null) {
            return "mat of " + text(electrode.mat().width()) + " by "
                    + text(electrode.mat().length()) + ", "
                    + text(electrode.mat().depth()) + " deep";
        }
        if (electrode.plate() != null) {
            return (electrode.plate().lie() == PlateLie.VERTICAL ? "upright" : "flat") + " plate of "
                    + text(electrode.plate().width()) + " by "
                    + text(electrode.plate().length()) + ", centre "
                    + text(electrode.plate().depth()) + " deep";
        }
        if (!electrode.bars().isEmpty()) {
            return electrode.bars().size() + " bars at coordinates";
        }
        return electrode.resistance() == null
                ? "shape not described"
                : "shape not described, resistance " + text(electrode.resistance());
    }
}
