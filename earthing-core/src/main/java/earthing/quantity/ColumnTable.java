package earthing.quantity;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/**
 * Columns of numbers, and of texts, from a file of their own, numbers in SI. All columns have the same length. Two tables are equal if their
 * files have the same name and the same content.
 */
public final class ColumnTable {

    private final String file;
    private final String sha256;
    private final Map<String, List<Double>> columns;
    private final Map<String, List<String>> texts;

    /**
     * A table.
     *
     * @param file name of the file, without folder
     * @param sha256 SHA-256 of the bytes of the file, in hexadecimal
     * @param columns values in SI by name of the column, in the order of the key that reads them, all of one length
     * @param texts columns of texts by name, of the same length
     * @throws IllegalArgumentException if a column is empty or of another length than the first
     */
    public ColumnTable(String file, String sha256, Map<String, List<Double>> columns, Map<String, List<String>> texts) {
        this.file = Objects.requireNonNull(file);
        this.sha256 = Objects.requireNonNull(sha256);
        Map<String, List<Double>> copy = new LinkedHashMap<>();
        columns.forEach((name, values) -> copy.put(name, List.copyOf(values)));
        this.columns = copy;
        Map<String, List<String>> words = new LinkedHashMap<>();
        texts.forEach((name, values) -> words.put(name, List.copyOf(values)));
        this.texts = words;
        if (copy.isEmpty()
                || rows() == 0
                || copy.values().stream().anyMatch(c -> c.size() != rows())
                || words.values().stream().anyMatch(c -> c.size() != rows())) {
            throw new IllegalArgumentException("the columns of " + file + " must have one length, at least 1");
        }
    }

    /**
     * Name of the file.
     *
     * @return the name without folder
     */
    public String file() {
        return file;
    }

    /**
     * What identifies the content.
     *
     * @return SHA-256 of the bytes of the file, in hexadecimal
     */
    public String sha256() {
        return sha256;
    }

    /**
     * Number of rows.
     *
     * @return rows, at least 1
     */
    public int rows() {
        return columns.values().iterator().next().size();
    }

    /**
     * The values of a column.
     *
     * @param name name of the column
     * @return values in SI
     * @throws IllegalArgumentException if there is no such column
     */
    public List<Double> column(String name) {
        List<Double> column = columns.get(name);
        if (column == null) {
            throw new IllegalArgumentException(file + " has no column " + name + "; it has " + columns.keySet());
        }
        return column;
    }

    /**
     * Whether there is a column of numbers, which a key may leave open.
     *
     * @param name name of the column
     * @return true if {@link #column} gives it
     */
    public boolean has(String name) {
        return columns.containsKey(name);
    }

    /**
     * A cell of a column of texts.
     *
     * @param name name of the column
     * @param row row from 0
     * @return the text, empty where there is no such column
     */
    public String text(String name, int row) {
        List<String> column = texts.get(name);
        return column == null ? "" : column.get(row);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof ColumnTable table && file.equals(table.file) && sha256.equals(table.sha256);
    }

    @Override
    public int hashCode() {
        return Objects.hash(file, sha256);
    }

    /**
     * The table in one line.
     *
     * @return for example {@code limits.csv (8 rows, SHA-256 1a2b3c4d…)}
     */
    @Override
    public String toString() {
        String hash = sha256.length() > 12 ? sha256.substring(0, 12) + "…" : sha256;
        return file + " (" + rows() + (rows() == 1 ? " row" : " rows") + ", SHA-256 " + hash + ")";
    }
}
