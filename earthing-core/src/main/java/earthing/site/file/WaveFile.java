package earthing.site.file;

import de.siegmar.fastcsv.reader.CommentStrategy;
import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import de.siegmar.fastcsv.reader.FieldMismatchStrategy;
import earthing.quantity.Dimension;
import earthing.quantity.Quantity;
import earthing.quantity.UnitException;
import earthing.surge.SampledImpulse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Reads a recorded surge current: two columns of comma- or semicolon-separated values in UTF-8 under a head line with
 * units, {@code time [us], current [kA]} in either order, {@code #} before a comment. A decimal comma has to be declared
 * by the line {@code # decimal: comma}, with semicolons between the columns. No row is dropped silently.
 */
public final class WaveFile {

    private static final String EXAMPLE = "time [us], current [kA]";
    private static final Pattern HEAD = Pattern.compile("([^\\[\\]]+?)\\s*\\[\\s*([^\\]]*?)\\s*\\]");
    private static final Pattern COMMA_DECLARED =
            Pattern.compile("(?m)^\\s*#\\s*decimal\\s*:\\s*comma\\s*$", Pattern.CASE_INSENSITIVE);
    private static final int LEAST = 3;

    private final ProblemList problems;
    private final boolean decimalComma;
    private final List<double[]> rows = new ArrayList<>();
    private final String[] units = {"", ""};
    private int timeColumn = -1;

    private WaveFile(ProblemList problems, boolean decimalComma) {
        this.problems = problems;
        this.decimalComma = decimalComma;
    }

    /** What came of reading. */
    public sealed interface Outcome {}

    /**
     * A current that can be studied.
     *
     * @param impulse the current [A] over time [s]
     */
    public record Read(SampledImpulse impulse) implements Outcome {}

    /**
     * A file that was refused.
     *
     * @param problems every problem, in order of the file
     */
    public record Refused(List<Problem> problems) implements Outcome {

        /**
         * Copies the list.
         *
         * @param problems every problem, in order of the file
         */
        public Refused {
            problems = List.copyOf(problems);
        }
    }

    /**
     * Reads a file beside a site file.
     *
     * @param site the site file
     * @param name name of the file, without folders
     * @return the current, or every problem
     */
    public static Outcome beside(Path site, String name) {
        ProblemList problems = new ProblemList(site.toString());
        if (name.contains("/") || name.contains("\\") || name.equals("..") || name.isBlank()) {
            problems.add(
                    Place.WHOLE_FILE,
                    "surges.own-wave",
                    name,
                    Problem.quote(name) + " is no plain name of a file",
                    "a file in the folder of the site file");
            return new Refused(problems.inOrderOfFile());
        }
        return read(site.resolveSibling(name));
    }

    /**
     * Reads a file.
     *
     * @param path the file; its text names it in problems
     * @return the current, or every problem
     */
    public static Outcome read(Path path) {
        ProblemList problems = new ProblemList(path.toString());
        byte[] bytes = SiteFile.bytes(path, problems);
        return bytes == null ? new Refused(problems.inOrderOfFile()) : read(bytes, problems);
    }

    /**
     * Reads a text.
     *
     * @param text content of a file
     * @param name name of the file for problems
     * @return the current, or every problem
     */
    public static Outcome read(String text, String name) {
        return read(text.getBytes(StandardCharsets.UTF_8), new ProblemList(name));
    }

    private static Outcome read(byte[] bytes, ProblemList problems) {
        if (bytes.length > SiteFile.LARGEST) {
            problems.add(Place.WHOLE_FILE, "this file is larger than " + SiteFile.LARGEST + " bytes and no wave file");
            return new Refused(problems.inOrderOfFile());
        }
        String text = SiteFile.decode(bytes, problems);
        SampledImpulse impulse = text == null
                ? null
                : new WaveFile(problems, COMMA_DECLARED.matcher(text).find()).impulse(text);
        return impulse == null || !problems.isEmpty() ? new Refused(problems.inOrderOfFile()) : new Read(impulse);
    }

    private @Nullable SampledImpulse impulse(String text) {
        char separator = text.lines()
                        .filter(line -> !line.isBlank() && !line.strip().startsWith("#"))
                        .findFirst()
                        .orElse("")
                        .contains(";")
                ? ';'
                : ',';
        if (decimalComma && separator == ',') {
            problems.add(Place.WHOLE_FILE, "a decimal comma is declared; separate the columns by semicolons");
            return null;
        }
        try {
            for (CsvRecord line : CsvReader.builder()
                    .fieldSeparator(separator)
                    .commentStrategy(CommentStrategy.SKIP)
                    .extraFieldStrategy(FieldMismatchStrategy.IGNORE)
                    .missingFieldStrategy(FieldMismatchStrategy.IGNORE)
                    .ofCsvRecord(text)) {
                int number = (int) line.getStartingLineNumber();
                if (timeColumn < 0) {
                    if (!head(line, number)) {
                        return null;
                    }
                } else if (!line.getFields().stream().allMatch(String::isBlank)) {
                    row(line, number);
                }
                if (problems.isFull()) {
                    return null;
                }
            }
        } catch (CsvParseException e) {
            problems.add(Place.WHOLE_FILE, "this is no table of separated values: " + e.getMessage());
            return null;
        }
        return assembled();
    }

    private @Nullable SampledImpulse assembled() {
        if (!problems.isEmpty()) {
            return null;
        }
        if (rows.size() < LEAST) {
            problems.add(
                    Place.WHOLE_FILE,
                    "there are " + rows.size() + " samples in this file; expected a head line such as " + EXAMPLE
                            + " and at least " + LEAST + " rows");
            return null;
        }
        double[] times = rows.stream().mapToDouble(r -> r[0]).toArray();
        double[] currents = rows.stream().mapToDouble(r -> r[1]).toArray();
        try {
            return new SampledImpulse(times, currents);
        } catch (IllegalArgumentException e) {
            problems.add(Place.WHOLE_FILE, String.valueOf(e.getMessage()));
            return null;
        }
    }

    private boolean head(CsvRecord line, int number) {
        if (line.getFieldCount() != 2) {
            problems.add(
                    new Place(number, 1),
                    "",
                    "",
                    "this head line has " + line.getFieldCount() + " columns",
                    "two, " + EXAMPLE);
            return false;
        }
        boolean good = true;
        boolean time = false;
        boolean current = false;
        for (int i = 0; i < 2; i++) {
            String text = line.getField(i).strip();
            Matcher matcher = HEAD.matcher(text);
            String word = matcher.matches() ? matcher.group(1).strip().toLowerCase(Locale.ROOT) : "";
            Dimension dimension = word.equals("time") ? Dimension.TIME : Dimension.CURRENT;
            boolean known = word.equals("time") || word.equals("current");
            if (!known || !dimension.factors().containsKey(matcher.group(2))) {
                problems.add(
                        new Place(number, i + 1),
                        "",
                        text,
                        Problem.quote(text) + " is no column of a wave",
                        EXAMPLE + ", each with its unit in brackets");
                good = false;
                continue;
            }
            units[i] = matcher.group(2);
            time |= word.equals("time");
            current |= word.equals("current");
            timeColumn = word.equals("time") ? i : timeColumn;
        }
        if (good && !(time && current)) {
            problems.add(new Place(number, 1), "", "", "one column stands here twice", EXAMPLE);
            good = false;
        }
        return good;
    }

    private void row(CsvRecord line, int number) {
        if (line.getFieldCount() != 2) {
            problems.add(
                    new Place(number, 1),
                    "",
                    "",
                    "this row has " + line.getFieldCount() + " values",
                    "two" + (decimalComma ? "" : "; a decimal comma is declared by # decimal: comma"));
            return;
        }
        OptionalDouble time = value(line, number, timeColumn, Dimension.TIME);
        OptionalDouble current = value(line, number, 1 - timeColumn, Dimension.CURRENT);
        if (time.isEmpty() || current.isEmpty()) {
            return;
        }
        double before = rows.isEmpty() ? Double.NEGATIVE_INFINITY : rows.get(rows.size() - 1)[0];
        if (!(time.getAsDouble() >= 0) || !(time.getAsDouble() > before)) {
            problems.add(
                    new Place(number, timeColumn + 1),
                    "time",
                    line.getField(timeColumn),
                    "times have to rise from row to row, beginning at 0 or later",
                    "");
            return;
        }
        rows.add(new double[] {time.getAsDouble(), current.getAsDouble()});
    }

    private OptionalDouble value(CsvRecord line, int number, int column, Dimension dimension) {
        String text = line.getField(column).strip();
        String word = dimension == Dimension.TIME ? "time" : "current";
        Place place = new Place(number, column + 1);
        if (!decimalComma && text.contains(",")) {
            problems.add(
                    place,
                    word,
                    text,
                    Problem.quote(text) + " has a comma",
                    "a decimal point, or the line # decimal: comma at the head of the file");
            return OptionalDouble.empty();
        }
        try {
            String plain = decimalComma ? text.replace(',', '.') : text;
            double value = Quantity.parse(plain + " " + units[column], dimension, OptionalDouble.empty())
                    .si();
            if (Double.isFinite(value)) {
                return OptionalDouble.of(value);
            }
        } catch (UnitException e) {
            // Told below, with the place.
        }
        problems.add(
                place,
                word,
                text,
                text.isEmpty() ? "there is no value" : Problem.quote(text) + " is no number",
                "a number without unit, such as 2.5; the unit stands in the head line");
        return OptionalDouble.empty();
    }
}
