package earthing.report;

import com.eclipsesource.json.JsonArray;
import com.eclipsesource.json.JsonObject;
import com.eclipsesource.json.WriterConfig;
import earthing.compliance.Finding;
import earthing.decision.CheckSpread;
import earthing.decision.Knowledge;
import earthing.decision.SpreadInput;
import earthing.decision.SpreadStudy;
import earthing.decision.WorstSearch;
import earthing.quantity.Numbers;
import earthing.report.document.Amount;
import earthing.report.document.Block;
import earthing.report.document.Block.Column;
import earthing.report.document.Document;
import earthing.report.figure.SpreadHistogram;
import earthing.site.DistributionShape;
import earthing.site.file.SiteTree;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.commons.math3.stat.interval.ConfidenceInterval;

/** What becomes of the requirements where the bounded inputs are spread. */
public final class SpreadReport {

    static final String FORMAT = "earthing-spread/1";

    private static final int BOXES = 40;
    private static final double[] QUANTILES = {0.05, 0.5, 0.95};
    private static final int MOST_TURNS = 3;

    private SpreadReport() {}

    /**
     * The page as a document of no particular format.
     *
     * @param input site, results and findings with the bounds
     * @param spread what the spread inputs gave
     * @return the document
     */
    public static Document document(ReportInput input, SpreadStudy spread) {
        List<Block> blocks = new ArrayList<>();
        blocks.add(Cautions.head());
        blocks.addAll(blocks(input, spread, 2));
        blocks.add(Cautions.foot());
        return new Document("Spread of the findings – " + input.site().site().name(), "en", blocks);
    }

    /** The same as a section of a report. */
    static Block section(ReportInput input, SpreadStudy spread) {
        return new Block.Section("spread", 2, "Inputs spread within their bounds", blocks(input, spread, 3));
    }

    private static List<Block> blocks(ReportInput input, SpreadStudy spread, int level) {
        List<Block> blocks = new ArrayList<>();
        if (spread.inputs().isEmpty()) {
            blocks.add(new Block.Paragraph("No input of this file has low and high, so there is nothing to spread. Give"
                    + " what you are not sure of its bounds; whatever has none is taken as exactly known."));
        } else {
            blocks.add(probabilities(spread, level));
            blocks.add(search(spread, level));
        }
        blocks.add(next(spread, level));
        if (!spread.inputs().isEmpty()) {
            blocks.add(inputs(input, spread, level));
        }
        return blocks;
    }

    private static List<CheckSpread> likeliestFirst(SpreadStudy spread) {
        return spread.checks().stream()
                .sorted(Comparator.comparingDouble((CheckSpread c) -> -c.probability())
                        .thenComparingDouble(c -> c.marginQuantile(0.05)))
                .toList();
    }

