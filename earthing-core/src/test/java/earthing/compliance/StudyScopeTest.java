package earthing.compliance;

import static org.assertj.core.api.Assertions.assertThat;

import earthing.site.Site;
import earthing.study.DemoSite;
import earthing.study.SiteStudy;
import earthing.study.StudyScope;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What is left out for an answer at once may not change the answer. */
class StudyScopeTest {

    static List<String> sites() {
        return DemoSite.names();
    }

    @ParameterizedTest
    @MethodSource("sites")
    void findingsDoNotRestOnArrangementsThatTheSiteDoesNotHave(String name) {
        Site site = DemoSite.read(name);
        assertThat(ComplianceRun.of(site, SiteStudy.of(site, StudyScope.AS_BUILT)))
                .isEqualTo(ComplianceRun.of(site, SiteStudy.of(site, StudyScope.ALL_ARRANGEMENTS)));
    }
}
