package earthing.site.file;

import de.siegmar.fastcsv.reader.CommentStrategy;
import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import de.siegmar.fastcsv.reader.FieldMismatchStrategy;
import earthing.quantity.Dimension;
import earthing.quantity.Quantity;
import earthing.quantity.UnitException;
import earthing.soil.ElectrodeArray;
import earthing.soil.Reading;
import earthing.soil.Schlumberger;
import earthing.soil.Wenner;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.EnumMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Reads the readings of a soil survey: lines of comma- or semicolon-separated values in UTF-8, a head line with units,
 * {@code #} before a comment. Columns: {@code spacing [m]} for Wenner or {@code AB/2 [m]} and {@code MN/2 [m]} for
 * Schlumberger; {@code resistance [ohm]} or {@code resistivity [ohm.m]}; and, where wanted, {@code traverse} and
 * {@code probe depth [m]} (the depth to which the probes were driven; two thirds of it is taken). A decimal comma has to
 * be declared by the line {@code # decimal: comma}. No row is dropped silently: a file with a bad row is refused, and
 * the author may put {@code #} before it.
 */
public final class SurveyFile {

    private static final Pattern HEAD = Pattern.compile("([^\\[\\]]+?)\\s*(?:\\[\\s*([^\\]]*?)\\s*\\])?");
    private static final Pattern COMMA_DECLARED =
            Pattern.compile("(?m)^\\s*#\\s*decimal\\s*:\\s*comma\\s*$", Pattern.CASE_INSENSITIVE);

    /** What a column holds. */
    private enum Column {
        TRAVERSE("traverse", null, ""),
        SPACING("spacing", Dimension.LENGTH, "spacing [m]"),
        HALF_CURRENT("ab/2", Dimension.LENGTH, "AB/2 [m]"),
        HALF_POTENTIAL("mn/2", Dimension.LENGTH, "MN/2 [m]"),
        DEPTH("probe depth", Dimension.LENGTH, "probe depth [m]"),
        RESISTANCE("resistance", Dimension.RESISTANCE, "resistance [ohm]"),
        RESISTIVITY("resistivity", Dimension.RESISTIVITY, "resistivity [ohm.m]");

        private final String word;

        private final @Nullable Dimension dimension;

        private final String example;

        Column(String word, @Nullable Dimension dimension, String example) {
            this.word = word;
            this.dimension = dimension;
            this.example = example;
        }
    }

    /** A column of this file. */
    private record Field(int index, String unit) {}

    private final ProblemList problems;
    private final boolean decimalComma;
    private final Map<Column, Field> columns = new EnumMap<>(Column.class);
    private final SurveyRows rows;
    private int width;

    private SurveyFile(String name, ProblemList problems, boolean decimalComma) {
        this.problems = problems;
        this.decimalComma = decimalComma;
        rows = new SurveyRows(name, problems);
    }

    /**
     * Reads a file.
     *
     * @param path the file; its text names it in problems
     * @param expected the arrangement that the user named, {@code wenner} or {@code schlumberger}; empty takes what the
     *     columns say
     * @return the soundings, or every problem
     */
    public static SurveyOutcome read(Path path, Optional<String> expected) {
        ProblemList problems = new ProblemList(path.toString());
        byte[] bytes = SiteFile.bytes(path, problems);
        return bytes == null
                ? new SurveyOutcome.Invalid(problems.inOrderOfFile())
                : read(bytes, path.toString(), expected);
    }

    /**
     * Reads a text.
     *
     * @param text content of a file
     * @param name name of the file for problems
     * @param expected the arrangement that the user named; empty takes what the columns say
     * @return the soundings, or every problem
     */
    public static SurveyOutcome read(String text, String name, Optional<String> expected) {
        return read(text.getBytes(StandardCharsets.UTF_8), name, expected);
    }

    private static SurveyOutcome read(byte[] bytes, String name, Optional<String> expected) {
        ProblemList problems = new ProblemList(name);
        if (bytes.length > SiteFile.LARGEST) {
            problems.add(
                    Place.WHOLE_FILE, "this file is larger than " + SiteFile.LARGEST + " bytes and no survey file");
            return new SurveyOutcome.Invalid(problems.inOrderOfFile());
        }
        String text = SiteFile.decode(bytes, problems);
        if (text == null) {
            return new SurveyOutcome.Invalid(problems.inOrderOfFile());
        }
        SurveyFile file =
                new SurveyFile(name, problems, COMMA_DECLARED.matcher(text).find());
        file.lines(text, expected);
        if (!problems.isEmpty()) {
            return new SurveyOutcome.Invalid(problems.inOrderOfFile());
        }
        return new SurveyOutcome.Valid(file.array(), file.rows.soundings(), file.rows.warnings());
    }

    private String array() {
        return columns.containsKey(Column.HALF_CURRENT) ? "Schlumberger" : "Wenner";
    }

    private void lines(String text, Optional<String> expected) {
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
        boolean head = true;
        try {
            for (CsvRecord line : CsvReader.builder()
                    .fieldSeparator(separator)
                    .commentStrategy(CommentStrategy.SKIP)
                    .extraFieldStrategy(FieldMismatchStrategy.IGNORE)
                    .missingFieldStrategy(FieldMismatchStrategy.IGNORE)
                    .ofCsvRecord(text)) {
                int number = (int) line.getStartingLineNumber();
                if (head) {
                    head = false;
                    if (!head(line, number, expected)) {
                        return;
                    }
                } else if (!line.getFields().stream().allMatch(String::isBlank)) {
                    row(line, number);
                }
            }
        } catch (CsvParseException e) {
            problems.add(Place.WHOLE_FILE, "this is no table of separated values: " + e.getMessage());
            return;
        }
        if (head) {
            problems.add(Place.WHOLE_FILE, "there is nothing in this file");
        } else {
            rows.check();
        }
    }

    private boolean head(CsvRecord line, int number, Optional<String> expected) {
        boolean good = true;
        width = line.getFieldCount();
        for (int i = 0; i < width; i++) {
            good &= column(line.getField(i).strip(), i, new Place(number, i + 1));
        }
        if (!good) {
            return false;
        }
        boolean wenner = columns.containsKey(Column.SPACING);
        boolean schlumberger = columns.containsKey(Column.HALF_CURRENT) && columns.containsKey(Column.HALF_POTENTIAL);
        if (wenner == schlumberger) {
            return missing(number, "either spacing [m], or AB/2 [m] and MN/2 [m]");
        }
        if (columns.containsKey(Column.RESISTANCE) == columns.containsKey(Column.RESISTIVITY)) {
            return missing(number, "either resistance [ohm] or resistivity [ohm.m]");
        }
        if (schlumberger && columns.containsKey(Column.DEPTH)) {
            return missing(number, "no probe depth: it is taken into account for Wenner arrays only");
        }
        if (expected.isPresent() && !expected.get().equals(array().toLowerCase(Locale.ROOT))) {
            return missing(number, "the columns of a " + expected.get() + " array");
        }
        return true;
    }

    private boolean missing(int line, String expected) {
        problems.add(new Place(line, 1), "", "", "the columns of this head line do not suffice", expected);
        return false;
    }

    private boolean column(String text, int index, Place place) {
        Matcher matcher = HEAD.matcher(text);
        String word = matcher.matches() ? matcher.group(1).strip().toLowerCase(Locale.ROOT) : text;
        String unit = matcher.matches() && matcher.group(2) != null ? matcher.group(2) : "";
        for (Column column : Column.values()) {
            if (!column.word.equals(word)) {
                continue;
            }
            if (columns.containsKey(column)) {
                problems.add(place, column.word, text, "this column stands here twice", "");
                return false;
            }
            Dimension dimension = column.dimension;
            if (dimension != null && !dimension.factors().containsKey(unit)) {
                problems.add(
                        place,
                        column.word,
                        text,
                        unit.isEmpty() ? "the unit is missing" : "unknown unit " + Problem.quote(unit),
                        column.example);
                return false;
            }
            columns.put(column, new Field(index, unit));
            return true;
        }
        problems.add(
                place,
                "",
                text,
                "unknown column " + Problem.quote(text),
                "traverse, spacing [m], AB/2 [m], MN/2 [m], probe depth [m], resistance [ohm] or resistivity [ohm.m]");
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
        Map<Column, Double> values = new EnumMap<>(Column.class);
        for (Map.Entry<Column, Field> entry : columns.entrySet()) {
            if (entry.getKey() != Column.TRAVERSE) {
                OptionalDouble value = value(line, number, entry.getKey(), entry.getValue());
                if (value.isEmpty()) {
                    return;
                }
                values.put(entry.getKey(), value.getAsDouble());
            }
        }
        Field traverse = columns.get(Column.TRAVERSE);
        try {
            ElectrodeArray array = array(values);
            Double resistance = values.get(Column.RESISTANCE);
            Reading reading = resistance == null
                    ? new Reading(array, values.getOrDefault(Column.RESISTIVITY, Double.NaN))
                    : Reading.ofResistance(array, resistance);
            rows.add(
                    number,
                    traverse == null ? "" : line.getField(traverse.index()).strip(),
                    reading);
        } catch (IllegalArgumentException impossible) {
            problems.add(new Place(number, 1), String.valueOf(impossible.getMessage()));
        }
    }

    private static ElectrodeArray array(Map<Column, Double> values) {
        Double spacing = values.get(Column.SPACING);
        if (spacing != null) {
            return Wenner.driven(spacing, values.getOrDefault(Column.DEPTH, 0.0));
        }
        return new Schlumberger(
                values.getOrDefault(Column.HALF_CURRENT, Double.NaN),
                values.getOrDefault(Column.HALF_POTENTIAL, Double.NaN));
    }

    private OptionalDouble value(CsvRecord line, int number, Column column, Field where) {
        Dimension dimension = column.dimension;
        String text = line.getField(where.index()).strip();
        Place place = new Place(number, where.index() + 1);
        if (!decimalComma && text.contains(",")) {
            problems.add(
                    place,
                    column.word,
                    text,
                    Problem.quote(text) + " has a comma",
                    "a decimal point, or the line # decimal: comma at the head of the file");
            return OptionalDouble.empty();
        }
        String plain = decimalComma ? text.replace(',', '.') : text;
        double value;
        try {
            if (dimension == null) {
                throw new UnitException("this column holds no numbers");
            }
            value = Quantity.parse(plain + " " + where.unit(), dimension, OptionalDouble.empty())
                    .si();
        } catch (UnitException e) {
            problems.add(
                    place,
                    column.word,
                    text,
                    text.isEmpty() ? "there is no value" : Problem.quote(text) + " is no number",
                    "a number without unit, such as 2.5; the unit stands in the head line");
            return OptionalDouble.empty();
        }
        if (!(value > 0 || (column == Column.DEPTH && value == 0))) {
            problems.add(place, column.word, text, Problem.quote(text) + " is not above 0", "");
            return OptionalDouble.empty();
        }
        return OptionalDouble.of(value);
    }
}
