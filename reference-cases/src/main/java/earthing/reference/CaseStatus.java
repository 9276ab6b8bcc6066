package earthing.reference;

import java.util.Arrays;
import java.util.stream.Collectors;

/** How the values of a case came into its file. */
public enum CaseStatus {
    /** The printed value was seen. */
    READ_NOW("read now"),
    /** The value was recalled, the print was not seen. */
    FROM_MEMORY("from memory"),
    /** There is no print: the value was computed, by the means that the source names. */
    COMPUTED("computed");

    private final String text;

    CaseStatus(String text) {
        this.text = text;
    }

    /**
     * The words of the case files.
     *
     * @return the words
     */
    public String text() {
        return text;
    }

    static CaseStatus parse(String words) {
        return Arrays.stream(values())
                .filter(status -> status.text.equals(words))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("status \"" + words + "\" is not one of "
                        + Arrays.stream(values()).map(CaseStatus::text).collect(Collectors.joining(", "))));
    }
}
