package earthing.compliance;

import static org.assertj.core.api.Assertions.assertThat;

import earthing.report.RecheckSection;
import earthing.site.Site;
import earthing.study.DemoSite;
import earthing.study.Recheck;
import earthing.study.Recheck.Line;
import earthing.study.Result;
import earthing.study.SiteStudy;
import earthing.study.StudyResults;
import earthing.study.StudyScope;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Results verified by code that did not produce them. */
class RecheckTest {

    static List<String> sites() {
        return DemoSite.names();
    }

    @ParameterizedTest
    @MethodSource("sites")
    void everyDemoSiteHolds(String name) {
        Site site = DemoSite.read(name);
        List<Line> lines = Recheck.lines(Recheck.added(site, SiteStudy.of(site, StudyScope.AS_BUILT)));
        assertThat(lines)
                .allSatisfy(line -> assertThat(line.difference()).as(line.id()).isLessThanOrEqualTo(line.bound()));
        if (!name.startsWith("lowgarth")) {
            assertThat(lines)
                    .extracting(Line::id)
                    .contains("electrode.potential", "electrode.surface", "fault.currents", "surge.energy");
        }
    }

    @Test
    void touchVoltageThatMissesTheWorstPlaceIsFound() {
        Site site = DemoSite.read("ternhook-wood-shared.yaml");
        StudyResults studied = SiteStudy.of(site, StudyScope.AS_BUILT);
        List<Result> wrong = studied.results().stream()
                .map(r -> r.id().equals("touch.cubicle.voltage")
                        ? Result.of(
                                r.id(), r.circumstances(), r.at(), 0.98 * r.value(), r.unit(), r.model(), r.source())
                        : r)
                .toList();
        StudyResults checked = Recheck.added(
                site,
                new StudyResults(wrong, studied.curves(), studied.gaps(), studied.assumptions(), studied.notes()));
        assertThat(Recheck.lines(checked))
                .filteredOn(line -> !line.holds())
                .extracting(Line::id)
                .containsExactly("touch.cubicle");
        assertThat(RecheckSection.text(checked)).contains("1 of").contains("do not rely on these numbers");
    }

    @Test
    void nothingIsClaimedWhereNothingCouldBeVerified() {
        assertThat(RecheckSection.text(StudyResults.EMPTY)).startsWith("Nothing could be verified");
    }
}
