package earthing.site.file;

import earthing.quantity.ColumnTable;
import earthing.quantity.Dimension;
import earthing.quantity.Measure;
import earthing.quantity.Quantity;
import earthing.quantity.UnitException;
import earthing.site.Key;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/** Reads single values: a quantity with its bounds, a text, a whole number, a word. */
final class ValueReader {

    static final String LOW = "low";
    static final String NOMINAL = "nominal";
    static final String HIGH = "high";
    static final String ORIGIN = "origin";
    static final String DATE = "date";
    static final String BY = "by";

    /** The keys of a value with bounds, in the order in which they are written. */
    static final List<String> MEASURE_KEYS = List.of(LOW, NOMINAL, HIGH, ORIGIN, DATE, BY);

    static final String UNKNOWN = "unknown";

    /** No number with a unit is longer; a longer text is not looked at. */
    private static final int LONGEST_QUANTITY = 60;

    private final ProblemList problems;
    private final Facts facts;
    private final OptionalDouble frequency;
    private final SideFiles sideFiles;

    ValueReader(ProblemList problems, Facts facts, OptionalDouble frequency, SideFiles sideFiles) {
        this.problems = problems;
        this.facts = facts;
        this.frequency = frequency;
        this.sideFiles = sideFiles;
    }

    /** The value of a key that takes no block; null if there is a problem with it. */
    @Nullable
    Object read(Entry entry, Tree tree, String path) {
        return switch (entry.kind()) {
            case QUANTITY -> measure(entry, tree, path);
            case TEXT -> text(entry, tree, path);
            case NUMBER -> number(entry, tree, path);
            case WORD -> word(entry, tree, path);
            case TABLE -> table(entry, tree, path);
            case BLOCK -> throw new IllegalStateException(path + " is a block");
        };
    }

    /** What a key takes, as a phrase for a message. */
    String expected(Entry entry) {
        Key key = entry.meaning();
        return switch (entry.kind()) {
            case QUANTITY -> Quantity.expected(key.unit());
            case TEXT -> {
                if (key.words().length > 0) {
                    yield "one of " + String.join(", ", key.words());
                }
                yield key.text() == Key.Text.DATE
                        ? "a date such as 2026-03-02"
                        : "a text" + (key.example().isEmpty() ? "" : " such as " + key.example());
            }
            case NUMBER ->
                key.least() == key.most()
                        ? "the number " + key.least()
                        : "a whole number from " + key.least() + " to " + key.most();
            case WORD -> "one of " + String.join(", ", entry.words());
            case TABLE -> "the name of a file in the folder of this one, with the head line " + TableFile.head(key);
            case BLOCK -> "a block with keys of its own";
        };
    }

    /** The words for where a value comes from. */
    static List<String> origins() {
        return Arrays.stream(Measure.Origin.values())
                .filter(origin -> origin != Measure.Origin.UNSTATED)
                .map(Entry::word)
                .toList();
    }

    /** Reports a value of the wrong shape. */
    void refuse(Tree tree, String path, String expected) {
        if (tree instanceof Tree.Scalar scalar) {
            problems.add(
                    tree.place(),
                    path,
                    scalar.text(),
                    scalar.isEmpty()
                            ? "there is no value behind this key"
                            : Problem.quote(scalar.text()) + " does not fit here",
                    expected);
        } else if (tree instanceof Tree.Items) {
            problems.add(tree.place(), path, "", "a list does not fit here", expected);
        } else if (tree instanceof Tree.Pairs) {
            problems.add(tree.place(), path, "", "a block of keys does not fit here", expected);
        }
    }

    /** The text of a value; what was expected is put into words only if there is none. */
    private @Nullable String plain(Entry entry, Tree tree, String path) {
        return isText(tree) ? plain(tree, path, "") : plain(tree, path, expected(entry));
    }

    private static boolean isText(Tree tree) {
        return tree instanceof Tree.Scalar scalar
                && !scalar.isEmpty()
                && !scalar.text().isBlank();
    }

