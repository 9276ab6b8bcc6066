package earthing.report;

import earthing.compliance.Finding.Group;
import earthing.compliance.Severity;
import earthing.compliance.Status;
import earthing.fleet.FleetSummary;
import earthing.fleet.FleetSummary.Lack;
import earthing.fleet.FleetSummary.Why;
import earthing.fleet.FleetSummary.Work;
import earthing.report.document.Amount;
import earthing.report.document.Block;
import earthing.report.document.Block.Column;
import earthing.report.document.Document;
import earthing.report.figure.Histogram;
import earthing.report.render.TextRenderer;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** What the results of many sites say together, as a page and as a few lines. */
public final class FleetPage {

    /** Name of the file with the page. */
    public static final String FILE = "summary.html";

    private static final int WIDTH = 80;

    /** Poles of the work list that the page names; the rest stands in the file. */
    private static final int MOST_WORK = 40;

    private static final int MOST_LINES = 10;

    private static final List<Status> SHOWN = List.of(
            Status.NOT_MET,
            Status.INSUFFICIENT_DATA,
            Status.NOT_ASSESSED,
            Status.ACCEPTED_DEPARTURE,
            Status.MET,
            Status.DUE_LATER,
            Status.NOT_APPLICABLE);

    private FleetPage() {}

    /**
     * The summary as a document.
     *
     * @param table name of the table
     * @param summary the summary
     * @param toolVersion version of the program
     * @return a document without sign-off: it is no report of a site
     */
    public static Document document(String table, FleetSummary summary, String toolVersion) {
        List<Block> blocks = new ArrayList<>();
        blocks.add(Cautions.head());
        blocks.add(new Block.Facts(List.of(
                new Block.Fact("Table", table),
                new Block.Fact("Rows", Integer.toString(summary.assessed() + summary.refused())),
                new Block.Fact("Assessed", Integer.toString(summary.assessed())),
                new Block.Fact("Refused, with a reason", Integer.toString(summary.refused())),
                new Block.Fact("Program", ReportInput.TOOL_NAME + " " + toolVersion))));
        blocks.add(new Block.Section("poles", 2, "Poles by requirement", List.of(statuses(summary))));
        blocks.add(new Block.Section("margins", 2, "How the margins are spread", margins(summary)));
        blocks.add(new Block.Section("missing", 2, "What is missing most", lacks(summary)));
        blocks.add(new Block.Section("work", 2, "Where to begin", work(summary)));
        blocks.add(Cautions.foot());
        return new Document("Earthing of many poles – " + table, "en", blocks);
    }

    private static Block.Table statuses(FleetSummary summary) {
        List<Column> columns = new ArrayList<>();
        columns.add(Column.text("Group"));
        SHOWN.forEach(status -> columns.add(Column.number(status.text())));
        List<List<String>> rows = new ArrayList<>();
        rows.add(row("Headline", status -> summary.headlines(status)));
        for (Group group : Group.values()) {
            rows.add(row(Severity.words(group), status -> summary.poles(group, status)));
        }
        return new Block.Table(
                "poles-by-status",
                "Number of poles by the status of each group; the headline is the worst of the first four groups",
                columns,
                rows);
    }

    private static List<String> row(String name, java.util.function.ToIntFunction<Status> count) {
        List<String> cells = new ArrayList<>();
        cells.add(name);
        SHOWN.forEach(status -> cells.add(Integer.toString(count.applyAsInt(status))));
        return cells;
    }

    private static List<Block> margins(FleetSummary summary) {
        List<Block> blocks = new ArrayList<>();
        List<List<String>> rows = new ArrayList<>();
        for (Group group : Group.values()) {
            double[] margins = summary.margins(group);
            if (margins.length > 0) {
                rows.add(List.of(
                        Severity.words(group),
                        Integer.toString(margins.length),
                        quantile(margins, 0),
                        quantile(margins, 0.1),
                        quantile(margins, 0.5),
                        quantile(margins, 0.9),
                        quantile(margins, 1)));
            }
        }
        if (rows.isEmpty()) {
            return List.of(new Block.Paragraph("No governing check has a margin."));
        }
        blocks.add(new Block.Paragraph(
                "Of each pole and group the governing check counts: the heaviest status, and of like"
                        + " ones the smallest margin. Plus is better. Checks without a number have no margin."));
        blocks.add(new Block.Table(
                "margin-quantiles",
                "Margin of the governing check: least, the value that one pole in ten does not exceed, median, the value that"
                        + " nine in ten do not exceed, greatest",
                List.of(
                        Column.text("Group"),
                        Column.number("Poles"),
                        Column.number("Least"),
                        Column.number("One in ten"),
                        Column.number("Median"),
                        Column.number("Nine in ten"),
                        Column.number("Greatest")),
                rows));
        for (Group group : Group.values()) {
            double[] margins = summary.margins(group);
            if (margins.length > 0) {
                String id = "margins-" + group.name().toLowerCase(Locale.ROOT).replace('_', '-');
                String title = Severity.words(group) + ": margins of " + margins.length + " poles";
                blocks.add(new Block.Figure(
                        id, title, Histogram.words(margins), Histogram.of(id, title, margins), Optional.empty()));
            }
        }
        return blocks;
    }

