package earthing.report;

import earthing.compliance.Finding;

/** What a check asks for, in the words of a reader: its subject alone does not tell it everywhere. */
final class CheckWords {

    private CheckWords() {}

    /** For example {@code heating, lower lead}; two checks of one subject have different words. */
    static String of(Finding finding) {
        String id = finding.id();
        String subject = finding.subject();
        if (id.startsWith("conductor.")) {
            return (id.endsWith(".heating") ? "heating, " : "area, ") + subject;
        }
        if (id.startsWith("surge.cable-end.")) {
            return "surge, " + subject;
        }
        return switch (id) {
            case "arrester.margin" -> "arresters, " + subject;
            case "arrester.rating" -> "rating of the arresters, " + subject;
            case "electrode.resistance" -> "resistance, " + subject;
            case "electrode.model-agreement" -> "second method, " + subject;
            case "test.validity" -> "how it was read, " + subject;
            case "test.agreement" -> "agreement with the prediction, " + subject;
            case "test.continuity" -> "continuity, " + subject;
            case "cable.length" -> "length, " + subject;
            case "separation.control-cable" -> "separation, " + subject;
            default -> subject;
        };
    }
}
