package earthing.report;

import earthing.study.Gap;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** What could not be computed, in sentences; the same reason of several cases is told once. */
final class GapWords {

    private static final int MOST_NAMED = 3;

    private record Same(String id, String reason, List<String> keys) {}

    private GapWords() {}

    static List<String> of(List<Gap> gaps) {
        Map<Same, List<String>> cases = new LinkedHashMap<>();
        for (Gap gap : gaps) {
            List<String> words = cases.computeIfAbsent(
                    new Same(gap.id(), gap.reason(), gap.missingKeys()), key -> new ArrayList<>());
            String circumstances = CaseWords.of(gap.circumstances());
            if (!circumstances.isEmpty() && !words.contains(circumstances)) {
                words.add(circumstances);
            }
        }
        List<String> lines = new ArrayList<>();
        cases.forEach((gap, where) -> lines.add(words(gap.id())
                + (where.isEmpty()
                        ? ""
                        : " (" + (where.size() > MOST_NAMED ? where.size() + " cases" : String.join("; ", where)) + ")")
                + ": " + ResultSections.sentence(gap.reason())
                + (gap.keys().isEmpty() ? "" : " Fill in: " + String.join(", ", gap.keys()) + ".")));
        return lines;
    }

    /** The beginning of an id has no quantity at its end. */
    private static String words(String id) {
        return id.indexOf('.') == id.lastIndexOf('.') ? id.replace(".", ", ").replace('-', ' ') : ResultWords.of(id);
    }
}
