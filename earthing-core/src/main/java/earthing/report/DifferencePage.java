package earthing.report;

import com.eclipsesource.json.JsonArray;
import com.eclipsesource.json.JsonObject;
import com.eclipsesource.json.WriterConfig;
import earthing.compliance.Finding;
import earthing.compliance.Severity;
import earthing.decision.SiteDifference;
import earthing.decision.SiteDifference.FindingChange;
import earthing.decision.SiteDifference.InputChange;
import earthing.decision.SiteDifference.ResultChange;
import earthing.quantity.Numbers;
import earthing.report.document.Amount;
import earthing.report.document.Block;
import earthing.report.document.Block.Column;
import earthing.report.render.TextRenderer;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/** Two site files side by side: one page of 80 columns first, then everything that differs. */
public final class DifferencePage {

    static final String FORMAT = "earthing-difference/1";

    private static final int WIDTH = 80;
    private static final int MOST_INPUTS = 8;
    private static final int MOST_CHECKS = 8;
    private static final int MOST_RESULTS = 4;
    private static final String NONE = "–";

    private final ReportInput a;
    private final ReportInput b;
    private final SiteDifference difference;
    private final StringBuilder page = new StringBuilder(8192);

    private DifferencePage(ReportInput a, ReportInput b) {
        this.a = a;
        this.b = b;
        this.difference = difference(a, b);
    }

    private static SiteDifference difference(ReportInput a, ReportInput b) {
        return SiteDifference.between(
                new SiteDifference.Side(a.site(), a.results(), a.findings()),
                new SiteDifference.Side(b.site(), b.results(), b.findings()));
    }

    /**
     * Prints the comparison.
     *
     * @param a the first site
     * @param b the second site
     * @return lines of at most 80 columns, each ended by a line feed; the first 66 hold what matters most
     */
    public static String text(ReportInput a, ReportInput b) {
        DifferencePage page = new DifferencePage(a, b);
        page.print();
        return page.page.toString();
    }

    private void print() {
        line("Two site files compared", "");
        page.append('\n');
        line("A: " + head(a), "   ");
        line("B: " + head(b), "   ");
        page.append('\n');
        List<FindingChange> status = difference.findings().stream()
                .filter(FindingChange::ofStatus)
                .sorted(Comparator.comparingInt(change -> -heaviest(change)))
                .toList();
        int compared = difference.sameResults() + difference.results().size();
        line(
                count(difference.inputs().size(), "input differs", "inputs differ") + "; "
                        + count(status.size(), "check has another status", "checks have another status") + "; "
                        + difference.results().size() + " of " + count(compared, "result differs", "results differ")
                        + " by more than 0.1 %, or only one of the files has them.",
                "");
        page.append('\n');
        if (difference.inputs().isEmpty()
                && difference.findings().isEmpty()
                && difference.results().isEmpty()) {
            return;
        }
        List<List<String>> most = most();
        boolean more = difference.inputs().size() > MOST_INPUTS
                || difference.findings().size() > Math.min(MOST_CHECKS, status.size())
                || difference.results().size() > most.size();
        table(
                "Checks of another status",
                checkColumns(),
                status.stream().limit(MOST_CHECKS).map(this::check).toList());
        table(
                "Inputs that differ",
                inputColumns(),
                difference.inputs().stream()
                        .limit(MOST_INPUTS)
                        .map(DifferencePage::input)
                        .toList());
        table("Results that differ most, each quantity at its largest change", resultColumns(), most);
        line(
                "Figures compare two descriptions; they must not be used to justify removing an earth. A competent and"
                        + " licensed person is responsible; local codes and the owner's rules govern.",
                "");
        if (more) {
            page.append('\n');
            line("Everything that differs", "");
            page.append('\n');
            rest();
        }
    }

