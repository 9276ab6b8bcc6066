package earthing.site.file;

import earthing.site.Site;
import earthing.site.file.SiteColumn.HeadException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Sites from the rows of a table, one site a row. A row becomes the tree of a site file, with what a base file gives below
 * it, and is read by the reader of site files: keys, units, rules and messages are the same.
 *
 * <p>A blank cell is unknown: where the key takes {@code unknown}, as every value with a unit does, it becomes that; another
 * text or word is then not given. A hyphen says that a key which could be unknown is not given at all. A block or an item
 * of a list of which every cell is blank is not there, unless the base has it; the word {@code unknown} in a cell says that
 * it is there. A cell replaces the value of the base, bounds and origin included.
 */
public final class SiteRows {

    /** A cell for a key that is not given, unlike one whose value is not known. */
    public static final String NOT_GIVEN = "-";

    /** There is one version; a table need not say it. */
    static final String VERSION = "file-version";

    static final int LONGEST_NUMBER = 40;

    private static final Pattern NUMBER = Pattern.compile("[+-]?(?:\\d++(?:\\.\\d*+)?|\\.\\d++)(?:[eE][+-]?\\d{1,3})?");

    private final String table;
    private final List<SiteColumn> columns;
    private final List<Integer> order;
    private final Optional<Tree.Pairs> base;
    private final SideFiles sideFiles;
    private final boolean decimalComma;

    private SiteRows(
            String table,
            List<SiteColumn> columns,
            Optional<Tree.Pairs> base,
            SideFiles sideFiles,
            boolean decimalComma) {
        this.table = table;
        this.columns = List.copyOf(columns);
        this.base = base;
        this.sideFiles = sideFiles;
        this.decimalComma = decimalComma;
        List<Integer> values = new ArrayList<>();
        List<Integer> parts = new ArrayList<>();
        for (int i = 0; i < columns.size(); i++) {
            (columns.get(i).part().isEmpty() ? values : parts).add(i);
        }
        // A bound is put into the value that it belongs to, wherever its column stands.
        values.addAll(parts);
        order = List.copyOf(values);
    }

    /** Rows can be read, or the head of the table is refused. */
    public sealed interface Head {
        /**
         * The head is good.
         *
         * @param rows reads the rows
         */
        record Good(SiteRows rows) implements Head {}

        /**
         * The head or the base is refused.
         *
         * @param problems every problem, at least one
         */
        record Refused(List<Problem> problems) implements Head {
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

    /** A row, read or refused. */
    public sealed interface Row {
        /**
         * The row is a site.
         *
         * @param site the site
         */
        record Read(Site site) implements Row {}

        /**
         * The row is refused.
         *
         * @param problems every problem, at least one; the column of each counts cells from 1, and is 0 where the row as
         *     a whole is meant
         */
        record Refused(List<Problem> problems) implements Row {
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
     * Reads the head of a table.
     *
     * @param table name of the table for problems
     * @param line its line
     * @param heads its cells
     * @param base a site file with what all rows share, complete or not
     * @param tablePath where the table lies; files that cells name are looked for beside it, then beside the base
     * @param decimalComma whether numbers are written with a comma
     * @return what reads the rows, or every problem
     */
    public static Head head(
            String table, int line, List<String> heads, Optional<Path> base, Path tablePath, boolean decimalComma) {
        ProblemList problems = new ProblemList(table);
        List<SiteColumn> columns = new ArrayList<>();
        Map<String, Integer> seen = new HashMap<>();
        for (int i = 0; i < heads.size(); i++) {
            Place place = new Place(line, i + 1);
            try {
                SiteColumn column = SiteColumn.of(heads.get(i).strip());
                Integer first = seen.putIfAbsent(column.path(), i + 1);
                if (first != null) {
                    problems.add(
                            place,
                            "",
                            column.path(),
                            column.path() + " stands already in column " + first,
                            "one column a key");
                }
                columns.add(column);
            } catch (HeadException e) {
                Problem problem = e.problem();
                problems.add(place, "", problem.written(), problem.found(), problem.expected(), problem.nearest());
            }
        }
        List<Problem> all = new ArrayList<>(problems.inOrderOfFile());
        Optional<Tree.Pairs> tree = base.isEmpty() ? Optional.empty() : tree(base.get(), all);
        if (all.isEmpty()) {
            Tree.Pairs below = tree.orElse(new Tree.Pairs(List.of(), Place.WHOLE_FILE));
            ProblemList missing = new ProblemList(table);
            required(Block.site(), "", below, seen.keySet(), missing, line);
            all.addAll(missing.inOrderOfFile());
        }
        SideFiles side = base.map(file -> either(SideFiles.beside(tablePath), SideFiles.beside(file)))
                .orElse(SideFiles.beside(tablePath));
        return all.isEmpty()
                ? new Head.Good(new SiteRows(table, columns, tree, side, decimalComma))
                : new Head.Refused(all);
    }

