package earthing.reference;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;

/** Turns one node of a case file into a case. */
final class CaseParser {

    private static final Set<String> KEYS = Set.of(
            "case",
            "title",
            "covers",
            "kind",
            "source",
            "locus",
            "status",
            "catches",
            "model",
            "given",
            "expect",
            "correct",
            "columns",
            "rows",
            "expect-columns",
            "units",
            "tolerance",
            "because",
            "note");
    private static final List<String> REQUIRED =
            List.of("case", "title", "kind", "source", "status", "catches", "model");

    private final CaseNodes nodes;
    private final String file;
    private final Node node;
    private final Map<String, Node> fields;
    private boolean broken;

    CaseParser(CaseNodes nodes, String file, Node node) {
        this.nodes = nodes;
        this.file = file;
        this.node = node;
        this.fields = nodes.mapping(node, "a case");
    }

    Optional<ReferenceCase> parse() {
        nodes.within(text("case"));
        for (Map.Entry<String, Node> field : fields.entrySet()) {
            if (!KEYS.contains(field.getKey())) {
                problem(
                        field.getValue(),
                        "the key " + field.getKey() + " is not known; known are "
                                + String.join(", ", KEYS.stream().sorted().toList()));
            }
        }
        for (String required : REQUIRED) {
            if (text(required).isEmpty()) {
                problem(node, "the key " + required + " is missing or empty");
            }
        }
        CaseKind kind = understood("kind", CaseKind::parse, CaseKind.BASELINE);
        CaseStatus status = understood("status", CaseStatus::parse, CaseStatus.COMPUTED);
        checkKind(kind, status);
        List<String> covers = covers();
        Map<String, Tolerance> tolerances = tolerances();
        List<ReferenceCase.Row> rows =
                fields.containsKey("rows") ? tableRows(kind, tolerances) : singleRow(kind, tolerances);
        if (broken) {
            return Optional.empty();
        }
        return Optional.of(new ReferenceCase(
                text("case"),
                text("title"),
                kind,
                text("source"),
                text("locus"),
                status,
                text("catches"),
                text("model"),
                text("because"),
                text("note"),
                covers,
                rows,
                file,
                CaseNodes.line(node)));
    }

    /** The other identifiers whose printed values run as rows of this case. */
    private List<String> covers() {
        Node given = fields.get("covers");
        if (given == null) {
            return List.of();
        }
        List<String> covers = nodes.texts(given, "covers");
        if (covers.isEmpty() || covers.contains("")) {
            problem(given, "covers names no case, or an empty one");
        }
        return covers;
    }

    private void checkKind(CaseKind kind, CaseStatus status) {
        boolean printed = kind == CaseKind.PUBLISHED || kind == CaseKind.NEGATIVE;
        if (printed && status == CaseStatus.COMPUTED) {
            problem(node, "a " + kind.text() + " case has a print: status must be read now or from memory");
        }
        if (kind == CaseKind.NEGATIVE && text("note").isEmpty()) {
            problem(node, "a negative case needs a note that says which error the print contains");
        }
        if (kind != CaseKind.NEGATIVE && fields.containsKey("correct")) {
            problem(node, "only a negative case has a correct value besides the printed one");
        }
    }

    private Map<String, Tolerance> tolerances() {
        Map<String, Tolerance> tolerances = new LinkedHashMap<>();
        Node given = fields.get("tolerance");
        if (given == null) {
            return tolerances;
        }
        if (given instanceof MappingNode) {
            nodes.mapping(given, "tolerance").forEach((name, value) -> tolerances.put(name, tolerance(value)));
        } else {
            tolerances.put("", tolerance(given));
        }
        boolean reasonNeeded = tolerances.values().stream().anyMatch(t -> !t.equals(Tolerance.lastDigit()));
        if (reasonNeeded && text("because").isEmpty()) {
            problem(given, "a tolerance other than last-digit needs its reason under because");
        }
        return tolerances;
    }

    private Tolerance tolerance(Node value) {
        try {
            return Tolerance.parse(nodes.text(value, "tolerance"));
        } catch (IllegalArgumentException e) {
            problem(value, "tolerance: " + e.getMessage());
            return Tolerance.lastDigit();
        }
    }

    private List<ReferenceCase.Row> singleRow(CaseKind kind, Map<String, Tolerance> tolerances) {
        for (String key : List.of("columns", "expect-columns", "units")) {
            Node stray = fields.get(key);
            if (stray != null) {
                problem(stray, key + " without rows");
            }
        }
        List<ReferenceCase.Expected> expected =
                new ArrayList<>(expected("expect", tolerances, kind == CaseKind.NEGATIVE));
        if (fields.containsKey("correct")) {
            expected.addAll(expected("correct", tolerances, false));
        }
        if (expected.isEmpty() && !broken) {
            problem(node, "nothing is expected");
        }
        checkNames(
                tolerances, expected.stream().map(ReferenceCase.Expected::name).toList());
        return List.of(new ReferenceCase.Row(1, CaseNodes.line(node), sharedGiven(), expected));
    }

    private List<ReferenceCase.Expected> expected(String key, Map<String, Tolerance> tolerances, boolean misprint) {
        List<ReferenceCase.Expected> expected = new ArrayList<>();
        Node given = fields.get(key);
        if (given == null) {
            problem(node, "the key " + key + " is missing");
            return expected;
        }
        nodes.mapping(given, key)
                .forEach((name, value) -> expected(value, name, nodes.text(value, name), tolerances, misprint)
                        .ifPresent(expected::add));
        return expected;
    }