    private static String quantile(double[] rising, double part) {
        int at = (int) Math.round(part * (rising.length - 1));
        return Amount.margin(java.util.OptionalDouble.of(rising[at]));
    }

    private static List<Block> lacks(FleetSummary summary) {
        if (summary.lacks().isEmpty()) {
            return List.of(new Block.Paragraph("No check is open for want of an input."));
        }
        return List.of(
                new Block.Paragraph(
                        "Keys of the site file, and how many poles have a check that is open for want of it."
                                + " One key can leave several checks open."),
                new Block.Table(
                        "lacks",
                        "Missing inputs",
                        List.of(Column.text("Key"), Column.number("Poles")),
                        summary.lacks().stream()
                                .limit(MOST_WORK)
                                .map(lack -> List.of(lack.key(), Integer.toString(lack.poles())))
                                .toList()));
    }

    private static List<Block> work(FleetSummary summary) {
        List<Work> work = summary.work();
        if (work.isEmpty()) {
            return List.of(new Block.Paragraph("No pole has an open requirement."));
        }
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Block.Paragraph(
                "What is not met comes first, the worst margin on top; then what could not be assessed, by"
                        + " the key that most poles lack; then rows without value. "
                        + (work.size() > MOST_WORK
                                ? "Here are the first " + MOST_WORK + " of " + work.size() + "; all stand in "
                                        + FleetSummary.WORK_LIST + "."
                                : "All " + work.size() + " are here.")));
        List<List<String>> rows = new ArrayList<>();
        for (Work item : work.subList(0, Math.min(MOST_WORK, work.size()))) {
            rows.add(List.of(
                    Integer.toString(rows.size() + 1),
                    item.pole(),
                    Integer.toString(item.row()),
                    item.check().isEmpty() ? "row refused" : item.check(),
                    Amount.margin(item.margin()),
                    item.why() == Why.REFUSED ? item.reason() : item.why() == Why.NOT_MET ? "" : keys(item)));
        }
        blocks.add(new Block.Table(
                "work-list",
                "Poles with work to do",
                List.of(
                        Column.number("Rank"),
                        Column.text("Pole"),
                        Column.number("Row"),
                        Column.text("Check"),
                        Column.number("Margin"),
                        Column.text("Fill in, or why refused")),
                rows));
        return blocks;
    }

    private static String keys(Work item) {
        int most = 3;
        return item.keys().size() <= most
                ? String.join(", ", item.keys())
                : String.join(", ", item.keys().subList(0, most)) + " and "
                        + (item.keys().size() - most) + " more";
    }

    /**
     * The summary for a terminal of 80 columns.
     *
     * @param table name of the table
     * @param summary the summary
     * @return lines, each ended by a line feed
     */
    public static String text(String table, FleetSummary summary) {
        StringBuilder text = new StringBuilder();
        text.append(table)
                .append(": ")
                .append(summary.assessed() + summary.refused())
                .append(" rows, ");
        text.append(summary.assessed())
                .append(" assessed, ")
                .append(summary.refused())
                .append(" refused\n");
        for (Status status : SHOWN) {
            if (summary.headlines(status) > 0) {
                text.append("  headline ")
                        .append(status.text())
                        .append(": ")
                        .append(summary.headlines(status))
                        .append('\n');
            }
        }
        List<Work> work = summary.work();
        if (!work.isEmpty()) {
            List<List<String>> rows = new ArrayList<>();
            for (Work item : work.subList(0, Math.min(MOST_LINES, work.size()))) {
                rows.add(List.of(
                        Integer.toString(rows.size() + 1),
                        item.pole(),
                        item.check().isEmpty() ? "row " + item.row() + " refused" : item.check(),
                        Amount.margin(item.margin()),
                        item.why() == Why.NOT_MET || item.keys().isEmpty()
                                ? ""
                                : item.keys().get(0)));
            }
            text.append("\nWhere to begin")
                    .append(work.size() > MOST_LINES ? ", the first " + MOST_LINES + " of " + work.size() : "")
                    .append(":\n\n");
            text.append(TextRenderer.table(
                    new Block.Table(
                                    "work",
                                    "Where to begin",
                                    List.of(
                                            Column.number("Rank"),
                                            Column.text("Pole"),
                                            Column.text("Check"),
                                            Column.number("Margin"),
                                            Column.text("Fill in")),
                                    rows)
                            .withoutEmptyColumns(),
                    WIDTH));
        }
        List<Lack> lacks = summary.lacks();
        if (!lacks.isEmpty()) {
            text.append("\nMost missing: ")
                    .append(lacks.get(0).key())
                    .append(", by ")
                    .append(lacks.get(0).poles())
                    .append(lacks.get(0).poles() == 1 ? " pole\n" : " poles\n");
        }
        return text.toString();
    }
}
