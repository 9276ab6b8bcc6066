package earthing.site.file;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

/** The schema and the key table of the docs are what the reader's own keys give. */
final class GeneratedPagesTest {

    private static final Path DOCS = Path.of("..", "docs");
    private static final String HEAD = "<!-- Generated from the keys of the reader from here to the end. -->\n\n";

    @Test
    void schemaIsNotStale() throws IOException {
        check(DOCS.resolve("site-file.schema.json"), SiteSchema.text());
    }

    @Test
    void keyTableIsNotStale() throws IOException {
        Path page = DOCS.resolve("site-file.md");
        String text = Files.readString(page);
        int end = text.indexOf(HEAD);
        assertThat(end).isPositive();
        check(page, text.substring(0, end) + HEAD + KeyTable.markdown());
    }

    private static void check(Path file, String expected) throws IOException {
        if (Boolean.getBoolean("earthing.writePages")) {
            Files.writeString(file, expected);
        }
        assertThat(Files.readString(file))
                .as("%s is stale; run the test with -Dearthing.writePages=true", file)
                .isEqualTo(expected);
    }
}
