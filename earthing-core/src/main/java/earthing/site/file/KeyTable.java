package earthing.site.file;

import earthing.quantity.Dimension;
import earthing.quantity.Quantity;
import earthing.site.Key;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** The table of every key for the docs, in Markdown, written from the same source as the reader. */
public final class KeyTable {

    private KeyTable() {}

    /**
     * Every block with its keys.
     *
     * @return Markdown, sections of level 2 and 3, ends with a line break
     */
    public static String markdown() {
        StringBuilder text = new StringBuilder();
        text.append("## Keys at the top of the file\n\n");
        table(Block.site(), text);
        for (Map.Entry<Block, List<String>> block : blocks().entrySet()) {
            text.append("\n### ").append(block.getKey().name()).append("\n\n");
            text.append("Used as ")
                    .append(block.getValue().stream()
                            .map(path -> '`' + path + '`')
                            .collect(Collectors.joining(", ")))
                    .append(".\n\n");
            table(block.getKey(), text);
        }
        text.append("\n## Units\n\n| dimension | units that are read | example |\n|---|---|---|\n");
        for (Dimension dimension : Dimension.values()) {
            units(dimension, text);
        }
        return text.toString();
    }

    /** Every block in the order of first use, with the keys that lead to it. */
    private static Map<Block, List<String>> blocks() {
        Map<Block, List<String>> uses = new LinkedHashMap<>();
        collect(Block.site(), "", uses);
        return uses;
    }

    private static void collect(Block block, String path, Map<Block, List<String>> uses) {
        for (Entry entry : block.entries()) {
            if (entry.kind() == Entry.Kind.BLOCK) {
                String inner = BlockReader.join(path, entry.key()) + (entry.isList() ? "[]" : "");
                uses.computeIfAbsent(entry.block(), b -> new ArrayList<>()).add(inner);
                collect(entry.block(), inner, uses);
            }
        }
    }

    private static void table(Block block, StringBuilder text) {
        text.append("| key | takes | meaning | example |\n|---|---|---|---|\n");
        for (Entry entry : block.entries()) {
            Key meaning = entry.meaning();
            text.append("| `").append(entry.key()).append('`');
            text.append(meaning.required() ? " (required) | " : " | ");
            text.append(entry.isList() ? "list of " : "").append(takes(entry)).append(" | ");
            text.append(meaning.doc().replace("|", "\\|")).append(" | ");
            text.append(meaning.example().isEmpty() ? "" : '`' + meaning.example() + '`')
                    .append(" |\n");
        }
    }

    private static String takes(Entry entry) {
        Key meaning = entry.meaning();
        return switch (entry.kind()) {
            case QUANTITY ->
                Entry.word(meaning.unit()).replace('-', ' ')
                        + switch (meaning.sign()) {
                            case POSITIVE -> "";
                            case NOT_NEGATIVE -> ", may be 0";
                            case ANY -> ", any sign";
                        }
                        + (meaning.known() ? ", not unknown" : "");
            case NUMBER -> "whole number, " + meaning.least() + " to " + meaning.most();
            case WORD -> words(entry);
            case TEXT -> {
                if (!entry.words().isEmpty()) {
                    yield words(entry);
                }
                yield switch (meaning.text()) {
                    case FREE -> "text";
                    case NAME -> "name, unique in its list";
                    case ELECTRODE -> "name of an electrode";
                    case DATE -> "date, year-month-day";
                };
            }
            case TABLE -> "name of a file beside this one, head line `" + TableFile.head(meaning) + '`';
            case BLOCK ->
                "block [" + entry.block().name() + "](#" + entry.block().name() + ')';
        };
    }

    private static String words(Entry entry) {
        return entry.words().stream().map(word -> '`' + word + '`').collect(Collectors.joining(", "));
    }

    private static void units(Dimension dimension, StringBuilder text) {
        List<String> units = new ArrayList<>(dimension.factors().keySet());
        switch (dimension) {
            case TIME -> units.add("cycles");
            case AREA -> units.add("AWG");
            case TEMPERATURE -> units.add("degF");
            default -> {}
        }
        text.append("| ").append(Entry.word(dimension).replace('-', ' ')).append(" | ");
        text.append(units.stream()
                .map(unit -> unit.isEmpty() ? "none" : '`' + unit + '`')
                .collect(Collectors.joining(", ")));
        text.append(" | ").append(Quantity.expected(dimension)).append(" |\n");
    }
}
