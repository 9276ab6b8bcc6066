package earthing.reference;

import java.util.Arrays;
import java.util.stream.Collectors;

/** What sort of authority stands behind the values of a case. They are counted apart and never mixed. */
public enum CaseKind {
    /** Printed in a standard, book, paper or table. */
    PUBLISHED("published"),
    /** An exact solution, a limit or a quadrature that shares no code with the library. */
    EXACT("exact"),
    /** The result of another, general-purpose program. */
    INDEPENDENT_CODE("independent-code"),
    /** A value of the library itself, held against unwanted change; it validates nothing. */
    BASELINE("baseline"),
    /** A printed error: the model must not agree with it. */
    NEGATIVE("negative");

    private final String text;

    CaseKind(String text) {
        this.text = text;
    }

    /**
     * The word of the case files.
     *
     * @return the word
     */
    public String text() {
        return text;
    }

    static CaseKind parse(String word) {
        return Arrays.stream(values())
                .filter(kind -> kind.text.equals(word))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("kind \"" + word + "\" is not one of "
                        + Arrays.stream(values()).map(CaseKind::text).collect(Collectors.joining(", "))));
    }
}
