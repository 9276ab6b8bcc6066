package earthing.report;

import earthing.compliance.Finding;
import earthing.compliance.Severity;
import earthing.report.document.Amount;
import earthing.report.document.Block;
import earthing.report.document.Block.Column;
import earthing.report.figure.BarChart;
import earthing.report.figure.ElevationWords;
import earthing.site.Surges;
import earthing.site.file.SiteTree;
import earthing.study.Case;
import earthing.study.Curve;
import earthing.study.Result;
import earthing.study.StudyResults;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Predicate;

/** One page: what sharing the earth buys on a surge, what it costs the person, and which hazard moves where. */
final class SharingSection {

    /** Anchor of the section. */
    static final String ID = "sharing";

    /** Beginning of the ids of the results and curves that stand here. */
    static final String PREFIX = "sharing.";

    private static final String LIMIT = "permissible touch voltage";

    /** The page compares at these; every other case stands with the potential rises. */
    private static final List<String> SHOWN_FAULTS = List.of("maximum", "double-earth-fault");

    private final ReportInput input;
    private final StudyResults results;
    private final References references;

    private SharingSection(ReportInput input, References references) {
        this.input = input;
        this.results = input.results();
        this.references = references;
    }

    static Block of(ReportInput input, References references) {
        return new SharingSection(input, references).section();
    }

    private Block section() {
        List<Block> blocks = new ArrayList<>();
        String own = input.site().cubicle() == null
                ? "no cubicle is described"
                : "the cubicle's earth is "
                        + SiteTree.word(input.site().cubicle().earth());
        blocks.add(
                new Block.Paragraph("At this site " + own + ". The four arrangements are compared at nominal soil, with"
                        + " the largest source and with the standard current into the tank; peak values for surges, r.m.s. for"
                        + " earth faults. The site's own worst case stands in the findings below."));
        List<String> sentences = results.under(PREFIX)
                .filter(r -> (r.id().equals("sharing.surge-gain") && firstWave(r.circumstances()))
                        || r.id().equals("sharing.touch-cost")
                        || r.id().equals("sharing.cable-relief"))
                .map(r -> ResultSections.capital(ResultSections.sentence(r.model())))
                .toList();
        if (sentences.isEmpty()) {
            blocks.add(new Block.Paragraph("Shared and separate earths could not be compared; the gaps of the sections"
                    + " before tell what is missing."));
        } else {
            blocks.add(new Block.Bullets(sentences));
        }
        surges(blocks);
        faults(blocks);
        figure(blocks);
        findings(blocks);
        worked(blocks);
        blocks.add(new Block.Paragraph("These figures must not be used to justify removing an earth."));
        return new Block.Section(ID, 2, "Sharing the earth: the surge gain and the touch cost", blocks);
    }

    /** The page tells the first wave in words; the table holds the others. */
    private boolean firstWave(Case circumstances) {
        return Surges.verdictWaves(input.site().surges())
                .get(0)
                .equals(circumstances.keys().getOrDefault("wave", ""));
    }

    private Set<Case> cases(Predicate<Result> wanted) {
        Set<Case> cases = new LinkedHashSet<>();
        results.results().stream()
                .filter(wanted)
                .filter(r -> r.circumstances().keys().containsKey("arrangement")
                        && !r.circumstances().keys().containsKey("broken")
                        && !r.circumstances().isInformation())
                .forEach(r -> cases.add(r.circumstances().without("arrangement")));
        return cases;
    }

    private void surges(List<Block> blocks) {
        List<List<String>> rows = new ArrayList<>();
        for (Case rest : cases(r -> r.id().startsWith("sharing.cable-end."))) {
            String bond = ElevationWords.bond(rest.keys().getOrDefault("screen-bond", ""));
            // Short, so that a row stays a line.
            String screen = bond.equals("bonded nowhere") ? "not bonded" : bond.replace("bonded ", "");
            String wave = rest.keys().getOrDefault("wave", "") + ", screen " + screen + ": ";
            row(rows, wave + "cable end, open", "sharing.cable-end.open-voltage", rest);
            row(rows, wave + "cable end, shorted", "sharing.cable-end.short-circuit-current", rest);
            row(rows, wave + "screen current", "surge.screen.current.peak", rest);
            if (firstWave(rest)) {
                row(rows, wave + "gap lead to cable", "surge.gap.lead-cable.voltage", rest);
                row(rows, wave + "gap lead to cubicle", "surge.gap.lead-cubicle.voltage", rest);
            }
        }
        table("sharing-surge", "On a surge: what the electronics have to bear", rows, blocks);
    }

    private void faults(List<Block> blocks) {
        List<List<String>> rows = new ArrayList<>();
        for (Case rest :
                cases(r -> r.id().equals("touch.cubicle.voltage") || r.id().startsWith("cable.power-frequency."))) {
            if (!SHOWN_FAULTS.contains(rest.keys().getOrDefault("fault", ""))) {
                continue;
            }
            String fault = CaseWords.of(rest) + ": ";
            row(rows, fault + "touch at the cubicle", "touch.cubicle.voltage", rest);
            row(rows, fault + "permissible", "touch.cubicle.permissible", rest);
            row(rows, fault + "hand to hand between earths", "touch.between-earths.voltage", rest);
            row(rows, fault + "permissible hand to hand", "touch.between-earths.permissible", rest);
            row(rows, fault + "across the control cable", "cable.power-frequency.voltage", rest);
            row(rows, fault + "screen of the cable", "cable.power-frequency.screen-current", rest);
            row(rows, fault + "screen at the end", "conductor.cable-screen.final-temperature", rest);
        }
        table("sharing-fault", "During an earth fault: what the person and the cable have to bear", rows, blocks);
    }

