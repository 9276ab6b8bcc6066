package earthing.decision;

import static org.assertj.core.api.Assertions.assertThat;

import earthing.compliance.Finding;
import earthing.compliance.Status;
import earthing.decision.RemedyTrial.Change;
import earthing.study.DemoSite;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import org.junit.jupiter.api.Test;

/** Rules of which sets meet what, made up here; the sets that do follow from them by hand. */
class LargerSetTest {

    private static final Remedy RODS = remedy("longer-rods");
    private static final Remedy RATING = remedy("arrester-rating");
    private static final Remedy LEADS = remedy("arrester-leads");
    private static final Finding ANY = RemedySearch.of(
                    DemoSite.read("ternhook-wood-shared.yaml"), List.of(), RemedySearch.Plan.USUAL, step -> {})
            .before()
            .get(0);

    private static Remedy remedy(String id) {
        return RemedyCatalogue.all().stream()
                .filter(one -> one.id().equals(id))
                .findFirst()
                .orElseThrow();
    }

    private static Change change(Remedy remedy, int step) {
        return new Change(remedy, step);
    }

    private static List<Change> every() {
        List<Change> all = new ArrayList<>();
        for (Remedy remedy : List.of(RODS, LEADS, RATING)) {
            for (int step = 0; step < remedy.steps().size(); step++) {
                all.add(change(remedy, step));
            }
        }
        return all;
    }

    private static Finding unmet(String subject) {
        return new Finding(
                ANY.id(),
                ANY.group(),
                subject,
                Status.NOT_MET,
                ANY.value(),
                ANY.limit(),
                ANY.unit(),
                OptionalDouble.empty(),
                ANY.circumstances(),
                ANY.bound(),
                ANY.basis(),
                Optional.empty(),
                "",
                "");
    }

    /** Searches where a rule tells the findings that a set leaves, empty where it does not apply. */
    private static Optional<List<Change>> found(
            Function<List<Change>, Optional<List<String>>> left, List<Change> choices) {
        return new LargerSet(
                        every(),
                        set -> left.apply(set)
                                .map(subjects -> subjects.stream()
                                        .map(LargerSetTest::unmet)
                                        .toList()),
                        step -> {})
                .from(List.of(List.of()), choices);
    }

    /** A finding for each change that a set lacks. */
    private static Optional<List<String>> lacking(List<Change> set, Change... wanted) {
        return Optional.of(Arrays.stream(wanted)
                .filter(change -> !set.contains(change))
                .map(change -> change.remedy().id())
                .toList());
    }

    /** The greatest step is offered, the least is the one that does. */
    @Test
    void takesAnotherStepThanTheOneThatDoesMostAlone() {
        assertThat(found(
                        set -> lacking(set, change(RODS, 1), change(RATING, 0)),
                        List.of(change(RODS, 1), change(RATING, 2))))
                .contains(List.of(change(RODS, 1), change(RATING, 0)));
    }

    /** Leads apply only behind rods here, so that they are never offered alone. */
    @Test
    void takesAChangeThatAppliesOnlyBehindAnother() {
        assertThat(found(
                        set -> set.contains(change(LEADS, 2))
                                        && set.stream()
                                                .noneMatch(c -> c.remedy().equals(RODS))
                                ? Optional.empty()
                                : lacking(set, change(RODS, 3), change(LEADS, 2)),
                        List.of(change(RODS, 3))))
                .contains(List.of(change(RODS, 3), change(LEADS, 2)));
    }

    /** A higher rating meets one finding and spoils another, which shorter leads mend; neither helps alone. */
    @Test
    void takesTwoChangesOfWhichNeitherHelpsAlone() {
        assertThat(found(
                        set -> set.contains(change(RATING, 0))
                                ? lacking(set, change(RODS, 1), change(LEADS, 1))
                                : lacking(set, change(RODS, 1), change(RATING, 0)),
                        List.of(change(RODS, 1))))
                .contains(List.of(change(RODS, 1), change(LEADS, 1), change(RATING, 0)));
    }

    /** What only opened the way is left out in the end. */
    @Test
    void sparesWhatIsNotNeeded() {
        assertThat(found(
                        set -> Optional.of(
                                set.contains(change(RATING, 1))
                                        ? List.of()
                                        : set.contains(change(RODS, 0)) ? List.of("one") : List.of("one", "two")),
                        List.of(change(RODS, 0))))
                .contains(List.of(change(RATING, 1)));
    }

    @Test
    void whatNothingHelpsIsLeft() {
        assertThat(found(set -> Optional.of(List.of("one", "two")), List.of(change(RODS, 0))))
                .isEmpty();
    }
}
