package earthing.decision;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import earthing.compliance.ComplianceRun;
import earthing.compliance.Finding;
import earthing.decision.RemedySearch.Plan;
import earthing.site.Site;
import earthing.study.DemoSite;
import earthing.study.SiteStudy;
import earthing.study.StudyScope;
import earthing.study.Workers;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.function.Supplier;
import org.junit.jupiter.api.Test;

/** Who asks for one thread gets one, at every depth of a study; the answer does not depend on it. */
class ThreadsTest {

    private static final Site SITE = DemoSite.read("brackenmire-mistakes.yaml");

    private static <T> T seen(int workers, List<Set<String>> threads, Supplier<T> work) throws Exception {
        List<T> result = new ArrayList<>();
        threads.add(BusyThreads.during(() -> result.add(Workers.of(workers, work))));
        return result.get(0);
    }

    private static Supplier<Remedies> search() {
        List<Remedy> some = RemedyCatalogue.all().stream()
                .filter(remedy -> List.of("longer-rods", "cable-moved").contains(remedy.id()))
                .toList();
        return () -> RemedySearch.of(SITE, some, new Plan(Set.of(), 1, 4, false, RemedyCosts.NONE), step -> {});
    }

    private static Supplier<SpreadStudy> spread() {
        List<Finding> findings = ComplianceRun.of(SITE, SiteStudy.of(SITE, StudyScope.AS_BUILT));
        return () -> SpreadStudy.of(SITE, findings, 12, 7, step -> {});
    }

    @Test
    void aSearchForRemediesUsesAsManyThreadsAsAskedFor() throws Exception {
        List<Set<String>> threads = new ArrayList<>();
        Remedies one = seen(1, threads, search());
        Remedies four = seen(4, threads, search());
        assertThat(threads.get(0)).hasSize(1);
        assertThat(threads.get(1)).hasSizeGreaterThan(1);
        assertThat(one).isEqualTo(four);
    }

    @Test
    void aSpreadUsesAsManyThreadsAsAskedFor() throws Exception {
        Supplier<SpreadStudy> work = spread();
        List<Set<String>> threads = new ArrayList<>();
        SpreadStudy one = seen(1, threads, work);
        SpreadStudy four = seen(4, threads, work);
        assertThat(threads.get(0)).hasSize(1);
        assertThat(threads.get(1)).hasSizeGreaterThan(1);
        assertThat(one.search()).isEqualTo(four.search());
        assertThat(one.next()).isEqualTo(four.next());
    }

    /** What is thrown arrives as it was, not as a copy with another message. */
    @Test
    void whatIsThrownArrivesAsItWas() {
        IllegalArgumentException thrown = new IllegalArgumentException("no such key");
        assertThatThrownBy(() -> Workers.of(2, () -> {
                    throw thrown;
                }))
                .isSameAs(thrown);
    }
}
