package earthing.report;

import java.util.List;

/** A mandatory part of the report cannot be filled; the report is not written rather than left blank. */
public final class ReportIncomplete extends Exception {

    private static final long serialVersionUID = 1L;

    private final transient List<String> problems;

    /**
     * What is missing.
     *
     * @param problems one sentence for each missing part, at least one
     */
    public ReportIncomplete(List<String> problems) {
        super("the report is incomplete: " + String.join("; ", problems));
        this.problems = List.copyOf(problems);
    }

    /**
     * The missing parts.
     *
     * @return one sentence each
     */
    public List<String> problems() {
        return problems;
    }
}
