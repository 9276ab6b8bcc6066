package earthing.study;

import static org.assertj.core.api.Assertions.assertThat;

import earthing.compliance.ComplianceRun;
import earthing.compliance.ComplianceRun.Basis;
import earthing.site.Site;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** A part of the studies finds what the whole study finds for it, also without the keys that it does not read. */
class PartStudyTest {

    static Stream<String> sites() {
        return DemoSite.names().stream();
    }

    @ParameterizedTest
    @MethodSource("sites")
    void findsWhatTheWholeStudyFinds(String name) {
        Site site = DemoSite.read(name);
        EarthCache cache = new EarthCache();
        StudyResults whole = SiteStudy.of(site, StudyScope.AS_BUILT, cache);
        assertThat(ComplianceRun.of(site, StudyResults.EMPTY, Set.of(Basis.DESCRIPTION)))
                .isNotEmpty()
                .isEqualTo(ComplianceRun.of(site, whole, Set.of(Basis.DESCRIPTION)));
        for (PartStudy part : PartStudy.values()) {
            Set<Basis> basis = Set.of(part == PartStudy.SURGE ? Basis.SURGE : Basis.POWER_FREQUENCY);
            Site asked = part.asked(site);
            assertThat(ComplianceRun.of(asked, part.of(asked, cache), basis))
                    .as(part.name())
                    .isNotEmpty()
                    .isEqualTo(ComplianceRun.of(site, whole, basis));
        }
    }
}
