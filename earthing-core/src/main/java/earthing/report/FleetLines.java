package earthing.report;

import com.eclipsesource.json.JsonArray;
import com.eclipsesource.json.JsonObject;
import com.eclipsesource.json.WriterConfig;
import earthing.compliance.Finding;
import earthing.compliance.Severity;
import earthing.compliance.Status;
import earthing.fleet.FleetSummary;
import earthing.fleet.PoleOutcome;
import earthing.fleet.PoleResult;
import earthing.fleet.Reason;
import earthing.fleet.TableForm;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.file.Path;

/** Results of many sites for machines: one JSON object a pole, and a map layer. */
public final class FleetLines {

    /** Name of the file that {@link #map} fills. */
    public static final String MAP = "poles.geojson";

    private FleetLines() {}

    /**
     * One pole as a line of JSON: its findings in SI at full precision, or the reasons why there are none. Findings that do
     * not concern the pole are left out; what a met finding says in words is left to the report.
     *
     * @param outcome what came of the row
     * @return one object without line breaks, and a line feed
     */
    public static String json(PoleOutcome outcome) {
        JsonObject json = new JsonObject().add("row", outcome.row()).add("pole", outcome.pole());
        if (outcome instanceof PoleOutcome.Assessed assessed) {
            json.add("name", assessed.site().site().name())
                    .add("outcome", "assessed")
                    .add("headline", Severity.headline(assessed.findings()).id());
            JsonArray findings = new JsonArray();
            for (Finding finding : assessed.findings()) {
                if (finding.status() != Status.NOT_APPLICABLE) {
                    findings.add(finding(finding));
                }
            }
            json.add("findings", findings);
        } else {
            PoleOutcome.Refused refused = (PoleOutcome.Refused) outcome;
            JsonArray reasons = new JsonArray();
            for (Reason reason : refused.reasons()) {
                JsonObject one = new JsonObject().add("file", refused.file()).add("row", refused.row());
                if (reason.column() > 0) {
                    one.add("column", reason.column()).add("head", reason.head());
                }
                one.add("found", reason.found());
                reasons.add(reason.expected().isEmpty() ? one : one.add("expected", reason.expected()));
            }
            json.add("outcome", "refused").add("reasons", reasons);
        }
        return json.toString(WriterConfig.MINIMAL) + "\n";
    }

    private static JsonObject finding(Finding finding) {
        JsonObject json = new JsonObject()
                .add("id", finding.id())
                .add("subject", finding.subject())
                .add("status", finding.status().id());
        finding.value().ifPresent(value -> json.add("value", value));
        finding.limit().ifPresent(limit -> json.add("limit", limit));
        if (finding.value().isPresent() || finding.limit().isPresent()) {
            json.add("unit", JsonReport.unit(finding.unit()));
        }
        finding.margin().ifPresent(margin -> json.add("margin", margin));
        json.add("case", JsonReport.circumstances(finding.circumstances())).add("bound", finding.bound());
        if (finding.status() != Status.MET && finding.status() != Status.DUE_LATER) {
            json.add("reason", finding.reason()).add("advice", finding.advice());
        }
        return json;
    }

    /**
     * The poles as a GeoJSON feature collection (RFC 7946): longitude before latitude, WGS 84, one feature a pole with its
     * headline and governing checks; a pole without coordinates has no geometry.
     *
     * @param folder folder of a run
     * @param form how its results are written
     * @param out takes the text
     * @throws IOException if the results cannot be read or the text cannot be written
     */
    public static void map(Path folder, TableForm form, Writer out) throws IOException {
        out.write("{\"type\":\"FeatureCollection\",\"features\":[");
        boolean[] first = {true};
        try {
            FleetSummary.results(folder, form, result -> {
                try {
                    out.write(first[0] ? "\n" : ",\n");
                    first[0] = false;
                    out.write(feature(result).toString(WriterConfig.MINIMAL));
                } catch (IOException e) {
                    throw new UncheckedIOException(e);
                }
            });
        } catch (UncheckedIOException e) {
            throw e.getCause();
        }
        out.write("\n]}\n");
    }

    private static JsonObject feature(PoleResult result) {
        JsonObject feature = new JsonObject().add("type", "Feature");
        if (result.latitude().isPresent() && result.longitude().isPresent()) {
            feature.add(
                    "geometry",
                    new JsonObject()
                            .add("type", "Point")
                            .add(
                                    "coordinates",
                                    new JsonArray()
                                            .add(result.longitude().getAsDouble())
                                            .add(result.latitude().getAsDouble())));
        } else {
            feature.add("geometry", com.eclipsesource.json.Json.NULL);
        }
        JsonObject properties = new JsonObject()
                .add("row", result.row())
                .add("pole", result.pole())
                .add("name", result.name())
                .add("headline", result.headline().map(Status::id).orElse("refused"));
        result.governing().forEach((group, governing) -> {
            String name = group.name().toLowerCase(java.util.Locale.ROOT).replace('_', '-');
            properties.add(name + " check", governing.check());
            properties.add(name + " status", governing.status().id());
            governing.margin().ifPresent(margin -> properties.add(name + " margin", margin));
        });
        return feature.add("properties", result.isAssessed() ? properties : properties.add("reason", result.reason()));
    }
}
