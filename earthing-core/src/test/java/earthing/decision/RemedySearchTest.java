package earthing.decision;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.withinPercentage;

import earthing.compliance.ComplianceRun;
import earthing.compliance.Finding;
import earthing.compliance.Status;
import earthing.decision.RemedySearch.Plan;
import earthing.decision.RemedyTrial.Change;
import earthing.decision.RemedyTrial.Direction;
import earthing.site.MeasurementKind;
import earthing.site.Site;
import earthing.study.DemoSite;
import earthing.study.EarthCache;
import earthing.study.FixedGround;
import earthing.study.SiteStudy;
import earthing.study.StudyScope;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

class RemedySearchTest {

    private static final Site SEPARATE = DemoSite.read("ternhook-wood-separate.yaml");

    private static List<Remedy> catalogue(String... ids) {
        return RemedyCatalogue.all().stream()
                .filter(remedy -> List.of(ids).contains(remedy.id()))
                .toList();
    }

    private static List<Finding> findings(Site site) {
        return ComplianceRun.of(site, SiteStudy.of(site, StudyScope.AS_BUILT));
    }

    /** Every subset of a small catalogue at every step, studied here without cache or search, gives the same sets. */
    @Test
    void findsTheSetsThatBruteForceFinds() {
        List<Remedy> small = catalogue("single-earth", "screen-bond", "guarded-lead");
        Remedies found =
                RemedySearch.of(SEPARATE, small, new Plan(Set.of(), 3, 100_000, true, RemedyCosts.NONE), step -> {});

        Set<String> open = findings(SEPARATE).stream()
                .filter(RemedySearchTest::isOpen)
                .map(Finding::id)
                .collect(Collectors.toSet());
        Set<String> best = new TreeSet<>();
        int least = 3;
        List<List<Change>> all = new ArrayList<>(List.of(List.of()));
        for (Remedy remedy : small) {
            for (List<Change> set : List.copyOf(all)) {
                for (int step = 0; step < remedy.steps().size(); step++) {
                    List<Change> more = new ArrayList<>(set);
                    more.add(new Change(remedy, step));
                    all.add(more);
                }
            }
        }
        for (List<Change> set : all) {
            Optional<Site> changed = Optional.of(SEPARATE);
            for (Change change : set) {
                changed = changed.flatMap(site ->
                        change.remedy().applied(site, change.remedy().steps().get(change.step())));
            }
            boolean meets = changed.isPresent()
                    && findings(changed.get()).stream()
                            .noneMatch(f -> f.status() == Status.NOT_MET || (isOpen(f) && !open.contains(f.id())));
            if (meets && set.size() <= least) {
                if (set.size() < least) {
                    best.clear();
                    least = set.size();
                }
                best.add(set.stream()
                        .map(c -> c.remedy().id() + c.step())
                        .toList()
                        .toString());
            }
        }

        assertThat(best).isNotEmpty();
        assertThat(found.cutShort()).isFalse();
        Set<String> sets = new TreeSet<>();
        found.sets()
                .forEach(trial -> sets.add(trial.changes().stream()
                        .map(c -> c.remedy().id() + c.step())
                        .toList()
                        .toString()));
        // A found set has its steps brought down where the lesser ones meet too; those are among the best already.
        assertThat(best).containsAll(sets);
        assertThat(sets).isNotEmpty();
        assertThat(found.sets())
                .allMatch(trial -> trial.changes().size()
                        == trial.changes().stream()
                                .map(c -> c.remedy().id())
                                .distinct()
                                .count());
    }

    private static boolean isOpen(Finding finding) {
        return finding.status() == Status.NOT_ASSESSED || finding.status() == Status.INSUFFICIENT_DATA;
    }

