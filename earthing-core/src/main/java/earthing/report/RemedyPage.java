package earthing.report;

import com.eclipsesource.json.JsonArray;
import com.eclipsesource.json.JsonObject;
import com.eclipsesource.json.WriterConfig;
import earthing.compliance.Finding;
import earthing.decision.Remedies;
import earthing.decision.Remedy;
import earthing.decision.RemedyTrial;
import earthing.decision.RemedyTrial.Effect;
import earthing.report.document.Block;
import earthing.report.render.TextRenderer;
import java.util.List;
import java.util.Locale;

/** The remedies of a site for a terminal of 80 columns and for machines. */
public final class RemedyPage {

    static final String FORMAT = "earthing-remedies/1";

    private static final int WIDTH = 80;

    private RemedyPage() {}

    /**
     * Prints what was found.
     *
     * @param siteName name of the site
     * @param remedies what was found
     * @return lines of at most 80 columns, each ended by a line feed
     */
    public static String text(String siteName, Remedies remedies) {
        StringBuilder page = new StringBuilder(8192);
        lines("Remedies for " + siteName, "", page);
        blocks(RemedyBlocks.of(remedies), page);
        return page.toString();
    }

    /**
     * Prints the catalogue.
     *
     * @param catalogue the changes
     * @return lines of at most 80 columns, each ended by a line feed
     */
    public static String catalogue(List<Remedy> catalogue) {
        StringBuilder page = new StringBuilder(8192);
        for (Remedy remedy : catalogue) {
            lines(remedy.id() + ": " + remedy.title(), "", page);
            lines(
                    "  range: "
                            + String.join(
                                    "; ",
                                    remedy.steps().stream()
                                            .map(Remedy.Step::text)
                                            .toList()),
                    "    ",
                    page);
            lines("  keys: " + String.join(", ", remedy.keys()).replace("?", ""), "    ", page);
            lines(
                    "  applies where " + remedy.applies()
                            + remedy.permission()
                                    .map(word -> "; needs --allow " + word)
                                    .orElse(""),
                    "    ",
                    page);
            lines("  caution: " + remedy.caution(), "    ", page);
            page.append('\n');
        }
        return page.toString();
    }

    private static void blocks(List<Block> blocks, StringBuilder page) {
        for (Block block : blocks) {
            page.append('\n');
            if (block instanceof Block.Section section) {
                lines(section.title(), "", page);
                page.append("-".repeat(section.title().length())).append('\n');
                blocks(section.blocks(), page);
            } else if (block instanceof Block.Paragraph paragraph) {
                lines(paragraph.text(), "", page);
            } else if (block instanceof Block.Table table) {
                lines(table.caption() + ":", "", page);
                page.append(TextRenderer.table(table, WIDTH));
            } else if (block instanceof Block.Bullets bullets) {
                bullets.items().forEach(item -> lines("- " + item, "  ", page));
            } else if (block instanceof Block.Caution caution) {
                caution.lines().forEach(line -> lines(line, "", page));
            }
        }
    }

    private static void lines(String text, String indent, StringBuilder page) {
        String lead = text.substring(0, text.length() - text.stripLeading().length());
        String prefix = lead;
        for (String line : TextRenderer.lines(text.strip(), WIDTH - Math.max(lead.length(), indent.length()))) {
            page.append(prefix).append(line).append('\n');
            prefix = indent;
        }
    }

    /**
     * What was found for machines, format {@code earthing-remedies/1}: SI values at full precision.
     *
     * @param input the site as it is
     * @param remedies what was found
     * @return JSON, one line feed at the end
     */
    public static String json(ReportInput input, Remedies remedies) {
        JsonArray notMet = new JsonArray();
        for (Finding finding : remedies.notMet()) {
            JsonArray alone = new JsonArray();
            for (RemedyTrial trial : remedies.meeting(finding)) {
                alone.add(RemedyBlocks.text(trial));
            }
            notMet.add(
                    new JsonObject().add("finding", JsonReport.finding(finding)).add("met-alone-by", alone));
        }
        JsonArray singles = new JsonArray();
        remedies.singles().forEach(trial -> singles.add(trial(trial, remedies)));
        JsonArray sets = new JsonArray();
        remedies.sets().forEach(trial -> sets.add(trial(trial, remedies)));
        JsonArray sizes = new JsonArray();
        remedies.sizes()
                .forEach(size -> sizes.add(new JsonObject()
                        .add("size", size.size())
                        .add("possible", size.possible())
                        .add("tried", size.tried())));
        JsonArray cautions = new JsonArray();
        RemedyBlocks.CAUTIONS.forEach(cautions::add);
        JsonArray readings = new JsonArray();
        remedies.readings().forEach(finding -> readings.add(finding.id()));
        JsonArray open = new JsonArray();
        for (Finding finding : remedies.open()) {
            JsonArray keys = new JsonArray();
            finding.missingKeys().forEach(keys::add);
            open.add(new JsonObject()
                    .add("id", finding.id())
                    .add("subject", finding.subject())
                    .add("missing", keys));
        }
        JsonArray withheld = new JsonArray();
        remedies.withheld().forEach(remedy -> withheld.add(remedy.id()));
        JsonObject root = new JsonObject()
                .add("format", FORMAT)
                .add("tool", new JsonObject().add("name", ReportInput.TOOL_NAME).add("version", input.toolVersion()))
                .add("input", new JsonObject().add("file", input.siteFileName()).add("sha256", input.sha256()))
                .add("not-met", notMet)
                .add("left-out-readings", readings)
                .add("open", open)
                .add("not-allowed", withheld)
                .add("single-changes", singles)
                .add("sets", sets);
        remedies.further().ifPresent(trial -> root.add("larger-set", trial(trial, remedies)));
        root.add(
                        "search",
                        new JsonObject()
                                .add("sizes", sizes)
                                .add("cut-short", remedies.cutShort())
                                .add("sites-studied", remedies.runs()))
                .add("cautions", cautions);
        return root.toString(WriterConfig.PRETTY_PRINT).replace("\r\n", "\n") + "\n";
    }

    private static JsonObject trial(RemedyTrial trial, Remedies remedies) {
        JsonArray changes = new JsonArray();
        trial.changes()
                .forEach(change -> changes.add(new JsonObject()
                        .add("id", change.remedy().id())
                        .add("step", change.step() + 1)
                        .add("text", change.text())
                        .add("caution", change.remedy().caution())));
        JsonArray effects = new JsonArray();
        for (Effect effect : trial.effects()) {
            JsonObject json = new JsonObject()
                    .add("id", effect.finding().id())
                    .add("subject", effect.finding().subject())
                    .add("direction", effect.direction().name().toLowerCase(Locale.ROOT));
            effect.before().ifPresent(finding -> json.add("before", brief(finding)));
            effect.after().ifPresent(finding -> json.add("after", brief(finding)));
            effects.add(json);
        }
        JsonObject json = new JsonObject()
                .add("changes", changes)
                .add("meets-all", trial.meetsAll())
                .add("unmet", trial.left());
        remedies.costs().of(trial).ifPresent(cost -> json.add("cost", cost));
        return json.add("effects", effects);
    }

    private static JsonObject brief(Finding finding) {
        JsonObject json = new JsonObject().add("status", finding.status().id());
        finding.value().ifPresent(value -> json.add("value", value));
        finding.limit().ifPresent(limit -> json.add("limit", limit));
        if (finding.value().isPresent() || finding.limit().isPresent()) {
            json.add("unit", JsonReport.unit(finding.unit()));
        }
        finding.margin().ifPresent(margin -> json.add("margin", margin));
        return json;
    }
}