    private @Nullable String plain(Tree tree, String path, String expected) {
        if (tree instanceof Tree.Scalar scalar
                && !scalar.isEmpty()
                && !scalar.text().isBlank()) {
            return scalar.text().strip();
        }
        refuse(tree, path, expected);
        return null;
    }

    private @Nullable Object text(Entry entry, Tree tree, String path) {
        String text = plain(entry, tree, path);
        if (text == null) {
            return null;
        }
        boolean oneLine = entry.meaning().text() != Key.Text.FREE;
        if (!isClean(text, oneLine)) {
            problems.add(
                    tree.place(), path, text, Problem.quote(text) + " contains a character that cannot be printed", "");
            return null;
        }
        if (!entry.words().isEmpty() && !entry.words().contains(text)) {
            problems.add(tree.place(), path, text, Problem.quote(text) + " is not known here", expected(entry));
            return null;
        }
        return entry.meaning().text() == Key.Text.DATE ? date(text, tree, path) : text;
    }

    private @Nullable ColumnTable table(Entry entry, Tree tree, String path) {
        String name = plain(entry, tree, path);
        if (name == null) {
            return null;
        }
        if (!isPlainName(name)) {
            problems.add(tree.place(), path, name, Problem.quote(name) + " is no plain file name", expected(entry));
            return null;
        }
        byte[] bytes = SiteFile.bytes(
                () -> sideFiles.read(name),
                why -> problems.add(tree.place(), path, name, Problem.quote(name) + ": " + why, expected(entry)));
        if (bytes == null) {
            return null;
        }
        ProblemList own = problems.beside(name);
        ColumnTable table = TableFile.checked(name, bytes, entry.meaning(), own);
        problems.include(own);
        return table;
    }

    /** A site file must not lead its reader to other folders. */
    private static boolean isPlainName(String name) {
        return name.length() <= 100
                && isClean(name, true)
                && !name.startsWith(".")
                && name.chars().noneMatch(c -> c == '/' || c == '\\' || c == ':' || c == '\0');
    }

    private static boolean isClean(String text, boolean oneLine) {
        for (int i = 0; i < text.length(); ) {
            int c = text.codePointAt(i);
            boolean lineBreak = c == '\n' && !oneLine;
            boolean half = c >= Character.MIN_SURROGATE && c <= Character.MAX_SURROGATE;
            if ((Character.isISOControl(c) && !lineBreak) || half) {
                return false;
            }
            i += Character.charCount(c);
        }
        return true;
    }

    private @Nullable String date(String text, Tree tree, String path) {
        try {
            // Longer forms with a sign or more digits are legal to the parser, not to a reader of the report.
            if (text.length() == 10 && LocalDate.parse(text).toString().equals(text)) {
                return text;
            }
        } catch (DateTimeException e) {
            // Told below with the others.
        }
        problems.add(
                tree.place(), path, text, Problem.quote(text) + " is no calendar date", "a date such as 2026-03-02");
        return null;
    }

    private @Nullable Integer number(Entry entry, Tree tree, String path) {
        String text = plain(entry, tree, path);
        if (text == null) {
            return null;
        }
        boolean digits = text.length() <= 9 && isDigits(text);
        int value = digits ? Integer.parseInt(text) : -1;
        if (value < entry.meaning().least() || value > entry.meaning().most()) {
            problems.add(
                    tree.place(),
                    path,
                    text,
                    Problem.quote(text) + (digits ? " is out of range" : " is no whole number"),
                    expected(entry));
            return null;
        }
        return value;
    }

    private static boolean isDigits(String text) {
        for (int i = 0; i < text.length(); i++) {
            if (text.charAt(i) < '0' || text.charAt(i) > '9') {
                return false;
            }
        }
        return true;
    }

    private @Nullable Object word(Entry entry, Tree tree, String path) {
        String text = plain(entry, tree, path);
        if (text == null) {
            return null;
        }
        Object constant = entry.constant(text);
        if (constant == null) {
            problems.add(tree.place(), path, text, Problem.quote(text) + " is not known here", expected(entry));
        }
        return constant;
    }

