package earthing.report;

import earthing.report.document.Amount;
import earthing.report.document.Block;
import earthing.report.document.Block.Column;
import earthing.study.Case;
import earthing.study.Gap;
import earthing.study.Result;
import earthing.study.StudyResults;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;

/** A surge with each earth path broken in turn: one line a path, the site as it is in the first line. */
final class BrokenTable {

    private record Heading(String words, Predicate<String> id) {}

    private static final List<Heading> CABLE = List.of(
            new Heading("Core, open", id -> end(id, ".cubicle.open-voltage")),
            new Heading("Core, shorted", id -> end(id, ".cubicle.short-circuit-current")),
            new Heading("Its charge", id -> end(id, ".cubicle.charge")),
            new Heading("Screen current", id -> id.equals("surge.screen.current.peak")),
            new Heading("Screen share", id -> id.equals("surge.screen.share")),
            new Heading("Screen heats to", id -> id.equals("surge.screen.final-temperature")));
    private static final List<Heading> POTENTIALS = List.of(
            new Heading("Tank", id -> id.equals("surge.tank.peak")),
            new Heading("Cubicle", id -> id.equals("surge.cubicle.peak")),
            new Heading("Lead to cable", id -> id.equals("surge.gap.lead-cable.voltage")),
            new Heading("Lead to cubicle", id -> id.equals("surge.gap.lead-cubicle.voltage")),
            new Heading("Along the wood", id -> id.equals("surge.gap.pole-surface.voltage")));

    private BrokenTable() {}

    private static boolean end(String id, String tail) {
        return id.startsWith("surge.cable-end.") && id.endsWith(tail) && !id.contains(".core-to-core.");
    }

    static boolean belongs(Result result) {
        return result.id().startsWith("surge.");
    }

    /** Two tables for each wave: the control cable, and potentials with gaps. */
    static List<Block> of(StudyResults all, List<Result> broken) {
        Map<Case, Map<String, List<Result>>> tables = new LinkedHashMap<>();
        for (Result result : broken) {
            if (belongs(result)) {
                String path = result.circumstances().keys().getOrDefault("broken", "");
                tables.computeIfAbsent(result.circumstances().without("broken"), key -> new LinkedHashMap<>())
                        .computeIfAbsent(path, key -> new ArrayList<>())
                        .add(result);
            }
        }
        for (Gap gap : all.gaps()) {
            String path = gap.circumstances().keys().getOrDefault("broken", "");
            if (gap.id().startsWith("surge") && !path.isEmpty()) {
                tables.computeIfAbsent(gap.circumstances().without("broken"), key -> new LinkedHashMap<>())
                        .computeIfAbsent(path, key -> new ArrayList<>());
            }
        }
        List<Block> blocks = new ArrayList<>();
        tables.forEach((rest, paths) -> {
            Map<String, List<Result>> lines = new LinkedHashMap<>();
            lines.put(
                    "none",
                    all.results().stream()
                            .filter(r -> r.circumstances().equals(rest) && r.at().equals("nominal"))
                            .toList());
            lines.putAll(paths);
            String words = CaseWords.of(rest);
            blocks.add(
                    table(blocks.size(), "Surge with a path broken, the control cable: " + words, lines, CABLE, false));
            blocks.add(table(
                    blocks.size(), "Surge with a path broken, potentials and gaps: " + words, lines, POTENTIALS, true));
        });
        return blocks;
    }

    private static Block table(
            int number, String caption, Map<String, List<Result>> lines, List<Heading> headings, boolean arcs) {
        List<Column> columns = new ArrayList<>();
        columns.add(Column.text("Broken"));
        headings.forEach(h -> columns.add(Column.number(h.words())));
        if (arcs) {
            columns.add(Column.text("First arc"));
        }
        List<List<String>> rows = new ArrayList<>();
        lines.forEach((path, results) -> rows.add(row(path, results, headings, arcs)));
        return new Block.Table("contingency-surge-" + (number + 1), caption, columns, rows).withoutEmptyColumns();
    }

    private static List<String> row(String path, List<Result> results, List<Heading> headings, boolean arcs) {
        List<String> cells = new ArrayList<>();
        cells.add(path);
        for (Heading heading : headings) {
            cells.add(results.stream()
                    .filter(r -> heading.id().test(r.id()))
                    .findFirst()
                    .map(r -> Amount.text(r.value(), r.unit()))
                    .orElse("–"));
        }
        if (arcs) {
            boolean solved = results.stream().anyMatch(r -> r.id().equals("surge.tank.peak"));
            cells.add(first(results)
                    .orElse(solved ? "none" : results.isEmpty() ? "not computed" : "in the control cable"));
        }
        return cells;
    }

    /** The gap that strikes first and when. */
    private static Optional<String> first(List<Result> results) {
        String tail = ".time";
        return results.stream()
                .filter(r -> r.id().startsWith("surge.flashover.") && r.id().endsWith(tail))
                .findFirst()
                .map(r -> r.id().substring("surge.flashover.".length(), r.id().length() - tail.length())
                                .replace('-', ' ')
                        + " at " + Amount.text(r.value(), r.unit()));
    }
}
