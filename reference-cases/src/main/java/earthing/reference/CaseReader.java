package earthing.reference;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.snakeyaml.engine.v2.nodes.Node;

/** Reads the case files of a folder. Whatever it does not understand is a problem, nothing is skipped. */
public final class CaseReader {

    /** The file that lists the cases that no model runs yet. */
    public static final String NOT_YET = "not-yet.yaml";

    /** The file that names every known value, whether a case runs it or not. */
    public static final String KNOWN_VALUES = "known-values.yaml";

    private static final Set<String> NO_CASES = Set.of(NOT_YET, KNOWN_VALUES);
    private static final String WITHOUT_ROWS = "without-rows";

    private CaseReader() {}

    /**
     * Reads every {@code .yaml} file below a folder but the list of cases not run yet and that of known values.
     *
     * @param folder the folder of cases
     * @return all cases, ordered by file and by place in the file
     * @throws CaseFormatException if anything is not understood, or an identifier stands twice
     * @throws UncheckedIOException if a file cannot be read
     */
    public static List<ReferenceCase> readFolder(Path folder) {
        List<String> problems = new ArrayList<>();
        List<ReferenceCase> cases = new ArrayList<>();
        for (Path file : files(folder)) {
            String name = folder.relativize(file).toString().replace('\\', '/');
            if (!name.endsWith(".yaml")) {
                problems.add(name + ": a case file must end in .yaml");
            } else if (!NO_CASES.contains(name)) {
                cases.addAll(read(name, content(file), problems));
            }
        }
        Map<String, ReferenceCase> byId = new HashMap<>();
        for (ReferenceCase each : cases) {
            ReferenceCase first = byId.putIfAbsent(each.id(), each);
            if (first != null) {
                problems.add(each.file() + ":" + each.line() + ": " + each.id() + ": the case stands also in "
                        + first.file() + ":" + first.line());
            }
        }
        problems.addAll(coveredTwice(cases));
        if (!problems.isEmpty()) {
            throw new CaseFormatException(problems);
        }
        return List.copyOf(cases);
    }

    /** An identifier is a case of its own or covered by one other case, so that it is found in one place. */
    static List<String> coveredTwice(List<ReferenceCase> cases) {
        Map<String, String> places = new HashMap<>();
        cases.forEach(each -> places.put(each.id(), each.file() + ":" + each.line()));
        List<String> problems = new ArrayList<>();
        for (ReferenceCase each : cases) {
            String place = each.file() + ":" + each.line();
            for (String covered : each.covers()) {
                String first = places.putIfAbsent(covered, place);
                if (first != null) {
                    problems.add(
                            place + ": " + each.id() + ": it covers " + covered + ", which stands also in " + first);
                }
            }
        }
        return problems;
    }

    /**
     * Reads the text of one case file.
     *
     * @param file its name, for messages and for the room
     * @param text its content
     * @return its cases
     * @throws CaseFormatException if anything is not understood
     */
    public static List<ReferenceCase> readText(String file, String text) {
        List<String> problems = new ArrayList<>();
        List<ReferenceCase> cases = read(file, text, problems);
        if (!problems.isEmpty()) {
            throw new CaseFormatException(problems);
        }
        return cases;
    }

    private static List<ReferenceCase> read(String file, String text, List<String> problems) {
        CaseNodes nodes = new CaseNodes(file, problems);
        List<ReferenceCase> cases = new ArrayList<>();
        nodes.compose(text).ifPresent(root -> {
            for (var node : nodes.sequence(root, "a case file")) {
                nodes.within("");
                new CaseParser(nodes, file, node).parse().ifPresent(cases::add);
            }
        });
        return cases;
    }

    /**
     * The list of cases that no model runs yet.
     *
     * @param atMost how long the list may be; it is only ever lowered
     * @param reasons case identifier to reason, of cases that stand in the files
     * @param withoutRows identifier to reason, of known values that no file holds
     */
    public record NotYet(int atMost, Map<String, String> reasons, Map<String, String> withoutRows) {
        /**
         * Keeps a copy.
         *
         * @param atMost how long the list may be; it is only ever lowered
         * @param reasons case identifier to reason, of cases that stand in the files
         * @param withoutRows identifier to reason, of known values that no file holds
         */
        public NotYet {
            reasons = Map.copyOf(reasons);
            withoutRows = Map.copyOf(withoutRows);
        }

        NotYet(int atMost, Map<String, String> reasons) {
            this(atMost, reasons, Map.of());
        }
    }

