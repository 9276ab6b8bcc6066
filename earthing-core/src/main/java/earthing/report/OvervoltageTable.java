package earthing.report;

import earthing.report.document.Amount;
import earthing.report.document.Block;
import earthing.report.document.Block.Column;
import earthing.study.Result;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** The temporary overvoltage of the arresters beside what they bear, a row for each fault. */
final class OvervoltageTable {

    /** Beginning of the ids that are shown here. */
    static final String ID = "surge.arrester.temporary-overvoltage";

    private static final String RATING = ".rating";
    private static final String NOMINAL = "nominal";
    private static final List<String> BOUNDS = List.of("low", NOMINAL, "high");
    private static final String BETWEEN = "between";

    private OvervoltageTable() {}

    static Block.Table of(List<Result> results, References references) {
        Map<String, Map<String, Result>> rows = new LinkedHashMap<>();
        for (Result result : results) {
            boolean rating = result.id().endsWith(RATING);
            Map<String, Result> row =
                    rows.computeIfAbsent(CaseWords.of(result.circumstances()), key -> new LinkedHashMap<>());
            if (!rating) {
                row.merge(
                        BOUNDS.contains(result.at()) ? result.at() : BETWEEN,
                        result,
                        (a, b) -> b.value() > a.value() ? b : a);
            } else if (result.at().equals(NOMINAL) || !row.containsKey(RATING)) {
                row.put(RATING, result);
            }
        }
        List<List<String>> lines = new ArrayList<>();
        rows.forEach((where, row) -> lines.add(List.of(
                where,
                amount(row.get("low")),
                amount(row.get(NOMINAL)),
                amount(row.get("high")),
                amount(row.get(BETWEEN)),
                amount(row.get(RATING)),
                references.cite(row.values().iterator().next().source()))));
        return new Block.Table(
                        "surge-overvoltage",
                        "Temporary overvoltage of the arresters during an earth fault, and what they bear",
                        List.of(
                                Column.text("Case"),
                                Column.number("Low"),
                                Column.number("Nominal"),
                                Column.number("High"),
                                Column.number("Worst between"),
                                Column.number("Arrester bears"),
                                Column.text("Ref")),
                        lines)
                .withoutEmptyColumns();
    }

    private static String amount(@Nullable Result result) {
        return result == null ? "–" : Amount.text(result.value(), result.unit());
    }
}
