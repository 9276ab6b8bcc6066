package earthing.report.pdf;

import static org.assertj.core.api.Assertions.assertThat;

import earthing.quantity.Worked;
import earthing.report.document.Block;
import earthing.report.document.Document;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDOutlineItem;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;

final class PdfRendererTest {

    private static final String SVG =
            "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 100 40\" width=\"100\" height=\"40\">"
                    + "<path d=\"M0 0L100 40\" stroke=\"currentColor\"/><text x=\"5\" y=\"20\">10 kΩ</text></svg>";

    private static final Document DOCUMENT = new Document(
            "Report – it's \"Fernmoor\" & <more>",
            "en",
            List.of(
                    new Block.Caution("Read before use", List.of("Never disconnect an earth.")),
                    new Block.Section(
                            "first",
                            2,
                            "First part",
                            List.of(
                                    new Block.Paragraph("Ωµρθ²√ ₁ ₂ ∥ ≈ × stand in the text."),
                                    new Block.Figure(
                                            "figure-a", "A figure", "In words \"so\" & so", SVG, Optional.empty()),
                                    new Block.Section(
                                            "inner", 3, "Inner part", List.of(new Block.Paragraph("inside"))))),
                    new Block.Section(
                            "second",
                            2,
                            "Second part",
                            List.of(
                                    new Block.Working(
                                            "a rise",
                                            Worked.of("U", "I * R")
                                                    .with("I", 2, "A")
                                                    .with("R", 3, "ohm")
                                                    .gives(6, "V"),
                                            ""),
                                    longTable()))));

    private static Block.Table longTable() {
        List<List<String>> rows = new ArrayList<>();
        for (int i = 0; i < 120; i++) {
            rows.add(List.of("row " + i, Integer.toString(i)));
        }
        return new Block.Table(
                "t", "Long table", List.of(Block.Column.text("Key head"), Block.Column.number("Value head")), rows);
    }

    @Test
    void sameDocumentSameBytes() {
        assertThat(PdfRenderer.render(DOCUMENT)).isEqualTo(PdfRenderer.render(DOCUMENT));
    }

    @Test
    void titleLanguageBookmarksAndPageNumbersAreThereAndNoDate() throws IOException {
        byte[] bytes = PdfRenderer.render(DOCUMENT);
        try (PDDocument pdf = Loader.loadPDF(bytes)) {
            assertThat(pdf.getDocumentInformation().getTitle()).isEqualTo(DOCUMENT.title());
            assertThat(pdf.getDocumentInformation().getCreationDate()).isNull();
            assertThat(pdf.getDocumentCatalog().getLanguage()).isEqualTo("en");
            assertThat(pdf.getDocumentCatalog().getMarkInfo().isMarked()).isTrue();
            assertThat(pdf.getDocumentCatalog().getStructureTreeRoot()).isNotNull();
            String xmp = new String(pdf.getDocumentCatalog().getMetadata().toByteArray(), StandardCharsets.UTF_8);
            assertThat(xmp).contains("<pdfaid:part>2<", "<pdfuaid:part>1<").doesNotContain("CreateDate");
            List<String> titles = new ArrayList<>();
            for (PDOutlineItem item :
                    pdf.getDocumentCatalog().getDocumentOutline().children()) {
                titles.add(item.getTitle());
                item.children().forEach(child -> titles.add("- " + child.getTitle()));
            }
            assertThat(titles).containsExactly("First part", "- Inner part", "Second part");
            int pages = pdf.getNumberOfPages();
            assertThat(pages).isGreaterThan(2);
            for (int page = 1; page <= pages; page++) {
                PDFTextStripper text = new PDFTextStripper();
                text.setStartPage(page);
                text.setEndPage(page);
                assertThat(text.getText(pdf)).contains(page + " of " + pages);
            }
        }
    }

    @Test
    void signsOfTheTradeAreThereAndTheHeadOfALongTableIsRepeated() throws IOException {
        try (PDDocument pdf = Loader.loadPDF(PdfRenderer.render(DOCUMENT))) {
            String text = new PDFTextStripper().getText(pdf);
            assertThat(text).contains("Ωµρθ²√ ₁ ₂ ∥ ≈ ×", "U = I * R with I = 2.0000 A", "row 119");
            assertThat(text.split("Key head", -1)).hasSizeGreaterThan(2);
        }
    }

    @Test
    void everyFontIsEmbedded() throws IOException {
        try (PDDocument pdf = Loader.loadPDF(PdfRenderer.render(DOCUMENT))) {
            List<String> fonts = new ArrayList<>();
            for (PDPage page : pdf.getPages()) {
                for (COSName name : page.getResources().getFontNames()) {
                    PDFont font = page.getResources().getFont(name);
                    assertThat(font.isEmbedded()).as(font.getName()).isTrue();
                    fonts.add(font.getName());
                }
            }
            assertThat(fonts).isNotEmpty().allMatch(font -> font.contains("DejaVuSans"));
        }
    }
}
