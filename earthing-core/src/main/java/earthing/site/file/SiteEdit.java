package earthing.site.file;

import earthing.quantity.Dimension;
import earthing.quantity.Measure;
import earthing.quantity.Quantity;
import earthing.quantity.UnitException;
import earthing.site.Key;
import earthing.site.Site;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Single keys of a site looked up and changed, from site to site. A key is a dotted path of the site file, for example
 * {@code electrodes[main].rod.length}; a member of a list stands in brackets by its name or its number, {@code [*]}
 * stands for every member. Nothing is changed below a block that the site does not have.
 */
public final class SiteEdit {

    private static final Pattern STEP = Pattern.compile("([a-z0-9-]+)(?:\\[([^\\]]+)\\])?");
    private static final String EVERY = "*";
    private static final String NAME = "name";

    /** Digits of a number that was scaled; more would claim what nobody sets. */
    private static final MathContext SCALED = new MathContext(4);

    /** One part of a path. */
    private record Step(String key, @Nullable String member) {}

    /** What becomes of the value of a key. */
    @FunctionalInterface
    private interface Change {

        @Nullable
        Object apply(Block block, Entry entry, @Nullable Object before);
    }

    private SiteEdit() {}

    /**
     * The values that stand at a path.
     *
     * @param site the site
     * @param path the path
     * @return the given values, empty if there are none; a key that takes a list gives its list where it is not empty
     */
    public static List<Object> values(Site site, String path) {
        List<Object> found = new ArrayList<>();
        var unused = rewritten(Block.site(), site, steps(path), 0, (block, entry, before) -> {
            if (before != null && !(before instanceof List<?> list && list.isEmpty())) {
                found.add(before);
            }
            return before;
        });
        return found;
    }

    /**
     * The word or text that the site file has at a path.
     *
     * @param value a value from {@link #values}
     * @return a word in the spelling of the file, a quantity by its nominal value as it was written, a text, a number
     */
    public static String text(Object value) {
        if (value instanceof Measure measure) {
            return measure.bounds().map(b -> b.nominal().text()).orElse(ValueReader.UNKNOWN);
        }
        return value instanceof Enum<?> word ? Entry.word(word) : String.valueOf(value);
    }

    /**
     * Gives a key a value.
     *
     * @param site the site
     * @param path the path
     * @param value as the site file writes it: a text, a list, or a map of keys
     * @return the changed site
     * @throws IllegalArgumentException when there is no such key or it does not take that value
     */
    public static Site set(Site site, String path, Object value) {
        return set(site, path, value, (before, after) -> true);
    }

    /** Whether a value takes the place of another. */
    @FunctionalInterface
    public interface Replacing {
        /**
         * Answers for one key.
         *
         * @param before the present value, null if there is none
         * @param after the value that would stand there
         * @return whether it shall
         */
        boolean replaces(@Nullable Object before, Object after);
    }

    /**
     * Gives a key a value, or each of several keys that the path leads to, where a condition holds.
     *
     * @param site the site
     * @param path the path
     * @param value as the site file writes it: a text, a list, or a map of keys
     * @param where asked for each of the keys
     * @return the changed site
     * @throws IllegalArgumentException when there is no such key or it does not take that value
     */
    public static Site set(Site site, String path, Object value, Replacing where) {
        OptionalDouble frequency = frequency(site);
        return edited(site, path, (block, entry, before) -> {
            Object after = read(block, entry, path, value, frequency);
            return where.replaces(before, after) ? after : before;
        });
    }

    /**
     * Puts a value of the site's own records in place.
     *
     * @param site the site
     * @param path the path
     * @param value a record, a list of records, a quantity, a word, as the key holds it
     * @return the changed site
     */
    public static Site put(Site site, String path, Object value) {
        return edited(site, path, (block, entry, before) -> value);
    }

    /**
     * Takes a key away.
     *
     * @param site the site
     * @param path the path
     * @return the changed site
     */
    public static Site unset(Site site, String path) {
        return edited(site, path, (block, entry, before) -> entry.isList() ? List.of() : null);
    }

    /**
     * Leaves the first members of a list.
     *
     * @param site the site
     * @param path path of the list
     * @param most how many are left, ≥ 0
     * @return the changed site
     */
    public static Site shortened(Site site, String path, int most) {
        return edited(
                site,
                path,
                (block, entry, before) -> before instanceof List<?> list && list.size() > most
                        ? List.copyOf(list.subList(0, most))
                        : before);
    }

    /**
     * Multiplies quantities, with their bounds. What was known about their origin does not hold any longer.
     *
     * @param site the site
     * @param path the path
     * @param factor the factor, &gt; 0
     * @return the changed site; what is unknown stays so
     */
    public static Site scaled(Site site, String path, double factor) {
        OptionalDouble frequency = frequency(site);
        return edited(
                site,
                path,
                (block, entry, before) -> before instanceof Measure measure && measure.isKnown()
                        ? moved(measure, number -> number.multiply(BigDecimal.valueOf(factor)), frequency)
                        : before);
    }

