package earthing.report;

import earthing.report.document.Amount;
import earthing.report.document.Block;
import earthing.report.document.Block.Column;
import earthing.study.Case;
import earthing.study.Result;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.IntStream;

/**
 * Every case that was computed in a row of its own, so that arrangements, bonds, broken paths and bounds can be chosen and
 * set beside each other. It selects from the results and computes nothing.
 */
final class CasesSection {

    private static final String NONE = "–";

    /** A case at a bound, with its results by id. */
    private record Row(Case circumstances, String at, Map<String, Result> results) {

        String word(String key) {
            return circumstances.keys().getOrDefault(key, "");
        }

        String amount(String id) {
            Result result = results.get(id);
            return result == null ? NONE : Amount.text(result.value(), result.unit());
        }
    }

    /** A column: its heading and what stands in it. */
    private record Field(Column column, Function<Row, String> cell) {}

    private final String arrangement;
    private final String bond;

    private CasesSection(String arrangement, String bond) {
        this.arrangement = arrangement;
        this.bond = bond;
    }

    /** The section; none where no case was computed. */
    static List<Block> of(ReportInput input, String bond) {
        CasesSection section = new CasesSection(SurgeSummary.arrangementOf(input.site()), bond);
        List<Block> blocks = new ArrayList<>();
        section.table(
                "cases-surge",
                "Surge: peak values, the worst of the cores and of their two ends",
                rows(input, "surge.", "entry"),
                section.surgeKeys(),
                section.surgeValues(),
                blocks);
        section.table(
                "cases-fault",
                "Earth fault: r.m.s. values",
                rows(input, "", "fault").stream()
                        .filter(CasesSection::tellsMore)
                        .toList(),
                section.faultKeys(),
                section.faultValues(),
                blocks);
        if (blocks.isEmpty()) {
            return List.of();
        }
        blocks.add(
                0,
                new Block.Paragraph(
                        "What was computed, a row for each case. On a screen the rows can be narrowed down by"
                                + " arrangement, bond, broken path and bound; a case that is missing was not computed."
                                + " Low, nominal and high are those of soil and season. \"First\" is the protection"
                                + " that acts first; what its back-up ends has the same voltages, and a row where something is"
                                + " permissible for its time. * as the site has it."));
        return List.of(new Block.Section("cases", 2, "All cases that were computed", blocks));
    }

    /** A later clearing changes what is permissible, not the voltage, which stands with the first protection. */
    private static boolean tellsMore(Row row) {
        return row.word(Case.PROTECTION).isEmpty()
                || !row.amount("touch.cubicle.permissible").equals(NONE);
    }

    private static List<Row> rows(ReportInput input, String prefix, String key) {
        Map<List<Object>, Row> rows = new LinkedHashMap<>();
        for (Result result : input.results().results()) {
            if (result.id().startsWith(prefix)
                    && result.circumstances().keys().containsKey(key)
                    && ResultTable.BOUNDS.contains(result.at())) {
                rows.computeIfAbsent(
                                List.of(result.circumstances(), result.at()),
                                place -> new Row(result.circumstances(), result.at(), new LinkedHashMap<>()))
                        .results()
                        .put(result.id(), result);
            }
        }
        return List.copyOf(rows.values());
    }

    /** A table of the rows that have a value; what is the same in all of them moves from the keys to the caption. */
    private void table(
            String id, String caption, List<Row> all, List<Field> keys, List<Field> values, List<Block> blocks) {
        List<Row> rows = all.stream()
                .filter(row -> values.stream()
                        .limit(2)
                        .anyMatch(v -> !v.cell().apply(row).equals(NONE)))
                .toList();
        if (rows.size() < 2) {
            return;
        }
        StringBuilder told = new StringBuilder(caption);
        if (rows.stream().anyMatch(CasesSection::strikes)) {
            told.append("; p: would arise if nothing flashed over");
        }
        List<Field> telling = new ArrayList<>();
        for (Field key : keys) {
            List<String> words = rows.stream().map(key.cell()).distinct().toList();
            if (words.size() > 1) {
                telling.add(key);
            } else if (!words.get(0).equals(NONE)) {
                told.append("; ")
                        .append(key.column().head().toLowerCase(java.util.Locale.ROOT))
                        .append(": ")
                        .append(words.get(0));
            }
        }
        List<Field> fields = new ArrayList<>(telling);
        fields.addAll(values);
        Block.Table table = new Block.Table(
                        id,
                        told.toString(),
                        fields.stream().map(Field::column).toList(),
                        rows.stream()
                                .map(row -> fields.stream()
                                        .map(field -> field.cell().apply(row))
                                        .toList())
                                .toList())
                .withoutEmptyColumns();
        long left = IntStream.range(0, telling.size())
                .filter(k -> table.columns().contains(telling.get(k).column()))
                .count();
        blocks.add(left == 0 ? table : new Block.Choice(table, (int) left));
    }

