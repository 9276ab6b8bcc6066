package earthing.report;

import earthing.report.document.Amount;
import earthing.report.document.Block;
import earthing.report.document.Block.Column;
import earthing.study.Result;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

/** What the cable end gets with one input changed: a row for each value of the input. */
final class VariantTable {

    private static final List<String> QUANTITIES =
            List.of("open-voltage", "short-circuit-current", "cubicle-to-main-earth");

    private static final String IMAGES = "surge.images.";

    private VariantTable() {}

    /** Whether a result tells what images in the earth would change. */
    static boolean isImages(Result result) {
        return result.id().startsWith(IMAGES);
    }

    /** What images in the earth would change, in one sentence. */
    static Block images(List<Result> results, References references) {
        StringBuilder text =
                new StringBuilder("Images in perfectly conducting earth, which the inductances count with only"
                        + " where the site file asks for them, would change");
        String between = " ";
        for (Result result : results) {
            String what = result.id()
                    .substring(IMAGES.length())
                    .replace("-change", "")
                    .replace('-', ' ');
            text.append(between)
                    .append(what.equals("tank") ? "the tank's potential" : "the " + what)
                    .append(" by ")
                    .append(Amount.margin(OptionalDouble.of(result.value())));
            between = ", ";
        }
        return new Block.Paragraph(text.append(". ")
                .append(references.cite(results.get(0).source()))
                .toString());
    }

    static Block.Table of(String id, List<Result> results, References references) {
        Map<String, Map<String, Result>> rows = new LinkedHashMap<>();
        for (Result result : results) {
            rows.computeIfAbsent(result.at(), at -> new LinkedHashMap<>())
                    .put(result.id().substring(result.id().lastIndexOf('.') + 1), result);
        }
        List<List<String>> lines = new ArrayList<>();
        rows.forEach((at, values) -> {
            List<String> line = new ArrayList<>();
            line.add(at.replace("=", " = "));
            for (String quantity : QUANTITIES) {
                Result result = values.get(quantity);
                line.add(
                        result == null
                                ? Amount.text(OptionalDouble.empty(), "")
                                : Amount.text(result.value(), result.unit()));
            }
            line.add(references.cite(values.values().iterator().next().source()));
            lines.add(line);
        });
        return new Block.Table(
                id,
                "What if: 8/20 into the tank, one input changed",
                List.of(
                        Column.text("Changed input"),
                        Column.number("Open voltage"),
                        Column.number("Short-circuit current"),
                        Column.number("Cubicle to main earth"),
                        Column.text("Ref")),
                lines);
    }
}
