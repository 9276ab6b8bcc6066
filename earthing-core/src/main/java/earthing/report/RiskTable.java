package earthing.report;

import earthing.quantity.Numbers;
import earthing.report.document.Amount;
import earthing.report.document.Block;
import earthing.report.document.Block.Column;
import earthing.study.Result;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** How often a year the ends of the cores get more than they bear, and what single strokes bring. */
final class RiskTable {

    private static final String RISK = "surge.risk.";
    private static final String STROKE = "surge.stroke.";
    private static final List<String> SINGLE =
            List.of("line-flashes", "pole-flashes", "seed", "flashes-drawn", "fronts-adjusted");

    private RiskTable() {}

    /** Whether a result is shown by this class. */
    static boolean shows(String id) {
        return id.startsWith(STROKE) || (id.startsWith(RISK) && !id.endsWith("-flashes"));
    }

    static List<Block> of(List<Result> results, References references) {
        List<Block> blocks = new ArrayList<>();
        Map<String, List<Result>> ends = new LinkedHashMap<>();
        for (Result result : results) {
            String rest = result.id().startsWith(RISK) ? result.id().substring(RISK.length()) : "";
            if (!rest.isEmpty() && !SINGLE.contains(rest)) {
                ends.computeIfAbsent(rest.substring(0, rest.lastIndexOf('.')), end -> new ArrayList<>())
                        .add(result);
            }
        }
        if (!ends.isEmpty()) {
            blocks.add(rates(ends, references));
            blocks.add(
                    new Block.Paragraph(
                            "Rates are flashes a year (1/a). Drawn: "
                                    + whole(results, "flashes-drawn") + " flashes with the seed "
                                    + whole(results, "seed")
                                    + "; low and high of a rate where none of them exceeded the limit are 0 and three flashes' worth."));
        }
        List<Result> strokes =
                results.stream().filter(r -> r.id().startsWith(STROKE)).toList();
        if (!strokes.isEmpty()) {
            blocks.add(percentiles(strokes, references));
        }
        return blocks;
    }

    private static String whole(List<Result> results, String quantity) {
        return results.stream()
                .filter(r -> r.id().equals(RISK + quantity))
                .findFirst()
                .map(r -> Long.toString(Math.round(r.value())))
                .orElse("–");
    }

    private static Block rates(Map<String, List<Result>> ends, References references) {
        List<List<String>> lines = new ArrayList<>();
        ends.forEach((end, found) -> {
            Optional<Result> limit = find(found, "limit", "nominal");
            List<String> line = new ArrayList<>();
            line.add(end.replace('.', ' ').replace('-', ' ') + " end");
            line.add(limit.map(r -> Amount.text(r.value(), r.unit()) + ", " + r.model())
                    .orElse("–"));
            for (String at : List.of("low", "nominal", "high")) {
                line.add(rate(find(found, "rate", at)));
            }
            line.add(rate(find(found, "direct-rate", "nominal")));
            line.add(rate(find(found, "nearby-rate", "nominal")));
            line.add(find(found, "rate", "nominal")
                    .map(Result::handValue)
                    .filter(OptionalDouble::isPresent)
                    .map(value -> Numbers.brief(value.getAsDouble()))
                    .orElse("–"));
            line.add(references.cite(found.get(0).source()));
            lines.add(line);
        });
        return new Block.Table(
                "surge-risk-rates",
                "How many flashes a year bring an end more than it bears",
                List.of(
                        Column.text("End"),
                        Column.text("Bears"),
                        Column.number("Low"),
                        Column.number("Nominal"),
                        Column.number("High"),
                        Column.number("To the line"),
                        Column.number("Beside it"),
                        Column.number("Hand value"),
                        Column.text("Ref")),
                lines);
    }

    private static String rate(Optional<Result> result) {
        return result.map(r -> Numbers.brief(r.value())).orElse("–");
    }

    private static Optional<Result> find(List<Result> results, String quantity, String at) {
        return results.stream()
                .filter(r -> r.id().endsWith("." + quantity) && r.at().equals(at))
                .findFirst();
    }

    private static Block percentiles(List<Result> strokes, References references) {
        Map<String, List<Result>> rows = new LinkedHashMap<>();
        strokes.forEach(
                r -> rows.computeIfAbsent(r.at(), at -> new ArrayList<>()).add(r));
        List<List<String>> lines = new ArrayList<>();
        rows.forEach((at, found) -> {
            List<String> line = new ArrayList<>();
            line.add(at.substring(at.indexOf('=') + 1));
            for (String kind : List.of("first", "subsequent")) {
                line.add(found.stream()
                        .filter(r -> r.id().startsWith(STROKE + kind))
                        .findFirst()
                        .map(r -> Amount.text(r.value(), r.unit()))
                        .orElse("–"));
            }
            line.add(references.cite(found.get(0).source()));
            lines.add(line);
        });
        return new Block.Table(
                "surge-stroke-percentiles",
                "Open voltage of a core at the cubicle that so many strokes stay below, the whole stroke into the tank",
                List.of(
                        Column.text("Percentile"),
                        Column.number("First strokes"),
                        Column.number("Subsequent strokes"),
                        Column.text("Ref")),
                lines);
    }
}
