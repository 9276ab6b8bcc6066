package earthing.decision;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import earthing.compliance.ComplianceRun;
import earthing.compliance.Finding;
import earthing.site.Site;
import earthing.site.file.ReadOutcome;
import earthing.site.file.SiteFile;
import earthing.study.Curve;
import earthing.study.Result;
import earthing.study.SiteStudy;
import earthing.study.StudyResults;
import earthing.study.StudyScope;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;

final class SensitivityTest {

    private static final String ELECTRODE = "sensitivity.electrode.resistance";
    private static final String SOIL = "soil.resistivity";

    private static StudyResults found(String name) {
        Site site = ((ReadOutcome.Valid) SiteFile.read(Path.of("..", "earthing-cli", "sites", name))).site();
        StudyResults studied = SiteStudy.of(site, StudyScope.AS_BUILT);
        List<Finding> findings = ComplianceRun.of(site, studied);
        return Sensitivity.added(site, studied, findings);
    }

    private static double at(StudyResults results, String id, String at) {
        return results.of(id).stream()
                .filter(r -> r.at().equals(at))
                .mapToDouble(Result::value)
                .findFirst()
                .orElseThrow();
    }

    /** In uniform ground a resistance to remote earth is its resistivity times a length that only the shape sets. */
    @Test
    void inUniformGroundTheElectrodeFollowsTheResistivityAndNothingElse() {
        StudyResults results = found("brackenmire-mistakes.yaml");
        double nominal = at(results, ELECTRODE, "nominal");
        assertThat(at(results, ELECTRODE, SOIL + "=low") / nominal).isCloseTo(300.0 / 500, within(1e-9));
        assertThat(at(results, ELECTRODE, SOIL + "=high") / nominal).isCloseTo(1200.0 / 500, within(1e-9));
        for (String other : List.of("system.three-phase-fault-current", "system.earth-fault-current")) {
            assertThat(at(results, ELECTRODE, other + "=low")).isEqualTo(nominal);
            assertThat(at(results, ELECTRODE, other + "=high")).isEqualTo(nominal);
        }
    }

    @Test
    void theHeaviestInputStandsFirstAndEachCurveMeetsItsResults() {
        StudyResults results = found("brackenmire-mistakes.yaml");
        List<Curve> curves = results.curves().stream()
                .filter(curve -> curve.id().startsWith(Sensitivity.PREFIX))
                .toList();
        assertThat(curves).hasSizeGreaterThan(1);
        for (Curve curve : curves) {
            double before = Double.POSITIVE_INFINITY;
            for (Curve.Trace trace : curve.traces()) {
                double swing = Math.abs(trace.y(2) - trace.y(1)) + Math.abs(trace.y(0) - trace.y(1));
                assertThat(swing).isLessThanOrEqualTo(before);
                before = swing;
                assertThat(trace.y(0)).isEqualTo(at(results, curve.id(), trace.name() + "=low"));
                assertThat(trace.y(1)).isEqualTo(at(results, curve.id(), "nominal"));
                assertThat(trace.y(2)).isEqualTo(at(results, curve.id(), trace.name() + "=high"));
            }
        }
        assertThat(results.curves().stream()
                        .filter(curve -> curve.id().equals(ELECTRODE))
                        .findFirst()
                        .orElseThrow()
                        .traces()
                        .get(0)
                        .name())
                .isEqualTo(SOIL);
    }

    @Test
    void aSiteWithoutBoundsIsLeftAsItIs() {
        assertThat(found("lowgarth-short.yaml").results())
                .noneMatch(result -> result.id().startsWith(Sensitivity.PREFIX));
    }
}
