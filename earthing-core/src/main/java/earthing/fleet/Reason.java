package earthing.fleet;

/**
 * Why a row has no value.
 *
 * @param column number of the cell from 1; 0 if the row as a whole is meant
 * @param head head of its column, empty for the row as a whole
 * @param found what is wrong
 * @param expected what was expected, empty if that is clear
 */
public record Reason(int column, String head, String found, String expected) {

    /**
     * The reason as one line.
     *
     * @param file name of the table
     * @param row number of the row in the file
     * @return for example {@code poles.csv: row 14, column 5 (tank.height [m]): "ten" is no number; expected …}
     */
    public String text(String file, int row) {
        StringBuilder text = new StringBuilder(file).append(": row ").append(row);
        if (column > 0) {
            text.append(", column ").append(column).append(" (").append(head).append(')');
        }
        text.append(": ").append(found);
        if (!expected.isEmpty()) {
            text.append("; expected ").append(expected);
        }
        StringBuilder clean = new StringBuilder(text.length());
        text.codePoints()
                .map(c -> Character.isISOControl(c) || Character.getType(c) == Character.FORMAT ? 0xFFFD : c)
                .forEach(clean::appendCodePoint);
        return clean.toString();
    }
}