    private void rest() {
        table(
                "All checks of another status, value or limit",
                checkColumns(),
                difference.findings().stream().map(this::check).toList());
        table(
                "All inputs that differ",
                inputColumns(),
                difference.inputs().stream().map(DifferencePage::input).toList());
        List<ResultChange> both = difference.results().stream()
                .filter(change -> change.at().equals("nominal")
                        && change.before().isPresent()
                        && change.after().isPresent()
                        && !change.circumstances().keys().containsKey("broken"))
                .toList();
        table(
                "Results that differ, at nominal inputs, earth paths whole",
                resultColumns(),
                both.stream().map(DifferencePage::result).toList());
        line(
                "The " + (difference.results().size() - both.size())
                        + " other differences (bounds of the inputs, broken paths, results that only one file has) stand in"
                        + " --format json.",
                "");
    }

    private static String count(int number, String one, String many) {
        return number + " " + (number == 1 ? one : many);
    }

    private static String head(ReportInput side) {
        String revision = side.site().site().revision();
        return side.siteFileName() + ", " + side.site().site().name()
                + (revision == null || revision.isBlank() ? "" : ", revision " + revision) + ". Headline: "
                + Severity.headline(side.findings()).text();
    }

    private static List<Column> checkColumns() {
        return List.of(
                Column.text("Check"),
                Column.status("A"),
                Column.status("B"),
                Column.number("Value A"),
                Column.number("Value B"));
    }

    /** The subject stands beside an id only where the id alone does not tell which finding it is. */
    private List<String> check(FindingChange change) {
        boolean alone = difference.findings().stream()
                        .filter(other -> other.id().equals(change.id()))
                        .count()
                == 1;
        return List.of(
                alone ? change.id() : change.id() + ": " + change.subject(),
                change.before().map(f -> f.status().text()).orElse(NONE),
                change.after().map(f -> f.status().text()).orElse(NONE),
                value(change.before()),
                value(change.after()));
    }

    /** A finding that is not met on one side comes first, one that only one file has comes last. */
    private static int heaviest(FindingChange change) {
        int before = change.before().map(f -> f.status().weight()).orElse(0);
        int after = change.after().map(f -> f.status().weight()).orElse(0);
        return 2 * Math.max(before, after)
                + (change.before().isPresent() && change.after().isPresent() ? 1 : 0);
    }

    private static String value(Optional<Finding> finding) {
        return finding.map(f -> Amount.text(f.value(), f.unit())).orElse(NONE);
    }

    private static List<Column> inputColumns() {
        return List.of(Column.text("Key"), Column.text("A"), Column.text("B"));
    }

    private static List<String> input(InputChange change) {
        return List.of(change.key(), given(change.before()), given(change.after()));
    }

    private static String given(String value) {
        return value.isEmpty() ? "not given" : value;
    }

    private static List<Column> resultColumns() {
        return List.of(
                Column.text("Quantity"),
                Column.text("Case"),
                Column.number("A"),
                Column.number("B"),
                Column.number("Change"));
    }

    private static List<String> result(ResultChange change) {
        String circumstances = CaseWords.of(change.circumstances());
        List<String> amounts = Amount.row(List.of(change.before(), change.after()), change.unit());
        return List.of(
                ResultWords.of(change.id()),
                change.at().equals("nominal")
                        ? circumstances
                        : (circumstances.isEmpty() ? "" : circumstances + "; ") + CaseWords.bound(change.at()),
                amounts.get(0),
                amounts.get(1),
                ratio(change.ratio()));
    }

    private static String ratio(OptionalDouble ratio) {
        double r = ratio.orElse(0);
        if (!meaningful(r)) {
            return NONE;
        }
        return r < 0.5 || r > 2 ? "× " + Numbers.brief(r) : Amount.margin(OptionalDouble.of(r - 1));
    }

    /** Beyond a million one of the two is what arithmetic leaves over. */
    private static boolean meaningful(double ratio) {
        return ratio > 1e-6 && ratio < 1e6;
    }

