package earthing.report;

import earthing.quantity.Numbers;
import earthing.report.document.Amount;
import earthing.report.document.Block;
import earthing.report.document.Block.Column;
import earthing.study.Case;
import earthing.study.Result;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** Earth faults of the site as it is: a row for each quantity, a column for each fault and each point that governs. */
final class FaultTable {

    private static final int MOST_COLUMNS = 4;
    private static final String FAULT = "fault.";

    private record Place(String fault, String protection, String at) {

        String words() {
            String words = CaseWords.phrase("fault", fault)
                    + (protection.isEmpty() ? "" : ", " + CaseWords.phrase(Case.PROTECTION, protection));
            return at.equals("nominal") ? words : words + ", at " + CaseWords.bound(at);
        }
    }

    private FaultTable() {}

    /** The tables; low and high of what has a nominal value stand in the table of values that move. */
    static List<Block> of(String id, List<Result> results, References references) {
        Map<Place, Map<String, Result>> columns = new LinkedHashMap<>();
        var nominal = results.stream()
                .filter(r -> r.at().equals("nominal"))
                .map(FaultTable::place)
                .collect(Collectors.toSet());
        for (Result result : results) {
            boolean bound = result.at().equals("low") || result.at().equals("high");
            if (!bound || !nominal.contains(place(result))) {
                columns.computeIfAbsent(
                                new Place(fault(result), protection(result), result.at()),
                                place -> new LinkedHashMap<>())
                        .putIfAbsent(row(result), result);
            }
        }
        List<Place> places = List.copyOf(columns.keySet());
        List<Block> tables = new ArrayList<>();
        for (int from = 0; from < places.size(); from += MOST_COLUMNS) {
            List<Place> shown = places.subList(from, Math.min(places.size(), from + MOST_COLUMNS));
            tables.add(table(
                    id + (tables.isEmpty() ? "" : "-" + (tables.size() + 1)),
                    "Earth faults of the site as it is" + (tables.isEmpty() ? "" : ", continued"),
                    shown,
                    columns,
                    references));
        }
        return tables;
    }

    private static Block table(
            String id,
            String caption,
            List<Place> places,
            Map<Place, Map<String, Result>> values,
            References references) {
        Map<String, Result> rows = new LinkedHashMap<>();
        places.forEach(place -> values.getOrDefault(place, Map.of()).forEach(rows::putIfAbsent));
        List<List<String>> lines = new ArrayList<>();
        rows.forEach((row, first) -> {
            List<String> line = new ArrayList<>();
            line.add(row);
            for (Place place : places) {
                Result result = values.getOrDefault(place, Map.of()).get(row);
                line.add(result == null ? "–" : amount(result));
            }
            line.add(references.cite(first.source()));
            lines.add(line);
        });
        List<Column> columns = new ArrayList<>();
        columns.add(Column.text("Quantity"));
        places.forEach(place -> columns.add(Column.number(place.words())));
        columns.add(Column.text("Ref"));
        return new Block.Table(id, caption, columns, lines);
    }

    private static String amount(Result result) {
        String text = Amount.text(result.value(), result.unit());
        return result.handValue().isPresent()
                ? text + " (by hand " + Amount.text(result.handValue(), result.unit()) + ")"
                : text;
    }

    private static String fault(Result result) {
        return result.circumstances().keys().getOrDefault("fault", "");
    }

    private static String protection(Result result) {
        return result.circumstances().keys().getOrDefault(Case.PROTECTION, "");
    }

    /** A quantity with the protection that ends it. */
    private static List<String> place(Result result) {
        return List.of(row(result), protection(result));
    }

    /** The quantity without the fault it belongs to, which the column tells. */
    private static String row(Result result) {
        String id = result.id();
        if (!id.startsWith(FAULT)) {
            return ResultWords.of(id);
        }
        String rest = id.substring(FAULT.length()).replace(fault(result) + ".", "");
        return rest.replace('.', ' ').replace('-', ' ').replace("loop x over r", "loop X/R");
    }

    /** Impedances of the line in both forms of the earth return, a row for each quantity. */
    static List<Block> line(List<Result> results, References references) {
        Map<String, Map<String, Result>> rows = new LinkedHashMap<>();
        for (Result result : results) {
            String[] parts = result.id().split("\\.", 3);
            rows.computeIfAbsent(parts[2].replace('-', ' '), row -> new LinkedHashMap<>())
                    .put(parts[1], result);
        }
        if (rows.isEmpty()) {
            return List.of();
        }
        List<List<String>> lines = new ArrayList<>();
        rows.forEach((row, forms) -> {
            List<String> line = new ArrayList<>(List.of(row));
            for (String form : List.of("carson-series", "complex-depth")) {
                Result result = forms.get(form);
                line.add(result == null ? "–" : Amount.text(result.value(), result.unit()));
            }
            Result difference = forms.get("difference");
            line.add(
                    difference == null
                            ? "–"
                            : Math.abs(difference.value()) < 1e-5
                                    ? "none"
                                    : Numbers.significant(100 * difference.value(), 2) + " %");
            line.add(references.cite(forms.values().iterator().next().source()));
            lines.add(line);
        });
        return List.of(new Block.Table(
                "fault-line",
                "Impedances of the whole line from the places of its conductors, both forms of the earth return",
                List.of(
                        Column.text("Quantity"),
                        Column.number("Carson's series"),
                        Column.number("Complex depth"),
                        Column.number("Difference"),
                        Column.text("Ref")),
                lines));
    }
}