    /**
     * Adds a length to lengths, with their bounds.
     *
     * @param site the site
     * @param path the path
     * @param metres what is added [m]
     * @return the changed site; what is unknown stays so
     */
    public static Site lengthened(Site site, String path, double metres) {
        return edited(site, path, (block, entry, before) -> {
            if (!(before instanceof Measure measure) || !measure.isKnown()) {
                return before;
            }
            Measure.Bounds bounds = measure.bounds().orElseThrow();
            return of(
                    measure,
                    new Measure.Bounds(
                            longer(bounds.low(), metres),
                            longer(bounds.nominal(), metres),
                            longer(bounds.high(), metres)));
        });
    }

    private static Quantity longer(Quantity length, double metres) {
        double si = new BigDecimal(length.si() + metres, new MathContext(6)).doubleValue();
        return Quantity.of(Dimension.LENGTH, si);
    }

    /** A change of the number that stands before the unit. */
    @FunctionalInterface
    private interface OnNumber {
        BigDecimal of(BigDecimal number);
    }

    private static Measure moved(Measure measure, OnNumber change, OptionalDouble frequency) {
        Measure.Bounds bounds = measure.bounds().orElseThrow();
        return of(
                measure,
                new Measure.Bounds(
                        moved(bounds.low(), change, frequency),
                        moved(bounds.nominal(), change, frequency),
                        moved(bounds.high(), change, frequency)));
    }

    private static Measure of(Measure measure, Measure.Bounds bounds) {
        return new Measure(measure.dimension(), Optional.of(bounds), Measure.Origin.UNSTATED, "", "");
    }

    private static Quantity moved(Quantity quantity, OnNumber change, OptionalDouble frequency) {
        String text = quantity.text().strip();
        int end = 0;
        while (end < text.length() && "+-.0123456789eE".indexOf(text.charAt(end)) >= 0) {
            end++;
        }
        try {
            String number = change.of(new BigDecimal(text.substring(0, end)))
                    .round(SCALED)
                    .stripTrailingZeros()
                    .toPlainString();
            return Quantity.parse(number + text.substring(end), quantity.dimension(), frequency);
        } catch (NumberFormatException | UnitException unusual) {
            double factor = change.of(BigDecimal.ONE).doubleValue();
            return Quantity.of(quantity.dimension(), quantity.si() * factor);
        }
    }

    /**
     * What the reader would say about a site that was changed: keys that are missing, that contradict each other, or
     * that name what is not there.
     *
     * @param site the site
     * @return the problems, without places; empty for a site that can be written and read again
     */
    public static List<Problem> problems(Site site) {
        ProblemList problems = new ProblemList("changed site");
        Facts facts = new Facts();
        Set<String> electrodes = new LinkedHashSet<>();
        site.electrodes().forEach(electrode -> electrodes.add(electrode.name()));
        gather(Block.site(), site, "", facts, problems, electrodes);
        if (problems.isEmpty()) {
            SiteRules.check(facts, problems, true);
        }
        return problems.isEmpty() ? List.of() : problems.inOrderOfFile();
    }

    private static void gather(
            Block block, Record record, String path, Facts facts, ProblemList problems, Set<String> electrodes) {
        for (Entry entry : block.entries()) {
            String key = BlockReader.join(path, entry.key());
            Object value = entry.value(record);
            if (value == null) {
                if (entry.meaning().required()) {
                    problems.add(Place.WHOLE_FILE, key, "", "this key is missing", "");
                }
                continue;
            }
            if (value instanceof List<?> list) {
                if (list.isEmpty()) {
                    continue;
                }
                for (int i = 0; i < list.size(); i++) {
                    one(entry, list.get(i), key + '[' + (i + 1) + ']', facts, problems, electrodes);
                }
                facts.put(key, value, Place.WHOLE_FILE);
            } else {
                one(entry, value, key, facts, problems, electrodes);
            }
        }
    }

    private static void one(
            Entry entry, Object value, String path, Facts facts, ProblemList problems, Set<String> electrodes) {
        facts.put(path, value, Place.WHOLE_FILE);
        if (entry.kind() == Entry.Kind.BLOCK && value instanceof Record inner) {
            gather(entry.block(), inner, path, facts, problems, electrodes);
        }
        if (entry.meaning().text() == Key.Text.ELECTRODE
                && value instanceof String name
                && !electrodes.contains(name)) {
            problems.add(Place.WHOLE_FILE, path, name, Problem.quote(name) + " is not the name of an electrode", "");
        }
    }

