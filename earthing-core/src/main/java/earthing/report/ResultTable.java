package earthing.report;

import earthing.report.document.Amount;
import earthing.report.document.Block;
import earthing.report.document.Block.Column;
import earthing.study.Case;
import earthing.study.Result;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Results as tables: by bound, or with the arrangements of the cubicle earth side by side. */
final class ResultTable {

    /** Arrangements in the order of the tables. */
    static final List<String> ARRANGEMENTS = List.of("shared", "separate", "both", "unearthed");

    /** Mark of a value that does not arise because a gap flashes over first. */
    static final String PROSPECTIVE = Amount.NO_BREAK + "p";
    /** Beginning of the ids of what strikes and of what then remains. */
    static final String FLASHOVER = "surge.flashover.";

    /** Ids that tell how well a circuit keeps to its own laws; a sentence holds the worst of them. */
    static final Set<String> RESIDUALS = Set.of("surge.node.residual", "surge.energy.residual");

    static final Set<String> YES_OR_NO = Set.of("contingency.visible", "contingency.cleared");
    private static final Set<String> COUNTS = Set.of("soil.survey.readings", "soil.survey.set-aside");
    static final List<String> BOUNDS = List.of("low", "nominal", "high");

    /** Part of the nominal value that counts as moved. */
    private static final double MOVES = 0.01;

    /** So many quantities a case make it worth a table of its own. */
    private static final int SHARED_CASE = 3;

    private static final int MOST_COLUMNS = 4;
    private static final Pattern EXPOSURE = Pattern.compile("exposure (\\d+(?:\\.\\d+)?) s\\b");
    private static final String RANGE = "exposure ~";

    private record Row(String id, Case circumstances) {}

    private record Pivot(String id, String at, boolean hand) {}

    private ResultTable() {}

    /** Rows by id and case, columns low, nominal and high; swept inputs make rows of their own. */
    static Block.Table byBound(String id, String caption, List<Result> results, References references) {
        return byBound(id, caption, results, CaseWords::of, references);
    }

    /**
     * As {@link #byBound}, one table for each case where several quantities share it: the case stands in the caption
     * then, and not in each row.
     */
    static List<Block> byCase(String id, String caption, List<Result> results, References references) {
        Map<Case, List<Result>> cases = new LinkedHashMap<>();
        Set<Row> rows = new HashSet<>();
        for (Result result : results) {
            cases.computeIfAbsent(result.circumstances(), key -> new ArrayList<>())
                    .add(result);
            rows.add(new Row(result.id(), result.circumstances()));
        }
        if (rows.size() < SHARED_CASE * cases.size()) {
            return List.of(byBound(id, caption, results, references));
        }
        List<Block> tables = new ArrayList<>();
        cases.forEach((circumstances, mine) -> {
            String words = CaseWords.of(circumstances);
            tables.add(byBound(
                    id + (tables.isEmpty() ? "" : "-" + (tables.size() + 1)),
                    words.isEmpty() ? caption : caption + ": " + words,
                    mine,
                    each -> "",
                    references));
        });
        return tables;
    }

    private static Block.Table byBound(
            String id, String caption, List<Result> results, Function<Case, String> caseWords, References references) {
        Map<Row, Map<String, Result>> rows = new LinkedHashMap<>();
        for (Result result : results) {
            rows.computeIfAbsent(new Row(result.id(), result.circumstances()), key -> new LinkedHashMap<>())
                    .putIfAbsent(result.at(), result);
        }
        Map<List<String>, Set<String>> alike = new LinkedHashMap<>();
        rows.forEach((row, values) -> {
            String quantity = ResultWords.quantity(row.id());
            String circumstances = caseWords.apply(row.circumstances());
            List<List<String>> cells = new ArrayList<>();
            if (BOUNDS.stream().anyMatch(values::containsKey)) {
                Result first = values.values().iterator().next();
                cells.add(List.of(
                        quantity,
                        circumstances,
                        at(values, "low"),
                        at(values, "nominal"),
                        at(values, "high"),
                        hand(values),
                        references.cite(first.source())));
            }
            values.forEach((at, result) -> {
                if (!BOUNDS.contains(at)) {
                    cells.add(List.of(
                            quantity,
                            (circumstances.isEmpty() ? "" : circumstances + "; ") + CaseWords.bound(at),
                            "",
                            amount(result),
                            "",
                            Amount.text(result.handValue(), result.unit()),
                            references.cite(result.source())));
                }
            });
            cells.forEach(line ->
                    alike.computeIfAbsent(line, key -> new LinkedHashSet<>()).add(ResultWords.cableEnd(row.id())));
        });
        boolean bounds = results.stream().anyMatch(r -> !r.at().equals("nominal"));
        return new Block.Table(
                        id,
                        caption,
                        List.of(
                                Column.text("Quantity"),
                                Column.text("Case"),
                                Column.number("Low"),
                                Column.number(bounds ? "Nominal" : "Value"),
                                Column.number("High"),
                                Column.number("Hand value"),
                                Column.text("Ref")),
                        named(alike))
                .withoutEmptyColumns();
    }

