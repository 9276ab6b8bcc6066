package earthing.report;

import earthing.report.document.Block;
import earthing.report.document.Document;
import earthing.report.pdf.PdfRenderer;
import earthing.report.render.HtmlRenderer;
import earthing.report.render.TextRenderer;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** The compliance report of one site. */
public final class Report {

    /** Name of the file that lists the others. */
    public static final String CSV_INDEX = CsvReport.INDEX;

    private Report() {}

    /**
     * The report as a document of no particular format.
     *
     * @param input site, results and findings
     * @return the document
     * @throws ReportIncomplete if a mandatory section, figure or sign-off field cannot be filled
     */
    public static Document document(ReportInput input) throws ReportIncomplete {
        CompletenessGate.beforeBuilding(input);
        References references = new References();
        List<Block> blocks = new ArrayList<>();
        blocks.addAll(FrontSections.of(input, references));
        blocks.addAll(SiteSections.of(input, references));
        blocks.addAll(ResultSections.of(input, references));
        input.spread().ifPresent(spread -> blocks.add(SpreadReport.section(input, spread)));
        input.criteria().ifPresent(criteria -> blocks.add(CriteriaPage.section(criteria)));
        blocks.addAll(ClosingSections.of(input, references));
        Document document = new Document(
                "Earthing compliance report – " + input.site().site().name(),
                "en",
                references.numbered(UnitSymbols.in(ReadingOrder.of(blocks))));
        CompletenessGate.afterBuilding(input, document);
        return document;
    }

    /**
     * The report as readable Markdown.
     *
     * @param input site, results and findings
     * @return the text
     * @throws ReportIncomplete if a mandatory part cannot be filled
     */
    public static String text(ReportInput input) throws ReportIncomplete {
        return TextRenderer.render(document(input));
    }

    /**
     * The report as one self-contained HTML page.
     *
     * @param input site, results and findings
     * @return the page
     * @throws ReportIncomplete if a mandatory part cannot be filled
     */
    public static String html(ReportInput input) throws ReportIncomplete {
        return HtmlRenderer.render(document(input));
    }

    /**
     * The report as PDF, printed from the same page.
     *
     * @param input site, results and findings
     * @return the file
     * @throws ReportIncomplete if a mandatory part cannot be filled
     */
    public static byte[] pdf(ReportInput input) throws ReportIncomplete {
        return PdfRenderer.render(document(input));
    }

    /**
     * A sheet as readable Markdown.
     *
     * @param sheet a document of {@link FieldSheet}
     * @return the text
     */
    public static String text(Document sheet) {
        return TextRenderer.render(sheet);
    }

    /**
     * A sheet as one self-contained page.
     *
     * @param sheet a document of {@link FieldSheet}
     * @return the page
     */
    public static String html(Document sheet) {
        return HtmlRenderer.render(sheet);
    }

    /**
     * A sheet as PDF.
     *
     * @param sheet a document of {@link FieldSheet}
     * @return the file
     */
    public static byte[] pdf(Document sheet) {
        return PdfRenderer.render(sheet);
    }

    /**
     * Inputs, results, findings, figure data and tables as files of comma-separated values.
     *
     * @param input site, results and findings
     * @return name of each file with its content; {@link #CSV_INDEX} comes first and lists the others
     * @throws ReportIncomplete if a mandatory part cannot be filled
     */
    public static Map<String, String> csv(ReportInput input) throws ReportIncomplete {
        return CsvReport.of(input, document(input));
    }

    /**
     * Results and findings for machines, format {@code earthing-report/1}. It has no figures and no sign-off, so it is
     * written even where the report for people would be incomplete.
     *
     * @param input site, results and findings
     * @return JSON, one line feed at the end
     */
    public static String json(ReportInput input) {
        return JsonReport.of(input);
    }

    /**
     * The findings as test cases, in the XML that build servers read.
     *
     * @param input site, results and findings
     * @return the file
     */
    public static String testCases(ReportInput input) {
        return TestCaseReport.of(input);
    }

    /**
     * The findings in SARIF 2.1.0, for machines that show them beside the lines of the site file.
     *
     * @param input site, results and findings
     * @param uri where the site file is, as a URI reference
     * @return JSON, one line feed at the end
     */
    public static String sarif(ReportInput input, String uri) {
        return SarifReport.of(input, uri);
    }
}
