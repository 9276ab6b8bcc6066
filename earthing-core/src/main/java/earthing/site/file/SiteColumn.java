package earthing.site.file;

import earthing.quantity.Dimension;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A column of a table of sites, as its head says it: a key of the site file and the one unit of its cells, for example
 * {@code soil.layers[1].resistivity [ohm.m]}. Items of a list carry their number; {@code low}, {@code high},
 * {@code origin}, {@code date} and {@code by} behind a value with a unit are columns of their own.
 */
public final class SiteColumn {

    private static final Pattern HEAD =
            Pattern.compile("([^\\s\\[\\]]++(?:\\[\\d{1,3}\\][^\\s\\[\\]]*+)*+)\\s*+(?:\\[\\s*+([^\\[\\]]*+)\\])?");

    private static final Pattern STEP = Pattern.compile("([^\\[\\]]+)(?:\\[(\\d{1,3})\\])?");

    /** Parts of a value with a unit beside the value itself. */
    static final List<String> PARTS = ValueReader.MEASURE_KEYS.stream()
            .filter(key -> !key.equals(ValueReader.NOMINAL))
            .toList();

    /**
     * A step on the way from the top of the file.
     *
     * @param entry the key
     * @param item number of the item from 1; 0 where the key takes no list
     */
    record Step(Entry entry, int item) {

        String text() {
            return item == 0 ? entry.key() : entry.key() + '[' + item + ']';
        }
    }

    private final List<Step> steps;
    private final String part;
    private final String unit;
    private final String path;

    SiteColumn(List<Step> steps, String part, String unit) {
        this.steps = List.copyOf(steps);
        this.part = part;
        this.unit = unit;
        StringBuilder text = new StringBuilder();
        for (Step step : steps) {
            text.append(text.isEmpty() ? "" : ".").append(step.text());
        }
        this.path =
                part.isEmpty() ? text.toString() : text.append('.').append(part).toString();
    }

    /** Why a head is refused. */
    static final class HeadException extends Exception {

        private static final long serialVersionUID = 1L;

        private final transient Problem problem;

        HeadException(String key, String text, String found, String expected, String nearest) {
            super(found);
            problem = new Problem("", 0, 0, key, text, found, expected, nearest);
        }

        Problem problem() {
            return problem;
        }
    }

    /** Reads the head of a column. */
    static SiteColumn of(String head) throws HeadException {
        Matcher matcher = HEAD.matcher(head);
        if (head.length() > 200 || !matcher.matches()) {
            throw new HeadException(
                    "",
                    head,
                    head.isEmpty() ? "this column has no head" : Problem.quote(head) + " is no head of a column",
                    "a key of the site file and its unit, such as soil.layers[1].resistivity [ohm.m]",
                    "");
        }
        List<Step> steps = new ArrayList<>();
        String[] words = matcher.group(1).split("\\.", -1);
        Block block = Block.site();
        for (int i = 0; i < words.length; i++) {
            Step step = step(block, words[i], steps, head);
            steps.add(step);
            if (step.entry().kind() != Entry.Kind.BLOCK) {
                return leaf(
                        steps,
                        words,
                        i + 1,
                        Optional.ofNullable(matcher.group(2)).map(String::strip),
                        head);
            }
            block = step.entry().block();
        }
        throw new HeadException(
                "", head, "this key has keys of its own", "one of " + String.join(", ", keys(block, join(steps))), "");
    }

    private static Step step(Block block, String word, List<Step> before, String head) throws HeadException {
        String path = join(before);
        Matcher matcher = STEP.matcher(word);
        String key = matcher.matches() ? matcher.group(1) : word;
        Entry entry = block.entry(key);
        if (entry == null) {
            List<String> known = block.entries().stream().map(Entry::key).toList();
            String nearest = Nearest.of(key, known);
            throw new HeadException(
                    "",
                    head,
                    "unknown column " + Problem.quote(head),
                    "a key of the site file: one of " + String.join(", ", keys(block, path)),
                    nearest.isEmpty() ? "" : BlockReader.join(path, nearest));
        }
        boolean numbered = matcher.group(2) != null;
        if (numbered != entry.isList() || (numbered && Integer.parseInt(matcher.group(2)) < 1)) {
            String whole = BlockReader.join(path, key);
            throw new HeadException(
                    "",
                    head,
                    entry.isList() ? "this key is a list; number its items from 1" : "this key is no list",
                    entry.isList() ? whole + "[1]" : whole,
                    "");
        }
        return new Step(entry, numbered ? Integer.parseInt(matcher.group(2)) : 0);
    }

