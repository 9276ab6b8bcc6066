package earthing.report;

import earthing.study.PlaceNames;
import java.util.Map;
import java.util.Optional;

/** Results of the surge that are no core's, in the words of a reader: potentials, the screen, the current of a member. */
final class SurgeWords {

    private static final String PREFIX = "surge.";
    private static final String AFTER = "surge.flashover.";
    private static final String CURRENT = ".current.peak";
    private static final String REVERSE = ".reverse-current.peak";
    private static final String GAP = "gap.";
    private static final String ARC = "gap-";
    private static final String ELECTRODE = "earth-of-";

    private static final Map<String, String> WORDS = Map.of(
            "tank.peak", "potential of the tank",
            "cubicle.peak", "potential of the cubicle",
            "along-lead.peak", "voltage along the lead, tank to cubicle",
            "down-lead.current.peak", "current down the pole, all paths",
            "screen.current.peak", "current in the cable screen",
            "screen.share", "part of the surge in the cable screen",
            "screen.bond-voltage", "voltage over a bond lead of the screen",
            "screen.final-temperature", "temperature of the screen afterwards",
            "screen.temperature-limit", "temperature that the screen may reach");

    private SurgeWords() {}

    /** A gap by the key in its ids. */
    static String gap(String key) {
        return PlaceNames.gap(key);
    }

    /** The words; empty for an id that its own parts tell well enough. */
    static Optional<String> of(String id) {
        boolean after = id.startsWith(AFTER);
        String rest = id.substring(after ? AFTER.length() : PREFIX.length());
        String words = WORDS.getOrDefault(rest, "");
        if (words.isEmpty() && rest.endsWith(REVERSE)) {
            words = "reverse current in " + member(rest.substring(0, rest.length() - REVERSE.length()));
        } else if (words.isEmpty() && rest.endsWith(CURRENT)) {
            words = "current in " + member(rest.substring(0, rest.length() - CURRENT.length()));
        }
        int last = rest.lastIndexOf('.');
        if (words.isEmpty() && last > 0) {
            String quantity = ": " + rest.substring(last + 1).replace('-', ' ');
            String subject = rest.substring(0, last);
            if (subject.equals("cable-end")) {
                words = "cable end" + quantity;
            } else if (after) {
                return Optional.of("flashover, " + gap(subject) + quantity);
            } else if (subject.startsWith(GAP)) {
                words = "gap, " + gap(subject.substring(GAP.length())) + quantity;
            }
        }
        return words.isEmpty() ? Optional.empty() : Optional.of(after ? "after flashover, " + words : words);
    }

    private static String member(String key) {
        if (key.startsWith(ARC)) {
            return "the arc, " + gap(key.substring(ARC.length()));
        }
        String words = key.startsWith(ELECTRODE) ? "electrode " + key.substring(ELECTRODE.length()) : key;
        String assumed = "-assumed";
        words = words.endsWith(assumed) ? words.substring(0, words.length() - assumed.length()) + " (assumed)" : words;
        return words.replace('.', ' ').replace('-', ' ');
    }
}
