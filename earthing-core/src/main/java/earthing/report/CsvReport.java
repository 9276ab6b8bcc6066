package earthing.report;

import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import earthing.compliance.Finding;
import earthing.quantity.Measure;
import earthing.quantity.Numbers;
import earthing.report.document.Amount;
import earthing.report.document.Block;
import earthing.report.document.Document;
import earthing.site.file.SiteTree;
import earthing.study.Case;
import earthing.study.Curve;
import earthing.study.Result;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

/**
 * Inputs, results, findings, the data behind each figure and each printed table as files of comma-separated values:
 * UTF-8, one head line, decimal points, SI values at full precision except in the printed tables.
 */
final class CsvReport {

    /** The list of the files, which also marks a folder as written by this program. */
    static final String INDEX = "index.csv";

    private final Map<String, String> files = new LinkedHashMap<>();
    private final List<List<String>> index = new ArrayList<>();

    private CsvReport() {}

    static Map<String, String> of(ReportInput input, Document document) {
        CsvReport report = new CsvReport();
        report.inputs(input);
        report.results(input);
        report.findings(input);
        for (Block block : document.everyBlock()) {
            if (block instanceof Block.Figure figure && figure.data().isPresent()) {
                report.figure(figure, figure.data().get());
            } else if (block instanceof Block.Table table) {
                report.table(table);
            }
        }
        Map<String, String> all = new LinkedHashMap<>();
        all.put(INDEX, written(List.of("file", "rows", "content"), report.index));
        all.putAll(report.files);
        return all;
    }

    private void add(String name, String content, List<String> head, List<List<String>> rows) {
        files.put(name, written(head, rows));
        index.add(List.of(name, Integer.toString(rows.size()), content));
    }

    private static String written(List<String> head, List<List<String>> rows) {
        StringWriter text = new StringWriter();
        try (CsvWriter csv = CsvWriter.builder().lineDelimiter(LineDelimiter.LF).build(text)) {
            csv.writeRecord(head);
            rows.forEach(csv::writeRecord);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return text.toString();
    }

    private void inputs(ReportInput input) {
        List<List<String>> rows = new ArrayList<>();
        for (SiteTree.Entry entry : SiteTree.entries(input.site())) {
            if (entry.value() instanceof Measure measure) {
                rows.add(List.of(
                        entry.path(),
                        bound(measure, Measure.Bound.LOW),
                        measure.isKnown() ? bound(measure, Measure.Bound.NOMINAL) : "unknown",
                        bound(measure, Measure.Bound.HIGH),
                        measure.dimension().siUnit(),
                        SiteTree.word(measure.origin()),
                        measure.date(),
                        measure.by()));
            } else {
                String text = entry.value() instanceof Enum<?> word
                        ? SiteTree.word(word)
                        : entry.value().toString();
                rows.add(List.of(entry.path(), "", text, "", "", "", "", ""));
            }
        }
        add(
                "inputs.csv",
                "the site file, values in SI",
                List.of("key", "low", "nominal", "high", "unit", "origin", "date", "by"),
                rows);
    }

    private static String bound(Measure measure, Measure.Bound bound) {
        return measure.isKnown() ? Numbers.full(measure.at(bound)) : "";
    }

    private void results(ReportInput input) {
        List<String> head = new ArrayList<>(List.of("id"));
        head.addAll(Case.ORDER);
        head.addAll(List.of("at", "value", "unit", "hand-value", "model", "source"));
        List<List<String>> rows = new ArrayList<>();
        for (Result result : input.results().results()) {
            List<String> row = new ArrayList<>(List.of(result.id()));
            circumstances(row, result.circumstances());
            row.addAll(List.of(
                    result.at(),
                    Numbers.full(result.value()),
                    JsonReport.unit(result.unit()),
                    full(result.handValue()),
                    result.model(),
                    result.source().text()));
            rows.add(row);
        }
        add("results.csv", "every result in SI", head, rows);
    }

    private void findings(ReportInput input) {
        List<String> head = new ArrayList<>(List.of("id", "subject", "status", "value", "limit", "unit", "margin"));
        head.addAll(Case.ORDER);
        head.addAll(List.of("bound", "basis", "worked", "reason", "advice"));
        List<List<String>> rows = new ArrayList<>();
        for (Finding finding : input.findings()) {
            List<String> row = new ArrayList<>(List.of(
                    finding.id(),
                    finding.subject(),
                    finding.status().id(),
                    full(finding.value()),
                    full(finding.limit()),
                    JsonReport.unit(finding.unit()),
                    full(finding.margin())));
            circumstances(row, finding.circumstances());
            row.addAll(List.of(
                    finding.bound(),
                    finding.basis().text(),
                    finding.worked().map(worked -> worked.text()).orElse(""),
                    finding.reason(),
                    finding.advice()));
            rows.add(row);
        }
        add("findings.csv", "every finding, values in SI", head, rows);
    }

    private static void circumstances(List<String> row, Case circumstances) {
        Case.ORDER.forEach(key -> row.add(circumstances.keys().getOrDefault(key, "")));
    }

    private static String full(OptionalDouble value) {
        return value.isPresent() ? Numbers.full(value.getAsDouble()) : "";
    }

    private void figure(Block.Figure figure, Curve curve) {
        List<List<String>> rows = new ArrayList<>();
        for (Curve.Trace trace : curve.traces()) {
            for (int i = 0; i < trace.size(); i++) {
                rows.add(List.of(trace.name(), Numbers.full(trace.x(i)), Numbers.full(trace.y(i))));
            }
        }
        add(
                figure.id() + ".csv",
                "data of the figure: " + figure.caption(),
                List.of("trace", label(curve.xLabel(), curve.xUnit()), label(curve.yLabel(), curve.yUnit())),
                rows);
    }

    private static String label(String name, String unit) {
        return name + " [" + JsonReport.unit(unit) + "]";
    }

    private void table(Block.Table table) {
        add(
                "table-" + table.id() + ".csv",
                "printed table: " + table.caption(),
                table.columns().stream().map(Block.Column::heading).toList(),
                table.rows().stream()
                        .map(row -> row.stream()
                                .map(cell -> cell.replace(Amount.NO_BREAK, " "))
                                .toList())
                        .toList());
    }
}