    private static OptionalDouble frequency(Site site) {
        return site.system().frequency().isKnown()
                ? OptionalDouble.of(site.system().frequency().nominal())
                : OptionalDouble.empty();
    }

    private static Object read(Block block, Entry entry, String path, Object value, OptionalDouble frequency) {
        ProblemList problems = new ProblemList(path);
        Facts facts = new Facts();
        ValueReader values = new ValueReader(problems, facts, frequency, SideFiles.NONE);
        Tree.Pair pair = new Tree.Pair(entry.key(), Place.WHOLE_FILE, tree(value));
        // Read as a part of a file; what is missing beside it is told by problems().
        Record read = new BlockReader(problems, facts, values, false)
                .block(block, new Tree.Pairs(List.of(pair), Place.WHOLE_FILE), "", Place.WHOLE_FILE);
        if (read == null || !problems.isEmpty()) {
            throw new IllegalArgumentException(problems.inOrderOfFile().get(0).text());
        }
        return Objects.requireNonNull(entry.value(read));
    }

    private static Tree tree(Object value) {
        if (value instanceof Map<?, ?> map) {
            List<Tree.Pair> pairs = new ArrayList<>();
            map.forEach((key, inner) -> pairs.add(new Tree.Pair(String.valueOf(key), Place.WHOLE_FILE, tree(inner))));
            return new Tree.Pairs(pairs, Place.WHOLE_FILE);
        }
        if (value instanceof List<?> list) {
            return new Tree.Items(list.stream().map(item -> tree(item)).toList(), Place.WHOLE_FILE);
        }
        return new Tree.Scalar(String.valueOf(value), true, Place.WHOLE_FILE);
    }

    private static Site edited(Site site, String path, Change change) {
        return (Site) rewritten(Block.site(), site, steps(path), 0, change);
    }

    private static Record rewritten(Block block, Record record, List<Step> steps, int at, Change change) {
        Step step = steps.get(at);
        Entry entry = block.entry(step.key());
        if (entry == null) {
            throw new IllegalArgumentException("a " + block.name() + " has no key " + step.key());
        }
        Object before = entry.value(record);
        Object after = step.member() == null
                ? changed(block, entry, before, steps, at, change)
                : inList(block, entry, before, step.member(), steps, at, change);
        if (after == before) {
            return record;
        }
        Map<String, Object> values = new HashMap<>();
        for (Entry other : block.entries()) {
            Object value = other == entry ? after : other.value(record);
            if (value != null) {
                values.put(other.key(), value);
            }
        }
        return block.make(values);
    }

    private static @Nullable Object changed(
            Block block, Entry entry, @Nullable Object before, List<Step> steps, int at, Change change) {
        if (at == steps.size() - 1) {
            return change.apply(block, entry, before);
        }
        if (entry.kind() != Entry.Kind.BLOCK) {
            throw new IllegalArgumentException(entry.key() + " has no keys of its own");
        }
        return before instanceof Record inner ? rewritten(entry.block(), inner, steps, at + 1, change) : before;
    }

    private static @Nullable Object inList(
            Block block, Entry entry, @Nullable Object before, String member, List<Step> steps, int at, Change change) {
        if (!(before instanceof List<?> list)) {
            throw new IllegalArgumentException(entry.key() + " takes no list");
        }
        List<Object> after = new ArrayList<>();
        boolean same = true;
        for (int i = 0; i < list.size(); i++) {
            Object item = list.get(i);
            Object now = item;
            if (member.equals(EVERY) || member.equals(Integer.toString(i + 1)) || member.equals(name(entry, item))) {
                now = changed(block, entry, item, steps, at, change);
            }
            same &= now == item;
            if (now != null) {
                after.add(now);
            }
        }
        return same ? before : List.copyOf(after);
    }

    private static @Nullable String name(Entry list, Object item) {
        if (list.kind() != Entry.Kind.BLOCK || !(item instanceof Record record)) {
            return null;
        }
        Entry name = list.block().entry(NAME);
        return name != null && name.value(record) instanceof String text ? text : null;
    }

    private static List<Step> steps(String path) {
        List<Step> steps = new ArrayList<>();
        Matcher part = STEP.matcher(path);
        int at = 0;
        while (at < path.length()) {
            if (!part.find(at) || part.start() != at) {
                throw new IllegalArgumentException("\"" + path + "\" is no path of a key");
            }
            steps.add(new Step(part.group(1), part.group(2)));
            at = part.end();
            if (at < path.length() && path.charAt(at) == '.') {
                at++;
            } else if (at < path.length()) {
                throw new IllegalArgumentException("\"" + path + "\" is no path of a key");
            }
        }
        if (steps.isEmpty()) {
            throw new IllegalArgumentException("a path names a key");
        }
        return steps;
    }
}
