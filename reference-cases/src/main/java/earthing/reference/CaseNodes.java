package earthing.reference;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.api.lowlevel.Compose;
import org.snakeyaml.engine.v2.exceptions.MarkedYamlEngineException;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.NodeTuple;
import org.snakeyaml.engine.v2.nodes.ScalarNode;
import org.snakeyaml.engine.v2.nodes.SequenceNode;

/** Walks the nodes of one YAML file and collects problems with their place. */
final class CaseNodes {

    private final String file;
    private final List<String> problems;
    private String currentCase = "";

    CaseNodes(String file, List<String> problems) {
        this.file = file;
        this.problems = problems;
    }

    Optional<Node> compose(String text) {
        LoadSettings settings = LoadSettings.builder().setLabel(file).build();
        try {
            Optional<Node> root = new Compose(settings).composeString(text);
            if (root.isEmpty()) {
                problems.add(file + ": the file is empty");
            }
            return root;
        } catch (MarkedYamlEngineException e) {
            String place = e.getProblemMark()
                    .map(mark -> ":" + (mark.getLine() + 1) + ":" + (mark.getColumn() + 1))
                    .orElse("");
            problems.add(file + place + ": " + e.getProblem());
            return Optional.empty();
        }
    }

    /** Names the case that the following problems belong to. */
    void within(String caseId) {
        currentCase = caseId;
    }

    void problem(Node node, String message) {
        String column =
                node.getStartMark().map(mark -> ":" + (mark.getColumn() + 1)).orElse("");
        problems.add(
                file + ":" + line(node) + column + ": " + (currentCase.isEmpty() ? "" : currentCase + ": ") + message);
    }

    static int line(Node node) {
        return node.getStartMark().map(mark -> mark.getLine() + 1).orElse(0);
    }

    /** The entries of a mapping in order; reports keys that are no texts. Double keys are refused by the parser. */
    Map<String, Node> mapping(Node node, String what) {
        Map<String, Node> entries = new LinkedHashMap<>();
        if (!(node instanceof MappingNode mapping)) {
            problem(node, what + " must be a mapping of keys to values");
            return entries;
        }
        for (NodeTuple tuple : mapping.getValue()) {
            if (!(tuple.getKeyNode() instanceof ScalarNode key)) {
                problem(tuple.getKeyNode(), "a key must be a text");
            } else if (entries.put(key.getValue(), tuple.getValueNode()) != null) {
                problem(key, "the key " + key.getValue() + " stands twice");
            }
        }
        return entries;
    }

    List<Node> sequence(Node node, String what) {
        if (node instanceof SequenceNode sequence) {
            return sequence.getValue();
        }
        problem(node, what + " must be a list");
        return List.of();
    }

    String text(Node node, String what) {
        if (node instanceof ScalarNode scalar) {
            return scalar.getValue().strip();
        }
        problem(node, what + " must be a text");
        return "";
    }

    List<String> texts(Node node, String what) {
        List<String> texts = new ArrayList<>();
        for (Node item : sequence(node, what)) {
            texts.add(text(item, "an item of " + what));
        }
        return texts;
    }

    Given.Value given(Node node, String name, String unit) {
        if (node instanceof SequenceNode sequence) {
            return new Given.Value.Items(sequence.getValue().stream()
                    .map(item -> given(item, name, unit))
                    .toList());
        }
        String text = text(node, name);
        return new Given.Value.Text(unit.isEmpty() ? text : text + " " + unit);
    }
}
