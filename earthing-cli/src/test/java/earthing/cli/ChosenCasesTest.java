package earthing.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.file.Path;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A reader of the page chooses among the cases that were computed, in a browser. */
final class ChosenCasesTest {

    private static final Pattern ROW = Pattern.compile("<tr( class=\"[^\"]*\")?><th scope=\"row\">");

    private static final String CHOOSE = """
            <script>
            const chosen = document.querySelectorAll('#cases .choice')[0].querySelectorAll('select');
            const by = name => [...chosen].find(s => s.parentElement.firstChild.textContent === name);
            for (const [name, word] of [['Arrangement', 'separate'], ['Wave', '8/20']]) {
              by(name).value = word;
              by(name).dispatchEvent(new Event('change'));
            }
            document.body.dataset.closed = [...by('Bound').options].filter(o => o.disabled).map(o => o.text).join(' ');
            </script></body>""";

    @TempDir
    @SuppressWarnings("NullAway.Init") // set by JUnit
    Path folder;

    @SuppressWarnings("NullAway.Init") // set before each test
    private String html;

    @BeforeEach
    void page() {
        assumeTrue(Programs.onPath("chromium"), "no browser");
        html = CommandRun.of("report", DemoSites.named("ternhook-wood-shared").toString(), "--format", "html")
                .out();
    }

    @Test
    void onlyTheRowsOfTheChoiceAreShown() throws Exception {
        String table = surge(new Programs(folder).dom(html.replace("</body>", CHOOSE)));
        for (String row : table.split("<tr", -1)) {
            boolean fits = row.contains("<td>separate</td>") && row.contains("<td>8/20</td>");
            if (row.contains("scope=\"row\"")) {
                assertThat(row.contains("class=\"out\"")).as(row).isNotEqualTo(fits);
            }
        }
        assertThat(table).contains("<td>separate</td>");
    }

    @Test
    void whatWasNotComputedBesideTheOtherChoicesCannotBeChosen() throws Exception {
        assertThat(new Programs(folder).dom(html.replace("</body>", CHOOSE))).contains("data-closed=\"low high\"");
    }

    @Test
    void everyRowStandsThereWithoutScriptsAndOnPaperWhateverIsChosen() throws Exception {
        assertThat(ROW.matcher(surge(html)).results().map(MatchResult::group))
                .hasSizeGreaterThan(20)
                .noneMatch(row -> row.contains("out"));
        assumeTrue(Programs.onPath("pdftotext"), "no page tools");
        Programs programs = new Programs(folder);
        Path pdf = programs.printed(html.replace("</body>", CHOOSE));
        String paper = programs.run("pdftotext", "-layout", pdf.toString(), "-");
        String cases = paper.substring(paper.lastIndexOf("All cases that were computed"));
        assertThat(cases)
                .contains("unearthed", "separate", "0.25/100", "induced")
                .doesNotContain("24 of 24 cases");
    }

    @Test
    void choosingNeedsNoNetwork() {
        assertThat(html.substring(html.indexOf("<script>"))).doesNotContain("http", "fetch(", "import(", "src=");
    }

    private static String surge(String page) {
        int begin = page.indexOf("id=\"cases-surge\"");
        return page.substring(begin, page.indexOf("</table>", begin));
    }
}
