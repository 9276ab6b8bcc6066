package earthing.report;

import static org.assertj.core.api.Assertions.assertThat;

import com.eclipsesource.json.Json;
import com.eclipsesource.json.JsonObject;
import com.eclipsesource.json.JsonValue;
import earthing.study.Case;
import earthing.study.Result;
import earthing.study.StudyResults;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

final class JsonReportTest {

    private static final ReportInput INPUT = Fixtures.input();

    private static JsonObject json(ReportInput input) {
        return Json.parse(Report.json(input)).asObject();
    }

    @Test
    void keysOfTheContractStandInTheirOrder() {
        JsonObject json = json(INPUT);
        assertThat(json.names())
                .containsExactly(
                        "format",
                        "tool",
                        "input",
                        "site",
                        "results",
                        "findings",
                        "assumptions",
                        "not_assessed",
                        "cautions");
        assertThat(json.getString("format", "")).isEqualTo("earthing-report/1");
        assertThat(json.get("tool").asObject().names()).containsExactly("name", "version");
        assertThat(json.get("input").asObject().names()).containsExactly("file", "sha256");
    }

    @Test
    void resultsHaveTheKeysOfTheContract() {
        for (JsonValue value : json(INPUT).get("results").asArray()) {
            List<String> names = value.asObject().names();
            assertThat(names).containsSubsequence("id", "case", "at", "value", "unit", "model", "source");
            assertThat(names).isSubsetOf("id", "case", "at", "value", "unit", "hand-value", "model", "source");
            assertThat(value.asObject().get("case").asObject().names()).isSubsetOf(Case.ORDER);
        }
    }

    @Test
    void findingsHaveTheKeysOfTheContractAndItsStatuses() {
        for (JsonValue value : json(INPUT).get("findings").asArray()) {
            JsonObject finding = value.asObject();
            assertThat(finding.names())
                    .containsSubsequence("id", "subject", "status", "case", "bound", "basis", "advice");
            assertThat(finding.getString("status", ""))
                    .isIn(
                            "met",
                            "not-met",
                            "accepted-departure",
                            "not-assessed",
                            "insufficient-data",
                            "not-applicable",
                            "due-later");
            assertThat(finding.get("basis").asObject().getString("kind", ""))
                    .isIn("standard", "publication", "common-practice", "owner", "tool");
        }
    }

    @Test
    void aPureNumberHasTheUnitOne() {
        JsonValue pure = json(INPUT).get("results").asArray().values().stream()
                .filter(r -> r.asObject().getString("id", "").equals("something.new"))
                .findFirst()
                .orElseThrow();
        assertThat(pure.asObject().getString("unit", "")).isEqualTo("1");
    }

    @Test
    void theSiteCarriesBoundsOriginAndDateInSi() {
        JsonObject layer = json(INPUT)
                .get("site")
                .asObject()
                .get("soil")
                .asObject()
                .get("layers")
                .asArray()
                .get(0)
                .asObject();
        JsonObject resistivity = layer.get("resistivity").asObject();
        assertThat(resistivity.getDouble("low", 0)).isEqualTo(90);
        assertThat(resistivity.getDouble("nominal", 0)).isEqualTo(110);
        assertThat(resistivity.getDouble("high", 0)).isEqualTo(140);
        assertThat(resistivity.getString("unit", "")).isEqualTo("ohm.m");
        assertThat(resistivity.getString("origin", "")).isEqualTo("measured");
        assertThat(resistivity.getString("date", "")).isEqualTo("2026-03-02");
    }

    @Test
    void anUnknownValueIsNoNumber() {
        JsonObject resistance = json(INPUT)
                .get("site")
                .asObject()
                .get("system")
                .asObject()
                .get("neutral")
                .asObject()
                .get("resistance")
                .asObject();
        assertThat(resistance.getBoolean("unknown", false)).isTrue();
        assertThat(resistance.names()).doesNotContain("nominal");
    }

    @Property(seed = "20261125", tries = 100)
    void valuesKeepFullPrecision(@ForAll @DoubleRange(min = -1e12, max = 1e12) double value) {
        StudyResults one = new StudyResults(
                List.of(Result.of("epr.main", Case.NONE, "nominal", value, "V", "model", Fixtures.TOOL)),
                List.of(),
                List.of(),
                List.of(),
                List.of());
        ReportInput input = new ReportInput(INPUT.site(), "a.yaml", "", Fixtures.HASH, one, INPUT.findings(), "0.1.0");
        JsonObject result = json(input).get("results").asArray().get(0).asObject();
        assertThat(result.getDouble("value", Double.NaN)).isEqualTo(value);
    }
}