    private static SiteColumn leaf(List<Step> steps, String[] words, int next, Optional<String> unit, String head)
            throws HeadException {
        Entry entry = steps.get(steps.size() - 1).entry();
        boolean quantity = entry.kind() == Entry.Kind.QUANTITY;
        String path = join(steps);
        String part = next == words.length ? "" : words[next];
        if (next < words.length && (!quantity || next + 1 < words.length || !PARTS.contains(part))) {
            String nearest = quantity ? Nearest.of(part, PARTS) : "";
            throw new HeadException(
                    "",
                    head,
                    "unknown column " + Problem.quote(head),
                    quantity ? path + " alone, or with one of " + String.join(", ", PARTS) : path,
                    nearest.isEmpty() ? "" : path + '.' + nearest);
        }
        boolean number = quantity && (part.isEmpty() || part.equals(ValueReader.LOW) || part.equals(ValueReader.HIGH));
        if (!number && unit.isPresent()) {
            throw new HeadException(
                    "", head, "this column takes no unit", part.isEmpty() ? path : path + '.' + part, "");
        }
        String text = unit.orElse("");
        if (number && !isUnit(entry.meaning().unit(), text)) {
            throw new HeadException(
                    "",
                    head,
                    text.isEmpty() ? "the unit is missing" : "unknown unit " + Problem.quote(text),
                    "one of " + String.join(", ", units(entry.meaning().unit())) + " in brackets behind the key",
                    "");
        }
        return new SiteColumn(steps, part, text);
    }

    static boolean isUnit(Dimension dimension, String unit) {
        return units(dimension).contains(unit);
    }

    static List<String> units(Dimension dimension) {
        List<String> units = new ArrayList<>(dimension.factors().keySet());
        switch (dimension) {
            case AREA -> units.add("AWG");
            case TIME -> units.add("cycles");
            case TEMPERATURE -> units.add("degF");
            default -> {}
        }
        return units;
    }

    private static List<String> keys(Block block, String path) {
        return block.entries().stream()
                .map(entry -> BlockReader.join(path, entry.key()) + (entry.isList() ? "[1]" : ""))
                .toList();
    }

    private static String join(List<Step> steps) {
        StringBuilder path = new StringBuilder();
        for (Step step : steps) {
            path.append(path.isEmpty() ? "" : ".").append(step.text());
        }
        return path.toString();
    }

    List<Step> steps() {
        return steps;
    }

    /** The key at the end. */
    Entry entry() {
        return steps.get(steps.size() - 1).entry();
    }

    /** Which part of a value with a unit; empty for the value itself. */
    String part() {
        return part;
    }

    /** Whether the cells are numbers in {@link #unit()}. */
    boolean isNumber() {
        return entry().kind() == Entry.Kind.QUANTITY
                && (part.isEmpty() || part.equals(ValueReader.LOW) || part.equals(ValueReader.HIGH));
    }

    /** Whether the site file takes {@code unknown} here. */
    boolean canBeUnknown() {
        Entry entry = entry();
        return part.isEmpty()
                && !entry.isList()
                && (entry.kind() == Entry.Kind.QUANTITY
                        || (entry.kind() == Entry.Kind.WORD && entry.words().contains(ValueReader.UNKNOWN)));
    }

    /** Unit of the cells, empty for a pure number and for words. */
    String unit() {
        return unit;
    }

    /**
     * The key.
     *
     * @return dotted path with the numbers of list items
     */
    public String path() {
        return path;
    }

    /**
     * The head of the column.
     *
     * @return the key, with the unit in brackets where there is one
     */
    public String head() {
        return unit.isEmpty() ? path : path + " [" + unit + ']';
    }

    /**
     * What the column means.
     *
     * @return the meaning of its key in one sentence
     */
    public String meaning() {
        return entry().meaning().doc();
    }
}
