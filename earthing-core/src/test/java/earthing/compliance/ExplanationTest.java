package earthing.compliance;

import static org.assertj.core.api.Assertions.assertThat;

import earthing.site.Site;
import earthing.site.file.ReadOutcome;
import earthing.site.file.SiteFile;
import earthing.study.SiteStudy;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

final class ExplanationTest {

    /** The checks that a competent reviewer expects. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "electrode.resistance",
                "electrode.model-agreement",
                "soil.survey-quality",
                "epr.<node>",
                "fault.detection",
                "touch.<part>",
                "touch.between-earths",
                "step.worst",
                "transfer.<where>",
                "cable.power-frequency",
                "conductor.<segment>.heating",
                "conductor.<segment>.minimum-area",
                "path.single-main-earth",
                "path.arresters-through-tank",
                "path.cubicle-tee",
                "path.common-point",
                "path.contingency",
                "surge.cable-end.<core>.<end>",
                "surge.screen",
                "surge.gap",
                "arrester.margin",
                "arrester.rating",
                "separation.control-cable",
                "cable.length",
                "antenna.suppressor",
                "aux-supply.isolation",
                "pole.conducting",
                "corrosion.couple",
                "test.validity",
                "test.agreement",
                "test.continuity"
            })
    void everyCheckHasItsOwnExplanation(String id) {
        assertThat(Explanation.all().stream().filter(one -> one.id().equals(id)))
                .hasSize(1);
    }

    @Test
    void everyFindingOfEveryDemoSiteIsExplained() throws IOException {
        Set<String> ids = new TreeSet<>();
        try (Stream<Path> files = Files.list(Path.of("../earthing-cli/sites"))) {
            for (Path file : files.filter(f -> f.toString().endsWith(".yaml")).toList()) {
                Site site = ((ReadOutcome.Valid) SiteFile.read(file)).site();
                ComplianceRun.of(site, SiteStudy.of(site)).forEach(finding -> ids.add(finding.id()));
            }
        }
        assertThat(ids).hasSizeGreaterThan(40);
        assertThat(ids.stream().filter(id -> Explanation.of(id).isEmpty()))
                .as("ids without an entry in earthing/compliance/explanations.yaml")
                .isEmpty();
    }

    @Test
    void theMostLiteralExplanationIsTaken() {
        assertThat(Explanation.of("touch.between-earths").orElseThrow().id()).isEqualTo("touch.between-earths");
        assertThat(Explanation.of("touch.tank-handle").orElseThrow().id()).isEqualTo("touch.<part>");
        assertThat(Explanation.of("surge.cable-end.cores").orElseThrow().id()).isEqualTo("surge.cable-end.cores");
        assertThat(Explanation.of("surge.cable-end.trip.tank").orElseThrow().id())
                .isEqualTo("surge.cable-end.<core>.<end>");
        assertThat(Explanation.of("touch")).isEmpty();
        assertThat(Explanation.of("")).isEmpty();
    }

    @Test
    void textsAreSentencesAndPromiseNothing() {
        List<Explanation> all = Explanation.all();
        assertThat(all.stream().map(Explanation::id)).doesNotHaveDuplicates();
        assertThat(all).allSatisfy(one -> {
            assertThat(List.of(one.meaning(), one.why(), one.action()))
                    .allMatch(text -> text.endsWith(".") && Character.isUpperCase(text.charAt(0)));
            assertThat(one.meaning() + one.why() + one.action()).doesNotContainPattern("\\b[Ss]afe\\b");
        });
    }
}
