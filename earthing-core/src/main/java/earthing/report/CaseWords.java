package earthing.report;

import earthing.study.Case;

/** A case in the few words that fit into a table. */
final class CaseWords {

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

    /** One key of a case with its word. */
    static String phrase(String key, String word) {
        return switch (key) {
            case "wave" -> word;
            case "fault" -> word.equals("normal-load") ? "normal load" : word.replace('-', ' ') + " fault";
            case "entry" -> word.replace('-', ' ');
            case "strike" -> "strike " + word;
            case "switch" -> "switch " + word;
            case "screen-bond" -> "screen " + word;
            case Case.PROTECTION -> "cleared by " + word;
            case "broken" -> word + " broken";
            default -> word;
        };
    }
}
