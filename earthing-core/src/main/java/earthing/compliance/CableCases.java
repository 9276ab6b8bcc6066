package earthing.compliance;

import earthing.quantity.Numbers;
import earthing.study.Result;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The control cable at power frequency in words: every fault of the site as it is, and the other arrangements. */
final class CableCases {

    private static final String VOLTAGE = "cable.power-frequency.voltage";
    private static final String CURRENT = "cable.power-frequency.screen-current";

    private CableCases() {}

    static String words(Design design) {
        StringBuilder words = new StringBuilder("by fault: ").append(list(largest(design.own(VOLTAGE), "fault"), "V"));
        Map<String, Double> screen = largest(design.own(CURRENT), "fault");
        if (!screen.isEmpty()) {
            words.append("; in its screen: ").append(list(screen, "A"));
        }
        Map<String, Double> others = largest(
                design.results().of(VOLTAGE).stream()
                        .filter(r -> !r.circumstances().keys().containsKey("broken")
                                && !r.circumstances().keys().containsKey("screen-bond")
                                && !r.circumstances()
                                        .keys()
                                        .getOrDefault("arrangement", design.arrangement())
                                        .equals(design.arrangement()))
                        .toList(),
                "arrangement");
        if (!others.isEmpty()) {
            words.append("; otherwise earthed, at the worst fault: ").append(list(others, "V"));
        }
        return words.toString();
    }

    private static Map<String, Double> largest(List<Result> results, String key) {
        Map<String, Double> largest = new LinkedHashMap<>();
        for (Result result : results) {
            String word = result.circumstances().keys().getOrDefault(key, "").replace('-', ' ');
            largest.merge(word, Math.abs(result.value()), Math::max);
        }
        return largest;
    }

    private static String list(Map<String, Double> values, String unit) {
        StringBuilder list = new StringBuilder();
        values.forEach((word, value) -> list.append(list.isEmpty() ? "" : ", ")
                .append(word)
                .append(' ')
                .append(Numbers.brief(value))
                .append(' ')
                .append(unit));
        return list.toString();
    }
}