    /** Rows by id, a column for each word of one key of the case, in tables of a few columns. */
    static List<Block> across(String id, String caption, List<Result> results, String key, References references) {
        Map<Case, List<Result>> cases = new LinkedHashMap<>();
        results.forEach(r -> cases.computeIfAbsent(r.circumstances().without(key), each -> new ArrayList<>())
                .add(r));
        List<Block> tables = new ArrayList<>();
        cases.forEach((rest, mine) -> {
            List<String> words = mine.stream()
                    .map(r -> r.circumstances().keys().getOrDefault(key, ""))
                    .distinct()
                    .toList();
            String of = CaseWords.of(rest);
            for (int from = 0; from < words.size(); from += MOST_COLUMNS) {
                List<String> columns = words.subList(from, Math.min(words.size(), from + MOST_COLUMNS));
                tables.add(across(
                        id + (tables.isEmpty() ? "" : "-" + (tables.size() + 1)),
                        (of.isEmpty() ? caption : caption + ": " + of) + (from == 0 ? "" : ", continued"),
                        mine,
                        key,
                        columns,
                        references));
            }
        });
        return tables;
    }

    private static Block across(
            String id, String caption, List<Result> results, String key, List<String> words, References references) {
        Map<String, List<Result>> byId = new LinkedHashMap<>();
        results.forEach(
                r -> byId.computeIfAbsent(r.id(), each -> new ArrayList<>()).add(r));
        Map<List<String>, Map<String, Result>> rows = new LinkedHashMap<>();
        for (Result result : byId.values().stream().flatMap(List::stream).toList()) {
            String word = result.circumstances().keys().getOrDefault(key, "");
            if (words.contains(word)) {
                rows.computeIfAbsent(List.of(ResultWords.of(result.id()), result.at()), row -> new LinkedHashMap<>())
                        .putIfAbsent(word, result);
            }
        }
        boolean bounds = rows.keySet().stream().anyMatch(row -> !row.get(1).equals("nominal"));
        Map<String, Double> most = new HashMap<>();
        rows.values().stream()
                .flatMap(values -> values.values().stream())
                .forEach(r -> most.merge(r.unit(), Math.abs(r.value()), Math::max));
        List<List<String>> lines = new ArrayList<>();
        rows.forEach((row, values) -> {
            List<String> line = new ArrayList<>();
            line.add(row.get(0));
            line.add(bounds ? CaseWords.bound(row.get(1)) : "");
            words.forEach(word -> line.add(values.containsKey(word) ? amount(values.get(word), most) : "–"));
            line.add(references.cite(values.values().iterator().next().source()));
            lines.add(line);
        });
        joinBounds(lines);
        List<Column> columns = new ArrayList<>();
        columns.add(Column.text("Quantity"));
        columns.add(Column.text("At"));
        words.forEach(word -> columns.add(Column.number(word.isEmpty() ? "Value" : CaseWords.phrase(key, word))));
        columns.add(Column.text("Ref"));
        return new Block.Table(id, caption, columns, lines).withoutEmptyColumns();
    }

    /** Rows of one quantity that print alike at low, nominal and high become one. */
    private static void joinBounds(List<List<String>> lines) {
        for (int k = 0; k + BOUNDS.size() <= lines.size(); k++) {
            List<List<String>> each = lines.subList(k, k + BOUNDS.size());
            boolean bounds = each.stream().map(line -> line.get(1)).toList().equals(BOUNDS);
            long others = each.stream()
                    .map(line -> {
                        List<String> rest = new ArrayList<>(line);
                        rest.remove(1);
                        return rest;
                    })
                    .distinct()
                    .count();
            if (bounds && others == 1) {
                each.get(0).set(1, "every bound");
                lines.subList(k + 1, k + BOUNDS.size()).clear();
            }
        }
    }

