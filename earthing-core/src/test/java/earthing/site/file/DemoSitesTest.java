package earthing.site.file;

import static org.assertj.core.api.Assertions.assertThat;

import earthing.site.Site;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

final class DemoSitesTest {

    static List<Path> sites() throws IOException {
        try (Stream<Path> files = Files.list(Path.of("..", "earthing-cli", "sites"))) {
            return files.filter(file -> file.toString().endsWith(".yaml"))
                    .sorted()
                    .toList();
        }
    }

    @ParameterizedTest
    @MethodSource("sites")
    void readsWithoutAProblem(Path file) {
        assertThat(Problems.of(SiteFile.read(file))).isEmpty();
    }

    @ParameterizedTest
    @MethodSource("sites")
    void writingAndReadingAgainLosesNothing(Path file) {
        Site site = ((ReadOutcome.Valid) SiteFile.read(file)).site();
        String written = SiteFile.write(site);
        ReadOutcome again =
                SiteFile.read(written.getBytes(StandardCharsets.UTF_8), "again.yaml", SideFiles.beside(file));
        assertThat(Problems.of(again)).isEmpty();
        assertThat(((ReadOutcome.Valid) again).site()).isEqualTo(site);
        assertThat(SiteFile.write(((ReadOutcome.Valid) again).site())).isEqualTo(written);
    }

    @ParameterizedTest
    @MethodSource("sites")
    void opensWithACommentOnWhatItTeaches(Path file) throws IOException {
        assertThat(Files.readAllLines(file).get(0)).startsWith("# ");
    }

    @Test
    void thereIsASiteForEveryLesson() throws IOException {
        assertThat(sites()).hasSizeGreaterThanOrEqualTo(9);
    }
}