    /** A row where at least two arrangements can be compared. */
    private void row(List<List<String>> rows, String label, String id, Case rest) {
        List<OptionalDouble> values = new ArrayList<>();
        Optional<Result> any = Optional.empty();
        int count = 0;
        for (String arrangement : ResultTable.ARRANGEMENTS) {
            Optional<Result> result = find(id, rest.with("arrangement", arrangement));
            any = result.isPresent() ? result : any;
            count += result.isPresent() ? 1 : 0;
            values.add(result.map(r -> OptionalDouble.of(r.value())).orElse(OptionalDouble.empty()));
        }
        boolean onlyOfOneKind = id.startsWith("touch.between-earths") || id.startsWith("conductor.");
        if (any.isPresent() && (count > 1 || onlyOfOneKind)) {
            List<String> cells = new ArrayList<>(List.of(label));
            cells.addAll(Amount.row(values, any.get().unit()));
            cells.add(references.cite(any.get().source()));
            rows.add(cells);
        }
    }

    private Optional<Result> find(String id, Case circumstances) {
        return results.of(id).stream()
                .filter(r -> r.at().equals("nominal") && r.circumstances().equals(circumstances))
                .findFirst();
    }

    private static void table(String id, String caption, List<List<String>> rows, List<Block> blocks) {
        if (rows.isEmpty()) {
            return;
        }
        List<Column> columns = new ArrayList<>();
        columns.add(Column.text("Quantity"));
        ResultTable.ARRANGEMENTS.forEach(arrangement -> columns.add(Column.number(arrangement)));
        columns.add(Column.text("Ref"));
        blocks.add(new Block.Table(id, caption, columns, rows));
    }

    private void figure(List<Block> blocks) {
        for (Curve curve : results.curves()) {
            if (!curve.id().startsWith(PREFIX)) {
                continue;
            }
            List<BarChart.Group> groups = new ArrayList<>();
            Optional<Curve.Trace> limit =
                    curve.traces().stream().filter(t -> t.name().equals(LIMIT)).findFirst();
            for (Curve.Trace trace : curve.traces()) {
                if (!trace.name().equals(LIMIT)) {
                    groups.add(new BarChart.Group(
                            trace.name(),
                            curve.yUnit(),
                            bars(trace, trace.name().contains("touch voltage") ? limit : Optional.empty())));
                }
            }
            if (!groups.isEmpty()) {
                blocks.add(new Block.Figure(
                        "figure-sharing",
                        curve.title(),
                        BarChart.words(groups),
                        BarChart.of("figure-sharing", curve.title(), groups),
                        Optional.of(curve)));
            }
        }
    }

    private static List<BarChart.Bar> bars(Curve.Trace trace, Optional<Curve.Trace> limit) {
        List<BarChart.Bar> bars = new ArrayList<>();
        for (int i = 0; i < ResultTable.ARRANGEMENTS.size(); i++) {
            int number = i + 1;
            bars.add(new BarChart.Bar(
                    ResultTable.ARRANGEMENTS.get(i),
                    at(trace, number),
                    limit.map(t -> at(t, number)).orElse(OptionalDouble.empty()),
                    "permissible"));
        }
        return bars;
    }

    private static OptionalDouble at(Curve.Trace trace, int number) {
        for (int i = 0; i < trace.size(); i++) {
            if (Math.round(trace.x(i)) == number) {
                return OptionalDouble.of(trace.y(i));
            }
        }
        return OptionalDouble.empty();
    }

    private void findings(List<Block> blocks) {
        List<List<String>> rows = new ArrayList<>();
        Optional<Finding> hardest = input.findings().stream()
                .filter(f -> f.id().startsWith("surge.cable-end."))
                .min(Severity.HEAVIEST_FIRST);
        for (Finding finding : input.findings()) {
            boolean here = hardest.filter(finding::equals).isPresent()
                    || finding.id().equals("touch.cubicle")
                    || finding.id().equals("touch.between-earths")
                    || finding.id().equals("cable.power-frequency")
                    || finding.id().equals("conductor.cable-screen.heating");
            if (here) {
                rows.add(List.of(
                        ResultSections.capital(CheckWords.of(finding)),
                        finding.status().text(),
                        Amount.text(finding.value(), finding.unit()),
                        Amount.text(finding.limit(), finding.unit()),
                        Amount.margin(finding.margin()),
                        FrontSections.governing(finding)));
            }
        }
        if (!rows.isEmpty()) {
            blocks.add(new Block.Table(
                    "sharing-findings",
                    "What the checks say of the arrangement at hand, at the worst of its cases",
                    List.of(
                            Column.text("Check"),
                            Column.status("Status"),
                            Column.number("Value"),
                            Column.number("Limit"),
                            Column.number("Margin"),
                            Column.text("Governing case")),
                    rows));
        }
    }

    private void worked(List<Block> blocks) {
        Set<String> told = new LinkedHashSet<>();
        results.under(PREFIX)
                .filter(r -> r.worked().isPresent() && !r.id().endsWith("utilisation") && told.add(r.id()))
                .forEach(r -> blocks.add(new Block.Working(
                        r.id().substring(PREFIX.length()).replace('.', ' ').replace('-', ' ') + ", "
                                + CaseWords.of(r.circumstances()),
                        r.worked().orElseThrow(),
                        r.source().text() + " " + references.cite(r.source()))));
    }
}
