package earthing.reference;

import java.util.List;

/** Case files that cannot be understood; the message lists every problem found, one a line. */
public final class CaseFormatException extends RuntimeException {

    private static final long serialVersionUID = 1L;

    @SuppressWarnings("serial") // an unmodifiable list of strings, serializable in fact
    private final List<String> problems;

    CaseFormatException(List<String> problems) {
        super(String.join(System.lineSeparator(), problems));
        this.problems = List.copyOf(problems);
    }

    /**
     * The problems.
     *
     * @return each with file, line, column and case
     */
    public List<String> problems() {
        return problems;
    }
}
