package earthing.site;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** A result that the author expects. */
public record Expectation(
        @Key(required = true, example = "electrode.main.resistance", doc = "Id of the finding or of the result.")
        String result,

        @Key(
                example = "nominal",
                doc =
                        "Of a result: at which bound of soil and source; nominal if not given. Of a finding: leave it out.")
        @Nullable
        String at,

        @Key(
                example = "fault=maximum, arrangement=shared",
                doc = "Of a result that has several cases: the keys and words of the one that is meant.")
        @Nullable
        String inCase,

        @Key(
                example = "broken: tee",
                doc =
                        "Of a finding that stands more than once: its subject, word by word. The worst one counts if not given.")
        @Nullable
        String subject,

        @Key(required = true, example = "31.9 ohm", doc = "Expected value with unit, or expected status of a finding.")
        String value,

        @Key(
                example = "2 %",
                doc = "Tolerance, with % as a part of the expected value, or with its unit; half of the last digit that"
                        + " is written if not given.")
        @Nullable
        String within) {

    /** The statuses that a finding can be expected to have. */
    public static final List<String> STATUSES = List.of(
            "met", "not-met", "accepted-departure", "not-assessed", "insufficient-data", "not-applicable", "due-later");

    /**
     * Takes a text such as {@code fault=maximum, arrangement=shared} apart.
     *
     * @param inCase the text
     * @return key to word, in the order of the text; empty if it is no such text
     */
    public static Map<String, String> words(String inCase) {
        Map<String, String> words = new LinkedHashMap<>();
        for (String part : inCase.split(",", -1)) {
            int equals = part.indexOf('=');
            if (equals < 1 || part.substring(equals + 1).isBlank()) {
                return Map.of();
            }
            words.put(
                    part.substring(0, equals).strip(),
                    part.substring(equals + 1).strip());
        }
        return words;
    }
}
