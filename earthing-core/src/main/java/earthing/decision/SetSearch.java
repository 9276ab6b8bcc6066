package earthing.decision;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Consumer;
import java.util.function.IntSupplier;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;

/**
 * The smallest sets of choices that meet something, by trying every set of one size before the next size. No set is left
 * out for a reason other than that it takes two choices of one group or that the budget of trials is used up, and then
 * the outcome says so: nothing is assumed of how choices act together.
 *
 * @param sets every set found, all of one size, in the order of trial
 * @param sizes how many sets of each size there are and how many were tried
 */
record SetSearch(List<List<Integer>> sets, List<Size> sizes) {

    /** Sets that are tried side by side; the budget is looked at between. */
    private static final int BATCH = 64;

    /**
     * One size.
     *
     * @param size choices in a set
     * @param possible how many such sets there are
     * @param tried how many of them were tried
     */
    record Size(int size, int possible, int tried) {}

    /** Copies the lists. */
    SetSearch {
        sets = List.copyOf(sets);
        sizes = List.copyOf(sizes);
    }

    /** Whether a set may be there that was not tried. */
    boolean cutShort() {
        return sizes.stream().anyMatch(size -> size.tried() < size.possible());
    }

    /**
     * Searches, each trial counted as one.
     *
     * @param groups group of each choice; a set takes at most one choice of a group
     * @param largest largest size
     * @param budget most trials; a size of which only a part can be tried is tried in part
     * @param order sets with a smaller value are tried first; it decides only what a cut search has seen
     * @param meets whether a set of choices, in rising order, meets; called from several threads
     * @param progress told the number of trials so far and the number of sets of this size
     * @return the sets of the smallest size that has any
     */
    static SetSearch of(
            int[] groups,
            int largest,
            int budget,
            ToDoubleFunction<List<Integer>> order,
            Predicate<List<Integer>> meets,
            Consumer<String> progress) {
        AtomicInteger spent = new AtomicInteger();
        Predicate<List<Integer>> counted = set -> {
            spent.incrementAndGet();
            return meets.test(set);
        };
        return of(groups, largest, new Budget(budget, 1, spent::get), order, counted, progress);
    }

    /**
     * What a search may spend.
     *
     * @param most most that is spent
     * @param each most that one trial spends, ≥ 1
     * @param spent what has been spent; asked between trials that run side by side, never during them
     */
    record Budget(int most, int each, IntSupplier spent) {}

    /** Searches with a budget that trials spend, some of them nothing. */
    static SetSearch of(
            int[] groups,
            int largest,
            Budget budget,
            ToDoubleFunction<List<Integer>> order,
            Predicate<List<Integer>> meets,
            Consumer<String> progress) {
        List<Size> sizes = new ArrayList<>();
        List<List<Integer>> found = new ArrayList<>();
        int begun = budget.spent.getAsInt();
        for (int size = 1; size <= largest && found.isEmpty(); size++) {
            List<List<Integer>> all = new ArrayList<>();
            combine(groups, size, 0, new ArrayList<>(), all);
            if (all.isEmpty()) {
                break;
            }
            // The sort is stable, so that equal sets keep their order.
            all.sort(Comparator.comparingDouble(order));
            int tried = 0;
            while (tried < all.size()) {
                int left = budget.most - (budget.spent.getAsInt() - begun);
                if (left <= 0) {
                    break;
                }
                int batch = Math.min(Math.min(BATCH, all.size() - tried), Math.max(1, left / budget.each));
                progress.accept("sets of " + size + ": " + tried + " of " + all.size() + " tried");
                all.subList(tried, tried + batch).parallelStream().filter(meets).forEachOrdered(found::add);
                tried += batch;
            }
            sizes.add(new Size(size, all.size(), tried));
        }
        return new SetSearch(found, sizes);
    }

    private static void combine(int[] groups, int size, int from, List<Integer> set, List<List<Integer>> all) {
        if (set.size() == size) {
            all.add(List.copyOf(set));
            return;
        }
        for (int next = from; next < groups.length; next++) {
            int group = groups[next];
            if (set.stream().noneMatch(other -> groups[other] == group)) {
                set.add(next);
                combine(groups, size, next + 1, set, all);
                set.remove(set.size() - 1);
            }
        }
    }
}
