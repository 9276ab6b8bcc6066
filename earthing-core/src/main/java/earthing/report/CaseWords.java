package earthing.report;

import earthing.quantity.Numbers;
import earthing.report.figure.ElevationWords;
import earthing.study.Case;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A case in the few words that fit into a table. */
final class CaseWords {

    /** A swept current; its name in the results has more digits than a table prints. */
    private static final Pattern CURRENT = Pattern.compile("^current=([0-9.Ee+-]+) A");

    private CaseWords() {}

    static String of(Case circumstances) {
        return without(circumstances, "");
    }

    /** The case without one of its keys, which the table tells elsewhere. */
    static String without(Case circumstances, String omitted) {
        StringBuilder words = new StringBuilder();
        circumstances.keys().forEach((key, word) -> {
            if (!key.equals(omitted)) {
                words.append(words.isEmpty() ? "" : ", ").append(phrase(key, word));
            }
        });
        return words.toString();
    }

    /**
     * Where in the range of the inputs a value stands: low, nominal and high as they are, a point in between as the soil
     * and the current that make it.
     */
    static String bound(String at) {
        Matcher current = CURRENT.matcher(at);
        String brief = current.find()
                ? current.replaceFirst("current=" + Numbers.brief(Double.parseDouble(current.group(1))) + " A")
                : at;
        return brief.replace("three-phase-fault-current=", "three-phase fault current ")
                .replace("-current=", " current ")
                .replace("-resistance=", " resistance ")
                .replace("neutral's earths=", "earths of the neutral ")
                .replace('=', ' ')
                .replaceAll("(?<=\\d)/(?=\\d)", " over ");
    }

    /** One key of a case with its word. */
    static String phrase(String key, String word) {
        return switch (key) {
            case "wave" -> word.equals("own") ? "own wave" : word;
            case "fault" -> fault(word);
            case "entry" -> word.replace('-', ' ');
            case "strike" -> "strike " + word;
            case "switch" -> "switch " + word;
            case "screen-bond" -> "screen " + ElevationWords.bond(word);
            case "arrangement" -> arrangement(word);
            case Case.PROTECTION -> "cleared by " + word;
            case "broken" -> word + " broken";
            default -> word;
        };
    }

    /** How the cubicle is earthed; the word alone would be read as a word of the screen. */
    private static String arrangement(String word) {
        return switch (word) {
            case "shared" -> "shared earth";
            case "separate" -> "separate earths";
            case "both" -> "both earths";
            case "unearthed" -> "cubicle unearthed";
            default -> word;
        };
    }

    /** The word of a fault: which one, at which source, with which wire of the line parted. */
    private static String fault(String word) {
        if (word.equals("normal-load")) {
            return "normal load";
        }
        String kind = word;
        String source = "";
        for (String end : List.of("-minimum", "-between")) {
            if (word.endsWith(end)) {
                kind = word.substring(0, word.length() - end.length());
                source = end.equals("-minimum") ? "minimum " : "intermediate ";
            }
        }
        if (kind.endsWith("-broken")) {
            String wire = kind.substring(0, kind.length() - "-broken".length()).replace('-', ' ');
            return (source.isEmpty() ? "maximum " : source) + "fault, " + wire + " parted";
        }
        String words = kind.replace('-', ' ');
        return source + (words.endsWith("fault") || words.startsWith("two phases") ? words : words + " fault");
    }
}
