package earthing.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import earthing.compliance.ComplianceRun;
import earthing.compliance.Finding;
import earthing.compliance.Status;
import earthing.site.file.ReadOutcome;
import earthing.site.file.SiteFile;
import earthing.study.DemoSite;
import earthing.study.SiteStudy;
import earthing.study.StudyResults;
import earthing.study.StudyScope;
import java.io.IOException;
import java.io.InputStream;
import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import javax.xml.XMLConstants;
import javax.xml.transform.stream.StreamSource;
import javax.xml.validation.Schema;
import javax.xml.validation.SchemaFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.xml.sax.SAXException;

/** Findings for other machines, held against the published schemas by validators that are not ours. */
class ExchangeFormatsTest {

    private static final String EXPECTED = """

            expect:
              - {result: touch.cubicle, value: met}
              - {result: electrode.main.resistance, value: 1 V}
            """;

    static List<String> sites() {
        return DemoSite.names();
    }

    private static ReportInput input(String name, String more) throws IOException {
        Path file = Path.of("..", "earthing-cli", "sites", name);
        String text = Files.readString(file) + more;
        ReadOutcome outcome = more.isEmpty() ? SiteFile.read(file) : SiteFile.read(text, name);
        ReadOutcome.Valid read = (ReadOutcome.Valid) outcome;
        StudyResults results = SiteStudy.of(read.site(), StudyScope.AS_BUILT);
        return new ReportInput(
                read.site(), name, text, read.sha256(), results, ComplianceRun.of(read.site(), results), "1.2.3");
    }

    private static InputStream resource(String name) {
        return Objects.requireNonNull(ExchangeFormatsTest.class.getResourceAsStream(name));
    }

    private static void validate(String xml) throws SAXException, IOException {
        Schema schema = SchemaFactory.newInstance(XMLConstants.W3C_XML_SCHEMA_NS_URI)
                .newSchema(new StreamSource(resource("junit-4.xsd")));
        schema.newValidator().validate(new StreamSource(new StringReader(xml)));
    }

    private static JsonNode sarif(ReportInput input) throws IOException {
        JsonSchema schema = JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V4)
                .getSchema(new ObjectMapper().readTree(resource("sarif-2.1.0.json")));
        JsonNode tree = new ObjectMapper().readTree(Report.sarif(input, "sites/" + input.siteFileName()));
        assertThat(schema.validate(tree)).isEmpty();
        return tree;
    }

    @ParameterizedTest
    @MethodSource("sites")
    void everySiteIsValidByBothSchemas(String name) throws IOException {
        ReportInput input = input(name, "");
        assertThatCode(() -> validate(Report.testCases(input))).doesNotThrowAnyException();
        assertThat(sarif(input).at("/runs/0/results"))
                .hasSize(input.findings().size() + input.expectations().size());
    }

    @Test
    void theSchemasSeeWhatIsWrong() throws IOException {
        assertThatThrownBy(() -> validate("<testsuite name=\"a\"><testcase/></testsuite>"))
                .isInstanceOf(SAXException.class);
        JsonSchema schema = JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V4)
                .getSchema(new ObjectMapper().readTree(resource("sarif-2.1.0.json")));
        assertThat(schema.validate(new ObjectMapper()
                        .readTree("{\"version\": \"2.1.0\", \"runs\": [{\"results\": [{\"kind\": \"failed\"}]}]}")))
                .isNotEmpty();
    }

    @Test
    void testCasesFailWhereAFindingIsNotMetOrAnExpectationIsOff() throws IOException {
        ReportInput input = input("brackenmire-mistakes.yaml", EXPECTED);
        String xml = Report.testCases(input);
        assertThatCode(() -> validate(xml)).doesNotThrowAnyException();
        long notMet = input.findings().stream()
                .filter(f -> f.status() == Status.NOT_MET)
                .count();
        long off = input.expectations().stream().filter(held -> !held.holds()).count();
        assertThat(notMet).isPositive();
        assertThat(off).isPositive();
        assertThat(xml.split("<failure", -1)).hasSize(1 + (int) (notMet + off));
        assertThat(xml).contains("failures=\"" + (notMet + off) + "\"");
        assertThat(xml.split("<testcase", -1))
                .hasSize(1 + input.findings().size() + input.expectations().size());
    }

    @Test
    void sarifSaysKindLevelAndLine() throws IOException {
        ReportInput input = input("brackenmire-mistakes.yaml", EXPECTED);
        JsonNode run = sarif(input).at("/runs/0");
        int notMet = 0;
        for (JsonNode result : run.get("results")) {
            String rule = run.at("/tool/driver/rules/" + result.get("ruleIndex").asInt() + "/id")
                    .asText();
            assertThat(rule).isEqualTo(result.get("ruleId").asText());
            // SARIF 2.1.0, 3.27.10: what is no failure has no level.
            assertThat(result.get("level").asText().equals("none"))
                    .isEqualTo(!result.get("kind").asText().equals("fail"));
            notMet += result.at("/properties/status").asText().equals("not-met") ? 1 : 0;
        }
        assertThat(notMet).isEqualTo((int) input.findings().stream()
                .filter(f -> f.status() == Status.NOT_MET)
                .count());
        JsonNode last = run.get("results").get(run.get("results").size() - 1);
        int line = last.at("/locations/0/physicalLocation/region/startLine").asInt();
        assertThat(input.siteFileText().lines().toList().get(line - 1)).contains("value: 1 V");
    }

    @Test
    void aFindingStandsAtTheLineOfTheKeyThatItNames() throws IOException {
        ReportInput input = input("brackenmire-mistakes.yaml", "");
        Finding separation = input.findings().stream()
                .filter(f -> f.id().equals("electrode.resistance"))
                .findFirst()
                .orElseThrow();
        int line = new FindingLines(input.siteFileText()).of(separation);
        assertThat(input.siteFileText().lines().toList().get(line - 1)).contains("electrode-resistance:");
    }
}
