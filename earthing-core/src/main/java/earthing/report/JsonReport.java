package earthing.report;

import com.eclipsesource.json.Json;
import com.eclipsesource.json.JsonArray;
import com.eclipsesource.json.JsonObject;
import com.eclipsesource.json.JsonValue;
import com.eclipsesource.json.WriterConfig;
import earthing.compliance.Expectations;
import earthing.compliance.Finding;
import earthing.quantity.ColumnTable;
import earthing.quantity.Measure;
import earthing.quantity.Source;
import earthing.site.file.SiteTree;
import earthing.study.Assumption;
import earthing.study.Case;
import earthing.study.Gap;
import earthing.study.Result;
import java.lang.reflect.RecordComponent;
import java.util.List;

/** The machine-readable output, format {@code earthing-report/1}: fixed key order, SI values at full precision. */
final class JsonReport {

    static final String FORMAT = "earthing-report/1";

    private JsonReport() {}

    static String of(ReportInput input) {
        JsonObject root = new JsonObject()
                .add("format", FORMAT)
                .add("tool", new JsonObject().add("name", ReportInput.TOOL_NAME).add("version", input.toolVersion()))
                .add("input", new JsonObject().add("file", input.siteFileName()).add("sha256", input.sha256()))
                .add("site", value(input.site()));
        JsonArray results = new JsonArray();
        input.results().results().forEach(result -> results.add(result(result)));
        JsonArray findings = new JsonArray();
        input.findings().forEach(finding -> findings.add(finding(finding)));
        JsonArray assumptions = new JsonArray();
        input.results().assumptions().forEach(assumption -> assumptions.add(assumption(assumption)));
        JsonArray notAssessed = new JsonArray();
        input.results().gaps().forEach(gap -> notAssessed.add(gap(gap)));
        input.results().notes().forEach(note -> notAssessed.add(new JsonObject().add("reason", note)));
        JsonArray cautions = new JsonArray();
        Cautions.all().forEach(cautions::add);
        root.add("results", results).add("findings", findings);
        if (!input.site().expect().isEmpty()) {
            root.add("expectations", expectations(input.expectations()));
        }
        input.spread().ifPresent(spread -> root.add("spread", SpreadReport.object(input, spread)));
        input.criteria()
                .ifPresent(criteria -> root.add("all-criteria", CriteriaPage.object(input.siteFileName(), criteria)));
        root.add("assumptions", assumptions).add("not_assessed", notAssessed).add("cautions", cautions);
        return root.toString(WriterConfig.PRETTY_PRINT).replace("\r\n", "\n") + "\n";
    }

    private static JsonArray expectations(List<Expectations.Held> all) {
        JsonArray json = new JsonArray();
        for (Expectations.Held held : all) {
            json.add(new JsonObject()
                    .add("path", held.path())
                    .add("id", held.expectation().result())
                    .add("expected", held.expected())
                    .add("found", held.found())
                    .add("holds", held.holds()));
        }
        return json;
    }

    private static JsonObject result(Result result) {
        JsonObject json = new JsonObject()
                .add("id", result.id())
                .add("case", circumstances(result.circumstances()))
                .add("at", result.at())
                .add("value", result.value())
                .add("unit", unit(result.unit()));
        result.handValue().ifPresent(hand -> json.add("hand-value", hand));
        return json.add("model", result.model()).add("source", result.source().text());
    }

    static JsonObject finding(Finding finding) {
        JsonObject json = new JsonObject()
                .add("id", finding.id())
                .add("subject", finding.subject())
                .add("status", finding.status().id());
        finding.value().ifPresent(value -> json.add("value", value));
        finding.limit().ifPresent(limit -> json.add("limit", limit));
        if (finding.value().isPresent() || finding.limit().isPresent()) {
            json.add("unit", unit(finding.unit()));
        }
        finding.margin().ifPresent(margin -> json.add("margin", margin));
        json.add("case", circumstances(finding.circumstances()))
                .add("bound", finding.bound())
                .add("basis", basis(finding.basis()));
        finding.worked().ifPresent(worked -> json.add("worked", worked.text()));
        return json.add("reason", finding.reason()).add("advice", finding.advice());
    }

    private static JsonObject basis(Source source) {
        return new JsonObject()
                .add(
                        "kind",
                        References.kind(source.kind())
                                .replace("this tool", "tool")
                                .replace(' ', '-'))
                .add("text", source.text());
    }

    static JsonObject circumstances(Case circumstances) {
        JsonObject json = new JsonObject();
        circumstances.keys().forEach(json::add);
        return json;
    }

    private static JsonObject assumption(Assumption assumption) {
        return new JsonObject()
                .add("key", assumption.key())
                .add("text", assumption.text())
                .add("source", assumption.source().text());
    }

    private static JsonObject gap(Gap gap) {
        JsonArray keys = new JsonArray();
        gap.missingKeys().forEach(keys::add);
        return new JsonObject()
                .add("id", gap.id())
                .add("case", circumstances(gap.circumstances()))
                .add("reason", gap.reason())
                .add("missing-keys", keys);
    }

    private static JsonValue value(Object value) {
        if (value instanceof Measure measure) {
            return measure(measure);
        }
        if (value instanceof Record block) {
            JsonObject json = new JsonObject();
            for (RecordComponent component : block.getClass().getRecordComponents()) {
                Object inner = SiteTree.read(component, block);
                if (inner != null && !(inner instanceof List<?> list && list.isEmpty())) {
                    json.add(SiteTree.kebab(component.getName()), value(inner));
                }
            }
            return json;
        }
        if (value instanceof List<?> list) {
            JsonArray json = new JsonArray();
            list.forEach(member -> json.add(value(member)));
            return json;
        }
        if (value instanceof Enum<?> word) {
            return Json.value(SiteTree.word(word));
        }
        if (value instanceof ColumnTable table) {
            return new JsonObject()
                    .add("file", table.file())
                    .add("rows", table.rows())
                    .add("sha256", table.sha256());
        }
        return value instanceof Integer number ? Json.value(number) : Json.value(value.toString());
    }

    private static JsonObject measure(Measure measure) {
        JsonObject json = new JsonObject();
        measure.bounds()
                .ifPresentOrElse(
                        bounds -> json.add("low", bounds.low().si())
                                .add("nominal", bounds.nominal().si())
                                .add("high", bounds.high().si()),
                        () -> json.add("unknown", true));
        json.add("unit", unit(measure.dimension().siUnit())).add("origin", SiteTree.word(measure.origin()));
        measure.bounds().ifPresent(bounds -> json.add("text", bounds.nominal().text()));
        if (!measure.date().isEmpty()) {
            json.add("date", measure.date());
        }
        return measure.by().isEmpty() ? json : json.add("by", measure.by());
    }

    static String unit(String unit) {
        return unit.isEmpty() ? "1" : unit;
    }
}
