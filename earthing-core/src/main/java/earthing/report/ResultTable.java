package earthing.report;

import earthing.report.document.Amount;
import earthing.report.document.Block;
import earthing.report.document.Block.Column;
import earthing.study.Case;
import earthing.study.Result;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;

/** Results as tables: by bound, or with the arrangements of the cubicle earth side by side. */
final class ResultTable {

    /** Arrangements in the order of the tables. */
    static final List<String> ARRANGEMENTS = List.of("shared", "separate", "both", "unearthed");

    /** Mark of a value that does not arise because a gap flashes over first. */
    static final String PROSPECTIVE = Amount.NO_BREAK + "p";
    /** Beginning of the ids of what strikes and of what then remains. */
    static final String FLASHOVER = "surge.flashover.";

    private record Row(String id, Case circumstances) {}

    private record Pivot(String id, String at, boolean hand) {}

    private ResultTable() {}

    /** Rows by id and case, columns low, nominal and high; swept inputs make rows of their own. */
    static Block.Table byBound(String id, String caption, List<Result> results, References references) {
        Map<Row, Map<String, Result>> rows = new LinkedHashMap<>();
        for (Result result : results) {
            rows.computeIfAbsent(new Row(result.id(), result.circumstances()), key -> new LinkedHashMap<>())
                    .putIfAbsent(result.at(), result);
        }
        List<List<String>> cells = new ArrayList<>();
        rows.forEach((row, values) -> {
            Result first = values.values().iterator().next();
            String reference = references.cite(first.source());
            String circumstances = CaseWords.of(row.circumstances());
            if (values.containsKey("low") || values.containsKey("nominal") || values.containsKey("high")) {
                cells.add(List.of(
                        ResultWords.of(row.id()),
                        circumstances,
                        at(values, "low"),
                        at(values, "nominal"),
                        at(values, "high"),
                        hand(values),
                        reference));
            }
            values.forEach((at, result) -> {
                if (!at.equals("low") && !at.equals("nominal") && !at.equals("high")) {
                    cells.add(List.of(
                            ResultWords.of(row.id()),
                            circumstances.isEmpty() ? at : circumstances + "; " + at,
                            "",
                            Amount.text(result.value(), result.unit()),
                            "",
                            Amount.text(result.handValue(), result.unit()),
                            references.cite(result.source())));
                }
            });
        });
        return new Block.Table(
                id,
                caption,
                List.of(
                        Column.text("Quantity"),
                        Column.text("Case"),
                        Column.number("Low"),
                        Column.number("Nominal"),
                        Column.number("High"),
                        Column.number("Hand value"),
                        Column.text("Ref")),
                cells);
    }

    private static String at(Map<String, Result> values, String bound) {
        Result result = values.get(bound);
        return result == null ? "" : Amount.text(result.value(), result.unit());
    }

    private static String hand(Map<String, Result> values) {
        for (String bound : List.of("nominal", "high", "low")) {
            Result result = values.get(bound);
            if (result != null && result.handValue().isPresent()) {
                return Amount.text(result.handValue(), result.unit());
            }
        }
        return "";
    }

    /** Of results with bounds those rows of which low, nominal and high do not print alike. */
    static Block.Table moving(String id, String caption, List<Result> results, References references) {
        Block.Table all = byBound(id, caption, results, references);
        return new Block.Table(
                id,
                caption,
                all.columns(),
                all.rows().stream()
                        .filter(row -> !row.get(3).isEmpty())
                        .filter(row -> moves(row.get(2), row.get(3)) || moves(row.get(4), row.get(3)))
                        .toList());
    }

    /** Cores and ends in words; every core at both ends is said in short. */
    static String places(Set<String> coreAndEnd) {
        Set<String> cores = new LinkedHashSet<>();
        Set<String> ends = new LinkedHashSet<>();
        for (String place : coreAndEnd) {
            int comma = place.lastIndexOf(", ");
            if (comma < 0) {
                return String.join("; ", coreAndEnd);
            }
            cores.add(place.substring(0, comma));
            ends.add(place.substring(comma + 2));
        }
        if (cores.size() * ends.size() != coreAndEnd.size()) {
            return String.join("; ", coreAndEnd);
        }
        return String.join(", ", cores) + ", "
                + (ends.size() == 1 ? ends.iterator().next() : "both ends");
    }