    @Test
    void tellsWorsenedFindingsFirstAndTheLeastStepThatMeets() {
        Site site = DemoSite.read("thornby-shield-wire.yaml");
        Remedies found = RemedySearch.of(
                site,
                catalogue("longer-rods", "more-rods", "ring"),
                new Plan(Set.of(), 1, 10, false, RemedyCosts.NONE),
                step -> {});
        Finding high = found.notMet().get(0);
        assertThat(high.id()).isEqualTo("electrode.resistance");
        assertThat(found.meeting(high)).isNotEmpty();
        for (RemedyTrial trial : found.singles()) {
            List<Direction> directions =
                    trial.effects().stream().map(RemedyTrial.Effect::direction).toList();
            assertThat(directions).isSorted();
            boolean lesser = found.singles().stream()
                    .anyMatch(other -> other.changes()
                                    .get(0)
                                    .remedy()
                                    .equals(trial.changes().get(0).remedy())
                            && other.changes().get(0).step()
                                    < trial.changes().get(0).step()
                            && other.meets(high));
            assertThat(found.meeting(high).contains(trial)).isEqualTo(trial.meets(high) && !lesser);
        }
        assertThat(found.sets()).isNotEmpty().allMatch(RemedyTrial::meetsAll);
    }

    /** More rods than the model can tell from those that are there leave no answer, and no answer is no remedy. */
    @Test
    void aFindingThatIsGoneForWantOfAnAnswerIsNotMet() {
        Remedies found = RemedySearch.chosen(
                DemoSite.read("fellmark-single-wire.yaml"), RemedyCatalogue.all(), Map.of("more-rods", 1), Plan.USUAL);
        RemedyTrial trial = found.singles().get(0);
        assertThat(trial.findings()).anyMatch(RemedySearchTest::isOpen);
        assertThat(trial.meetsAll()).isFalse();
        assertThat(found.notMet()).isNotEmpty().noneMatch(trial::meets);
    }

    @Test
    void costsRankTheSets() {
        RemedyCosts costs = new RemedyCosts("days", Map.of("single-earth", 1.0, "screen-bond", 2.0));
        Remedies found = RemedySearch.chosen(
                SEPARATE,
                RemedyCatalogue.all(),
                Map.of("single-earth", 0, "screen-bond", 3),
                new Plan(Set.of(), 1, 0, false, costs));
        assertThat(found.sets()).hasSize(1);
        assertThat(costs.of(found.sets().get(0))).hasValue(3.0);
        assertThat(found.best()).contains(found.sets().get(0));
    }

    @Test
    void asksForTheOwnersWordAndForChangesThatApply() {
        List<Remedy> all = RemedyCatalogue.all();
        assertThatThrownBy(() -> RemedySearch.chosen(SEPARATE, all, Map.of("neutral-resistor", 0), Plan.USUAL))
                .hasMessageContaining("--allow neutral");
        assertThatThrownBy(() -> RemedySearch.chosen(SEPARATE, all, Map.of("insulated-stays", 0), Plan.USUAL))
                .hasMessageContaining("stays are described");
        assertThatThrownBy(() -> new Plan(Set.of(), 0, 1, false, RemedyCosts.NONE))
                .hasMessageContaining("at least 1");
    }

    @Test
    void aSiteThatMeetsEverythingNeedsNothing() {
        Remedies found = RemedySearch.of(
                DemoSite.read("ternhook-wood-shared.yaml"), RemedyCatalogue.all(), Plan.USUAL, step -> {});
        assertThat(found.notMet()).isEmpty();
        assertThat(found.singles()).isEmpty();
        assertThat(found.runs()).isEqualTo(1);
        assertThat(found.withheld()).extracting(Remedy::id).containsExactly("neutral-resistor");
    }

    /** The readings of a changed electrode go, and the ground that one of them scaled stays as it was. */
    @Test
    void theScaledGroundOutlivesTheReading() {
        Site site = DemoSite.read("ravensike-readings.yaml");
        Site fixed = FixedGround.of(site, new EarthCache());
        assertThat(fixed.measurements()).allMatch(m -> m.kind() != MeasurementKind.ELECTRODE_RESISTANCE);
        Map<String, Finding> before =
                findings(site).stream().collect(Collectors.toMap(f -> f.id() + f.subject(), f -> f, (a, b) -> a));
        assertThat(findings(fixed))
                .filteredOn(f -> f.id().startsWith("touch.") && f.value().isPresent())
                .isNotEmpty()
                .allSatisfy(f -> assertThat(f.value().getAsDouble())
                        .isCloseTo(
                                Objects.requireNonNull(before.get(f.id() + f.subject()))
                                        .value()
                                        .getAsDouble(),
                                withinPercentage(1e-6)));
    }
}