    private List<Field> surgeKeys() {
        return List.of(
                new Field(Column.text("Entry"), CasesSection::entry),
                new Field(Column.text("Wave"), row -> row.word("wave")),
                arrangement(),
                bond(),
                broken(),
                new Field(Column.text("Bound"), Row::at));
    }

    private List<Field> surgeValues() {
        return List.of(
                new Field(
                        Column.number("Core open"),
                        row -> SurgeSummary.openVoltage(row.results().values())),
                new Field(
                        Column.number("Core shorted"),
                        row -> SurgeSummary.shortCircuitCurrent(row.results().values())),
                new Field(Column.number("Screen"), row -> row.amount("surge.screen.current.peak")),
                new Field(Column.number("Tank"), row -> row.amount("surge.tank.peak")),
                new Field(Column.number("Cubicle"), row -> row.amount("surge.cubicle.peak")),
                new Field(
                        Column.text("Flashes first"),
                        row -> SurgeSummary.flashesFirst(row.results().values())));
    }

    private List<Field> faultKeys() {
        return List.of(
                new Field(
                        Column.text("Fault"),
                        row -> CaseWords.phrase("fault", row.word("fault")).replaceFirst("^(\\w+) fault", "$1")),
                new Field(
                        Column.text("Cleared by"),
                        row -> row.word(Case.PROTECTION).isEmpty() ? "first" : row.word(Case.PROTECTION)),
                arrangement(),
                bond(),
                broken(),
                new Field(Column.text("Bound"), Row::at));
    }

    private List<Field> faultValues() {
        return List.of(
                new Field(Column.number("EPR main"), row -> row.amount("epr.main")),
                new Field(Column.number("Touch, cubicle"), row -> row.amount("touch.cubicle.voltage")),
                new Field(Column.number("Permissible"), row -> row.amount("touch.cubicle.permissible")),
                new Field(Column.number("EPR cubicle"), row -> row.amount("epr.cubicle")),
                new Field(Column.number("Across cable"), row -> row.amount("cable.power-frequency.voltage")),
                new Field(Column.number("Screen"), row -> row.amount("cable.power-frequency.screen-current")));
    }

    private static boolean strikes(Row row) {
        return row.results().keySet().stream().anyMatch(id -> id.startsWith(ResultTable.FLASHOVER));
    }

    /** Where the surge comes in, in few words. */
    private static String entry(Row row) {
        if (row.word("entry").equals(Case.POLE) && !row.word("strike").isEmpty()) {
            String struck = "stroke to " + row.word("strike").replace('-', ' ');
            return row.word("switch").isEmpty() ? struck : struck + ", " + row.word("switch");
        }
        StringBuilder words =
                new StringBuilder(row.word("entry").replace('-', ' ').replace("current into tank", "into tank"));
        if (!row.word("strike").isEmpty()) {
            words.append(", ").append(row.word("strike").replace('-', ' '));
        }
        if (!row.word("switch").isEmpty()) {
            words.append(", ").append(row.word("switch"));
        }
        return words.toString();
    }

    private Field arrangement() {
        return new Field(Column.text("Arrangement"), row -> own(row.word("arrangement"), arrangement));
    }

    private Field bond() {
        return new Field(
                Column.text("Screen bond"),
                row -> own(row.word("screen-bond").isEmpty() ? bond : row.word("screen-bond"), bond));
    }

    private static Field broken() {
        return new Field(Column.text("Broken path"), row -> row.word("broken").isEmpty() ? NONE : row.word("broken"));
    }

    private static String own(String word, String own) {
        if (word.isEmpty()) {
            return NONE;
        }
        return word.equals(own) ? word + "*" : word;
    }
}
