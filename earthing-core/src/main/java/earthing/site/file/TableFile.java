package earthing.site.file;

import de.siegmar.fastcsv.reader.CommentStrategy;
import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import de.siegmar.fastcsv.reader.FieldMismatchStrategy;
import earthing.quantity.ColumnTable;
import earthing.quantity.Quantity;
import earthing.quantity.UnitException;
import earthing.site.Key;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * Reads a file of columns that a site file or a command names: comma- or semicolon-separated values in UTF-8, a head line
 * with the unit of each column in brackets, {@code #} before a comment. A decimal comma has to be declared by the line
 * {@code # decimal: comma}; there a point is refused. A row ends with its line, in quotation marks too. A file with a bad row
 * is refused, with file, row and column.
 */
final class TableFile {

    /** No table of a pole site is longer. */
    private static final int MOST_ROWS = 200_000;

    private static final Pattern HEAD = Pattern.compile("([^\\[\\]]+?)\\s*(?:\\[\\s*([^\\]]*?)\\s*\\])?");
    private static final Pattern COMMA_DECLARED =
            Pattern.compile("(?m)^\\s*#\\s*decimal\\s*:\\s*comma\\s*$", Pattern.CASE_INSENSITIVE);

    /**
     * What was read: the good rows, even where others are bad, so that all problems are told at once.
     *
     * @param table the good rows, null if there are none or the head line is bad
     * @param headLine line of the head line
     * @param lines line of each row
     */
    record Read(@Nullable ColumnTable table, int headLine, List<Integer> lines) {}

    /** Where a column stands in this file. */
    private record Field(int index, String unit) {}

    private final Key key;
    private final List<Key.Column> wanted;
    private final ProblemList problems;
    private final Map<String, Field> fields = new HashMap<>();
    private final Map<String, List<Double>> values = new LinkedHashMap<>();
    private final Map<String, List<String>> texts = new LinkedHashMap<>();
    private final List<Integer> lines = new ArrayList<>();
    private boolean decimalComma;
    private int width;
    private int headLine;

    private TableFile(Key key, ProblemList problems) {
        this.key = key;
        this.wanted = List.of(key.columns());
        this.problems = problems;
    }

    /**
     * Reads a table.
     *
     * @param file name of the file
     * @param bytes its content
     * @param key the key that names it, with its columns
     * @param problems where problems go; they name the side file
     * @return the good rows
     */
    static Read read(String file, byte[] bytes, Key key, ProblemList problems) {
        TableFile table = new TableFile(key, problems);
        if (bytes.length > SiteFile.LARGEST) {
            problems.add(Place.WHOLE_FILE, "this file is larger than " + SiteFile.LARGEST + " bytes");
        } else {
            String text = SiteFile.decode(bytes, problems);
            if (text != null) {
                table.lines(text);
            }
        }
        return new Read(
                table.lines.isEmpty() ? null : new ColumnTable(file, SiteFile.sha256(bytes), table.values, table.texts),
                table.headLine,
                List.copyOf(table.lines));
    }

    /**
     * Reads a table with what its rows are together.
     *
     * @param file name of the file
     * @param bytes its content
     * @param key the key that names it, with its columns
     * @param problems where problems go; they name the side file
     * @return the table, null if there is a problem
     */
    static @Nullable ColumnTable checked(String file, byte[] bytes, Key key, ProblemList problems) {
        Read read = read(file, bytes, key, problems);
        switch (key.content()) {
            case NUMBERS -> {}
            case SURVEY -> SurveyFile.check(read, problems);
            case WAVE -> WaveFile.check(read, problems);
        }
        return problems.isEmpty() ? read.table() : null;
    }

    /** The head line that a key expects, as a phrase for a message; what may be left out stands in parentheses. */
    static String head(Key key) {
        return Arrays.stream(key.columns())
                .map(column -> column.required() ? example(column) : '(' + example(column) + ')')
                .collect(Collectors.joining(","));
    }

    private static String example(Key.Column column) {
        return column.text()
                ? column.name()
                : column.name() + " [" + column.unit().siUnit() + ']';
    }

    private void lines(String text) {
        decimalComma = COMMA_DECLARED.matcher(text).find();
        char separator = text.lines()
                        .filter(line -> !line.isBlank() && !line.strip().startsWith("#"))
                        .findFirst()
                        .orElse("")
                        .contains(";")
                ? ';'
                : ',';
        if (decimalComma && separator == ',') {
            problems.add(Place.WHOLE_FILE, "a decimal comma is declared; separate the columns by semicolons");
            return;
        }
        try {
            for (CsvRecord line : CsvReader.builder()
                    .fieldSeparator(separator)
                    .commentStrategy(CommentStrategy.SKIP)
                    .extraFieldStrategy(FieldMismatchStrategy.IGNORE)
                    .missingFieldStrategy(FieldMismatchStrategy.IGNORE)
                    .ofCsvRecord(text)) {
                int number = (int) line.getStartingLineNumber();
                if (line.getFields().stream().anyMatch(TableFile::isBroken)) {
                    // A mark that is never closed would swallow the rows below it.
                    problems.add(
                            new Place(number, 1),
                            "",
                            "",
                            "a quotation mark of this row is not closed in its line",
                            "each row in a line of its own");
                    return;
                }
                if (headLine == 0) {
                    headLine = number;
                    if (!head(line, number)) {
                        return;
                    }
                } else if (!line.getFields().stream().allMatch(String::isBlank)) {
                    row(line, number);
                }
                if (problems.isFull()) {
                    return;
                }
            }
        } catch (CsvParseException e) {
            problems.add(Place.WHOLE_FILE, "this is no table of separated values: " + e.getMessage());
            return;
        }
        if (headLine == 0) {
            problems.add(Place.WHOLE_FILE, "there is nothing in this file");
        } else if (problems.isEmpty() && lines.size() < key.rows()) {
            problems.add(
                    Place.WHOLE_FILE,
                    "",
                    "",
                    "there are fewer than " + key.rows() + " rows under the head line",
                    key.rows() + " or more");
        } else if (lines.size() > MOST_ROWS) {
            problems.add(Place.WHOLE_FILE, "there are more than " + MOST_ROWS + " rows");
        } else {
            wanted.forEach(this::order);
        }
    }

    private static boolean isBroken(String cell) {
        return cell.indexOf('\n') >= 0 || cell.indexOf('\r') >= 0;
    }

    private boolean head(CsvRecord line, int number) {
        width = line.getFieldCount();
        for (int i = 0; i < width; i++) {
            if (!column(line.getField(i).strip(), i, new Place(number, i + 1))) {
                return false;
            }
        }
        List<String> missing = wanted.stream()
                .filter(column -> column.required() && !fields.containsKey(column.name()))
                .map(TableFile::example)
                .toList();
        if (missing.isEmpty() && values.isEmpty()) {
            problems.add(
                    new Place(number, 1),
                    "",
                    "",
                    "the head line has no column of numbers",
                    wanted.stream().map(TableFile::example).collect(Collectors.joining(", ")));
            return false;
        }
        if (!missing.isEmpty()) {
            problems.add(
                    new Place(number, 1),
                    "",
                    "",
                    "the head line lacks a column",
                    missing.stream().collect(Collectors.joining(", ")));
            return false;
        }
        return true;
    }

    private boolean column(String text, int index, Place place) {
        Matcher matcher = HEAD.matcher(text);
        boolean shaped = matcher.matches();
        String word = shaped ? matcher.group(1).strip() : text;
        String unit = shaped && matcher.group(2) != null ? matcher.group(2) : "";
        for (Key.Column column : wanted) {
            if (!column.name().equalsIgnoreCase(word)) {
                continue;
            }
            if (!column.text() && !column.unit().factors().containsKey(unit)) {
                problems.add(
                        place,
                        column.name(),
                        text,
                        unit.isEmpty() ? "the unit is missing" : "unknown unit " + Problem.quote(unit),
                        example(column));
                return false;
            }
            if (fields.putIfAbsent(column.name(), new Field(index, unit)) != null) {
                problems.add(place, column.name(), text, "this column stands here twice", "");
                return false;
            }
            if (column.text()) {
                texts.put(column.name(), new ArrayList<>());
            } else {
                values.put(column.name(), new ArrayList<>());
            }
            return true;
        }
        problems.add(
                place,
                "",
                text,
                "unknown column " + Problem.quote(text),
                wanted.stream().map(TableFile::example).collect(Collectors.joining(", ")));
        return false;
    }

    private void row(CsvRecord line, int number) {
        if (line.getFieldCount() != width) {
            problems.add(
                    new Place(number, 1),
                    "",
                    "",
                    "this row has " + line.getFieldCount() + " values, the head line " + width,
                    decimalComma ? "" : "one value a column; a decimal comma is declared by # decimal: comma");
            return;
        }
        Map<String, Double> row = new HashMap<>();
        boolean good = true;
        for (Key.Column column : wanted) {
            Field field = fields.get(column.name());
            if (field != null && !column.text()) {
                OptionalDouble value =
                        value(column, field, line.getField(field.index()).strip(), place(column, number));
                good &= value.isPresent();
                value.ifPresent(number1 -> row.put(column.name(), number1));
            }
        }
        if (good) {
            lines.add(number);
            values.forEach((name, column) -> column.add(row.get(name)));
            texts.forEach((name, column) -> {
                Field field = fields.get(name);
                column.add(field == null ? "" : line.getField(field.index()).strip());
            });
        }
    }

    private Place place(Key.Column column, int line) {
        Field field = fields.get(column.name());
        return new Place(line, field == null ? 1 : field.index() + 1);
    }

    private OptionalDouble value(Key.Column column, Field field, String text, Place place) {
        if (!decimalComma && text.contains(",")) {
            problems.add(
                    place,
                    column.name(),
                    text,
                    Problem.quote(text) + " has a comma",
                    "a decimal point, or the line # decimal: comma at the head of the file");
            return OptionalDouble.empty();
        }
        if (decimalComma && text.contains(".")) {
            // Where the comma is decimal, a point parts thousands: 1.250 may mean either.
            problems.add(
                    place,
                    column.name(),
                    text,
                    Problem.quote(text) + " has a point, and a decimal comma is declared",
                    "a decimal comma, and no mark between thousands");
            return OptionalDouble.empty();
        }
        double value;
        try {
            String plain = decimalComma ? text.replace(',', '.') : text;
            value = Quantity.parse(plain + ' ' + field.unit(), column.unit(), OptionalDouble.empty())
                    .si();
        } catch (UnitException e) {
            problems.add(
                    place,
                    column.name(),
                    text,
                    text.isEmpty() ? "there is no value" : Problem.quote(text) + " is no number",
                    "a number without unit, such as 2.5; the unit stands in the head line");
            return OptionalDouble.empty();
        }
        boolean tooLow = switch (column.sign()) {
            case POSITIVE -> !(value > 0);
            case NOT_NEGATIVE -> !(value >= 0);
            case ANY -> false;
        };
        if (tooLow) {
            String than = column.sign() == Key.Sign.POSITIVE ? " is not above zero" : " is below zero";
            problems.add(place, column.name(), text, Problem.quote(text) + than, "");
            return OptionalDouble.empty();
        }
        return OptionalDouble.of(value);
    }

    private void order(Key.Column column) {
        List<Double> numbers = values.getOrDefault(column.name(), List.of());
        for (int i = 1; i < numbers.size(); i++) {
            double before = numbers.get(i - 1);
            double here = numbers.get(i);
            boolean good = switch (column.order()) {
                case ANY -> true;
                case RISING -> here > before;
                case NOT_RISING -> here <= before;
            };
            if (!good) {
                problems.add(
                        place(column, lines.get(i)),
                        column.name(),
                        "",
                        column.order() == Key.Order.RISING
                                ? "this value does not rise above the one before"
                                : "this value rises above the one before",
                        "");
            }
        }
    }
}
