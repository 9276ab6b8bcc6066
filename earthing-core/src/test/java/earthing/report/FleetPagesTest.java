package earthing.report;

import static org.assertj.core.api.Assertions.assertThat;

import com.eclipsesource.json.Json;
import com.eclipsesource.json.JsonArray;
import com.eclipsesource.json.JsonObject;
import com.eclipsesource.json.JsonValue;
import earthing.compliance.Finding;
import earthing.compliance.Status;
import earthing.fleet.FleetRun;
import earthing.fleet.FleetSummary;
import earthing.fleet.FleetTable;
import earthing.report.figure.Histogram;
import java.io.IOException;
import java.io.StringReader;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.xml.parsers.DocumentBuilderFactory;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.xml.sax.InputSource;

final class FleetPagesTest {

    private static final String TABLE = """
            # separator: comma
            site.pole,site.name,site.stage,site.latitude [deg],site.longitude [deg],system.voltage [kV],\
            system.frequency [Hz],system.neutral.method,tank.height [m]
            P1,Elm <1>,design,54.5,-2.25,22,50,solid,9
            P2,Oak,design,,,22,50,solid,9
            P3,Ash,design,95,1,22,50,solid,9
            """;

    @TempDir
    @SuppressWarnings("NullAway.Init") // set by JUnit
    static Path folder;

    @SuppressWarnings("NullAway.Init") // set before all
    private static FleetTable table;

    @BeforeAll
    static void run() throws Exception {
        Path file = folder.resolve("poles.csv");
        Files.writeString(file, TABLE.replace("P2,Oak,design,,,", "P2,Oak,design,-,-,"));
        table = ((FleetTable.Opened.Good) FleetTable.open(file, Optional.empty(), Optional.empty(), Optional.empty()))
                .table();
        FleetRun.of(
                table,
                new FleetRun.Order(Optional.empty(), folder.resolve("results"), 2, false, "test", FleetLines::json),
                new FleetRun.Watcher() {
                    @Override
                    public void done(int rows) {}

                    @Override
                    public boolean isStopped() {
                        return false;
                    }
                });
    }

    @Test
    void eachLineIsOneObjectAndARefusedRowSaysFileRowAndColumn() throws IOException {
        List<String> lines = Files.readAllLines(folder.resolve("results").resolve("results.jsonl"));
        assertThat(lines).hasSize(3);
        JsonObject good = Json.parse(lines.get(0)).asObject();
        assertThat(good.getString("pole", "")).isEqualTo("P1");
        assertThat(good.getString("outcome", "")).isEqualTo("assessed");
        assertThat(good.get("findings").asArray().size()).isGreaterThan(10);
        for (JsonValue finding : good.get("findings").asArray()) {
            assertThat(finding.asObject().names()).contains("id", "status", "case", "bound");
        }
        JsonObject bad = Json.parse(lines.get(2)).asObject();
        JsonObject reason = bad.get("reasons").asArray().get(0).asObject();
        assertThat(reason.getString("file", "")).isEqualTo("poles.csv");
        assertThat(reason.getInt("row", 0)).isEqualTo(5);
        assertThat(reason.getInt("column", 0)).isEqualTo(4);
        assertThat(reason.getString("head", "")).isEqualTo("site.latitude [deg]");
    }

    /** RFC 7946: sections 3.1.1 (longitude before latitude), 3.2 (a feature's members), 3.3, 4 (no other reference system). */
    @Test
    void theMapIsAFeatureCollectionOfRfc7946() throws IOException {
        StringWriter text = new StringWriter();
        FleetLines.map(folder.resolve("results"), table.form(), text);
        JsonObject map = Json.parse(text.toString()).asObject();
        assertThat(map.names()).containsExactly("type", "features");
        assertThat(map.getString("type", "")).isEqualTo("FeatureCollection");
        JsonArray features = map.get("features").asArray();
        assertThat(features).hasSize(3);
        for (JsonValue feature : features) {
            assertThat(feature.asObject().names()).containsExactly("type", "geometry", "properties");
            assertThat(feature.asObject().getString("type", "")).isEqualTo("Feature");
        }
        JsonObject point = features.get(0).asObject().get("geometry").asObject();
        assertThat(point.getString("type", "")).isEqualTo("Point");
        assertThat(point.get("coordinates").asArray().get(0).asDouble()).isEqualTo(-2.25);
        assertThat(point.get("coordinates").asArray().get(1).asDouble()).isEqualTo(54.5);
        assertThat(features.get(1).asObject().get("geometry")).isEqualTo(Json.NULL);
    }

    @Test
    void thePageIsWellFormedFetchesNothingAndCountsEveryPole() throws Exception {
        FleetSummary summary = FleetSummary.of(folder.resolve("results"), table.form());
        String page = Report.html(FleetPage.document("poles.csv", summary, "test"));
        String xml = page.replace("<!DOCTYPE html>\n", "");
        DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(new InputSource(new StringReader(xml)));
        assertThat(page)
                .doesNotContain("src=\"", "http://fonts", "<script")
                .contains("competent and licensed person", "P3", "row 5, column 4");
        assertThat(FleetPage.text("poles.csv", summary).lines())
                .allSatisfy(line -> assertThat(line).hasSizeLessThanOrEqualTo(80));
        int poles = 0;
        for (Status status : Status.values()) {
            poles += summary.poles(Finding.Group.SURGE, status);
        }
        assertThat(poles).isEqualTo(2);
    }

    @Test
    void aMarginAtTheLimitIsMet() {
        List<String> ranges = Histogram.ranges();
        int[] counts = Histogram.counts(new double[] {0, -1e-6, -1, -1.01, 0.3, 1, 44});
        List<String> filled = new ArrayList<>();
        for (int i = 0; i < counts.length; i++) {
            if (counts[i] > 0) {
                filled.add(ranges.get(i) + ": " + counts[i]);
            }
        }
        assertThat(filled)
                .containsExactly(
                        "below -100 %: 1",
                        "-100 to -90 %: 1", "-10 to 0 %: 1", "0 to 10 %: 1", "30 to 40 %: 1", "+100 % and more: 2");
    }

    @Property(seed = "20261125", tries = 100)
    void everyMarginIsInOneBarAndTheSignDecidesTheSide(
            @ForAll @Size(max = 40) List<@DoubleRange(min = -9, max = 9) Double> margins) {
        double[] values = margins.stream().mapToDouble(Double::doubleValue).toArray();
        int[] counts = Histogram.counts(values);
        int notMet = 0;
        int all = 0;
        for (int i = 0; i < counts.length; i++) {
            all += counts[i];
            notMet += i <= 10 ? counts[i] : 0;
        }
        assertThat(all).isEqualTo(values.length);
        assertThat(notMet).isEqualTo((int)
                margins.stream().filter(margin -> margin < -1e-10).count());
    }
}
