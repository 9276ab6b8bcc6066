package earthing.report;

import com.eclipsesource.json.JsonArray;
import com.eclipsesource.json.JsonObject;
import com.eclipsesource.json.WriterConfig;
import earthing.compliance.Finding;
import earthing.decision.CriteriaComparison;
import earthing.decision.CriteriaComparison.Row;
import earthing.decision.CriteriaComparison.Used;
import earthing.report.document.Amount;
import earthing.report.document.Block;
import earthing.report.document.Block.Column;
import earthing.report.render.TextRenderer;
import earthing.site.Site;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** One site under several sets of criteria, for a terminal of 80 columns and for machines. */
public final class CriteriaPage {

    static final String FORMAT = "earthing-criteria/1";

    private static final int WIDTH = 80;

    private CriteriaPage() {}

    /**
     * Prints the sets side by side: a table for each check on which they differ, then what each set rests on.
     *
     * @param site the site
     * @param compared what each set found
     * @return lines of at most 80 columns, each ended by a line feed
     */
    public static String text(Site site, CriteriaComparison compared) {
        StringBuilder text = new StringBuilder();
        lines(text, "", site.site().name() + " under " + compared.sets().size() + " sets of criteria");
        if (compared.rows().isEmpty()) {
            lines(text, "", "The sets agree on all checks.");
        }
        for (Row row : compared.rows()) {
            text.append('\n');
            text.append(TextRenderer.table(table(row.id(), row, compared), WIDTH));
        }
        text.append('\n');
        lines(text, "", agreed(compared));
        text.append("\nWhy they differ: what the limit of the tightest touch finding rests on\n");
        for (Used set : compared.sets()) {
            lines(text, "  ", set.word() + (set.own() ? " (named by the file)" : "") + ": " + set.why());
        }
        compared.left().forEach((word, key) -> lines(text, "  ", word + ": not used, the file does not give " + key));
        text.append('\n');
        lines(text, "", OTHER_WAYS);
        return text.toString();
    }

    /** The same as a section of a report. */
    static Block section(CriteriaComparison compared) {
        List<Block> blocks = new ArrayList<>();
        if (compared.rows().isEmpty()) {
            blocks.add(new Block.Paragraph("The sets agree on all checks."));
        }
        Map<String, Integer> times = new HashMap<>();
        for (Row row : compared.rows()) {
            int time = times.merge(row.id(), 1, Integer::sum);
            blocks.add(table("criteria-" + row.id() + (time == 1 ? "" : "-" + time), row, compared));
        }
        blocks.add(new Block.Paragraph(agreed(compared)));
        List<String> why = new ArrayList<>();
        compared.sets()
                .forEach(set -> why.add(set.word() + (set.own() ? " (named by the file)" : "") + ": " + set.why()));
        compared.left().forEach((word, key) -> why.add(word + ": not used, the file does not give " + key));
        blocks.add(new Block.Paragraph("Why they differ: what the limit of the tightest touch finding rests on."));
        blocks.add(new Block.Bullets(why));
        blocks.add(new Block.Paragraph(OTHER_WAYS));
        return new Block.Section("all-criteria", 2, "Under " + compared.sets().size() + " sets of criteria", blocks);
    }

    private static final String OTHER_WAYS =
            "Sets of different standards belong to different ways of finding the prospective voltage and of"
                    + " crediting footwear and ground; the smaller limit is not by itself the more careful design."
                    + " Which set applies is for local codes and the owner to say.";

    private static String agreed(CriteriaComparison compared) {
        return compared.agreed() + " further checks with a value have the same limit and status under all sets.";
    }

    private static void lines(StringBuilder text, String indent, String words) {
        TextRenderer.lines(words, WIDTH - indent.length())
                .forEach(line -> text.append(indent).append(line).append('\n'));
    }

    private static Block.Table table(String id, Row row, CriteriaComparison compared) {
        List<List<String>> rows = new ArrayList<>();
        int governing = row.governing().orElse(-1);
        for (int i = 0; i < compared.sets().size(); i++) {
            Optional<Finding> finding = row.findings().get(i);
            String unit = finding.map(Finding::unit).orElse("");
            rows.add(List.of(
                    compared.sets().get(i).word() + (i == governing ? ", governs" : ""),
                    finding.map(f -> f.status().text()).orElse("–"),
                    finding.map(f -> Amount.text(f.value(), unit)).orElse("–"),
                    finding.map(f -> Amount.text(f.limit(), unit)).orElse("–"),
                    finding.map(f -> Amount.margin(f.margin())).orElse("–")));
        }
        return new Block.Table(
                id,
                row.id() + ", " + row.subject(),
                List.of(
                        Column.text(row.id()),
                        Column.status("Status"),
                        Column.number("Value"),
                        Column.number("Limit"),
                        Column.number("Margin")),
                rows);
    }

    /**
     * The same for machines, format {@code earthing-criteria/1}.
     *
     * @param fileName name of the site file
     * @param compared what each set found
     * @return JSON, one line feed at the end
     */
    public static String json(String fileName, CriteriaComparison compared) {
        return object(fileName, compared).toString(WriterConfig.PRETTY_PRINT).replace("\r\n", "\n") + "\n";
    }

    static JsonObject object(String fileName, CriteriaComparison compared) {
        JsonArray sets = new JsonArray();
        for (Used set : compared.sets()) {
            sets.add(new JsonObject()
                    .add("criteria", set.word())
                    .add("own", set.own())
                    .add("why", set.why()));
        }
        JsonArray left = new JsonArray();
        compared.left()
                .forEach((word, key) ->
                        left.add(new JsonObject().add("criteria", word).add("lacks", key)));
        JsonArray checks = new JsonArray();
        for (Row row : compared.rows()) {
            JsonArray findings = new JsonArray();
            for (int i = 0; i < compared.sets().size(); i++) {
                String word = compared.sets().get(i).word();
                row.findings()
                        .get(i)
                        .ifPresent(f -> findings.add(
                                new JsonObject().add("criteria", word).add("finding", JsonReport.finding(f))));
            }
            JsonObject check = new JsonObject().add("id", row.id()).add("subject", row.subject());
            row.governing()
                    .ifPresent(
                            i -> check.add("governing", compared.sets().get(i).word()));
            checks.add(check.add("findings", findings));
        }
        return new JsonObject()
                .add("format", FORMAT)
                .add("file", fileName)
                .add("sets", sets)
                .add("not-used", left)
                .add("checks", checks)
                .add("agreed", compared.agreed());
    }
}
