package earthing.report.pdf;

import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FontStyle;
import com.openhtmltopdf.pdfboxout.PdfBoxRenderer;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder.PdfAConformance;
import com.openhtmltopdf.svgsupport.BatikSVGDrawer;
import com.openhtmltopdf.util.XRLog;
import earthing.report.document.Document;
import earthing.report.render.HtmlRenderer;
import java.awt.color.ColorSpace;
import java.awt.color.ICC_Profile;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.regex.Pattern;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentInformation;
import org.apache.pdfbox.pdmodel.common.PDMetadata;

/**
 * A document as PDF, printed from the same page as the HTML: tagged, with bookmarks, page numbers and embedded fonts,
 * made for PDF/A-2u and PDF/UA-1. The same document gives the same bytes; no date is written.
 */
public final class PdfRenderer {

    private static final String FONT_FOLDER = "/net/sf/jasperreports/fonts/dejavu/";
    private static final Pattern CREATED = Pattern.compile(
            "<rdf:Description[^>]*>\\s*<xmp:CreateDate>[^<]*</xmp:CreateDate>\\s*</rdf:Description>\\s*");

    /** Any number, but always the same: PDF wants an identifier, and it must not come from a clock. */
    private static final long DOCUMENT_ID = 1;

    private PdfRenderer() {}

    /**
     * Renders a document.
     *
     * @param document the document
     * @return the file
     */
    public static byte[] render(Document document) {
        // A message of the library would stand on standard error, beside what the user wants to read there.
        XRLog.setLoggingEnabled(false);
        PdfRendererBuilder builder = new PdfRendererBuilder();
        builder.withHtmlContent(HtmlRenderer.forPrint(document), null);
        builder.usePdfAConformance(PdfAConformance.PDFA_2_U);
        builder.usePdfUaAccessibility(true);
        builder.useColorProfile(ICC_Profile.getInstance(ColorSpace.CS_sRGB).getData());
        builder.useSVGDrawer(new BatikSVGDrawer());
        font(builder, "DejaVuSans.ttf", "DejaVu Sans", 400);
        font(builder, "DejaVuSans-Bold.ttf", "DejaVu Sans", 700);
        font(builder, "DejaVuSansMono.ttf", "DejaVu Sans Mono", 400);
        ByteArrayOutputStream bytes = new ByteArrayOutputStream(1 << 20);
        try (PdfBoxRenderer renderer = builder.buildPdfRenderer()) {
            renderer.createPDFWithoutClosing();
            PDDocument pdf = renderer.getPdfDocument();
            withoutDates(pdf);
            pdf.setDocumentId(DOCUMENT_ID);
            pdf.save(bytes);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return bytes.toByteArray();
    }

    private static void font(PdfRendererBuilder builder, String file, String family, int weight) {
        builder.useFont(() -> open(file), family, weight, FontStyle.NORMAL, true);
    }

    private static InputStream open(String file) {
        InputStream in = PdfRenderer.class.getResourceAsStream(FONT_FOLDER + file);
        if (in == null) {
            throw new IllegalStateException("the font " + file + " is missing from the class path");
        }
        return in;
    }

    private static void withoutDates(PDDocument pdf) throws IOException {
        PDDocumentInformation information = pdf.getDocumentInformation();
        information.setCreationDate(null);
        information.setModificationDate(null);
        PDMetadata metadata = pdf.getDocumentCatalog().getMetadata();
        if (metadata != null) {
            String xmp = new String(metadata.toByteArray(), StandardCharsets.UTF_8);
            metadata.importXMPMetadata(CREATED.matcher(xmp).replaceAll("").getBytes(StandardCharsets.UTF_8));
        }
    }
}
