package earthing.site.file;

import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import de.siegmar.fastcsv.reader.FieldMismatchStrategy;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * A filled test sheet: a table with one reading a row, which becomes the block {@code measurements} of the site file it
 * was made for. Rows without a value were not measured and are left out. The rest of the site file stays as it is, with
 * its comments.
 */
public final class ReadingsFile {

    /** Columns of the table that are keys of a measurement, in their order. */
    public static final List<String> KEYS = List.of(
            "kind",
            "of",
            "value",
            "method",
            "isolated",
            "current-probe-distance",
            "potential-probe-distance",
            "date",
            "soil-state");

    /** A column for the person who measures; it is not read. */
    public static final String EXPECTED = "expected";

    private static final String BLOCK = "measurements:";

    private final ProblemList problems;
    private final List<String> items = new ArrayList<>();
    private final List<Integer> lines = new ArrayList<>();

    private ReadingsFile(ProblemList problems) {
        this.problems = problems;
    }

    /** A site file with the readings in it, or why not. */
    public sealed interface Outcome {
        /**
         * The readings fit.
         *
         * @param text the site file with them
         * @param readings number of readings that were added, at least one
         */
        record Added(String text, int readings) implements Outcome {}

        /**
         * The readings were refused.
         *
         * @param problems every problem, at least one
         */
        record Refused(List<Problem> problems) implements Outcome {
            /**
             * Copies the problems.
             *
             * @param problems every problem, at least one
             */
            public Refused {
                problems = List.copyOf(problems);
            }
        }
    }

    /**
     * Adds readings to a site file.
     *
     * @param path the filled table; its text names it in problems
     * @param site text of a valid site file
     * @param siteFile its place, beside which files are looked for that it names
     * @return the site file with the readings, which is valid too, or every problem of the table
     */
    public static Outcome addTo(Path path, String site, Path siteFile) {
        ProblemList problems = new ProblemList(path.toString());
        byte[] bytes = SiteFile.bytes(path, problems);
        String text = bytes == null ? null : SiteFile.decode(bytes, problems);
        return text == null
                ? new Outcome.Refused(problems.inOrderOfFile())
                : addTo(text, path.toString(), site, siteFile);
    }

    /**
     * Adds readings to a site file.
     *
     * @param table content of the filled table
     * @param name its name for problems
     * @param site text of a valid site file
     * @param siteFile its place, beside which files are looked for that it names
     * @return the site file with the readings, which is valid too, or every problem of the table
     */
    public static Outcome addTo(String table, String name, String site, Path siteFile) {
        ReadingsFile file = new ReadingsFile(new ProblemList(name));
        file.rows(table);
        if (file.problems.isEmpty() && file.items.isEmpty()) {
            file.problems.add(Place.WHOLE_FILE, "no row of this sheet has a value");
        }
        if (!file.problems.isEmpty()) {
            return new Outcome.Refused(file.problems.inOrderOfFile());
        }
        List<String> text = new ArrayList<>(site.lines().toList());
        int at = file.insert(text);
        String merged = String.join("\n", text) + "\n";
        if (SiteFile.read(merged.getBytes(StandardCharsets.UTF_8), siteFile.toString(), SideFiles.beside(siteFile))
                instanceof ReadOutcome.Invalid invalid) {
            invalid.problems().forEach(problem -> file.told(problem, at));
            return new Outcome.Refused(file.problems.inOrderOfFile());
        }
        return new Outcome.Added(merged, file.items.size());
    }