    /** Of the quantities that both have, those that differ most; those behind a finding first. */
    private List<List<String>> most() {
        Set<String> judged = new HashSet<>();
        for (ReportInput side : List.of(a, b)) {
            side.findings().forEach(finding -> judged.add(finding.id()));
        }
        Comparator<ResultChange> order = Comparator.comparing(
                        (ResultChange change) -> judged.stream().noneMatch(id -> behind(change.id(), id)))
                .thenComparingDouble(change -> -Math.abs(Math.log(change.ratio().orElse(1))));
        List<List<String>> rows = new ArrayList<>();
        Set<String> told = new HashSet<>();
        difference.results().stream()
                .filter(change -> change.at().equals("nominal")
                        && meaningful(change.ratio().orElse(0)))
                .filter(change -> !change.circumstances().keys().containsKey("broken"))
                .sorted(order)
                .forEach(change -> {
                    if (rows.size() < MOST_RESULTS && told.add(change.id())) {
                        rows.add(result(change));
                    }
                });
        return rows;
    }

    /** Whether a result is what a check of this id looks at, for example {@code touch.cubicle.voltage}. */
    private static boolean behind(String result, String finding) {
        return result.equals(finding) || result.startsWith(finding + ".");
    }

    private void table(String title, List<Column> columns, List<List<String>> rows) {
        if (rows.isEmpty()) {
            return;
        }
        line(title + ":", "");
        page.append('\n')
                .append(TextRenderer.table(new Block.Table("difference", title, columns, rows), WIDTH))
                .append('\n');
    }

    private void line(String text, String indent) {
        String prefix = "";
        for (String line : TextRenderer.lines(text, WIDTH - indent.length())) {
            page.append(prefix).append(line).append('\n');
            prefix = indent;
        }
    }

    /**
     * The comparison for machines, format {@code earthing-difference/1}: SI values at full precision.
     *
     * @param a the first site
     * @param b the second site
     * @return JSON, one line feed at the end
     */
    public static String json(ReportInput a, ReportInput b) {
        SiteDifference difference = difference(a, b);
        JsonArray inputs = new JsonArray();
        difference
                .inputs()
                .forEach(change -> inputs.add(new JsonObject()
                        .add("key", change.key())
                        .add("a", change.before())
                        .add("b", change.after())));
        JsonArray findings = new JsonArray();
        for (FindingChange change : difference.findings()) {
            JsonObject json = new JsonObject().add("id", change.id()).add("subject", change.subject());
            json.add("status-differs", change.ofStatus());
            change.before().ifPresent(finding -> json.add("a", JsonReport.finding(finding)));
            change.after().ifPresent(finding -> json.add("b", JsonReport.finding(finding)));
            findings.add(json);
        }
        JsonArray results = new JsonArray();
        for (ResultChange change : difference.results()) {
            JsonObject json = new JsonObject()
                    .add("id", change.id())
                    .add("case", JsonReport.circumstances(change.circumstances()))
                    .add("at", change.at())
                    .add("unit", JsonReport.unit(change.unit()));
            change.before().ifPresent(value -> json.add("a", value));
            change.after().ifPresent(value -> json.add("b", value));
            results.add(json);
        }
        JsonArray cautions = new JsonArray();
        Cautions.all().forEach(cautions::add);
        return new JsonObject()
                        .add("format", FORMAT)
                        .add(
                                "tool",
                                new JsonObject()
                                        .add("name", ReportInput.TOOL_NAME)
                                        .add("version", a.toolVersion()))
                        .add("a", side(a))
                        .add("b", side(b))
                        .add("inputs", inputs)
                        .add("findings", findings)
                        .add("results", results)
                        .add("same-results", difference.sameResults())
                        .add("cautions", cautions)
                        .toString(WriterConfig.PRETTY_PRINT)
                        .replace("\r\n", "\n")
                + "\n";
    }

    private static JsonObject side(ReportInput side) {
        return new JsonObject()
                .add("file", side.siteFileName())
                .add("sha256", side.sha256())
                .add("headline", Severity.headline(side.findings()).id());
    }
}
