package earthing.report;

import earthing.study.Gap;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** What could not be computed, in sentences; the same reason of several cases is told once. */
final class GapWords {

    private static final int MOST_NAMED = 3;
    private static final Pattern AMOUNT = Pattern.compile("(?<![\\w.])(\\d+(?:\\.\\d+)?)( k?[AV]\\b)");

    /** Beginnings of ids for which a reader has other words. */
    private static final Map<String, String> GROUPS = Map.ofEntries(
            Map.entry("electrode", "earth electrodes"),
            Map.entry("electrode.impulse", "earth electrodes under surge"),
            Map.entry("fault", "earth fault"),
            Map.entry("epr", "earth potential rise"),
            Map.entry("step", "step voltage"),
            Map.entry("touch", "touch voltage"),
            Map.entry("transfer", "transferred voltage"),
            Map.entry("conductor", "heating of conductors"),
            Map.entry("contingency", "broken earth paths"),
            Map.entry("cable.power-frequency", "voltage across the control cable"),
            Map.entry("aux-supply.isolation", "isolation of the auxiliary supply"),
            Map.entry("surge.cable-end", "surge at the cable ends"),
            Map.entry("surge.gap", "gaps under surge"),
            Map.entry("surge.screen", "screen of the cable under surge"),
            Map.entry("surge.risk", "how often a surge is too much"),
            Map.entry("surge.variant", "surge with one input changed"));

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
        Map<String, List<String>> names = new LinkedHashMap<>();
        byNumber(cases)
                .forEach((gap, where) -> names.computeIfAbsent(
                                ": " + ResultSections.sentence(gap.reason())
                                        + (gap.keys().isEmpty()
                                                ? ""
                                                : " Fill in: " + String.join(", ", gap.keys()) + "."),
                                key -> new ArrayList<>())
                        .add(words(gap.id())
                                + (where.isEmpty()
                                        ? ""
                                        : " ("
                                                + (where.size() > MOST_NAMED
                                                        ? where.size() + " cases"
                                                        : String.join("; ", where))
                                                + ")")));
        List<String> lines = new ArrayList<>();
        names.forEach((why, which) -> lines.add(String.join("; ", which) + why));
        return lines;
    }

    /** Reasons of the same cases that differ in their first amount only share a line, which tells the range. */
    private static Map<Same, List<String>> byNumber(Map<Same, List<String>> cases) {
        Map<List<Object>, List<Same>> alike = new LinkedHashMap<>();
        cases.forEach((gap, where) -> {
            Matcher amount = AMOUNT.matcher(gap.reason());
            String reason = amount.find() ? amount.replaceFirst("$2") : gap.reason();
            alike.computeIfAbsent(List.of(gap.id(), reason, gap.keys(), where), key -> new ArrayList<>())
                    .add(gap);
        });
        Map<Same, List<String>> merged = new LinkedHashMap<>();
        alike.values().forEach(gaps -> {
            Same first = gaps.get(0);
            String ends = gaps.stream()
                    .map(gap -> AMOUNT.matcher(gap.reason()))
                    .filter(Matcher::find)
                    .map(amount -> amount.group(1))
                    .sorted(Comparator.comparingDouble(Double::parseDouble))
                    .collect(Collectors.collectingAndThen(
                            Collectors.toList(),
                            each -> each.isEmpty() ? "" : each.get(0) + " to " + each.get(each.size() - 1)));
            merged.put(
                    gaps.size() == 1
                            ? first
                            : new Same(
                                    first.id(),
                                    AMOUNT.matcher(first.reason()).replaceFirst(Matcher.quoteReplacement(ends) + "$2"),
                                    first.keys()),
                    cases.getOrDefault(first, List.of()));
        });
        return merged;
    }

    /** The beginning of an id has no quantity at its end. */
    private static String words(String id) {
        String group = GROUPS.getOrDefault(id, "");
        if (!group.isEmpty()) {
            return group;
        }
        int dot = id.indexOf('.');
        String first = dot < 0 ? "" : GROUPS.getOrDefault(id.substring(0, dot), "");
        if (!first.isEmpty() && dot == id.lastIndexOf('.')) {
            return first + ", " + id.substring(dot + 1).replace('-', ' ');
        }
        return dot == id.lastIndexOf('.') ? id.replace(".", ", ").replace('-', ' ') : ResultWords.of(id);
    }
}