    private @Nullable Measure measure(Entry entry, Tree tree, String path) {
        if (tree instanceof Tree.Pairs pairs) {
            return bounded(entry, pairs, path);
        }
        String text = plain(entry, tree, path);
        if (text == null) {
            return null;
        }
        if (text.equals(UNKNOWN)) {
            return unknown(entry, tree, path, Measure.Origin.UNSTATED, "", "");
        }
        Optional<Quantity> quantity = quantity(entry, text, tree.place(), path);
        return quantity.isPresent() ? Measure.exactly(quantity.get()) : null;
    }

    private @Nullable Measure unknown(
            Entry entry, Tree tree, String path, Measure.Origin origin, String date, String by) {
        Dimension dimension = entry.meaning().unit();
        if (entry.meaning().known()) {
            problems.add(
                    tree.place(),
                    path,
                    UNKNOWN,
                    "nothing can be computed while this is unknown",
                    Quantity.expected(dimension));
            return null;
        }
        return new Measure(dimension, Optional.empty(), origin, date, by);
    }

    private Optional<Quantity> quantity(Entry entry, String text, Place place, String path) {
        Dimension dimension = entry.meaning().unit();
        if (text.length() > LONGEST_QUANTITY) {
            problems.add(
                    place, path, text, Problem.quote(text) + " is no number with a unit", Quantity.expected(dimension));
            return Optional.empty();
        }
        Quantity quantity;
        try {
            quantity = Quantity.parse(text, dimension, frequency);
        } catch (UnitException e) {
            told(e, text, place, path);
            return Optional.empty();
        }
        double value = quantity.si();
        boolean tooLow = switch (entry.meaning().sign()) {
            case POSITIVE -> !(value > 0);
            case NOT_NEGATIVE -> !(value >= 0);
            case ANY -> false;
        };
        if (tooLow) {
            problems.add(
                    place,
                    path,
                    text,
                    Problem.quote(text)
                            + (entry.meaning().sign() == Key.Sign.POSITIVE ? " is not above zero" : " is below zero"),
                    "");
            return Optional.empty();
        }
        return Optional.of(quantity);
    }

    /** Splits the message of the unit reader into what is wrong and what was expected. */
    private void told(UnitException e, String text, Place place, String path) {
        String message = String.valueOf(e.getMessage());
        int at = message.lastIndexOf("expected ");
        if (at < 2) {
            problems.add(place, path, text, message, "");
        } else {
            problems.add(place, path, text, message.substring(0, at - 2), message.substring(at + "expected ".length()));
        }
    }

    private @Nullable Measure bounded(Entry entry, Tree.Pairs pairs, String path) {
        Map<String, Tree> seen = measureKeys(pairs, path);
        Measure.Origin origin = origin(seen, path);
        String date = line(seen, DATE, path);
        String by = line(seen, BY, path);
        Tree nominalTree = seen.get(NOMINAL);
        if (nominalTree == null) {
            problems.add(
                    pairs.place(),
                    BlockReader.join(path, NOMINAL),
                    "",
                    "this key is missing",
                    "the best estimate, " + Quantity.expected(entry.meaning().unit()));
            return null;
        }
        if (nominalTree instanceof Tree.Scalar scalar && scalar.text().strip().equals(UNKNOWN)) {
            for (String bound : List.of(LOW, HIGH)) {
                Tree tree = seen.get(bound);
                if (tree != null) {
                    problems.add(
                            tree.place(),
                            BlockReader.join(path, bound),
                            "",
                            "there is a bound, and nominal is unknown",
                            "a nominal value, or no bounds");
                    return null;
                }
            }
            return unknown(entry, nominalTree, path, origin, date, by);
        }
        Optional<Quantity> nominal = bound(entry, seen, NOMINAL, path);
        Optional<Quantity> low = seen.containsKey(LOW) ? bound(entry, seen, LOW, path) : nominal;
        Optional<Quantity> high = seen.containsKey(HIGH) ? bound(entry, seen, HIGH, path) : nominal;
        if (nominal.isEmpty() || low.isEmpty() || high.isEmpty()) {
            return null;
        }
        boolean inOrder = ordered(low.get(), nominal.get(), seen.get(LOW), path, LOW);
        inOrder &= ordered(nominal.get(), high.get(), seen.get(HIGH), path, HIGH);
        return inOrder
                ? new Measure(
                        entry.meaning().unit(),
                        Optional.of(new Measure.Bounds(low.get(), nominal.get(), high.get())),
                        origin,
                        date,
                        by)
                : null;
    }

