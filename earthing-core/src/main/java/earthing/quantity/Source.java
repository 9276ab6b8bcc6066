package earthing.quantity;

import java.util.Objects;

/**
 * Where a formula, a constant or a limit comes from.
 *
 * @param kind what sort of authority it is
 * @param title the standard with its edition, the paper or the book with author and year
 * @param locus clause, table, equation or page; empty where the title says it all
 * @param status whether the printed text was read for this project or is recalled
 */
public record Source(Kind kind, String title, String locus, Status status) {

    /** What sort of authority stands behind a value. */
    public enum Kind {
        /** A published standard, named with its edition. */
        STANDARD,
        /** A book, paper or report. */
        PUBLICATION,
        /** A fact of the trade for which no published source is known. */
        COMMON_PRACTICE,
        /** The owner of the site decided it in the site file. */
        OWNER,
        /** A decision or derivation of this library, explained in its docs. */
        TOOL
    }

    /** How the value was taken over. */
    public enum Status {
        /** The printed value was seen. */
        READ,
        /** The value was recalled and recomputed, the print was not seen. */
        FROM_MEMORY,
        /** There is nothing to read: common practice, owner, tool. */
        NOT_PRINTED
    }

    /**
     * Checks that no part is missing.
     *
     * @param kind what sort of authority it is
     * @param title the standard with its edition, the paper or the book with author and year
     * @param locus clause, table, equation or page; empty where the title says it all
     * @param status whether the printed text was read for this project or is recalled
     */
    public Source {
        Objects.requireNonNull(kind);
        if (title.isBlank()) {
            throw new IllegalArgumentException("a source needs a title");
        }
        Objects.requireNonNull(locus);
        Objects.requireNonNull(status);
    }

    /**
     * A standard.
     *
     * @param title number and edition, for example {@code EN 50522:2010}
     * @param locus clause, table or equation
     * @param status read or recalled
     * @return the source
     */
    public static Source standard(String title, String locus, Status status) {
        return new Source(Kind.STANDARD, title, locus, status);
    }

    /**
     * A book, paper or report.
     *
     * @param title author, title, year
     * @param locus page, table or equation
     * @param status read or recalled
     * @return the source
     */
    public static Source publication(String title, String locus, Status status) {
        return new Source(Kind.PUBLICATION, title, locus, status);
    }

    /**
     * A fact of the trade without a published source.
     *
     * @param what the practice in a few words
     * @return the source
     */
    public static Source commonPractice(String what) {
        return new Source(Kind.COMMON_PRACTICE, "common practice, no published source", what, Status.NOT_PRINTED);
    }

    /**
     * A value that the owner set in the site file.
     *
     * @param key the key of the site file
     * @return the source
     */
    public static Source owner(String key) {
        return new Source(Kind.OWNER, "owner's value", key, Status.NOT_PRINTED);
    }

    /**
     * A decision or derivation of this library.
     *
     * @param what what was decided, with the page of the docs that explains it
     * @return the source
     */
    public static Source tool(String what) {
        return new Source(Kind.TOOL, "this library", what, Status.NOT_PRINTED);
    }

    /**
     * One line for a report.
     *
     * @return title, locus and, for a recalled value, the words "from memory"
     */
    public String text() {
        StringBuilder text = new StringBuilder(title);
        if (!locus.isEmpty()) {
            text.append(", ").append(locus);
        }
        if (status == Status.FROM_MEMORY) {
            text.append(" (from memory)");
        }
        return text.toString();
    }
}
