package earthing.report;

import earthing.report.document.Block;
import earthing.report.document.Block.Column;
import earthing.report.render.TextRenderer;
import earthing.study.Recheck;
import earthing.study.StudyResults;
import java.util.List;
import java.util.Locale;

/** What was verified by code that did not produce it, where that was asked for. */
public final class RecheckSection {

    private static final int WIDTH = 80;

    private RecheckSection() {}

    static boolean belongs(String id) {
        return id.startsWith(Recheck.PREFIX);
    }

    static List<Block> of(ReportInput input) {
        List<Recheck.Line> lines = Recheck.lines(input.results());
        return lines.isEmpty()
                ? List.of()
                : List.of(new Block.Section(
                        "recheck",
                        2,
                        "Verified by other code",
                        List.of(new Block.Paragraph(words(lines)), table(lines))));
    }

    /**
     * The lines for a terminal of 80 columns.
     *
     * @param results results to which a recheck was added
     * @return what was compared, and whether it holds
     */
    public static String text(StudyResults results) {
        List<Recheck.Line> lines = Recheck.lines(results);
        if (lines.isEmpty()) {
            return "Nothing could be verified by other code: too little of the site is described.\n";
        }
        StringBuilder text = new StringBuilder();
        TextRenderer.lines(words(lines), WIDTH)
                .forEach(line -> text.append(line).append('\n'));
        text.append('\n').append(TextRenderer.table(table(lines), WIDTH));
        for (Recheck.Line line : lines) {
            text.append('\n');
            TextRenderer.lines(line.id() + ": " + line.words() + ", greatest at " + CaseWords.bound(line.at()), WIDTH)
                    .forEach(part -> text.append(part).append('\n'));
        }
        return text.toString();
    }

    private static String words(List<Recheck.Line> lines) {
        long off = lines.stream().filter(line -> !line.holds()).count();
        return off == 0
                ? "Verified by code that did not produce the results: all " + lines.size()
                        + " comparisons keep their bounds. That the arithmetic holds says nothing of the inputs."
                : off + " of " + lines.size() + " comparisons with code that did not produce the results do not keep"
                        + " their bound: do not rely on these numbers, and report the site file as a fault of the program.";
    }

    private static Block.Table table(List<Recheck.Line> lines) {
        return new Block.Table(
                "recheck-lines",
                "Verified by other code, greatest difference of each kind",
                List.of(
                        Column.text("Verified"),
                        Column.number("Difference"),
                        Column.number("Bound"),
                        Column.text("Holds")),
                lines.stream()
                        .map(line -> List.of(
                                line.id(), part(line.difference()), part(line.bound()), line.holds() ? "yes" : "no"))
                        .toList());
    }

    private static String part(double value) {
        return value == 0 ? "0" : String.format(Locale.ROOT, "%.1e", value);
    }
}