    /** An amount as it is printed; what is only true or not is said in a word, a count has no decimals. */
    private static String amount(Result result) {
        if (COUNTS.contains(result.id())) {
            return Long.toString(Math.round(result.value()));
        }
        return YES_OR_NO.contains(result.id())
                ? result.value() == 0 ? "no" : "yes"
                : Amount.text(result.value(), result.unit());
    }

    /** The same for a voltage beside others: what the arithmetic leaves over is nearly zero. */
    private static String amount(Result result, Map<String, Double> most) {
        return result.unit().equals("V")
                ? Amount.row(
                                List.of(OptionalDouble.of(result.value())),
                                result.unit(),
                                most.getOrDefault(result.unit(), 0.0))
                        .get(0)
                : amount(result);
    }

    private static String at(Map<String, Result> values, String bound) {
        Result result = values.get(bound);
        return result == null ? "" : amount(result);
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

    /** Of results with bounds those that low or high move by {@link #MOVES} of the nominal value, a table for each case. */
    static List<Block> moving(String id, String caption, List<Result> results, References references) {
        Map<Row, Map<String, Double>> rows = new HashMap<>();
        for (Result result : results) {
            rows.computeIfAbsent(new Row(result.id(), result.circumstances()), key -> new HashMap<>())
                    .putIfAbsent(result.at(), result.value());
        }
        List<Result> moved = results.stream()
                .filter(r -> BOUNDS.contains(r.at()) && !RESIDUALS.contains(r.id()))
                .filter(r -> moves(rows.getOrDefault(new Row(r.id(), r.circumstances()), Map.of())))
                .toList();
        return moved.isEmpty() ? List.of() : byCase(id, caption, moved, references);
    }

    private static boolean moves(Map<String, Double> values) {
        Double nominal = values.get("nominal");
        return nominal != null
                && values.values().stream().anyMatch(value -> Math.abs(value - nominal) > MOVES * Math.abs(nominal));
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
            boolean elsewhere = nominal.contains(result.id())
                    && (result.at().equals("low") || result.at().equals("high"));
            if (elsewhere || RESIDUALS.contains(result.id())) {
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
            cells.add(CaseWords.bound(row.at()));
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
        List<List<String>> lines = named(alike);
        List<Column> columns = new ArrayList<>();
        columns.add(Column.text("Quantity"));
        boolean bounds = lines.stream().anyMatch(line -> !line.get(1).equals("nominal"));
        columns.add(Column.text("At"));
        if (!bounds) {
            lines.forEach(line -> line.set(1, ""));
        }
        ARRANGEMENTS.forEach(arrangement -> columns.add(Column.number(arrangement)));
        columns.add(Column.text("Ref"));
        return new Block.Table(id, caption, columns, lines).withoutEmptyColumns();
    }

    /** Rows that are alike but for core and end, each with the places where it holds. */
    static List<List<String>> named(Map<List<String>, Set<String>> alike) {
        List<List<String>> lines = new ArrayList<>();
        alike.forEach((cells, where) -> {
            List<String> line = new ArrayList<>(cells);
            String places = places(where);
            line.set(0, places.isEmpty() ? cells.get(0) : places + ": " + cells.get(0));
            lines.add(line);
        });
        return lines;
    }

    /** Whether a flashover changes the value: voltages, currents and charges that are neither strengths nor from after it. */
    private static boolean stress(String id, String unit) {
        return (unit.equals("V") || unit.equals("A") || unit.equals("C"))
                && !id.startsWith(FLASHOVER)
                && !id.endsWith(".strength")
                && !id.contains(".protector-")
                && !id.endsWith(".let-through");
    }

    /** One line for each model behind some results; where only the time of exposure differs, one with its range. */
    static List<String> models(List<Result> results, References references) {
        Map<String, List<String>> times = new LinkedHashMap<>();
        for (Result result : results) {
            String line = result.model() + " " + references.cite(result.source());
            Matcher exposure = EXPOSURE.matcher(line);
            boolean timed = exposure.find();
            times.computeIfAbsent(timed ? exposure.replaceFirst(RANGE) : line, key -> new ArrayList<>())
                    .add(timed ? exposure.group(1) : "");
        }
        List<String> lines = new ArrayList<>();
        times.forEach((line, each) -> {
            List<String> sorted = each.stream()
                    .distinct()
                    .sorted(Comparator.comparingDouble(time -> time.isEmpty() ? 0 : Double.parseDouble(time)))
                    .toList();
            String range = sorted.get(0) + (sorted.size() > 1 ? " s to " + sorted.get(sorted.size() - 1) : "") + " s";
            lines.add(line.replace(RANGE, "exposure " + range));
        });
        return lines;
    }
}