    private Optional<ReferenceCase.Expected> expected(
            Node at, String name, String text, Map<String, Tolerance> tolerances, boolean misprint) {
        Tolerance tolerance = tolerances.getOrDefault(name, tolerances.getOrDefault("", Tolerance.lastDigit()));
        try {
            PrintedNumber printed = PrintedNumber.parse(text);
            if (Double.isFinite(printed.value())) {
                tolerance.allowed(printed);
            }
            return Optional.of(new ReferenceCase.Expected(name, printed, tolerance, misprint));
        } catch (IllegalArgumentException e) {
            problem(at, name + ": " + e.getMessage());
            return Optional.empty();
        }
    }

    private Map<String, Given.Value> sharedGiven() {
        Map<String, Given.Value> given = new LinkedHashMap<>();
        Node shared = fields.get("given");
        if (shared != null) {
            nodes.mapping(shared, "given").forEach((name, value) -> given.put(name, nodes.given(value, name, "")));
        }
        return given;
    }

    private List<ReferenceCase.Row> tableRows(CaseKind kind, Map<String, Tolerance> tolerances) {
        List<ReferenceCase.Row> rows = new ArrayList<>();
        Node columnsNode = fields.get("columns");
        Node expectNode = fields.get("expect-columns");
        Node rowsNode = fields.get("rows");
        if (columnsNode == null || expectNode == null || rowsNode == null) {
            problem(node, "rows need columns and expect-columns");
            return rows;
        }
        for (String key : List.of("expect", "correct")) {
            Node stray = fields.get(key);
            if (stray != null) {
                problem(stray, key + " beside rows; name the column under expect-columns");
            }
        }
        List<String> columns = nodes.texts(columnsNode, "columns");
        List<String> expectColumns = nodes.texts(expectNode, "expect-columns");
        Map<String, String> units = new LinkedHashMap<>();
        Node unitsNode = fields.get("units");
        if (unitsNode != null) {
            nodes.mapping(unitsNode, "units").forEach((name, unit) -> units.put(name, nodes.text(unit, "a unit")));
        }
        checkColumns(columnsNode, columns, expectColumns, units);
        checkNames(tolerances, expectColumns);
        for (Node rowNode : nodes.sequence(rowsNode, "rows")) {
            List<Node> cells = nodes.sequence(rowNode, "a row");
            if (cells.size() != columns.size()) {
                problem(rowNode, "the row has " + cells.size() + " cells, there are " + columns.size() + " columns");
                continue;
            }
            Map<String, Given.Value> given = sharedGiven();
            List<ReferenceCase.Expected> expected = new ArrayList<>();
            for (int i = 0; i < cells.size(); i++) {
                String column = columns.get(i);
                String unit = units.getOrDefault(column, "");
                Given.Value cell = nodes.given(cells.get(i), column, unit);
                boolean empty =
                        cell instanceof Given.Value.Text text && text.text().equals(unit.isEmpty() ? "" : " " + unit);
                if (empty) {
                    continue;
                }
                if (!expectColumns.contains(column)) {
                    given.put(column, cell);
                } else {
                    String text = nodes.text(cells.get(i), column);
                    expected(
                                    cells.get(i),
                                    column,
                                    unit.isEmpty() ? text : text + " " + unit,
                                    tolerances,
                                    kind == CaseKind.NEGATIVE)
                            .ifPresent(expected::add);
                }
            }
            if (expected.isEmpty() && !broken) {
                problem(rowNode, "the row expects nothing");
            }
            rows.add(new ReferenceCase.Row(rows.size() + 1, CaseNodes.line(rowNode), given, expected));
        }
        if (rows.isEmpty()) {
            problem(rowsNode, "there are no rows");
        }
        return rows;
    }

    private void checkColumns(Node at, List<String> columns, List<String> expectColumns, Map<String, String> units) {
        if (new LinkedHashSet<>(columns).size() != columns.size()) {
            problem(at, "a column stands twice");
        }
        for (String name : expectColumns) {
            if (!columns.contains(name)) {
                problem(at, "expect-columns names " + name + ", which is no column");
            }
        }
        for (String name : units.keySet()) {
            if (!columns.contains(name)) {
                problem(at, "units names " + name + ", which is no column");
            }
        }
    }

    private void checkNames(Map<String, Tolerance> tolerances, List<String> expected) {
        for (String name : tolerances.keySet()) {
            if (!name.isEmpty() && !expected.contains(name)) {
                problem(node, "there is a tolerance for " + name + ", which is not expected");
            }
        }
    }

    private <T> T understood(String key, java.util.function.Function<String, T> parse, T otherwise) {
        Node value = fields.get(key);
        if (value == null) {
            return otherwise;
        }
        try {
            return parse.apply(nodes.text(value, key));
        } catch (IllegalArgumentException e) {
            problem(value, String.valueOf(e.getMessage()));
            return otherwise;
        }
    }

    private String text(String key) {
        @Nullable Node value = fields.get(key);
        return value == null ? "" : nodes.text(value, key);
    }

    private void problem(Node at, String message) {
        broken = true;
        nodes.problem(at, message);
    }
}