    private static boolean moves(String bound, String nominal) {
        return !bound.isEmpty() && !bound.equals(nominal);
    }

    /**
     * Rows by id, one column for each arrangement; all results belong to the same remaining case. Where a quantity has
     * a nominal value, its bounds stand in the table of the values that move. Cores and ends of the control cable that
     * print alike share a row.
     */
    static Block.Table sideBySide(String id, String caption, List<Result> results, References references) {
        Set<String> struck = new HashSet<>();
        results.stream()
                .filter(r -> r.id().startsWith(FLASHOVER))
                .forEach(r -> struck.add(r.circumstances().keys().getOrDefault("arrangement", "")));
        Set<String> nominal = new HashSet<>();
        results.stream().filter(r -> r.at().equals("nominal")).forEach(r -> nominal.add(r.id()));
        Map<Pivot, Map<String, Result>> rows = new LinkedHashMap<>();
        for (Result result : results) {
            if (nominal.contains(result.id())
                    && (result.at().equals("low") || result.at().equals("high"))) {
                continue;
            }
            String arrangement = result.circumstances().keys().getOrDefault("arrangement", "");
            rows.computeIfAbsent(new Pivot(result.id(), result.at(), false), key -> new LinkedHashMap<>())
                    .putIfAbsent(arrangement, result);
            if (result.handValue().isPresent()) {
                rows.computeIfAbsent(new Pivot(result.id(), result.at(), true), key -> new LinkedHashMap<>())
                        .putIfAbsent(arrangement, result);
            }
        }
        Map<List<String>, Set<String>> alike = new LinkedHashMap<>();
        rows.forEach((row, values) -> {
            List<OptionalDouble> amounts = new ArrayList<>();
            for (String arrangement : ARRANGEMENTS) {
                Result result = values.get(arrangement);
                if (result == null) {
                    amounts.add(OptionalDouble.empty());
                } else {
                    amounts.add(row.hand() ? result.handValue() : OptionalDouble.of(result.value()));
                }
            }
            Result first = values.values().iterator().next();
            List<String> cells = new ArrayList<>();
            cells.add(ResultWords.quantity(row.id()) + (row.hand() ? ", hand value" : ""));
            cells.add(row.at());
            List<String> texts = Amount.row(amounts, first.unit());
            for (int k = 0; k < texts.size(); k++) {
                boolean marked = amounts.get(k).isPresent()
                        && amounts.get(k).getAsDouble() != 0
                        && struck.contains(ARRANGEMENTS.get(k))
                        && stress(row.id(), first.unit());
                cells.add(marked ? texts.get(k) + PROSPECTIVE : texts.get(k));
            }
            cells.add(references.cite(first.source()));
            alike.computeIfAbsent(cells, key -> new LinkedHashSet<>()).add(ResultWords.cableEnd(row.id()));
        });
        List<List<String>> lines = new ArrayList<>();
        alike.forEach((cells, where) -> {
            List<String> line = new ArrayList<>(cells);
            String places = places(where);
            line.set(0, places.isEmpty() ? cells.get(0) : places + ": " + cells.get(0));
            lines.add(line);
        });
        List<Column> columns = new ArrayList<>();
        columns.add(Column.text("Quantity"));
        columns.add(Column.text("At"));
        ARRANGEMENTS.forEach(arrangement -> columns.add(Column.number(arrangement)));
        columns.add(Column.text("Ref"));
        return new Block.Table(id, caption, columns, lines);
    }

    /** Whether a flashover changes the value: voltages, currents and charges that are neither strengths nor from after it. */
    private static boolean stress(String id, String unit) {
        return (unit.equals("V") || unit.equals("A") || unit.equals("C"))
                && !id.startsWith(FLASHOVER)
                && !id.endsWith(".strength")
                && !id.contains(".protector-")
                && !id.endsWith(".let-through");
    }

    /** One line for each model behind some results. */
    static List<String> models(List<Result> results, References references) {
        Set<String> lines = new LinkedHashSet<>();
        results.forEach(result -> lines.add(result.model() + " " + references.cite(result.source())));
        return List.copyOf(lines);
    }
}
