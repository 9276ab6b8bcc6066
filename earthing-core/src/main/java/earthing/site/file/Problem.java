package earthing.site.file;

import java.util.Objects;

/**
 * One thing that is wrong with a site file. {@link #text()} is one line, fit for a user.
 *
 * @param file name of the file as its reader was told
 * @param line line, from 1; 0 if the problem concerns the file as a whole
 * @param column column, from 1; 0 if the problem concerns the file as a whole
 * @param key dotted key, items of a list counted from 1, for example {@code soil.layers[2].thickness}; empty if there
 *     is none
 * @param written the text of the file that is wrong, empty if something is missing
 * @param found what is wrong with it
 * @param expected what was expected, empty if that is clear from what is wrong
 * @param nearest the nearest valid key, empty if none is near
 */
public record Problem(
        String file, int line, int column, String key, String written, String found, String expected, String nearest) {

    private static final int LONGEST_QUOTE = 60;

    /** The longest key of a site has a third of this. */
    private static final int LONGEST_KEY = 200;

    /** The keys of the largest block fit. */
    private static final int LONGEST_EXPECTED = 1200;

    /**
     * Checks that no part is missing.
     *
     * @param file name of the file as its reader was told
     * @param line line, from 1; 0 if the problem concerns the file as a whole
     * @param column column, from 1; 0 if the problem concerns the file as a whole
     * @param key dotted key, items of a list counted from 1; empty if there is none
     * @param written the text of the file that is wrong, empty if something is missing
     * @param found what is wrong with it
     * @param expected what was expected, empty if that is clear from what is wrong
     * @param nearest the nearest valid key, empty if none is near
     */
    public Problem {
        Objects.requireNonNull(file);
        Objects.requireNonNull(key);
        Objects.requireNonNull(written);
        Objects.requireNonNull(expected);
        Objects.requireNonNull(nearest);
        if (line < 0 || column < 0) {
            throw new IllegalArgumentException("line and column must be >= 0; have " + line + " and " + column);
        }
        if (found.isBlank()) {
            throw new IllegalArgumentException("a problem says what is wrong");
        }
    }

    /**
     * The problem as one line; what the file made longer than any reader wants is cut.
     *
     * @return for example {@code site.yaml:14:3: soil.resistivty: unknown key; did you mean "resistivity"?}
     */
    public String text() {
        StringBuilder line = new StringBuilder(file);
        if (this.line > 0) {
            line.append(':').append(this.line).append(':').append(column);
        }
        line.append(": ");
        if (!key.isEmpty()) {
            line.append(cut(key, LONGEST_KEY)).append(": ");
        }
        line.append(found);
        if (!nearest.isEmpty()) {
            line.append("; did you mean \"").append(cut(nearest, LONGEST_KEY)).append("\"?");
        } else if (!expected.isEmpty()) {
            line.append("; expected ").append(cut(expected, LONGEST_EXPECTED));
        }
        return onOneLine(line.toString());
    }

    /**
     * A text of the file in quotes, cut if it is long.
     *
     * @param text the text
     * @return the text for a message
     */
    static String quote(String text) {
        return '"' + cut(text.strip(), LONGEST_QUOTE) + '"';
    }

    private static String cut(String text, int longest) {
        return text.length() <= longest || text.codePointCount(0, text.length()) <= longest
                ? text
                : text.substring(0, text.offsetByCodePoints(0, longest)) + "…";
    }

    /** Control characters of a hostile file must not reach a terminal. */
    private static String onOneLine(String text) {
        StringBuilder clean = new StringBuilder(text.length());
        text.codePoints()
                .map(c -> Character.isISOControl(c) || Character.getType(c) == Character.FORMAT ? 0xFFFD : c)
                .forEach(clean::appendCodePoint);
        return clean.toString();
    }
}