    private static Block probabilities(SpreadStudy spread, int level) {
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Block.Paragraph(spread.samples() + " samples of the bounded inputs, seed " + spread.seed()
                + ". Not met: part of the samples in which the requirement is not met, with the interval that holds it"
                + " at 95 % as far as the number of samples goes (Wilson). It says nothing about inputs without bounds,"
                + " nor about whether the distributions are right. The verdict takes the worst point of the bounds and"
                + " does not change."));
        tables(spread).ifPresent(blocks::add);
        List<List<String>> rows = new ArrayList<>();
        List<List<String>> values = new ArrayList<>();
        for (CheckSpread check : likeliestFirst(spread)) {
            ConfidenceInterval interval = check.interval();
            rows.add(List.of(
                    name(check.verdict(), spread),
                    check.verdict().status().text(),
                    percent(check.probability()),
                    percent(interval.getLowerBound()) + "…" + percent(interval.getUpperBound()),
                    Amount.margin(OptionalDouble.of(check.marginQuantile(0.05)))));
            String unit = check.verdict().unit();
            values.add(List.of(
                    name(check.verdict(), spread),
                    Amount.text(check.quantile(QUANTILES[0]), unit),
                    Amount.text(check.quantile(QUANTILES[1]), unit),
                    Amount.text(check.quantile(QUANTILES[2]), unit),
                    check.limit().isPresent() ? Amount.text(check.limit(), unit) : "varies"));
        }
        blocks.add(new Block.Table(
                "spread-probabilities",
                "How likely each requirement is not met",
                List.of(
                        Column.text("Check"),
                        Column.status("Verdict"),
                        Column.number("Not met"),
                        Column.text("95 % interval"),
                        Column.number("Margin, 5 %")),
                rows));
        List<CheckSpread> drawn = likeliestFirst(spread).stream()
                .filter(c -> c.quantile(1) > c.quantile(0))
                // What may go either way tells most, then what comes nearest to its limit.
                .sorted(Comparator.comparing((CheckSpread c) -> c.notMet() == 0 || c.notMet() == c.samples())
                        .thenComparingDouble(c -> Math.abs(c.marginQuantile(0.5))))
                .limit(2)
                .toList();
        for (int i = 0; i < drawn.size(); i++) {
            figure(drawn.get(i), "figure-spread-" + (i + 1), blocks);
        }
        blocks.add(new Block.Table(
                "spread-values",
                "Where the value of each check lies: 5 %, half and 95 % of the samples are below",
                List.of(
                        Column.text("Check"),
                        Column.number("5 %"),
                        Column.number("50 %"),
                        Column.number("95 %"),
                        Column.number("Limit")),
                values));
        return new Block.Section("spread-how-likely", level, "How likely each requirement is not met", blocks);
    }

    /** How far the numbers rest on tables of the ground. */
    private static Optional<Block> tables(SpreadStudy spread) {
        SpreadStudy.Tables tables = spread.tables();
        return tables.bound() == 0
                ? Optional.empty()
                : Optional.of(
                        new Block.Paragraph("What depends on the ground alone (resistances, touch, step, surges) was"
                                + " solved at a few grounds and interpolated over the ratio of the layers and the size of the"
                                + " resistance. Between these grounds exact solutions differ by "
                                + Numbers.significant(tables.bound(), 2)
                                + " of a value at most. Where a margin was so small that"
                                + " this could turn it, the point was studied again without tables: " + tables.again()
                                + (tables.again() == 1 ? " point." : " points.")));
    }

    private static void figure(CheckSpread check, String id, List<Block> blocks) {
        Finding verdict = check.verdict();
        boolean value = check.limit().isPresent();
        double from = value ? check.quantile(0) : check.marginQuantile(0);
        double to = value ? check.quantile(1) : check.marginQuantile(1);
        if (!(to > from)) {
            return;
        }
        List<Integer> counts = new ArrayList<>();
        for (int count : value ? check.counts(from, to, BOXES) : check.marginCounts(from, to, BOXES)) {
            counts.add(count);
        }
        // With a fixed limit the margin falls where the value rises towards it.
        boolean above = value && above(check);
        String unit = value ? verdict.unit() : "";
        String subject = verdict.id() + ", " + verdict.subject() + (value ? "" : ", margin as a part of the limit");
        OptionalDouble limit = value ? check.limit() : OptionalDouble.of(0);
        String words = subject + ": from " + Amount.text(from, unit) + " to " + Amount.text(to, unit) + ", half of the"
                + " samples below " + Amount.text(value ? check.quantile(0.5) : check.marginQuantile(0.5), unit)
                + ", limit " + Amount.text(limit, unit) + ", not met in " + percent(check.probability())
                + " of the samples.";
        blocks.add(new Block.Figure(
                id,
                "Distribution of " + subject,
                words,
                SpreadHistogram.of(new SpreadHistogram.Data(subject, unit, from, to, counts, limit, above), words, id),
                Optional.empty()));
    }

    private static boolean above(CheckSpread check) {
        Finding verdict = check.verdict();
        double over = verdict.value().orElseThrow() - verdict.limit().orElse(0);
        return over * verdict.margin().orElse(0) < 0;
    }

    private static Block search(SpreadStudy spread, int level) {
        WorstSearch search = spread.search();
        List<Block> blocks = new ArrayList<>();
        List<WorstSearch.Compared> worse = search.counterexamples();
        blocks.add(new Block.Paragraph((search.allCorners() ? "All " : "At random ") + search.corners()
                + " corners of the bounds and " + search.points() + " points within them were studied. "
                + (worse.isEmpty()
                        ? "None is worse than the governing point that a check reports, by more than 0.1 % of its limit."
                        : "For " + worse.size() + " of " + search.checks().size()
                                + " checks a point is worse than the one reported, by more than 0.1 % of its limit: the"
                                + " verdict is not on the careful side there.")
                + (search.held().isEmpty()
                        ? ""
                        : " At their nominal value, as in the verdicts: " + String.join(", ", search.held()) + ".")));
        for (WorstSearch.Compared one : worse) {
            StringBuilder at = new StringBuilder();
            one.at()
                    .forEach((key, value) -> at.append(at.length() == 0 ? "" : ", ")
                            .append(key)
                            .append(" = ")
                            .append(Numbers.significant(value, 5))
                            .append(' ')
                            .append(unit(spread, key)));
            blocks.add(new Block.Facts(List.of(
                    new Block.Fact("Check", one.id() + ", " + one.subject()),
                    new Block.Fact(
                            "Reported",
                            Amount.text(one.reported(), one.unit()) + ", margin "
                                    + Amount.margin(OptionalDouble.of(one.reportedMargin()))),
                    new Block.Fact(
                            "Found",
                            Amount.text(one.worst(), one.unit()) + ", margin "
                                    + Amount.margin(OptionalDouble.of(one.worstMargin()))),
                    new Block.Fact("At", at.toString()))));
        }
        return new Block.Section("spread-search", level, "Is any point worse than the verdicts say", blocks);
    }

    private static String unit(SpreadStudy spread, String key) {
        return spread.inputs().stream()
                .filter(i -> i.key().equals(key))
                .findFirst()
                .map(SpreadInput::unit)
                .orElse("");
    }

    private static Block next(SpreadStudy spread, int level) {
        List<Block> blocks = new ArrayList<>();
        if (!spread.inputs().isEmpty()) {
            List<List<String>> rows = new ArrayList<>();
            for (Knowledge one : spread.next()) {
                if (one.turns().isEmpty()) {
                    rows.add(List.of(one.key(), "no check", "–", "–"));
                }
                one.turns().stream()
                        .limit(MOST_TURNS)
                        .forEach(turn ->
                                rows.add(List.of(one.key(), turn.id(), percent(turn.atLow()), percent(turn.atHigh()))));
            }
            blocks.add(new Block.Paragraph(
                    "Each input in turn taken as known, at its low and at its high value, the others"
                            + " spread (" + spread.next().get(0).runs() + " samples each; a difference of "
                            + percent(chance(spread.next().get(0).runs()))
                            + " may be chance). The first row is the next thing to measure: it turns a verdict"
                            + " furthest. An input that turns none need not be measured for these requirements."));
            blocks.add(new Block.Table(
                    "spread-next",
                    "What knowing an input would tell: how likely a check is then not met",
                    List.of(
                            Column.text("Input"),
                            Column.text("Check"),
                            Column.number("Input low"),
                            Column.number("Input high")),
                    rows));
        }
        if (!spread.unknown().isEmpty()) {
            blocks.add(new Block.Paragraph("Not known at all, so that something could not be assessed; the key that"
                    + " blocks most stands first."));
            blocks.add(new Block.Table(
                    "spread-unknown",
                    "Keys to fill in",
                    List.of(Column.text("Key"), Column.text("What it blocks")),
                    spread.unknown().stream()
                            .map(u -> List.of(u.key(), String.join(", ", u.blocks())))
                            .toList()));
        } else {
            blocks.add(new Block.Paragraph("No requirement waits for an input that is not known."));
        }
        return new Block.Section("spread-what-next", level, "What to measure next", blocks);
    }

    /** Twice the largest scatter of a difference of two shares. */
    private static double chance(int runs) {
        return 2 * Math.sqrt(0.5 / runs);
    }

    private static Block inputs(ReportInput input, SpreadStudy spread, int level) {
        List<List<String>> rows = new ArrayList<>();
        for (SpreadInput one : spread.inputs()) {
            rows.add(List.of(
                    one.key(),
                    Amount.text(one.low(), one.unit()),
                    Amount.text(one.nominal(), one.unit()),
                    Amount.text(one.high(), one.unit()),
                    words(one)));
        }
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Block.Table(
                "spread-inputs",
                "The inputs that were spread",
                List.of(
                        Column.text("Input"),
                        Column.number("Low"),
                        Column.number("Nominal"),
                        Column.number("High"),
                        Column.text("Distribution")),
                rows));
        if (input.site().uncertainty() == null
                || input.site().uncertainty().correlations().isEmpty()) {
            blocks.add(new Block.Paragraph("No correlations are declared: each input is drawn by itself."));
        } else {
            blocks.add(new Block.Bullets(input.site().uncertainty().correlations().stream()
                    .map(c -> c.one() + " with " + c.other() + ": rank correlation "
                            + Numbers.brief(c.rank().nominal()))
                    .toList()));
        }
        return new Block.Section("spread-distributions", level, "The inputs that were spread", blocks);
    }

    private static String words(SpreadInput input) {
        String shape = SiteTree.word(input.shape()) + (input.declared() ? "" : ", not declared");
        boolean normal = input.shape() == DistributionShape.NORMAL || input.shape() == DistributionShape.LOGNORMAL;
        return !normal
                ? shape
                : shape + ", " + percent(input.share()) + " between low and high"
                        + (input.limits() ? ", which are limits" : "");
    }

    private static String name(Finding finding, SpreadStudy spread) {
        long times = spread.checks().stream()
                .filter(c -> c.verdict().id().equals(finding.id()))
                .count();
        return times > 1 ? finding.id() + ": " + finding.subject() : finding.id();
    }

    private static String percent(double part) {
        double percent = 100 * part;
        if (percent == 0 || percent == 100) {
            return percent == 0 ? "0 %" : "100 %";
        }
        return String.format(Locale.ROOT, percent < 1 || percent > 99 ? "%.2f %%" : "%.1f %%", percent);
    }

    /**
     * The same for machines, format {@code earthing-spread/1}.
     *
     * @param input site, results and findings with the bounds
     * @param spread what the spread inputs gave
     * @return JSON, one line feed at the end
     */
    public static String json(ReportInput input, SpreadStudy spread) {
        return object(input, spread).toString(WriterConfig.PRETTY_PRINT).replace("\r\n", "\n") + "\n";
    }

    static JsonObject object(ReportInput input, SpreadStudy spread) {
        JsonArray inputs = new JsonArray();
        for (SpreadInput one : spread.inputs()) {
            inputs.add(new JsonObject()
                    .add("key", one.key())
                    .add("low", one.low())
                    .add("nominal", one.nominal())
                    .add("high", one.high())
                    .add("unit", JsonReport.unit(one.unit()))
                    .add("shape", SiteTree.word(one.shape()))
                    .add("declared", one.declared())
                    .add("held-nominal", one.held()));
        }
        JsonArray checks = new JsonArray();
        for (CheckSpread check : spread.checks()) {
            ConfidenceInterval interval = check.interval();
            JsonObject quantiles = new JsonObject();
            for (double part : new double[] {0.01, 0.05, 0.25, 0.5, 0.75, 0.95, 0.99}) {
                quantiles.add(Numbers.full(part), check.quantile(part));
            }
            JsonObject json = new JsonObject()
                    .add("id", check.verdict().id())
                    .add("subject", check.verdict().subject())
                    .add("status", check.verdict().status().id())
                    .add("samples", check.samples())
                    .add("not-met", check.notMet())
                    .add("probability", check.probability())
                    .add("probability-low", interval.getLowerBound())
                    .add("probability-high", interval.getUpperBound())
                    .add("mean", check.mean())
                    .add("quantiles", quantiles)
                    .add("unit", JsonReport.unit(check.verdict().unit()));
            check.limit().ifPresent(limit -> json.add("limit", limit));
            checks.add(json.add("margin-5", check.marginQuantile(0.05)));
        }
        return new JsonObject()
                .add("format", FORMAT)
                .add("tool", new JsonObject().add("name", ReportInput.TOOL_NAME).add("version", input.toolVersion()))
                .add("input", new JsonObject().add("file", input.siteFileName()).add("sha256", input.sha256()))
                .add("samples", spread.samples())
                .add("seed", spread.seed())
                .add("table-difference", spread.tables().bound())
                .add("studied-again", spread.tables().again())
                .add("inputs", inputs)
                .add("checks", checks)
                .add("search", search(spread.search()))
                .add("next", knowledge(spread))
                .add("unknown", unknown(spread));
    }

    private static JsonObject search(WorstSearch search) {
        JsonArray compared = new JsonArray();
        for (WorstSearch.Compared one : search.checks()) {
            JsonObject at = new JsonObject();
            for (Map.Entry<String, Double> value : one.at().entrySet()) {
                at.add(value.getKey(), value.getValue());
            }
            compared.add(new JsonObject()
                    .add("id", one.id())
                    .add("subject", one.subject())
                    .add("reported", one.reported())
                    .add("reported-margin", one.reportedMargin())
                    .add("worst", one.worst())
                    .add("worst-margin", one.worstMargin())
                    .add("unit", JsonReport.unit(one.unit()))
                    .add("at", at)
                    .add("is-worse", one.isWorse()));
        }
        JsonArray held = new JsonArray();
        search.held().forEach(held::add);
        return new JsonObject()
                .add("corners", search.corners())
                .add("all-corners", search.allCorners())
                .add("points", search.points())
                .add("held-nominal", held)
                .add("checks", compared);
    }

    private static JsonArray knowledge(SpreadStudy spread) {
        JsonArray json = new JsonArray();
        for (Knowledge one : spread.next()) {
            JsonArray turns = new JsonArray();
            one.turns()
                    .forEach(turn -> turns.add(new JsonObject()
                            .add("id", turn.id())
                            .add("subject", turn.subject())
                            .add("at-low", turn.atLow())
                            .add("at-high", turn.atHigh())));
            json.add(new JsonObject()
                    .add("key", one.key())
                    .add("runs", one.runs())
                    .add("turns", turns));
        }
        return json;
    }

    private static JsonArray unknown(SpreadStudy spread) {
        JsonArray json = new JsonArray();
        for (Knowledge.Unknown one : spread.unknown()) {
            JsonArray blocks = new JsonArray();
            one.blocks().forEach(blocks::add);
            json.add(new JsonObject().add("key", one.key()).add("blocks", blocks));
        }
        return json;
    }
}
