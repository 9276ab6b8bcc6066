package earthing.fleet;

import earthing.site.Site;
import earthing.site.file.Problem;
import earthing.site.file.SiteColumn;
import earthing.site.file.SiteRows;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.security.DigestInputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * A table of sites: one pole a row, a key of the site file with its unit as the head of each column, one line a row, UTF-8.
 * A line that begins with {@code #} is a comment. What stands between cells is declared, by the caller or by the comment
 * {@code # separator: comma} or {@code # separator: semicolon} above the head, a decimal comma by {@code # decimal: comma}.
 */
public final class FleetTable {

    private static final Pattern DECLARATION = Pattern.compile("#\\s*+(separator|decimal)\\s*+:\\s*+(\\S+)\\s*");

    private static final List<String> NAMES = List.of("site.pole", "site.name");

    private final Path path;
    private final TableForm form;
    private final SiteRows reader;
    private final int headLine;
    private final int size;
    private final String sha256;
    private final boolean located;

    private FleetTable(Path path, TableForm form, SiteRows reader, int headLine, int size, String sha256) {
        this.path = path;
        this.form = form;
        this.reader = reader;
        this.headLine = headLine;
        this.size = size;
        this.sha256 = sha256;
        this.located = reader.columns().stream().anyMatch(c -> c.path().equals("site.latitude"));
    }

    /** A table that can be read, or every problem of its head. */
    public sealed interface Opened {
        /**
         * The head is good.
         *
         * @param table the table
         */
        record Good(FleetTable table) implements Opened {}

        /**
         * The table is refused as a whole.
         *
         * @param problems every problem, at least one
         */
        record Refused(List<Problem> problems) implements Opened {
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
     * Reads the head of a table and counts its rows.
     *
     * @param path the table
     * @param separator what stands between cells, if the caller knows
     * @param decimalComma whether numbers have a decimal comma, if the caller knows
     * @param base a site file with what all rows share, complete or not
     * @return the table, or every problem
     */
    public static Opened open(
            Path path, Optional<Character> separator, Optional<Boolean> decimalComma, Optional<Path> base) {
        try {
            return opened(path, separator, decimalComma, base);
        } catch (NoSuchFileException e) {
            return refused(path, "there is no such file", "");
        } catch (AccessDeniedException e) {
            return refused(path, "this file may not be read", "");
        } catch (IOException e) {
            return refused(
                    path, Files.isDirectory(path) ? "this is a folder, not a file" : "this file cannot be read", "");
        }
    }

    private static Opened opened(
            Path path, Optional<Character> separator, Optional<Boolean> decimalComma, Optional<Path> base)
            throws IOException {
        MessageDigest digest = sha256();
        TableLine head = null;
        int size = 0;
        List<TableLine> comments = new ArrayList<>();
        try (TableLines lines = new TableLines(new DigestInputStream(Files.newInputStream(path), digest))) {
            for (TableLine line = lines.next(); line != null; line = lines.next()) {
                if (line.isComment()) {
                    if (head == null) {
                        comments.add(line);
                    }
                } else if (head == null) {
                    head = line.isBlank() ? null : line;
                } else {
                    size += line.isBlank() ? 0 : 1;
                }
            }
        }
        if (head == null) {
            return refused(path, "there is no head line in this file", "a key of the site file a column");
        }
        if (!head.fault().isEmpty()) {
            return refused(path, head.number(), head.fault());
        }
        List<Problem> problems = new ArrayList<>();
        Optional<TableForm> form = form(path, comments, separator, decimalComma, problems);
        if (form.isEmpty()) {
            return new Opened.Refused(problems);
        }
        TableLine.Cells heads = head.cells(form.get().separator());
        if (!heads.fault().isEmpty()) {
            return refused(path, head.number(), heads.fault());
        }
        SiteRows.Head read = SiteRows.head(
                path.toString(),
                head.number(),
                heads.cells(),
                base,
                path,
                form.get().decimalComma());
        if (read instanceof SiteRows.Head.Refused refused) {
            return new Opened.Refused(refused.problems());
        }
        SiteRows rows = ((SiteRows.Head.Good) read).rows();
        if (rows.columns().stream().noneMatch(column -> NAMES.contains(column.path()))) {
            return new Opened.Refused(List.of(new Problem(
                    path.toString(), head.number(), 0, "", "", "no column names the poles", "a column site.pole", "")));
        }
        return new Opened.Good(new FleetTable(
                path, form.get(), rows, head.number(), size, HexFormat.of().formatHex(digest.digest())));
    }

    private static Optional<TableForm> form(
            Path path,
            List<TableLine> comments,
            Optional<Character> separator,
            Optional<Boolean> decimalComma,
            List<Problem> problems) {
        Optional<Character> between = separator;
        Optional<Boolean> comma = decimalComma;
        for (TableLine comment : comments) {
            Matcher matcher = DECLARATION.matcher(comment.text());
            if (!matcher.matches()) {
                continue;
            }
            String word = matcher.group(2);
            boolean cells = matcher.group(1).equals("separator");
            List<String> words = cells ? List.of("comma", "semicolon") : List.of("point", "comma");
            if (!words.contains(word)) {
                problems.add(new Problem(
                        path.toString(),
                        comment.number(),
                        1,
                        "",
                        word,
                        '"' + word + "\" is not known here",
                        String.join(" or ", words),
                        ""));
            } else if (cells) {
                // What the caller says goes first.
                between = between.or(() -> Optional.of(word.equals("comma") ? ',' : ';'));
            } else {
                comma = comma.or(() -> Optional.of(word.equals("comma")));
            }
        }
        if (!problems.isEmpty()) {
            return Optional.empty();
        }
        if (between.isEmpty()) {
            problems.add(new Problem(
                    path.toString(),
                    0,
                    0,
                    "",
                    "",
                    "nothing says what stands between the cells",
                    "the line # separator: comma or # separator: semicolon above the head, or the option --separator",
                    ""));
            return Optional.empty();
        }
        if (between.get() == ',' && comma.orElse(false)) {
            problems.add(new Problem(
                    path.toString(),
                    0,
                    0,
                    "",
                    "",
                    "a decimal comma is declared, and a comma between cells",
                    "semicolons between cells",
                    ""));
            return Optional.empty();
        }
        return Optional.of(new TableForm(between.get(), comma.orElse(false)));
    }

    private static Opened refused(Path path, int line, String found) {
        return new Opened.Refused(List.of(new Problem(path.toString(), line, 0, "", "", found, "", "")));
    }

    private static Opened refused(Path path, String found, String expected) {
        return new Opened.Refused(List.of(new Problem(path.toString(), 0, 0, "", "", found, expected, "")));
    }

    static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }

    /**
     * How it is written.
     *
     * @return separator and decimal mark
     */
    public TableForm form() {
        return form;
    }

    /**
     * The file.
     *
     * @return its path
     */
    public Path path() {
        return path;
    }

    /**
     * How many rows it has, good or bad.
     *
     * @return lines under the head that are neither blank nor comments
     */
    public int size() {
        return size;
    }

    /**
     * Whether it has a column for the place of each pole.
     *
     * @return true with a column {@code site.latitude}
     */
    public boolean isLocated() {
        return located;
    }

    /**
     * The columns.
     *
     * @return in the order of the table
     */
    public List<SiteColumn> columns() {
        return reader.columns();
    }

    /** What identifies its content. */
    String contentSha256() {
        return sha256;
    }

    /** Goes through the rows in their order until the visitor says stop. */
    void rows(BiFunction<Integer, TableRow, Boolean> visitor) {
        try (InputStream in = Files.newInputStream(path);
                TableLines lines = new TableLines(in)) {
            Map<String, Integer> poles = new HashMap<>();
            int index = 0;
            for (TableLine line = lines.next(); line != null; line = lines.next()) {
                if (line.number() <= headLine || line.isComment() || line.isBlank()) {
                    continue;
                }
                TableRow row = row(line, poles);
                if (!visitor.apply(index++, row)) {
                    return;
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private TableRow row(TableLine line, Map<String, Integer> poles) {
        TableLine.Cells cells = line.cells(form.separator());
        if (!cells.fault().isEmpty()) {
            return new TableRow(line.number(), "", List.of(), Optional.of(new Reason(0, "", cells.fault(), "")));
        }
        String pole = "";
        int column = 0;
        for (String name : NAMES) {
            for (int i = 0; i < columns().size() && pole.isEmpty(); i++) {
                if (columns().get(i).path().equals(name) && i < cells.cells().size()) {
                    pole = cells.cells().get(i).strip();
                    column = i + 1;
                }
            }
        }
        if (pole.isEmpty()) {
            Reason nameless = new Reason(0, "", "this row does not say which pole it is", "site.pole");
            return new TableRow(line.number(), "", cells.cells(), Optional.of(nameless));
        }
        Integer first = poles.putIfAbsent(pole, line.number());
        return new TableRow(
                line.number(),
                pole,
                cells.cells(),
                first == null
                        ? Optional.empty()
                        : Optional.of(new Reason(
                                column,
                                columns().get(column - 1).head(),
                                "the pole \"" + pole + "\" stands already in row " + first,
                                "one row a pole")));
    }

    /** The site of a row, or why there is none. */
    PoleSite site(TableRow row) {
        if (row.fault().isPresent()) {
            return new PoleSite(null, List.of(row.fault().get()));
        }
        SiteRows.Row read = reader.read(row.number(), row.cells());
        if (read instanceof SiteRows.Row.Read good) {
            return new PoleSite(good.site(), List.of());
        }
        return new PoleSite(
                null,
                ((SiteRows.Row.Refused) read)
                        .problems().stream().map(this::reason).toList());
    }

    private Reason reason(Problem problem) {
        boolean here = problem.file().equals(path.toString());
        boolean inCell =
                here && problem.column() > 0 && problem.column() <= columns().size();
        boolean own = inCell && columns().get(problem.column() - 1).path().equals(problem.key());
        String key = problem.key().isEmpty() || own ? "" : problem.key() + ": ";
        return new Reason(
                inCell ? problem.column() : 0,
                inCell ? columns().get(problem.column() - 1).head() : "",
                (here ? "" : problem.file() + ": ") + key + problem.found(),
                problem.nearest().isEmpty() ? problem.expected() : problem.nearest());
    }

    /**
     * The site of one row.
     *
     * @param pole number or name of the pole as the table gives it
     * @return the site, or the reasons why there is none
     */
    public Found find(String pole) {
        List<Found> found = new ArrayList<>();
        rows((index, row) -> {
            if (!row.pole().equals(pole)) {
                return true;
            }
            PoleSite read = site(row);
            Site site = read.site();
            found.add(
                    site != null
                            ? new Found.One(site)
                            : new Found.Refused(read.reasons().stream()
                                    .map(reason -> reason.text(name(), row.number()))
                                    .toList()));
            return false;
        });
        return found.isEmpty()
                ? new Found.Refused(List.of(name() + ": no row has the pole \"" + pole + '"'))
                : found.get(0);
    }

    /** The name of the file without its folder, so that results do not depend on where it was asked for. */
    String name() {
        return String.valueOf(path.getFileName());
    }

    /** One row of the table that was looked for. */
    public sealed interface Found {
        /**
         * The row is a site.
         *
         * @param site the site
         */
        record One(Site site) implements Found {}

        /**
         * There is no such row, or it is refused.
         *
         * @param reasons why, one line each
         */
        record Refused(List<String> reasons) implements Found {
            /**
             * Copies the reasons.
             *
             * @param reasons why, one line each
             */
            public Refused {
                reasons = List.copyOf(reasons);
            }
        }
    }

    /** A line of the table with its cells. */
    record TableRow(int number, String pole, List<String> cells, Optional<Reason> fault) {}

    /** What came of reading a row. */
    record PoleSite(@Nullable Site site, List<Reason> reasons) {}
}
