package earthing.report;

import earthing.report.document.Amount;
import earthing.report.document.Block;
import earthing.report.document.Block.Column;
import earthing.study.Case;
import earthing.study.Result;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;

/** What a stroke to the line or to the pole brings: rows by quantity, one column for each strike point and switch state. */
final class EntryTable {

    private EntryTable() {}

    /** Cores and ends of the control cable that print alike share a row. */
    static Block.Table of(String id, String caption, List<Result> results, References references) {
        Set<String> cases = new LinkedHashSet<>();
        Map<String, Map<String, Result>> rows = new LinkedHashMap<>();
        for (Result result : results) {
            if (ResultTable.RESIDUALS.contains(result.id())) {
                continue;
            }
            String column = column(result);
            cases.add(column);
            rows.computeIfAbsent(result.id(), key -> new LinkedHashMap<>()).putIfAbsent(column, result);
        }
        Map<List<String>, Set<String>> alike = new LinkedHashMap<>();
        rows.forEach((row, values) -> {
            String quantity = ResultWords.quantity(row);
            List<OptionalDouble> amounts = new ArrayList<>();
            List<OptionalDouble> hands = new ArrayList<>();
            for (String column : cases) {
                Result result = values.get(column);
                amounts.add(result == null ? OptionalDouble.empty() : OptionalDouble.of(result.value()));
                hands.add(result == null ? OptionalDouble.empty() : result.handValue());
            }
            Result first = values.values().iterator().next();
            add(alike, row, quantity, Amount.row(amounts, first.unit()), references.cite(first.source()));
            if (hands.stream().anyMatch(OptionalDouble::isPresent)) {
                add(
                        alike,
                        row,
                        quantity + ", hand value",
                        Amount.row(hands, first.unit()),
                        references.cite(first.source()));
            }
        });
        List<Column> columns = new ArrayList<>();
        columns.add(Column.text("Quantity"));
        cases.forEach(words -> columns.add(Column.number(words)));
        columns.add(Column.text("Ref"));
        return new Block.Table(id, caption, columns, ResultTable.named(alike));
    }

    private static void add(
            Map<List<String>, Set<String>> alike, String id, String quantity, List<String> amounts, String reference) {
        List<String> cells = new ArrayList<>();
        cells.add(quantity);
        cells.addAll(amounts);
        cells.add(reference);
        alike.computeIfAbsent(cells, key -> new LinkedHashSet<>()).add(ResultWords.cableEnd(id));
    }

    private static String column(Result result) {
        Map<String, String> keys = result.circumstances().keys();
        if (keys.getOrDefault("entry", "").equals(Case.POLE)) {
            return keys.getOrDefault("wave", "") + (keys.containsKey("switch") ? ", switch " + keys.get("switch") : "");
        }
        return "strike " + keys.getOrDefault("strike", "here").replace('-', ' ') + ", switch "
                + keys.getOrDefault("switch", "closed");
    }
}
