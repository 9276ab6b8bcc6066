package earthing.report;

import com.eclipsesource.json.JsonArray;
import com.eclipsesource.json.JsonObject;
import com.eclipsesource.json.WriterConfig;
import earthing.compliance.Expectations;
import earthing.compliance.Explanation;
import earthing.compliance.Finding;
import earthing.compliance.Severity;
import earthing.compliance.Status;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Findings in SARIF 2.1.0 (OASIS, Static Analysis Results Interchange Format): a rule for each check, a result for each
 * finding with the line of the site file that it has to do with.
 */
final class SarifReport {

    private static final String VERSION = "2.1.0";
    private static final String EXPECTATION = "expect";

    private final ReportInput input;
    private final String uri;
    private final FindingLines lines;
    private final Map<String, Integer> ruleNumbers = new LinkedHashMap<>();
    private final JsonArray rules = new JsonArray();
    private final JsonArray results = new JsonArray();

    private SarifReport(ReportInput input, String uri) {
        this.input = input;
        this.uri = uri;
        this.lines = new FindingLines(input.siteFileText());
    }

    static String of(ReportInput input, String uri) {
        return new SarifReport(input, uri).text();
    }

    private String text() {
        List<Finding> findings =
                input.findings().stream().sorted(Severity.HEAVIEST_FIRST).toList();
        for (Finding finding : findings) {
            int rule = rule(finding.id(), words(finding.id()));
            result(finding, rule);
        }
        for (Expectations.Held held : input.expectations()) {
            int rule = rule(EXPECTATION, "A result is what the author of the site file expected.");
            String found = held.expectation().result() + ": expected " + held.expected() + ", found " + held.found();
            results.add(entry(EXPECTATION, rule, held.holds() ? "pass" : "fail", held.holds() ? "none" : "error", found)
                    .add("locations", location(lines.of(held.path())))
                    .add(
                            "partialFingerprints",
                            fingerprint(held.path() + " " + held.expectation().result())));
        }
        JsonObject driver = new JsonObject()
                .add("name", ReportInput.TOOL_NAME)
                .add("version", input.toolVersion())
                .add("rules", rules);
        JsonObject artifact = new JsonObject()
                .add("location", new JsonObject().add("uri", uri))
                .add("hashes", new JsonObject().add("sha-256", input.sha256()));
        JsonObject run = new JsonObject()
                .add("tool", new JsonObject().add("driver", driver))
                .add("artifacts", new JsonArray().add(artifact))
                .add("columnKind", "utf16CodeUnits")
                .add("results", results);
        return new JsonObject()
                        .add("version", VERSION)
                        .add("runs", new JsonArray().add(run))
                        .toString(WriterConfig.PRETTY_PRINT)
                        .replace("\r\n", "\n")
                + "\n";
    }

    private static String words(String id) {
        return Explanation.of(id).map(Explanation::meaning).orElse("Requirement " + id + ".");
    }

    private int rule(String id, String meaning) {
        Integer known = ruleNumbers.get(id);
        if (known != null) {
            return known;
        }
        int number = ruleNumbers.size();
        ruleNumbers.put(id, number);
        rules.add(new JsonObject().add("id", id).add("shortDescription", message(meaning)));
        return number;
    }

    private void result(Finding finding, int rule) {
        Status status = finding.status();
        String level = switch (status) {
            case NOT_MET -> "error";
            case ACCEPTED_DEPARTURE -> "note";
            default -> "none";
        };
        String text = finding.subject() + ", " + status.text() + ": " + finding.reason()
                + (finding.advice().isBlank() ? "" : ". Advice: " + finding.advice());
        JsonObject result = entry(finding.id(), rule, kind(status), level, text)
                .add("locations", location(lines.of(finding)))
                .add("partialFingerprints", fingerprint(finding.id() + " " + finding.subject()));
        if (status == Status.ACCEPTED_DEPARTURE) {
            result.add(
                    "suppressions",
                    new JsonArray()
                            .add(new JsonObject().add("kind", "inSource").add("justification", finding.reason())));
        }
        JsonObject properties = new JsonObject().add("status", status.id());
        finding.value().ifPresent(v -> properties.add("value", v));
        finding.limit().ifPresent(v -> properties.add("limit", v));
        if (finding.value().isPresent() || finding.limit().isPresent()) {
            properties.add("unit", JsonReport.unit(finding.unit()));
        }
        properties.add("basis", finding.basis().text());
        results.add(result.add("properties", properties));
    }

    /** The words of SARIF 2.1.0, 3.27.9. */
    private static String kind(Status status) {
        return switch (status) {
            case NOT_MET, ACCEPTED_DEPARTURE -> "fail";
            case MET -> "pass";
            case INSUFFICIENT_DATA, NOT_ASSESSED -> "open";
            case DUE_LATER -> "review";
            case NOT_APPLICABLE -> "notApplicable";
        };
    }

    private static JsonObject entry(String id, int rule, String kind, String level, String text) {
        return new JsonObject()
                .add("ruleId", id)
                .add("ruleIndex", rule)
                .add("kind", kind)
                .add("level", level)
                .add("message", message(text));
    }

    private static JsonObject message(String text) {
        return new JsonObject().add("text", text);
    }

    private JsonArray location(int line) {
        return new JsonArray()
                .add(new JsonObject()
                        .add(
                                "physicalLocation",
                                new JsonObject()
                                        .add(
                                                "artifactLocation",
                                                new JsonObject().add("uri", uri).add("index", 0))
                                        .add("region", new JsonObject().add("startLine", line))));
    }

    private static JsonObject fingerprint(String of) {
        return new JsonObject().add("finding/1", of);
    }
}
