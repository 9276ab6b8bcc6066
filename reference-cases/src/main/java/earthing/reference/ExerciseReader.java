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
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.snakeyaml.engine.v2.nodes.Node;

/** Reads the files of exercises. Whatever it does not understand is a problem, nothing is skipped. */
final class ExerciseReader {

    private static final Set<String> WORDS =
            Set.of("exercise", "title", "question", "blank", "formula", "worked", "tolerance", "hint", "slips");
    private static final Set<String> OF_CASE = Set.of("case", "row", "names");
    private static final Set<String> OF_SITE = Set.of("site", "result", "at", "where", "unit", "page");

    private final CaseNodes nodes;
    private final String file;
    private final Node node;
    private final Map<String, Node> fields;
    private boolean broken;

    private ExerciseReader(CaseNodes nodes, String file, Node node) {
        this.nodes = nodes;
        this.file = file;
        this.node = node;
        this.fields = nodes.mapping(node, "an exercise");
    }

    /**
     * Reads every {@code .yaml} file of a folder.
     *
     * @param folder the folder
     * @return all exercises, by file and place in the file
     * @throws CaseFormatException if anything is not understood, or a name stands twice
     * @throws UncheckedIOException if a file cannot be read
     */
    static List<ExerciseText> readFolder(Path folder) {
        List<String> problems = new ArrayList<>();
        List<ExerciseText> all = new ArrayList<>();
        try (Stream<Path> files = Files.list(folder)) {
            for (Path path : files.sorted().toList()) {
                all.addAll(read(String.valueOf(path.getFileName()), Files.readString(path), problems));
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        Map<String, ExerciseText> byName = new HashMap<>();
        for (ExerciseText each : all) {
            ExerciseText first = byName.putIfAbsent(each.id(), each);
            if (first != null) {
                problems.add(each.file() + ":" + each.line() + ": " + each.id() + " stands also in " + first.file()
                        + ":" + first.line());
            }
        }
        if (!problems.isEmpty()) {
            throw new CaseFormatException(problems);
        }
        return List.copyOf(all);
    }

    static List<ExerciseText> read(String file, String text, List<String> problems) {
        CaseNodes nodes = new CaseNodes(file, problems);
        List<ExerciseText> all = new ArrayList<>();
        nodes.compose(text).ifPresent(root -> {
            for (Node each : nodes.sequence(root, "a file of exercises")) {
                nodes.within("");
                new ExerciseReader(nodes, file, each).parse().ifPresent(all::add);
            }
        });
        return all;
    }

    private Optional<ExerciseText> parse() {
        String id = text("exercise");
        nodes.within(id);
        if (!id.matches("[a-z0-9]+(-[a-z0-9]+)*")) {
            problem(node, "exercise must be a name of small letters, digits and hyphens");
        }
        boolean ofSite = fields.containsKey("site");
        Set<String> known = new TreeSet<>(WORDS);
        known.addAll(ofSite ? OF_SITE : OF_CASE);
        fields.forEach((key, value) -> {
            if (!known.contains(key)) {
                problem(value, "the key " + key + " is not known; known are " + String.join(", ", known));
            }
        });
        need("title", "question", "blank", "formula");
        ExerciseText.Numbers numbers;
        if (ofSite) {
            need("site", "result", "unit", "page", "tolerance", "hint");
            numbers = new ExerciseText.SiteResult(
                    text("site"),
                    text("result"),
                    text("at").isEmpty() ? "nominal" : text("at"),
                    texts("where"),
                    text("unit").equals("none") ? "" : text("unit"),
                    text("page"));
        } else {
            need("case");
            numbers = new ExerciseText.Row(text("case"), texts("row"), texts("names"));
        }
        Optional<Tolerance> tolerance = Optional.empty();
        Node given = fields.get("tolerance");
        if (given != null) {
            try {
                tolerance = Optional.of(Tolerance.parse(nodes.text(given, "tolerance")));
            } catch (IllegalArgumentException e) {
                problem(given, "tolerance: " + e.getMessage());
            }
        }
        List<ExerciseText.Slip> slips = slips();
        return broken
                ? Optional.empty()
                : Optional.of(new ExerciseText(
                        id,
                        text("title"),
                        text("question"),
                        text("formula"),
                        text("worked"),
                        numbers,
                        text("blank"),
                        tolerance,
                        text("hint"),
                        slips,
                        file,
                        CaseNodes.line(node)));
    }

    private List<ExerciseText.Slip> slips() {
        List<ExerciseText.Slip> slips = new ArrayList<>();
        Node list = fields.get("slips");
        if (list == null) {
            return slips;
        }
        for (Node each : nodes.sequence(list, "slips")) {
            Map<String, Node> slip = nodes.mapping(each, "a slip");
            Node because = slip.get("because");
            if (because == null
                    || slip.size() != 2
                    || Stream.of("given", "times", "result").noneMatch(slip::containsKey)) {
                problem(each, "a slip needs because, and one of given, times, result");
                continue;
            }
            Map<String, Given.Value> given = new LinkedHashMap<>();
            Node values = slip.get("given");
            if (values != null) {
                nodes.mapping(values, "given").forEach((name, value) -> given.put(name, nodes.given(value, name, "")));
            }
            double times = 0;
            Node factor = slip.get("times");
            if (factor != null) {
                String text = nodes.text(factor, "times");
                try {
                    times = PrintedNumber.parse(text).value();
                } catch (IllegalArgumentException e) {
                    problem(factor, "times must be a number; have " + text);
                }
            }
            Node other = slip.get("result");
            String result = other == null ? "" : nodes.text(other, "result");
            slips.add(new ExerciseText.Slip(given, times, result, nodes.text(because, "because")));
        }
        return slips;
    }

    private void need(String... keys) {
        for (String key : keys) {
            if (text(key).isEmpty()) {
                problem(node, "the key " + key + " is missing or empty");
            }
        }
    }

    private String text(String key) {
        Node value = fields.get(key);
        return value == null ? "" : nodes.text(value, key);
    }

    private Map<String, String> texts(String key) {
        Map<String, String> texts = new LinkedHashMap<>();
        Node value = fields.get(key);
        if (value != null) {
            nodes.mapping(value, key).forEach((name, each) -> texts.put(name, nodes.text(each, name)));
        }
        return texts;
    }

    private void problem(Node at, String message) {
        broken = true;
        nodes.problem(at, message);
    }
}
