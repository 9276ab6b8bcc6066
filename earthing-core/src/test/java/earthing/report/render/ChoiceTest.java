package earthing.report.render;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import earthing.report.document.Block;
import earthing.report.document.Block.Column;
import earthing.report.document.Document;
import java.io.StringReader;
import java.util.List;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.xml.sax.InputSource;

/** A table of cases in each format. */
final class ChoiceTest {

    private static final Block.Choice CHOICE = new Block.Choice(
            new Block.Table(
                    "cases",
                    "Cases",
                    List.of(Column.text("Wave"), Column.text("Broken path"), Column.number("Open")),
                    List.of(List.of("8/20", "–", "1 V"), List.of("8/20", "tee broken", "2 V"))),
            2);

    private static final Document DOCUMENT = new Document("D", "en", List.of(CHOICE));

    @Test
    void plainTextTellsTheCaseInOneColumn() {
        assertThat(TextRenderer.render(DOCUMENT))
                .contains("| Case             | Open |", "| 8/20             |  1 V |", "| 8/20, tee broken |  2 V |");
    }

    @Test
    void thePageHasAScriptOnlyWhereThereIsAChoice() throws Exception {
        String page = HtmlRenderer.render(DOCUMENT);
        assertThat(page).contains("<div class=\"choice\" data-keys=\"2\">").containsOnlyOnce("<script>");
        assertThat(HtmlRenderer.render(new Document("D", "en", List.of(CHOICE.table()))))
                .doesNotContain("<script>");
        String script = page.substring(page.indexOf("<script>") + 8, page.indexOf("</script>"));
        // A browser reads a script as it stands, an XML parser would not.
        assertThat(script).doesNotContain("&", "<");
        DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(new InputSource(new StringReader(page)));
    }

    @Test
    void onPaperThereIsNoScript() {
        assertThat(HtmlRenderer.forPrint(DOCUMENT)).contains("tee broken").doesNotContain("<script>");
    }

    @Test
    void theTableIsAmongTheBlocksOfTheDocument() {
        assertThat(DOCUMENT.everyBlock()).contains(CHOICE, CHOICE.table());
    }

    @Test
    void aChoiceNeedsACaseAndAValue() {
        assertThatIllegalArgumentException().isThrownBy(() -> new Block.Choice(CHOICE.table(), 0));
        assertThatIllegalArgumentException().isThrownBy(() -> new Block.Choice(CHOICE.table(), 3));
    }
}
