package earthing.site.file;

import earthing.site.Key;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** Turns the tree of a file into records, block by block, and goes on after each problem. */
final class BlockReader {

    /** No list of a pole site is longer; a list of any length would make the reading as long. */
    private static final int LONGEST_LIST = 500;

    private final ProblemList problems;
    private final Facts facts;
    private final ValueReader values;
    private final boolean complete;
    private final List<Reference> references = new ArrayList<>();

    /** A text that has to be the name of an electrode. */
    private record Reference(String path, String name, Place place) {}

    /**
     * A reader for one file.
     *
     * @param problems where problems go
     * @param facts where values go
     * @param values reads single values
     * @param complete whether a key that is not in the tree is not in the file
     */
    BlockReader(ProblemList problems, Facts facts, ValueReader values, boolean complete) {
        this.problems = problems;
        this.facts = facts;
        this.values = values;
        this.complete = complete;
    }

    /** The record of a block; null if the tree is no block. */
    @Nullable
    Record block(Block block, Tree tree, String path, Place keyPlace) {
        if (!(tree instanceof Tree.Pairs pairs)) {
            values.refuse(tree, path, "keys of its own: " + keys(block));
            return null;
        }
        Map<String, Object> read = new HashMap<>();
        Map<String, Place> seen = new HashMap<>();
        for (Tree.Pair pair : pairs.pairs()) {
            if (problems.isFull()) {
                return null;
            }
            String keyPath = join(path, pair.key());
            Place first = seen.putIfAbsent(pair.key(), pair.keyPlace());
            if (first != null) {
                problems.add(
                        pair.keyPlace(),
                        keyPath,
                        pair.key(),
                        "duplicate key; it stands already in line " + first.line(),
                        "");
                continue;
            }
            Entry entry = block.entry(pair.key());
            if (entry == null) {
                unknown(block, pairs, pair, keyPath);
                continue;
            }
            Object value =
                    entry.isList() ? list(entry, pair, keyPath) : value(entry, pair.value(), keyPath, pair.keyPlace());
            if (value != null) {
                read.put(entry.key(), value);
                facts.put(keyPath, value, pair.value().place());
            }
        }
        if (complete) {
            for (Entry entry : block.entries()) {
                if (entry.meaning().required() && !seen.containsKey(entry.key())) {
                    problems.add(keyPlace, join(path, entry.key()), "", "this key is missing", values.expected(entry));
                }
            }
        }
        return block.make(read);
    }

    /** Refuses references to electrodes that are not there. */
    void checkReferences() {
        if (!complete) {
            return;
        }
        Set<String> electrodes = new LinkedHashSet<>();
        for (int i = 1; i <= facts.count("electrodes"); i++) {
            Optional<String> name = facts.text("electrodes[" + i + "].name");
            if (name.isPresent()) {
                electrodes.add(name.get());
            }
        }
        for (Reference reference : references) {
            if (!electrodes.contains(reference.name())) {
                problems.add(
                        reference.place(),
                        reference.path(),
                        reference.name(),
                        Problem.quote(reference.name()) + " is not the name of an electrode",
                        electrodes.isEmpty() ? "electrodes in the file" : "one of " + String.join(", ", electrodes),
                        Nearest.of(reference.name(), electrodes));
            }
        }
    }

    private @Nullable Object value(Entry entry, Tree tree, String path, Place keyPlace) {
        if (entry.kind() == Entry.Kind.BLOCK) {
            return block(entry.block(), tree, path, keyPlace);
        }
        Object value = values.read(entry, tree, path);
        if (value instanceof String name && entry.meaning().text() == Key.Text.ELECTRODE) {
            references.add(new Reference(path, name, tree.place()));
        }
        return value;
    }

    private @Nullable Object list(Entry entry, Tree.Pair pair, String path) {
        if (!(pair.value() instanceof Tree.Items items)) {
            values.refuse(pair.value(), path, "a list, each item behind a hyphen");
            return null;
        }
        List<Object> read = new ArrayList<>();
        Map<String, String> names = new HashMap<>();
        if (items.items().size() > LONGEST_LIST) {
            problems.add(
                    pair.keyPlace(),
                    path,
                    "",
                    "there are " + items.items().size() + " items in this list",
                    "at most " + LONGEST_LIST);
            return null;
        }
        int n = 0;
        for (Tree item : items.items()) {
            String itemPath = path + '[' + ++n + ']';
            Object value = value(entry, item, itemPath, item.place());
            // An item that was refused still counts, so that the items behind it keep their numbers.
            if (value != null) {
                facts.put(itemPath, value, item.place());
                read.add(value);
            }
            if (entry.kind() == Entry.Kind.BLOCK) {
                uniqueName(entry.block(), itemPath, names);
            }
        }
        return read;
    }

    private void uniqueName(Block block, String itemPath, Map<String, String> names) {
        for (Entry entry : block.entries()) {
            if (entry.meaning().text() == Key.Text.NAME) {
                String path = join(itemPath, entry.key());
                String name = facts.text(path).orElse("");
                String other = names.putIfAbsent(name, itemPath);
                if (other != null && !name.isEmpty()) {
                    problems.add(
                            facts.place(path),
                            path,
                            name,
                            Problem.quote(name) + " is already the name of " + other,
                            "a name of its own");
                }
            }
        }
    }

    private void unknown(Block block, Tree.Pairs beside, Tree.Pair pair, String path) {
        List<String> known = block.entries().stream().map(Entry::key).toList();
        // A key that stands there already was not meant a second time.
        Set<String> taken = beside.pairs().stream().map(Tree.Pair::key).collect(Collectors.toSet());
        List<String> free = known.stream().filter(key -> !taken.contains(key)).toList();
        String nearest = Nearest.of(pair.key(), free);
        String home = nearest.isEmpty() ? home(Block.site(), "", pair.key()) : "";
        String expected = home.isEmpty() ? "one of " + String.join(", ", known) : "it as " + home;
        problems.add(pair.keyPlace(), path, pair.key(), "unknown key", expected, nearest);
    }

    /** Where in the file a key belongs that stands in the wrong block; empty if it belongs nowhere. */
    private static String home(Block block, String path, String key) {
        if (block.entry(key) != null) {
            return join(path, key);
        }
        for (Entry entry : block.entries()) {
            if (entry.kind() == Entry.Kind.BLOCK) {
                String found = home(entry.block(), join(path, entry.key()), key);
                if (!found.isEmpty()) {
                    return found;
                }
            }
        }
        return "";
    }

    private static String keys(Block block) {
        return block.entries().stream().map(Entry::key).collect(Collectors.joining(", "));
    }

    static String join(String path, String key) {
        return path.isEmpty() ? key : path + '.' + key;
    }
}
