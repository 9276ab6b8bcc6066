package earthing.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.eclipsesource.json.Json;
import com.eclipsesource.json.JsonObject;
import com.eclipsesource.json.JsonValue;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Every demonstration site as a reader sees it: the page laid out by a browser, the PDF drawn page by page. Without a
 * browser or without the page tools the test is skipped; the full run installs both.
 */
final class RenderedReportTest {

    /** Asks the layout of the page for everything that a reader would complain about. */
    private static final String QUESTIONS = """
            <script>
            function box(e) { const r = e.getBoundingClientRect(); return [r.left, r.top, r.right, r.bottom]; }
            window.addEventListener('load', () => {
              const told = {figures: [], clipped: [], wide: document.documentElement.scrollWidth - window.innerWidth,
                text: document.querySelector('main').innerText.length};
              document.querySelectorAll('figure svg').forEach(svg => {
                const frame = box(svg);
                let marks = 0;
                svg.querySelectorAll('path, line, rect, circle, polyline').forEach(mark => {
                  const b = mark.getBBox();
                  if (b.width + b.height > 0) { marks++; }
                });
                const texts = [...svg.querySelectorAll('text')].map(t => ({b: box(t), t: t.textContent}));
                const outside = texts.filter(t => t.b[0] < frame[0] - 1 || t.b[1] < frame[1] - 1
                  || t.b[2] > frame[2] + 1 || t.b[3] > frame[3] + 1).map(t => t.t);
                const overlaps = [];
                for (let i = 0; i < texts.length; i++) {
                  for (let j = i + 1; j < texts.length; j++) {
                    const a = texts[i].b, c = texts[j].b;
                    const w = Math.min(a[2], c[2]) - Math.max(a[0], c[0]);
                    const h = Math.min(a[3], c[3]) - Math.max(a[1], c[1]);
                    if (w > 1.5 && h > 4) { overlaps.push(texts[i].t + ' | ' + texts[j].t); }
                  }
                }
                told.figures.push({id: svg.closest('figure').id, marks: marks, texts: texts.length,
                  outside: outside, overlaps: overlaps});
              });
              document.querySelectorAll('td, th').forEach(cell => {
                if (cell.scrollWidth > cell.clientWidth + 1) { told.clipped.push(cell.textContent); }
              });
              const out = document.createElement('pre');
              out.id = 'told';
              out.textContent = 'BEGIN' + JSON.stringify(told) + 'END';
              document.body.appendChild(out);
            });
            </script>
            """;

    @TempDir
    @SuppressWarnings("NullAway.Init") // set by JUnit
    Path folder;

    static List<Path> sites() throws IOException {
        return DemoSites.all();
    }

    @ParameterizedTest
    @MethodSource("sites")
    void thePageIsLaidOutWithoutClippedTextOrOverlappingLabels(Path site) throws Exception {
        assumeTrue(Programs.onPath("chromium"), "no browser");
        String html =
                CommandRun.of("report", site.toString(), "--format", "html").out();
        String dom = new Programs(folder).dom(html.replace("</body>", QUESTIONS + "</body>"));
        int begin = dom.lastIndexOf("BEGIN{");
        assertThat(begin).as("the browser answered").isPositive();
        String told = dom.substring(begin + "BEGIN".length(), dom.indexOf("}END", begin) + 1)
                .replace("&lt;", "<")
                .replace("&gt;", ">")
                .replace("&amp;", "&");
        JsonObject answers = Json.parse(told).asObject();
        assertThat(answers.getInt("text", 0)).isGreaterThan(5000);
        assertThat(answers.getInt("wide", 1)).as("the page scrolls sideways").isLessThanOrEqualTo(0);
        assertThat(answers.get("clipped").asArray().values())
                .as("clipped cells")
                .isEmpty();
        assertThat(answers.get("figures").asArray()).isNotEmpty();
        for (JsonValue value : answers.get("figures").asArray()) {
            JsonObject figure = value.asObject();
            String id = figure.getString("id", "");
            assertThat(figure.getInt("marks", 0)).as(id + ": marks").isGreaterThan(5);
            assertThat(figure.getInt("texts", 0)).as(id + ": texts").isGreaterThan(3);
            assertThat(figure.get("outside").asArray().values())
                    .as(id + ": texts outside the drawing")
                    .isEmpty();
            assertThat(figure.get("overlaps").asArray().values())
                    .as(id + ": texts that overlap")
                    .isEmpty();
        }
    }

    @ParameterizedTest
    @MethodSource("sites")
    void everyPageOfThePdfHoldsText(Path site) throws Exception {
        assumeTrue(Programs.onPath("pdftoppm"), "no page tools");
        Path pdf = folder.resolve("report.pdf");
        CommandRun made = CommandRun.of("report", site.toString(), "--format", "pdf", "--output", pdf.toString());
        assertThat(made.err()).isEmpty();
        new Programs(folder)
                .run(
                        "pdftoppm",
                        "-r",
                        "40",
                        "-gray",
                        "-png",
                        pdf.toString(),
                        folder.resolve("page").toString());
        List<Path> pages;
        try (Stream<Path> files = Files.list(folder)) {
            pages = files.filter(file -> file.toString().endsWith(".png"))
                    .sorted()
                    .toList();
        }
        assertThat(pages).hasSizeGreaterThan(8);
        for (Path page : pages) {
            assertThat(ink(ImageIO.read(page.toFile())))
                    .as(site.getFileName() + ", " + page.getFileName() + ": part of the page that is not white")
                    .isBetween(0.004, 0.5);
        }
    }

    /** As general-purpose tools see the file: sound syntax, every font inside with its letters, title, tags, no clock. */
    @ParameterizedTest
    @MethodSource("sites")
    void thePdfIsSoundForIndependentTools(Path site) throws Exception {
        assumeTrue(Programs.onPath("pdfinfo") && Programs.onPath("pdffonts"), "no page tools");
        Path pdf = folder.resolve("report.pdf");
        CommandRun.of("report", site.toString(), "--format", "pdf", "--output", pdf.toString());
        assertThat(new Programs(folder).run("pdfinfo", pdf.toString()))
                .containsPattern("Title: +Earthing compliance report – ")
                .containsPattern("Tagged: +yes")
                .containsPattern("Encrypted: +no")
                .containsPattern("JavaScript: +no")
                .containsPattern("Page size: .*A4")
                .doesNotContain("CreationDate", "ModDate");
        List<String> fonts = new Programs(folder)
                .run("pdffonts", pdf.toString())
                .lines()
                .skip(2)
                .toList();
        assertThat(fonts)
                .hasSizeGreaterThan(1)
                .allMatch(
                        font -> font.matches(".* yes +yes +yes +\\d+ +\\d+$"), "embedded, a subset, with its letters");
        if (Programs.onPath("qpdf")) {
            assertThat(new Programs(folder).run("qpdf", "--check", pdf.toString()))
                    .contains("No syntax or stream encoding errors found");
        }
    }

    private static double ink(BufferedImage page) {
        long dark = 0;
        for (int y = 0; y < page.getHeight(); y++) {
            for (int x = 0; x < page.getWidth(); x++) {
                dark += (page.getRGB(x, y) & 0xFF) < 200 ? 1 : 0;
            }
        }
        return (double) dark / ((long) page.getWidth() * page.getHeight());
    }
}
