package earthing.site.file;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/** The tree of a site file while the cells of a row are put into it, on top of what a base says. */
final class RowTree {

    private final Branch root;

    RowTree(Optional<Tree.Pairs> base) {
        root = base.map(Branch::of).orElseGet(Branch::new);
    }

    /** The tree, as the reader of site files takes it. */
    Tree tree() {
        if (!root.children.containsKey(SiteRows.VERSION)) {
            root.children.put(SiteRows.VERSION, new Leaf(new Tree.Scalar("1", true, Place.WHOLE_FILE)));
        }
        return root.tree(Place.WHOLE_FILE);
    }

    /** The blocks and items that a cell of this column is in. */
    static List<String> owners(SiteColumn column) {
        List<String> owners = new ArrayList<>();
        StringBuilder path = new StringBuilder();
        List<SiteColumn.Step> steps = column.steps();
        for (SiteColumn.Step step : steps.subList(0, steps.size() - 1)) {
            owners.add(path.append('.').append(step.text()).toString());
        }
        return owners;
    }

    /**
     * A cell that says nothing, or that there is no such value.
     *
     * @param unknown whether the value is then unknown, and not absent
     * @param filled blocks and items of which some other cell says something
     */
    void blank(SiteColumn column, boolean unknown, Set<String> filled, Place place) {
        Branch owner = root;
        List<SiteColumn.Step> steps = column.steps();
        List<String> owners = owners(column);
        for (int i = 0; i < owners.size(); i++) {
            Node next = owner.at(steps.get(i));
            if (!(next instanceof Branch) && filled.contains(owners.get(i))) {
                next = owner.branch(steps.get(i), place);
            }
            if (!(next instanceof Branch branch)) {
                return;
            }
            owner = branch;
        }
        SiteColumn.Step last = steps.get(steps.size() - 1);
        if (!column.part().isEmpty()) {
            if (owner.at(last) instanceof Branch value) {
                value.children.remove(column.part());
            }
        } else if (unknown) {
            owner.put(last, new Leaf(new Tree.Scalar(ValueReader.UNKNOWN, true, place)));
        } else {
            owner.remove(last);
        }
    }

    /** A cell that says something. */
    void put(SiteColumn column, String text, Place place) {
        Branch owner = root;
        List<SiteColumn.Step> steps = column.steps();
        for (SiteColumn.Step step : steps.subList(0, steps.size() - 1)) {
            owner = owner.branch(step, place);
        }
        SiteColumn.Step last = steps.get(steps.size() - 1);
        // A cell is a text and never nothing, whatever it says.
        Leaf leaf = new Leaf(new Tree.Scalar(text, false, place));
        if (column.part().isEmpty()) {
            owner.put(last, leaf);
            return;
        }
        Node value = owner.at(last);
        if (!(value instanceof Branch)) {
            Branch bounded = new Branch();
            bounded.place = place;
            if (value != null) {
                bounded.children.put(ValueReader.NOMINAL, value);
            }
            owner.put(last, bounded);
            value = bounded;
        }
        ((Branch) value).children.put(column.part(), leaf);
    }

    private sealed interface Node {
        Tree tree(Place place);
    }

    private record Leaf(Tree value) implements Node {
        @Override
        public Tree tree(Place place) {
            return value;
        }
    }

    /** Items of a list by their number; those that no cell fills are left out. */
    private static final class Items implements Node {
        private final TreeMap<Integer, Node> items = new TreeMap<>();

        @Override
        public Tree tree(Place place) {
            return new Tree.Items(
                    items.values().stream().map(item -> item.tree(place)).toList(), place);
        }
    }

    private static final class Branch implements Node {
        private final Map<String, Node> children = new LinkedHashMap<>();
        private Place place = Place.WHOLE_FILE;

        static Branch of(Tree.Pairs pairs) {
            Branch branch = new Branch();
            for (Tree.Pair pair : pairs.pairs()) {
                branch.children.put(pair.key(), node(pair.value()));
            }
            return branch;
        }

        private static Node node(Tree tree) {
            if (tree instanceof Tree.Pairs pairs) {
                return of(pairs);
            }
            if (tree instanceof Tree.Items list) {
                Items items = new Items();
                for (Tree item : list.items()) {
                    items.items.put(items.items.size() + 1, node(item));
                }
                return items;
            }
            return tree instanceof Tree.Scalar scalar
                    ? new Leaf(new Tree.Scalar(scalar.text(), scalar.plain(), Place.WHOLE_FILE))
                    : new Leaf(new Tree.Refused(Place.WHOLE_FILE));
        }

        @Nullable
        Node at(SiteColumn.Step step) {
            Node child = children.get(step.entry().key());
            return step.item() == 0 ? child : child instanceof Items list ? list.items.get(step.item()) : null;
        }

        Branch branch(SiteColumn.Step step, Place from) {
            if (at(step) instanceof Branch there) {
                return there;
            }
            Branch made = new Branch();
            made.place = from;
            put(step, made);
            return made;
        }

        void put(SiteColumn.Step step, Node value) {
            String key = step.entry().key();
            if (step.item() == 0) {
                children.put(key, value);
            } else if (children.get(key) instanceof Items list) {
                list.items.put(step.item(), value);
            } else {
                Items list = new Items();
                list.items.put(step.item(), value);
                children.put(key, list);
            }
        }

        void remove(SiteColumn.Step step) {
            String key = step.entry().key();
            if (step.item() == 0) {
                children.remove(key);
            } else if (children.get(key) instanceof Items list) {
                list.items.remove(step.item());
                if (list.items.isEmpty()) {
                    children.remove(key);
                }
            }
        }

        @Override
        public Tree tree(Place outer) {
            List<Tree.Pair> pairs = new ArrayList<>();
            children.forEach((key, child) -> {
                Tree value = child.tree(place);
                pairs.add(new Tree.Pair(key, value.place(), value));
            });
            return new Tree.Pairs(List.copyOf(pairs), place);
        }
    }
}
