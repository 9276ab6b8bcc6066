package earthing.decision;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Predicate;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

/** The search for the smallest sets, held to every subset counted out by bits. */
class SetSearchTest {

    @Property(tries = 300, seed = "20261125")
    void findsWhatBruteForceFinds(
            @ForAll @IntRange(min = 1, max = 9) int choices,
            @ForAll @IntRange(min = 1, max = 9) int groups,
            @ForAll @IntRange(min = 1, max = 4) int largest,
            @ForAll long seed) {
        Random random = new Random(seed);
        int[] group = random.ints(choices, 0, groups).toArray();
        // Any set may meet or not: nothing is monotonic, nothing adds up.
        Set<Integer> meeting = new HashSet<>();
        for (int bits = 1; bits < 1 << choices; bits++) {
            if (random.nextInt(30) == 0) {
                meeting.add(bits);
            }
        }
        Predicate<List<Integer>> meets = set -> meeting.contains(bits(set));
        double[] order = random.doubles(1 << choices).toArray();

        SetSearch search = SetSearch.of(group, largest, Integer.MAX_VALUE, set -> order[bits(set)], meets, step -> {});

        assertThat(search.cutShort()).isFalse();
        assertThat(search.sets()).containsExactlyInAnyOrderElementsOf(bruteForce(group, largest, meeting));
    }

    private static int bits(List<Integer> set) {
        return set.stream().mapToInt(choice -> 1 << choice).sum();
    }

    private static List<List<Integer>> bruteForce(int[] group, int largest, Set<Integer> meeting) {
        List<List<Integer>> best = new ArrayList<>();
        int least = largest;
        for (int bits = 1; bits < 1 << group.length; bits++) {
            List<Integer> set = new ArrayList<>();
            Set<Integer> groups = new HashSet<>();
            for (int i = 0; i < group.length; i++) {
                if ((bits >> i & 1) == 1) {
                    set.add(i);
                    groups.add(group[i]);
                }
            }
            if (groups.size() == set.size() && set.size() <= least && meeting.contains(bits)) {
                if (set.size() < least) {
                    best.clear();
                    least = set.size();
                }
                best.add(set);
            }
        }
        return best;
    }

    @Test
    void saysWhatItDidNotTry() {
        AtomicInteger tried = new AtomicInteger();
        SetSearch search = SetSearch.of(
                new int[] {0, 1, 2, 3, 4},
                3,
                8,
                set -> 0,
                set -> {
                    tried.incrementAndGet();
                    return false;
                },
                step -> {});
        assertThat(search.cutShort()).isTrue();
        assertThat(tried).hasValue(8);
        assertThat(search.sizes())
                .containsExactly(
                        new SetSearch.Size(1, 5, 5), new SetSearch.Size(2, 10, 3), new SetSearch.Size(3, 10, 0));
    }

    @Test
    void triesTheMostPromisingFirstWhenTheBudgetIsSmall() {
        SetSearch search = SetSearch.of(
                new int[] {0, 1, 2, 3, 4, 5},
                2,
                7,
                set -> set.equals(List.of(4, 5)) ? 0 : 1,
                set -> set.equals(List.of(4, 5)),
                step -> {});
        assertThat(search.sets()).containsExactly(List.of(4, 5));
    }
}