    private static SideFiles either(SideFiles first, SideFiles second) {
        return name -> {
            try {
                return first.read(name);
            } catch (java.nio.file.NoSuchFileException e) {
                return second.read(name);
            }
        };
    }

    /** What the base says, complete or not; its places are not those of the table. */
    private static Optional<Tree.Pairs> tree(Path base, List<Problem> all) {
        ProblemList problems = new ProblemList(base.toString());
        byte[] bytes = SiteFile.bytes(base, problems);
        if (bytes != null && bytes.length > SiteFile.LARGEST) {
            problems.add(Place.WHOLE_FILE, "this file is larger than " + SiteFile.LARGEST + " bytes and no site file");
        }
        String text = bytes == null || bytes.length > SiteFile.LARGEST ? null : SiteFile.decode(bytes, problems);
        Tree root = text == null ? null : TreeReader.read(text, problems).root();
        if (text != null && problems.isEmpty() && !(root instanceof Tree.Pairs)) {
            problems.add(Place.WHOLE_FILE, "", "", "there are no keys in this file", "a site file, complete or not");
        }
        if (root instanceof Tree.Pairs) {
            // Unknown keys and the like are told once, at their place in the base, not again for each row.
            SiteFile.readPart(root, problems, SideFiles.beside(base));
        }
        all.addAll(problems.inOrderOfFile());
        return root instanceof Tree.Pairs pairs ? Optional.of(pairs) : Optional.empty();
    }

    /** A key that every site has to give stands in the base or is a column: else each row would say the same. */
    private static void required(
            Block block, String path, Tree.Pairs below, Set<String> columns, ProblemList problems, int line) {
        for (Entry entry : block.entries()) {
            String key = BlockReader.join(path, entry.key());
            if (!entry.meaning().required() || key.equals(VERSION)) {
                continue;
            }
            Tree given = child(below, entry.key());
            if (entry.kind() == Entry.Kind.BLOCK && !entry.isList()) {
                required(
                        entry.block(),
                        key,
                        given instanceof Tree.Pairs pairs ? pairs : new Tree.Pairs(List.of(), Place.WHOLE_FILE),
                        columns,
                        problems,
                        line);
            } else if (given == null && columns.stream().noneMatch(column -> isAt(column, key))) {
                problems.add(
                        new Place(line, 0),
                        key,
                        "",
                        "no column gives this key",
                        "a column " + key + ", or a base that has it");
            }
        }
    }

    private static boolean isAt(String column, String key) {
        return column.equals(key) || column.startsWith(key + '.') || column.startsWith(key + '[');
    }

    private static @Nullable Tree child(Tree.Pairs pairs, String key) {
        for (Tree.Pair pair : pairs.pairs()) {
            if (pair.key().equals(key)) {
                return pair.value();
            }
        }
        return null;
    }

    /**
     * The columns.
     *
     * @return in the order of the table
     */
    public List<SiteColumn> columns() {
        return columns;
    }