    private void rows(String table) {
        char separator = table.lines().findFirst().orElse("").contains(";") ? ';' : ',';
        try (CsvReader<CsvRecord> csv = CsvReader.builder()
                .fieldSeparator(separator)
                .skipEmptyLines(true)
                .extraFieldStrategy(FieldMismatchStrategy.IGNORE)
                .missingFieldStrategy(FieldMismatchStrategy.IGNORE)
                .ofCsvRecord(table)) {
            List<String> head = List.of();
            for (CsvRecord row : csv) {
                if (head.isEmpty()) {
                    head = head(row);
                } else {
                    row(head, row);
                }
            }
            if (head.isEmpty()) {
                problems.add(Place.WHOLE_FILE, "there is nothing in this file");
            }
        } catch (CsvParseException | java.io.IOException e) {
            problems.add(Place.WHOLE_FILE, "this is no table of comma-separated values: " + e.getMessage());
        }
    }

    private List<String> head(CsvRecord row) {
        List<String> head = row.getFields().stream().map(String::strip).toList();
        for (int i = 0; i < head.size(); i++) {
            String column = head.get(i);
            if (KEYS.contains(column) && head.indexOf(column) < i) {
                problems.add(
                        new Place((int) row.getStartingLineNumber(), 1),
                        column,
                        column,
                        "this column stands twice",
                        "each column once");
            }
            if (!column.isEmpty() && !column.equals(EXPECTED) && !KEYS.contains(column)) {
                problems.add(
                        new Place((int) row.getStartingLineNumber(), 1),
                        column,
                        column,
                        "unknown column",
                        "one of " + String.join(", ", KEYS) + ", " + EXPECTED);
            }
        }
        for (String key : List.of("kind", "of", "value", "method", "isolated", "date")) {
            if (!head.contains(key)) {
                problems.add(
                        new Place((int) row.getStartingLineNumber(), 1), key, "", "missing column", "a column " + key);
            }
        }
        return head;
    }

    private void row(List<String> head, CsvRecord row) {
        Map<String, String> cells = new LinkedHashMap<>();
        for (int i = 0; i < Math.min(head.size(), row.getFieldCount()); i++) {
            String cell = row.getField(i).strip();
            if (KEYS.contains(head.get(i)) && cell.lines().count() > 1) {
                problems.add(
                        new Place((int) row.getStartingLineNumber(), 1),
                        head.get(i),
                        cell,
                        "a line break within a cell",
                        "one line");
            }
            if (KEYS.contains(head.get(i)) && !cell.isEmpty()) {
                cells.put(head.get(i), cell);
            }
        }
        if (!cells.containsKey("value")) {
            return;
        }
        StringBuilder item = new StringBuilder("- {");
        cells.forEach((key, cell) -> item.append(item.length() > 3 ? ", " : "")
                .append(key)
                .append(": \"")
                .append(cell.replace("\\", "\\\\").replace("\"", "\\\""))
                .append('"'));
        items.add(item.append('}').toString());
        lines.add((int) row.getStartingLineNumber());
    }

    /** Puts the items at the end of the block, which is made at the end of the file if there is none. */
    private int insert(List<String> text) {
        int block = text.indexOf(BLOCK);
        int at = text.size();
        String indent = "  ";
        if (block < 0) {
            text.add(BLOCK);
            at++;
        } else {
            at = block + 1;
            for (int i = block + 1; i < text.size() && belongs(text.get(i)); i++) {
                String line = text.get(i);
                if (line.strip().startsWith("- ") && at == block + 1) {
                    indent = line.substring(0, line.indexOf('-'));
                }
                at = line.isBlank() || line.strip().startsWith("#") ? at : i + 1;
            }
        }
        for (int i = 0; i < items.size(); i++) {
            text.add(at + i, indent + items.get(i));
        }
        return at;
    }

    private static boolean belongs(String line) {
        return line.isBlank() || line.startsWith(" ") || line.startsWith("-") || line.startsWith("#");
    }

    /** A problem of the merged file, told at the row of the table it comes from. */
    private void told(Problem problem, int at) {
        int item = problem.line() - 1 - at;
        Place place = item >= 0 && item < lines.size() ? new Place(lines.get(item), 1) : Place.WHOLE_FILE;
        problems.add(place, problem.key(), problem.written(), problem.found(), problem.expected(), problem.nearest());
    }
}