    /**
     * Reads the list of cases that no model runs yet.
     *
     * @param folder the folder of cases
     * @return the list
     * @throws CaseFormatException if anything is not understood
     * @throws UncheckedIOException if the file cannot be read
     */
    public static NotYet readNotYet(Path folder) {
        return readNotYetText(content(folder.resolve(NOT_YET)));
    }

    static NotYet readNotYetText(String text) {
        List<String> problems = new ArrayList<>();
        CaseNodes nodes = new CaseNodes(NOT_YET, problems);
        Map<String, String> reasons = new HashMap<>();
        Map<String, String> withoutRows = new HashMap<>();
        int[] atMost = {0};
        nodes.compose(text).ifPresent(root -> {
            var entries = nodes.mapping(root, NOT_YET);
            Set<String> keys = entries.keySet();
            if (!keys.equals(Set.of("at-most", "cases")) && !keys.equals(Set.of("at-most", "cases", WITHOUT_ROWS))) {
                nodes.problem(root, "expected the keys at-most and cases, and perhaps " + WITHOUT_ROWS);
                return;
            }
            var limit = entries.get("at-most");
            var list = entries.get("cases");
            if (limit == null || list == null) {
                return;
            }
            String number = nodes.text(limit, "at-most");
            if (number.matches("\\d{1,4}")) {
                atMost[0] = Integer.parseInt(number);
            } else {
                nodes.problem(limit, "at-most must be a whole number");
            }
            reasons.putAll(reasons(nodes, list, "cases"));
            var rest = entries.get(WITHOUT_ROWS);
            if (rest != null) {
                withoutRows.putAll(reasons(nodes, rest, WITHOUT_ROWS));
            }
        });
        if (!problems.isEmpty()) {
            throw new CaseFormatException(problems);
        }
        return new NotYet(atMost[0], reasons, withoutRows);
    }

    /**
     * Reads the names of all known values.
     *
     * @param folder the folder of cases
     * @return identifiers as they stand in the cases or in the list of those not run, collection by collection
     * @throws CaseFormatException if anything is not understood, or an identifier stands twice in a collection
     * @throws UncheckedIOException if the file cannot be read
     */
    public static Map<String, List<String>> readKnownValues(Path folder) {
        return readKnownValuesText(content(folder.resolve(KNOWN_VALUES)));
    }

    static Map<String, List<String>> readKnownValuesText(String text) {
        List<String> problems = new ArrayList<>();
        CaseNodes nodes = new CaseNodes(KNOWN_VALUES, problems);
        Map<String, List<String>> known = new LinkedHashMap<>();
        nodes.compose(text).ifPresent(root -> {
            for (Node each : nodes.sequence(root, KNOWN_VALUES)) {
                Map<String, Node> fields = nodes.mapping(each, "a collection");
                Node name = fields.get("collection");
                Node ids = fields.get("ids");
                Node renamed = fields.get("as-case");
                if (name == null || ids == null || fields.size() != (renamed == null ? 2 : 3)) {
                    nodes.problem(each, "expected the keys collection and ids, and perhaps as-case");
                    continue;
                }
                List<String> all = new ArrayList<>(nodes.texts(ids, "ids"));
                if (Set.copyOf(all).size() != all.size()) {
                    nodes.problem(ids, "an identifier stands twice");
                }
                if (renamed != null) {
                    nodes.mapping(renamed, "as-case").values().forEach(id -> all.add(nodes.text(id, "as-case")));
                }
                known.put(nodes.text(name, "collection"), List.copyOf(all));
            }
        });
        if (!problems.isEmpty()) {
            throw new CaseFormatException(problems);
        }
        return known;
    }

    private static Map<String, String> reasons(CaseNodes nodes, Node list, String what) {
        Map<String, String> reasons = new HashMap<>();
        for (var item : nodes.sequence(list, what)) {
            var fields = nodes.mapping(item, "an entry of the list");
            var id = fields.get("case");
            var reason = fields.get("reason");
            if (id == null || reason == null || fields.size() != 2) {
                nodes.problem(item, "expected the keys case and reason");
            } else if (nodes.text(reason, "reason").isEmpty()) {
                nodes.problem(reason, "the reason is empty");
            } else if (reasons.put(nodes.text(id, "case"), nodes.text(reason, "reason")) != null) {
                nodes.problem(id, "the case stands twice");
            }
        }
        return reasons;
    }

    private static List<Path> files(Path folder) {
        try (Stream<Path> walk = Files.walk(folder)) {
            return walk.filter(Files::isRegularFile).sorted().toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static String content(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
