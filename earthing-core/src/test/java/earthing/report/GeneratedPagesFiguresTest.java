package earthing.report;

import static org.assertj.core.api.Assertions.assertThat;

import earthing.report.figure.LineChart;
import earthing.site.Site;
import earthing.site.file.ReadOutcome;
import earthing.site.file.SiteFile;
import earthing.study.Curve;
import earthing.study.SiteStudy;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

/** The figures of the theory pages are what the library draws; {@code -Dearthing.writePages=true} renews them. */
final class GeneratedPagesFiguresTest {

    private static final Path THEORY = Path.of("..", "docs", "theory");

    @Test
    void wavesOfTheSurgePathAreNotStale() throws IOException {
        Path sites = Path.of("..", "earthing-cli", "sites");
        Site site = ((ReadOutcome.Valid) SiteFile.read(sites.resolve("ternhook-wood-shared.yaml"))).site();
        Curve waves = SiteStudy.of(site).curves().stream()
                .filter(curve -> curve.id().equals("surge.cable-end.waveforms")
                        && curve.title().endsWith("screen not bonded at both ends"))
                .findFirst()
                .orElseThrow();
        String drawing = LineChart.of(waves, "surge-path-waves").replace("currentColor", "#444") + "\n";
        Path file = THEORY.resolve("surge-path-waves.svg");
        if (Boolean.getBoolean("earthing.writePages")) {
            Files.writeString(file, drawing);
        }
        assertThat(Files.readString(file))
                .as("%s is stale; run the test with -Dearthing.writePages=true", file)
                .isEqualTo(drawing);
        assertThat(Files.readString(THEORY.resolve("surge-path.md"))).contains("surge-path-waves.svg");
    }
}