    /**
     * Reads a row.
     *
     * @param line its line in the table
     * @param cells its cells, as many as there are columns
     * @return the site, or every problem
     */
    public Row read(int line, List<String> cells) {
        ProblemList problems = new ProblemList(table);
        if (cells.size() != columns.size()) {
            problems.add(
                    new Place(line, 0),
                    "",
                    "",
                    "this row has " + cells.size() + " cells, the head line " + columns.size(),
                    "one cell a column" + (decimalComma ? "" : "; a decimal comma has to be declared"));
            return new Row.Refused(problems.inOrderOfFile());
        }
        Tree root = tree(line, cells, problems);
        Site site = problems.isEmpty() ? SiteFile.site(root, Place.WHOLE_FILE, true, problems, sideFiles) : null;
        return site == null
                ? new Row.Refused(problems.inOrderOfFile().stream()
                        .map(problem -> told(problem, line))
                        .toList())
                : new Row.Read(site);
    }

    /** A row that was written from a site, read again. */
    static Row again(List<SiteColumn> columns, List<String> cells, SideFiles sideFiles) {
        return new SiteRows("", columns, Optional.empty(), sideFiles, false).read(1, cells);
    }

    /** A problem of the base, or of what is missing, is told of the row in which it comes to light. */
    private Problem told(Problem problem, int line) {
        return problem.line() > 0 || !problem.file().equals(table)
                ? problem
                : new Problem(
                        table,
                        line,
                        0,
                        problem.key(),
                        problem.written(),
                        problem.found(),
                        problem.expected(),
                        problem.nearest());
    }

    private Tree tree(int line, List<String> cells, ProblemList problems) {
        RowTree row = new RowTree(base);
        Set<String> filled = new HashSet<>();
        for (int i = 0; i < cells.size(); i++) {
            String cell = cells.get(i).strip();
            if (!cell.isEmpty() && !isNotGiven(columns.get(i), cell)) {
                filled.addAll(RowTree.owners(columns.get(i)));
            }
        }
        for (int i : order) {
            SiteColumn column = columns.get(i);
            Place place = new Place(line, i + 1);
            String cell = cells.get(i).strip();
            if (isBlank(column, cell) || isNotGiven(column, cell)) {
                row.blank(column, column.canBeUnknown() && !isNotGiven(column, cell), filled, place);
            } else {
                // The item of a list is there even if it is unknown; a blank one is not.
                boolean said = !column.isNumber() || (column.part().isEmpty() && cell.equals(ValueReader.UNKNOWN));
                String text = said ? cell : number(column, cell, place, problems);
                if (text != null) {
                    row.put(column, text, place);
                }
            }
        }
        return row.tree();
    }

    private static boolean isBlank(SiteColumn column, String cell) {
        return cell.isBlank() || (column.canBeUnknown() && cell.strip().equals(ValueReader.UNKNOWN));
    }

    private static boolean isNotGiven(SiteColumn column, String cell) {
        return column.canBeUnknown() && cell.strip().equals(NOT_GIVEN);
    }

    /** The number with the unit of its column, as a site file says it; null if it is no number. */
    private @Nullable String number(SiteColumn column, String cell, Place place, ProblemList problems) {
        if (!decimalComma && cell.indexOf(',') >= 0) {
            problems.add(
                    place,
                    "",
                    cell,
                    Problem.quote(cell) + " has a comma",
                    "a decimal point, or a decimal comma that is declared");
            return null;
        }
        if (decimalComma && cell.indexOf('.') >= 0) {
            // Where the comma is decimal, a point parts thousands: 1.250 may mean either.
            problems.add(
                    place,
                    "",
                    cell,
                    Problem.quote(cell) + " has a point, and a decimal comma is declared",
                    "a decimal comma, and no mark between thousands");
            return null;
        }
        String text = decimalComma ? cell.replace(',', '.') : cell;
        boolean gauge = column.unit().equals("AWG") && text.matches("[1-4]/0|\\d{1,2}");
        if (!gauge && (text.length() > LONGEST_NUMBER || !NUMBER.matcher(text).matches())) {
            problems.add(
                    place,
                    "",
                    cell,
                    Problem.quote(cell) + " is no number",
                    "a number without unit, such as 2.5; blank if it is unknown, " + NOT_GIVEN + " if there is none");
            return null;
        }
        return column.unit().isEmpty() ? text : text + ' ' + column.unit();
    }
}
