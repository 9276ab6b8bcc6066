package earthing.site.file;

import earthing.quantity.ColumnTable;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * Compares what a table of separated values says with what was read from it. The table is taken apart here by the rules
 * of RFC 4180, section 2, with the comment lines of this format, not by the library of the reader under test.
 */
final class TableRows {

    /** What the format reads as units, from the International System and NIST SP 811, table B.8 (inch, foot). */
    private static final Map<String, Double> FACTORS = Map.ofEntries(
            Map.entry("s", 1.0),
            Map.entry("ms", 1e-3),
            Map.entry("us", 1e-6),
            Map.entry("µs", 1e-6),
            Map.entry("min", 60.0),
            Map.entry("h", 3600.0),
            Map.entry("V", 1.0),
            Map.entry("mV", 1e-3),
            Map.entry("kV", 1e3),
            Map.entry("A", 1.0),
            Map.entry("mA", 1e-3),
            Map.entry("kA", 1e3),
            Map.entry("m", 1.0),
            Map.entry("mm", 1e-3),
            Map.entry("cm", 1e-2),
            Map.entry("km", 1e3),
            Map.entry("ft", 0.3048),
            Map.entry("in", 0.0254),
            Map.entry("ohm", 1.0),
            Map.entry("Ω", 1.0),
            Map.entry("mohm", 1e-3),
            Map.entry("mΩ", 1e-3),
            Map.entry("kohm", 1e3),
            Map.entry("Mohm", 1e6),
            Map.entry("ohm.m", 1.0),
            Map.entry("Ω·m", 1.0),
            Map.entry("Ωm", 1.0),
            Map.entry("ohm-m", 1.0),
            Map.entry("ohm*m", 1.0),
            Map.entry("ohm.cm", 1e-2),
            Map.entry("kohm.m", 1e3),
            Map.entry("ohm.ft", 0.3048));

    private TableRows() {}

    /**
     * Every difference between a file and its table.
     *
     * @param text text of the file
     * @param table what was read
     * @return one line each; empty if all agrees
     */
    static List<String> differences(String text, ColumnTable table) {
        List<String> differences = new ArrayList<>();
        // A comment ends with any line end of Unicode.
        boolean comma = Arrays.stream(text.split("\\R"))
                .anyMatch(line -> line.strip()
                        .toLowerCase(Locale.ROOT)
                        .replaceAll("\\s", "")
                        .equals("#decimal:comma"));
        List<List<String>> rows = rows(text);
        List<String> head = rows.remove(0);
        if (rows.size() != table.rows()) {
            differences.add("the file has " + rows.size() + " rows, the table " + table.rows());
            return differences;
        }
        for (int c = 0; c < head.size(); c++) {
            String name = head.get(c).replaceFirst("(?s)\\[.*", "").strip();
            if (name.equalsIgnoreCase("traverse")) {
                name = "traverse";
            } else if (name.equalsIgnoreCase("AB/2") || name.equalsIgnoreCase("MN/2")) {
                name = name.toUpperCase(Locale.ROOT);
            } else {
                name = name.toLowerCase(Locale.ROOT);
            }
            String unit =
                    head.get(c).replaceFirst("(?s).*\\[", "").replace("]", "").strip();
            for (int r = 0; r < rows.size(); r++) {
                String cell = rows.get(r).size() == head.size() ? rows.get(r).get(c) : "(no cell)";
                boolean same = table.has(name)
                        ? number(cell, comma, unit, table.column(name).get(r))
                        : cell.equals(table.text(name, r));
                if (!same) {
                    differences.add("row " + (r + 1) + ", " + head.get(c) + ": the file says " + cell + ", the table "
                            + (table.has(name) ? table.column(name).get(r) : table.text(name, r)));
                }
            }
        }
        return differences;
    }

    private static boolean number(String cell, boolean comma, String unit, double read) {
        // With a decimal comma a point would part thousands.
        if (!cell.matches(comma ? "[-+0-9,eE]+" : "[-+0-9.eE]+") || !FACTORS.containsKey(unit)) {
            return false;
        }
        double expected = Double.parseDouble(cell.replace(',', '.')) * FACTORS.get(unit);
        return Math.abs(read - expected) <= 1e-14 * Math.abs(expected) + Double.MIN_NORMAL;
    }

    /** The rows with their cells, without comments and rows of blanks; a cell with a line break stays one line's. */
    private static List<List<String>> rows(String text) {
        List<List<String>> rows = new ArrayList<>();
        char separator = 0;
        for (String line : text.split("\r\n|\r|\n", -1)) {
            if (line.isBlank() || line.startsWith("#")) {
                continue;
            }
            if (separator == 0) {
                separator = line.contains(";") ? ';' : ',';
            }
            List<String> cells = cells(line, separator);
            if (rows.isEmpty() || !cells.stream().allMatch(String::isBlank)) {
                rows.add(cells);
            }
        }
        return rows;
    }

    /** The cells of one line, RFC 4180. */
    static List<String> cells(String line, char separator) {
        List<String> cells = new ArrayList<>();
        StringBuilder cell = new StringBuilder();
        boolean quoted = false;
        for (int i = 0; i < line.length(); i++) {
            char c = line.charAt(i);
            if (quoted) {
                boolean doubled = c == '"' && i + 1 < line.length() && line.charAt(i + 1) == '"';
                if (c != '"' || doubled) {
                    cell.append(c);
                    i += doubled ? 1 : 0;
                } else {
                    quoted = false;
                }
            } else if (c == '"' && cell.length() == 0) {
                quoted = true;
            } else if (c == separator) {
                cells.add(cell.toString().strip());
                cell.setLength(0);
            } else {
                cell.append(c);
            }
        }
        cells.add(cell.toString().strip());
        return cells;
    }
}
