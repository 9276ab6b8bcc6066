package earthing.decision;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import earthing.compliance.ComplianceRun;
import earthing.compliance.Finding;
import earthing.compliance.Status;
import earthing.site.Site;
import earthing.site.file.ReadOutcome;
import earthing.site.file.SideFiles;
import earthing.site.file.SiteFile;
import earthing.study.DemoSite;
import earthing.study.SiteStudy;
import earthing.study.StudyScope;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * On every demonstration site that fails the search finds a set, and the site that is written with it, read back and checked
 * anew, meets every finding. A build takes two quick ones, the profile {@code nightly} all.
 */
class RemedyDemoSitesTest {

    private static final Set<String> QUICK = Set.of("pellwharf-plate-concrete.yaml", "quernholm-resonant.yaml");
    private static final SideFiles BESIDE = SideFiles.beside(Path.of("..", "earthing-cli", "sites", "changed.yaml"));

    static List<String> names() {
        return DemoSite.names();
    }

    @ParameterizedTest
    @MethodSource("names")
    void theSetThatIsFoundMeetsEverythingAndTheWrittenSiteSaysSo(String name) {
        assumeTrue(
                QUICK.contains(name) || Boolean.getBoolean("remedy.all"),
                "takes a minute or more; the profile nightly runs it");
        Site site = DemoSite.read(name);
        Remedies found = RemedySearch.of(site, RemedyCatalogue.all(), RemedySearch.Plan.USUAL, step -> {});
        if (found.notMet().isEmpty()) {
            assertThat(checked(site)).noneMatch(RemedyDemoSitesTest::unmet);
            return;
        }
        RemedyTrial best = found.best().orElseThrow(() -> new AssertionError("no set for " + name));
        assertThat(found.notMet()).allMatch(best::meets);
        ReadOutcome read =
                SiteFile.read(SiteFile.write(best.site()).getBytes(StandardCharsets.UTF_8), "changed.yaml", BESIDE);
        assertThat(read).isInstanceOf(ReadOutcome.Valid.class);
        assertThat(checked(((ReadOutcome.Valid) read).site())).noneMatch(RemedyDemoSitesTest::unmet);
    }

    private static List<Finding> checked(Site site) {
        return ComplianceRun.of(site, SiteStudy.of(site, StudyScope.AS_BUILT));
    }

    /** A reading belongs to the pole that was measured. */
    private static boolean unmet(Finding finding) {
        return finding.status() == Status.NOT_MET && !RemedySearch.isReading(finding);
    }
}
