package earthing.study;

import static org.assertj.core.api.Assertions.assertThat;

import earthing.compliance.ComplianceRun;
import earthing.compliance.Status;
import earthing.site.Site;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Every resistance that is shown tells its ground, its method and a second method. */
class ResistanceBasisTest {

    static java.util.List<String> sites() {
        return DemoSite.names();
    }

    @ParameterizedTest
    @MethodSource("sites")
    void everyElectrodeOfEveryDemonstrationSiteTellsWhatItRestsOn(String name) {
        Site site = DemoSite.read(name);
        StudyResults results = SiteStudy.of(site, StudyScope.AS_BUILT);
        site.electrodes().forEach(electrode -> {
            String id = "electrode." + electrode.name() + ".resistance";
            for (Result result : results.of(id)) {
                String basis = ResistanceBasis.of(results, electrode.name(), result.at());
                assertThat(basis).as(name).contains("ohm.m").containsAnyOf("closed form", "even leakage", "declared");
            }
            // The bound of even leakage is one: nothing solved lies above it.
            for (Result bound : results.of(id + ".even-leakage")) {
                assertThat(results.one(id, Case.NONE, bound.at()).orElseThrow().value())
                        .as(name)
                        .isLessThanOrEqualTo(bound.value() * (1 + 1e-9));
            }
        });
        assertThat(ComplianceRun.of(site, results).stream().filter(f -> f.id().equals("electrode.model-agreement")))
                .isNotEmpty()
                .noneMatch(f -> f.status() == Status.NOT_MET);
    }

    @Test
    void thereIsNothingToTellWithoutAResistance() {
        assertThat(ResistanceBasis.of(StudyResults.EMPTY, "main", "nominal")).isEmpty();
    }
}
