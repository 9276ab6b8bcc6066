package earthing.site.file;

import com.eclipsesource.json.Json;
import com.eclipsesource.json.JsonArray;
import com.eclipsesource.json.JsonObject;
import com.eclipsesource.json.WriterConfig;
import earthing.quantity.Dimension;
import earthing.site.Key;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * The JSON Schema (draft 2020-12) of the site file, for editors: it knows keys, words, units and which keys have to be
 * there. What keys have to do with each other only the reader knows.
 */
public final class SiteSchema {

    private static final String NUMBER = "([0-9]+\\.?[0-9]*|\\.[0-9]+)([eE][+-]?[0-9]{1,3})?";

    private final Map<String, JsonObject> definitions = new LinkedHashMap<>();

    private SiteSchema() {}

    /**
     * The schema.
     *
     * @return JSON, ends with a line break
     */
    public static String text() {
        SiteSchema schema = new SiteSchema();
        JsonObject root = Json.object()
                .add("$schema", "https://json-schema.org/draft/2020-12/schema")
                .add("title", "Site file")
                .add("description", "Earthing of a pole-mounted switchgear site, version 1.");
        schema.fill(root, Block.site());
        JsonObject defs = Json.object();
        schema.definitions.forEach(defs::add);
        root.add("$defs", defs);
        return root.toString(WriterConfig.PRETTY_PRINT) + '\n';
    }

    private void fill(JsonObject object, Block block) {
        JsonObject properties = Json.object();
        JsonArray required = Json.array();
        for (Entry entry : block.entries()) {
            properties.add(entry.key(), property(entry));
            if (entry.meaning().required()) {
                required.add(entry.key());
            }
        }
        object.add("type", "object").add("additionalProperties", false).add("properties", properties);
        if (!required.isEmpty()) {
            object.add("required", required);
        }
    }

    private JsonObject property(Entry entry) {
        JsonObject property = Json.object().add("description", entry.meaning().doc());
        if (entry.isList()) {
            JsonObject item = Json.object();
            describe(item, entry);
            return property.add("type", "array").add("items", item);
        }
        describe(property, entry);
        return property;
    }

    private void describe(JsonObject object, Entry entry) {
        Key meaning = entry.meaning();
        switch (entry.kind()) {
            case QUANTITY -> object.add("$ref", "#/$defs/" + quantity(meaning));
            case NUMBER ->
                object.add("type", "integer").add("minimum", meaning.least()).add("maximum", meaning.most());
            case WORD -> object.add("enum", array(entry.words()));
            case TEXT -> text(object, entry);
            case TABLE -> object.add("type", "string").add("pattern", "^[^./\\\\:][^/\\\\:]*$");
            case BLOCK -> object.add("$ref", "#/$defs/" + block(entry.block()));
        }
    }

    private static void text(JsonObject object, Entry entry) {
        if (!entry.words().isEmpty()) {
            object.add("enum", array(entry.words()));
        } else if (entry.meaning().text() == Key.Text.DATE) {
            object.add("$ref", "#/$defs/date");
        } else {
            // A pole number without quotes is a number to an editor and a text to the reader.
            object.add("type", array(List.of("string", "number")));
        }
    }

    private String block(Block block) {
        String name = block.name();
        if (!definitions.containsKey(name)) {
            JsonObject definition = Json.object();
            // Known before it is filled, so that the order is that of first use.
            definitions.put(name, definition);
            fill(definition, block);
        }
        return name;
    }

    private String quantity(Key meaning) {
        Dimension dimension = meaning.unit();
        String name = Entry.word(dimension)
                + switch (meaning.sign()) {
                    case POSITIVE -> "-above-zero";
                    case NOT_NEGATIVE -> "-not-negative";
                    case ANY -> "";
                }
                + (meaning.known() ? "-known" : "");
        if (!definitions.containsKey(name)) {
            definitions.putIfAbsent("date", date());
            JsonObject value = value(meaning);
            JsonArray any = Json.array().add(value);
            if (!meaning.known()) {
                any.add(Json.object().add("const", ValueReader.UNKNOWN));
            }
            definitions.put(name, Json.object().add("anyOf", any.add(bounded(meaning))));
        }
        return name;
    }

    private static JsonObject value(Key meaning) {
        Dimension dimension = meaning.unit();
        JsonObject value = Json.object();
        String sign = meaning.sign() == Key.Sign.ANY ? "[+-]?" : "\\+?";
        value.add("type", dimension == Dimension.RATIO ? array(List.of("string", "number")) : Json.value("string"));
        value.add("pattern", '^' + pattern(dimension, sign) + '$');
        if (dimension == Dimension.RATIO) {
            switch (meaning.sign()) {
                case POSITIVE -> value.add("exclusiveMinimum", 0);
                case NOT_NEGATIVE -> value.add("minimum", 0);
                case ANY -> {}
            }
        }
        return value;
    }

    private static String pattern(Dimension dimension, String sign) {
        List<String> units = new ArrayList<>(dimension.factors().keySet());
        switch (dimension) {
            case TIME -> units.addAll(List.of("cycles", "cycle"));
            case TEMPERATURE -> units.addAll(List.of("degF", "°F"));
            default -> {}
        }
        String plain = sign + NUMBER + "\\s*("
                + units.stream()
                        .map(unit -> unit.replace(".", "\\.").replace("*", "\\*"))
                        .collect(Collectors.joining("|"))
                + ')';
        return dimension == Dimension.AREA ? "(" + plain + "|([1-4]/0|[0-9]{1,2})\\s*AWG)" : plain;
    }

    private static JsonObject bounded(Key meaning) {
        JsonObject value = value(meaning);
        JsonObject nominal = meaning.known()
                ? value(meaning)
                : Json.object()
                        .add("anyOf", Json.array().add(value).add(Json.object().add("const", ValueReader.UNKNOWN)));
        return Json.object()
                .add("type", "object")
                .add("additionalProperties", false)
                .add(
                        "properties",
                        Json.object()
                                .add(ValueReader.LOW, value(meaning))
                                .add(ValueReader.NOMINAL, nominal)
                                .add(ValueReader.HIGH, value(meaning))
                                .add(ValueReader.ORIGIN, Json.object().add("enum", array(ValueReader.origins())))
                                .add(ValueReader.DATE, Json.object().add("$ref", "#/$defs/date"))
                                .add(ValueReader.BY, Json.object().add("type", "string")))
                .add("required", Json.array().add(ValueReader.NOMINAL));
    }

    private static JsonObject date() {
        return Json.object().add("type", "string").add("pattern", "^[0-9]{4}-[0-9]{2}-[0-9]{2}$");
    }

    private static JsonArray array(List<String> texts) {
        JsonArray array = Json.array();
        texts.forEach(array::add);
        return array;
    }
}
