package earthing.decision;

import static org.assertj.core.api.Assertions.assertThat;

import earthing.compliance.ComplianceRun;
import earthing.compliance.Finding;
import earthing.decision.CriteriaComparison.Row;
import earthing.site.Site;
import earthing.study.DemoSite;
import earthing.study.SiteStudy;
import earthing.study.StudyScope;
import org.junit.jupiter.api.Test;

class CriteriaComparisonTest {

    @Test
    void theOwnSetFindsWhatTheSiteFindsAndTheLeastMarginGoverns() {
        Site site = DemoSite.read("ternhook-wood-shared.yaml");
        CriteriaComparison compared = CriteriaComparison.of(site);
        assertThat(compared.sets())
                .extracting(CriteriaComparison.Used::word)
                .containsSequence("ieee-80-50kg", "ieee-80-70kg");
        assertThat(compared.left()).containsOnlyKeys("iec-60479-1", "owner");
        int own = compared.sets().stream()
                .map(CriteriaComparison.Used::own)
                .toList()
                .indexOf(true);
        Finding touch = ComplianceRun.of(site, SiteStudy.of(site, StudyScope.AS_BUILT)).stream()
                .filter(f -> f.id().equals("touch.cubicle"))
                .findFirst()
                .orElseThrow();
        Row row = compared.rows().stream()
                .filter(r -> r.id().equals("touch.cubicle"))
                .findFirst()
                .orElseThrow();
        assertThat(row.findings().get(own)).contains(touch);
        double least = row.findings()
                .get(row.governing().orElseThrow())
                .orElseThrow()
                .margin()
                .orElseThrow();
        assertThat(row.findings()).allMatch(f -> f.orElseThrow().margin().orElse(9) >= least);
    }

    /** IEEE Std 80: the tolerable voltage goes with the constant of the body weight, 0.157 for 70 kg and 0.116 for 50 kg. */
    @Test
    void theTwoBodyWeightsDifferByTheirConstants() {
        CriteriaComparison compared = CriteriaComparison.of(DemoSite.read("ternhook-wood-shared.yaml"));
        int light = compared.sets().stream()
                .map(CriteriaComparison.Used::word)
                .toList()
                .indexOf("ieee-80-50kg");
        Row row = compared.rows().stream()
                .filter(r -> r.id().equals("touch.cubicle"))
                .findFirst()
                .orElseThrow();
        double fifty = row.findings().get(light).orElseThrow().limit().orElseThrow();
        double seventy = row.findings().get(light + 1).orElseThrow().limit().orElseThrow();
        assertThat(seventy / fifty).isCloseTo(0.157 / 0.116, org.assertj.core.api.Assertions.within(1e-9));
    }

    @Test
    void aSetThatTheFileDescribesIsUsed() {
        CriteriaComparison compared = CriteriaComparison.of(DemoSite.read("thornby-shield-wire.yaml"));
        assertThat(compared.sets()).extracting(CriteriaComparison.Used::word).contains("owner");
        assertThat(compared.sets()).allMatch(set -> !set.why().isBlank());
    }
}
