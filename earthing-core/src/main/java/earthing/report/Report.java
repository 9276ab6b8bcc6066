package earthing.report;

import earthing.report.document.Block;
import earthing.report.document.Document;
import earthing.report.render.HtmlRenderer;
import earthing.report.render.TextRenderer;
import java.util.ArrayList;
import java.util.List;

/** The compliance report of one site. */
public final class Report {

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
        blocks.add(Cautions.head());
        blocks.addAll(FrontSections.of(input, references));
        blocks.addAll(SiteSections.of(input, references));
        blocks.addAll(ResultSections.of(input, references));
        blocks.addAll(ClosingSections.of(input, references));
        blocks.add(Cautions.foot());
        Document document = new Document(
                "Earthing compliance report – " + input.site().site().name(), "en", blocks);
        CompletenessGate.afterBuilding(document);
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
     * Results and findings for machines, format {@code earthing-report/1}. It has no figures and no sign-off, so it is
     * written even where the report for people would be incomplete.
     *
     * @param input site, results and findings
     * @return JSON, one line feed at the end
     */
    public static String json(ReportInput input) {
        return JsonReport.of(input);
    }
}
