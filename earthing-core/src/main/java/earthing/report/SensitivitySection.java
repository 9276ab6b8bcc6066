package earthing.report;

import earthing.compliance.Finding;
import earthing.decision.Sensitivity;
import earthing.quantity.Measure;
import earthing.report.document.Amount;
import earthing.report.document.Block;
import earthing.report.document.Block.Column;
import earthing.report.figure.SensitivityBars;
import earthing.site.file.SiteTree;
import earthing.study.Curve;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Which bounded input moves the governing checks, and by how much. */
final class SensitivitySection {

    /** Inputs in a drawing; the table holds all. */
    private static final int MOST_DRAWN = 8;

    /** Part of the nominal value; an input that moves it less is not drawn. */
    private static final double MOVES = 1e-3;

    private SensitivitySection() {}

    static boolean belongs(String id) {
        return id.startsWith(Sensitivity.PREFIX);
    }

    static Block of(ReportInput input) {
        List<Block> blocks = new ArrayList<>();
        List<Curve> curves = input.results().curves().stream()
                .filter(curve -> belongs(curve.id()) && !curve.traces().isEmpty())
                .toList();
        if (curves.isEmpty()) {
            boolean bounded = SiteTree.entries(input.site()).stream()
                    .anyMatch(entry -> entry.value() instanceof Measure measure && measure.hasSpread());
            blocks.add(new Block.Paragraph(
                    bounded
                            ? "Left out, or no check with a margin moves. Otherwise the site is studied again with each bounded"
                                    + " input alone at its low and at its high value; a reviewer will ask for it."
                            : "No input of the site file has bounds, so nothing could be varied. Give low and high where a"
                                    + " value is not known exactly."));
        } else {
            blocks.add(new Block.Paragraph(
                    "The site studied again with each bounded input alone at its low and at its high"
                            + " value, all others nominal: what then becomes of the check with the least margin of each group. The"
                            + " value is the worst of the cases, so the governing case may change from bar to bar. Inputs without"
                            + " bounds are not varied, and two inputs off together are not told here; the verdicts take the bounds"
                            + " together."));
        }
        for (Curve curve : curves) {
            told(curve, input.findings(), blocks);
        }
        return new Block.Section("sensitivity", 2, "Which input moves the governing checks", blocks);
    }

    private static boolean moves(Curve.Trace trace) {
        double least = MOVES * Math.abs(trace.y(1));
        return Math.abs(trace.y(0) - trace.y(1)) > least || Math.abs(trace.y(2) - trace.y(1)) > least;
    }

    private static void told(Curve curve, List<Finding> findings, List<Block> blocks) {
        String id = curve.id().substring(Sensitivity.PREFIX.length());
        Optional<Finding> finding = findings.stream()
                .filter(f -> f.id().equals(id) && f.subject().equals(curve.title()))
                .findFirst();
        OptionalDouble limit = finding.map(Finding::limit).orElse(OptionalDouble.empty());
        String check = ResultSections.capital(finding.map(CheckWords::of).orElse(curve.title()));
        List<Curve.Trace> moving =
                curve.traces().stream().filter(SensitivitySection::moves).toList();
        if (moving.isEmpty()) {
            blocks.add(new Block.Paragraph(check + ", "
                    + Amount.text(curve.traces().get(0).y(1), curve.yUnit()) + ", limit "
                    + Amount.text(limit, curve.yUnit()) + ": no bounded input alone moves it by more than 0.1 %."));
            return;
        }
        String anchor = "sensitivity-" + id.replace('.', '-');
        Curve drawn = new Curve(
                curve.id(),
                curve.title(),
                curve.xLabel(),
                curve.xUnit(),
                curve.yLabel(),
                curve.yUnit(),
                moving.stream().limit(MOST_DRAWN).toList());
        blocks.add(new Block.Figure(
                "figure-" + anchor,
                check + ": what each bounded input alone does to it",
                SensitivityBars.words(drawn, limit),
                SensitivityBars.of(drawn, limit, "figure-" + anchor),
                Optional.of(curve)));
        List<List<String>> rows = new ArrayList<>();
        for (Curve.Trace trace : curve.traces()) {
            rows.add(List.of(
                    trace.name(),
                    Amount.text(trace.y(0), curve.yUnit()),
                    Amount.text(trace.y(1), curve.yUnit()),
                    Amount.text(trace.y(2), curve.yUnit()),
                    Amount.text(limit, curve.yUnit())));
        }
        blocks.add(new Block.Table(
                anchor,
                check + " (" + id + ")",
                List.of(
                        Column.text("Input"),
                        Column.number("At its low"),
                        Column.number("All nominal"),
                        Column.number("At its high"),
                        Column.number("Limit")),
                rows));
    }
}
