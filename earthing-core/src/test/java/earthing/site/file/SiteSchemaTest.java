package earthing.site.file;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import com.networknt.schema.ValidationMessage;
import java.io.IOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.snakeyaml.engine.v2.api.Load;
import org.snakeyaml.engine.v2.api.LoadSettings;

/** The schema, as a validator that is not ours reads it. */
final class SiteSchemaTest {

    private static final ObjectMapper MAPPER = new ObjectMapper();
    private static final JsonSchema SCHEMA =
            JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012).getSchema(SiteSchema.text());

    static List<Path> sites() throws IOException {
        return DemoSitesTest.sites();
    }

    @Test
    void schemaIsValidByItsOwnMetaSchema() throws IOException {
        JsonSchema meta = JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012)
                .getSchema(URI.create("https://json-schema.org/draft/2020-12/schema"));
        assertThat(meta.validate(MAPPER.readTree(SiteSchema.text()))).isEmpty();
    }

    @ParameterizedTest
    @MethodSource("sites")
    void everyDemoSiteIsValidByTheSchema(Path file) throws IOException {
        assertThat(validate(Files.readString(file))).isEmpty();
    }

    @Test
    void templateIsValidByTheSchema() {
        assertThat(validate(SiteTemplate.text())).isEmpty();
    }

    @Property(seed = "20261125", tries = 100)
    void whateverTheReaderTakesTheSchemaTakes(@ForAll long seed) {
        String text = SiteFile.write(RandomSites.of(seed));
        assertThat(validate(text)).as(text).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "tank: {hight: 9 m}",
                "tank: {height: 9}",
                "tank: {height: -9 m}",
                "tank: {height: 9 kV}",
                "tank: {height: \"9,5 m\"}",
                "tank: {height: 9 m, impulse-level: {low: 95 kV}}",
                "tank: {height: {nominal: 9 m, origin: guessed}}",
                "tank: {switch-state: closed}",
                "cubicle: {height: 3 m, earth: common}",
                "arresters: {phases: 4, side: both, earthed-at: tank}",
                "arresters: {phases: two, side: both, earthed-at: tank}",
                "surges: {waves: [9/21]}",
                "soil: {survey-date: last week}",
                "electrodes: main",
                "expect: [{result: x}]",
                "colour: red"
            })
    void whatTheReaderRefusesForItsFormTheSchemaRefuses(String line) {
        String head = """
                file-version: 1
                site: {name: Test, stage: design}
                system: {voltage: 22 kV, frequency: 50 Hz, neutral: {method: solid}}
                """;
        assertThat(validate(head)).isEmpty();
        assertThat(validate(head + line + '\n')).isNotEmpty();
        assertThat(SiteFile.read(head + line + '\n', "x.yaml")).isInstanceOf(ReadOutcome.Invalid.class);
    }

    private static Iterable<ValidationMessage> validate(String yaml) {
        Object tree = new Load(LoadSettings.builder().build()).loadFromString(yaml);
        JsonNode node = MAPPER.valueToTree(tree);
        return SCHEMA.validate(node);
    }
}
