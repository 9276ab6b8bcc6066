package earthing.decision;

import earthing.compliance.Finding;
import earthing.decision.RemedyTrial.Change;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.stream.IntStream;

/**
 * A set of changes beyond the sizes that are searched whole: grown by the change that brings it furthest, then mended by other
 * steps, then left without each change that can be spared. It goes one way out of many, so that a smaller set, or one that
 * leaves fewer findings, may be there all the same.
 */
final class LargerSet {

    /** Changes that a set is grown to. */
    private static final int GROWN = 24;

    /** Times that every step of every change is tried on a grown set. */
    private static final int MENDED = 4;

    private final List<Change> all;
    private final Function<List<Change>, Optional<List<Finding>>> missing;
    private final Consumer<String> progress;

    /** Changes that meet one finding and spoil another, to which a second change is sought. */
    private static final int SECONDED = 6;

    /** How far a set is from meeting everything, with what stands against it. */
    private record Distance(int left, double missing, Set<String> against) implements Comparable<Distance> {
        private static final Distance FAR = new Distance(Integer.MAX_VALUE, Double.POSITIVE_INFINITY, Set.of());

        /** Whether something is met that another set leaves. */
        boolean meetsSomethingOf(Distance other) {
            return left < Integer.MAX_VALUE && !against.containsAll(other.against);
        }

        @Override
        public int compareTo(Distance other) {
            return Comparator.comparingInt(Distance::left)
                    .thenComparingDouble(Distance::missing)
                    .compare(this, other);
        }
    }

    private record Reached(List<Change> set, Distance distance) {}

    /**
     * What sets are made of.
     *
     * @param all every change at every step, in the order in which changes are made
     * @param missing what stands against a set, empty where its changes do not apply one behind the other; called from
     *     several threads
     * @param progress told in words what is being tried
     */
    LargerSet(List<Change> all, Function<List<Change>, Optional<List<Finding>>> missing, Consumer<String> progress) {
        this.all = all;
        this.missing = missing;
        this.progress = progress;
    }

    /**
     * The best set that was come upon.
     *
     * @param starts sets to begin with
     * @param choices the changes that they are grown by, each at one step
     * @return changes in their order; empty if there are none
     */
    Optional<List<Change>> from(List<List<Change>> starts, List<Change> choices) {
        Optional<Reached> best = Optional.empty();
        for (List<Change> start : starts) {
            Reached grown = grown(start, choices);
            if (best.isEmpty() || grown.distance.compareTo(best.get().distance) < 0) {
                best = Optional.of(grown);
            }
        }
        return best.map(this::mended).map(this::spared).map(Reached::set).filter(set -> !set.isEmpty());
    }

    private Distance distance(List<Change> changes) {
        Optional<List<Finding>> against = missing.apply(changes);
        if (against.isEmpty()) {
            return Distance.FAR;
        }
        double sum = 0;
        Set<String> names = new HashSet<>();
        for (Finding finding : against.get()) {
            names.add(finding.id() + '\n' + finding.subject());
            // On a scale of ratios, so that one far miss does not hide the rest.
            sum += Math.log1p(Math.max(0, -finding.margin().orElse(-1)));
        }
        return new Distance(against.get().size(), sum, names);
    }

    private List<Distance> distances(List<List<Change>> sets) {
        return sets.parallelStream().map(this::distance).toList();
    }

    private Reached grown(List<Change> start, List<Change> choices) {
        Reached reached = new Reached(start, distance(start));
        while (reached.distance.left > 0 && reached.set.size() < GROWN) {
            progress.accept("growing a larger set: " + reached.set.size() + " changes, " + reached.distance.left
                    + " findings left");
            List<Change> set = reached.set;
            List<List<Change>> larger = choices.stream()
                    .filter(choice ->
                            set.stream().noneMatch(taken -> taken.remedy().equals(choice.remedy())))
                    .map(choice -> with(set, choice))
                    .toList();
            List<Distance> distances = distances(larger);
            int best = IntStream.range(0, larger.size())
                    .boxed()
                    .min(Comparator.comparing(distances::get))
                    .orElse(-1);
            if (best < 0 || distances.get(best).compareTo(reached.distance) >= 0) {
                return reached;
            }
            reached = new Reached(larger.get(best), distances.get(best));
        }
        return reached;
    }

    /**
     * The step that does most alone is not always the one that a set needs, and some changes apply only behind others: every
     * step of every change is tried on the set, and each that brings it further is taken, the best first; where none does, pairs
     * are tried.
     */
    private Reached mended(Reached grown) {
        Reached reached = grown;
        for (int round = 0; round < MENDED && reached.distance.left > 0; round++) {
            progress.accept("trying other steps in a larger set: " + reached.distance.left + " findings left");
            Reached begun = reached;
            List<List<Change>> others = all.stream()
                    .filter(change -> !begun.set.contains(change))
                    .map(change -> with(begun.set, change))
                    .toList();
            List<Distance> distances = distances(others);
            List<Integer> better = IntStream.range(0, others.size())
                    .boxed()
                    .filter(i -> distances.get(i).compareTo(begun.distance) < 0)
                    .sorted(Comparator.comparing(distances::get))
                    .toList();
            for (int i : better) {
                List<Change> set = others.get(i);
                for (Change change : set) {
                    if (!begun.set.contains(change)) {
                        reached = nearer(reached, with(reached.set, change));
                    }
                }
            }
            if (better.isEmpty()) {
                reached = seconded(begun, others, distances);
                if (reached.equals(begun)) {
                    return reached;
                }
            }
        }
        return reached;
    }

    /** What meets one finding and spoils another, with a second change that mends what it spoils. */
    private Reached seconded(Reached begun, List<List<Change>> others, List<Distance> distances) {
        List<List<Change>> pairs = IntStream.range(0, others.size())
                .boxed()
                .filter(i -> distances.get(i).meetsSomethingOf(begun.distance))
                .sorted(Comparator.comparing(distances::get))
                .limit(SECONDED)
                .flatMap(i -> all.stream()
                        .filter(change -> !others.get(i).contains(change))
                        .map(change -> with(others.get(i), change)))
                .toList();
        List<Distance> reached = distances(pairs);
        return IntStream.range(0, pairs.size())
                .boxed()
                .min(Comparator.comparing(reached::get))
                .filter(i -> reached.get(i).compareTo(begun.distance) < 0)
                .map(i -> new Reached(pairs.get(i), reached.get(i)))
                .orElse(begun);
    }

    private Reached nearer(Reached reached, List<Change> set) {
        Distance distance = distance(set);
        return distance.compareTo(reached.distance) < 0 ? new Reached(set, distance) : reached;
    }

    /** With one change more, or another step of one that is there, at its place in the order. */
    private List<Change> with(List<Change> set, Change change) {
        List<Change> more = new ArrayList<>(set);
        more.removeIf(taken -> taken.remedy().equals(change.remedy()));
        more.add(change);
        more.sort(Comparator.comparingInt(all::indexOf));
        return more;
    }

    private Reached spared(Reached whole) {
        Reached least = whole;
        for (int i = whole.set.size() - 1; i >= 0 && least.set.size() > 1; i--) {
            progress.accept("sparing changes of a larger set: " + least.set.size() + " left");
            List<Change> fewer = new ArrayList<>(least.set);
            fewer.remove(whole.set.get(i));
            Distance without = distance(fewer);
            if (without.left <= least.distance.left) {
                least = new Reached(fewer, without);
            }
        }
        return least;
    }
}