    private boolean ordered(Quantity lower, Quantity upper, @Nullable Tree wrong, String path, String key) {
        if (lower.si() <= upper.si() || wrong == null) {
            return true;
        }
        boolean low = key.equals(LOW);
        problems.add(
                wrong.place(),
                BlockReader.join(path, key),
                low ? lower.text() : upper.text(),
                Problem.quote(low ? lower.text() : upper.text())
                        + (low ? " is above nominal " : " is below nominal ")
                        + Problem.quote(low ? upper.text() : lower.text()),
                "low <= nominal <= high");
        return false;
    }

    private Map<String, Tree> measureKeys(Tree.Pairs pairs, String path) {
        Map<String, Tree> seen = new HashMap<>();
        for (Tree.Pair pair : pairs.pairs()) {
            String keyPath = BlockReader.join(path, pair.key());
            if (!MEASURE_KEYS.contains(pair.key())) {
                problems.add(
                        pair.keyPlace(),
                        keyPath,
                        pair.key(),
                        "unknown key",
                        "one of " + String.join(", ", MEASURE_KEYS),
                        Nearest.of(pair.key(), MEASURE_KEYS));
            } else if (seen.putIfAbsent(pair.key(), pair.value()) != null) {
                problems.add(pair.keyPlace(), keyPath, pair.key(), "duplicate key", "");
            } else {
                facts.put(keyPath, pair.key(), pair.value().place());
            }
        }
        return seen;
    }

    private Optional<Quantity> bound(Entry entry, Map<String, Tree> seen, String key, String path) {
        Tree tree = seen.get(key);
        if (tree == null) {
            return Optional.empty();
        }
        String keyPath = BlockReader.join(path, key);
        String text = plain(tree, keyPath, Quantity.expected(entry.meaning().unit()));
        return text == null ? Optional.empty() : quantity(entry, text, tree.place(), keyPath);
    }

    private Measure.Origin origin(Map<String, Tree> seen, String path) {
        Tree tree = seen.get(ORIGIN);
        if (tree == null) {
            return Measure.Origin.UNSTATED;
        }
        String keyPath = BlockReader.join(path, ORIGIN);
        String expected = "one of " + String.join(", ", origins());
        String text = plain(tree, keyPath, expected);
        if (text != null) {
            for (Measure.Origin origin : Measure.Origin.values()) {
                if (origin != Measure.Origin.UNSTATED && Entry.word(origin).equals(text)) {
                    return origin;
                }
            }
            problems.add(tree.place(), keyPath, text, Problem.quote(text) + " is not known here", expected);
        }
        return Measure.Origin.UNSTATED;
    }

    private String line(Map<String, Tree> seen, String key, String path) {
        Tree tree = seen.get(key);
        if (tree == null) {
            return "";
        }
        String keyPath = BlockReader.join(path, key);
        String text = plain(tree, keyPath, key.equals(DATE) ? "a date such as 2026-03-02" : "who took it, as a role");
        if (text == null) {
            return "";
        }
        if (key.equals(DATE)) {
            String date = date(text, tree, keyPath);
            return date == null ? "" : date;
        }
        if (!isClean(text, true)) {
            problems.add(
                    tree.place(),
                    keyPath,
                    text,
                    Problem.quote(text) + " contains a character that cannot be printed",
                    "");
        }
        return text;
    }
}
