package earthing.decision;

import earthing.decision.Remedy.Edits;
import earthing.decision.Remedy.Method;
import earthing.decision.Remedy.Step;
import earthing.decision.Remedy.Towards;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.snakeyaml.engine.v2.api.Load;
import org.snakeyaml.engine.v2.api.LoadSettings;

/** Reads the catalogue of changes that comes with the library, {@code remedies.yaml}. */
public final class RemedyCatalogue {

    private static final String DATA = "remedies.yaml";
    private static final List<String> KEYS = List.of(
            "id",
            "title",
            "method",
            "keys",
            "steps",
            "towards",
            "where",
            "also",
            "unless-given",
            "follow",
            "sum",
            "remove",
            "permission",
            "applies",
            "caution");
    private static final List<String> STEP_KEYS = List.of("say", "value", "also");

    private RemedyCatalogue() {}

    /**
     * Every change.
     *
     * @return in the order in which the changes of a set are made
     */
    public static List<Remedy> all() {
        try (InputStream in = RemedyCatalogue.class.getResourceAsStream(DATA)) {
            if (in == null) {
                throw new IllegalStateException("the catalogue of remedies is missing from the library");
            }
            Object tree = new Load(LoadSettings.builder().setLabel(DATA).build()).loadFromInputStream(in);
            List<Remedy> all = new ArrayList<>();
            for (Object entry : (List<?>) tree) {
                all.add(remedy((Map<?, ?>) entry));
            }
            return List.copyOf(all);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Remedy remedy(Map<?, ?> entry) {
        known(entry, KEYS);
        Method method = Method.valueOf(word(entry, "method", "set"));
        List<Step> steps = new ArrayList<>();
        for (Object step : list(entry.get("steps"))) {
            steps.add(step(step, method));
        }
        if (steps.isEmpty()) {
            throw new IllegalStateException(DATA + ": " + entry.get("id") + " has no steps");
        }
        Map<String, List<String>> where = new LinkedHashMap<>();
        map(entry.get("where")).forEach((key, words) -> where.put(key, texts(words)));
        Map<String, Double> follow = new LinkedHashMap<>();
        map(entry.get("follow")).forEach((key, factor) -> follow.put(key, ((Number) factor).doubleValue()));
        Map<String, List<String>> sum = new LinkedHashMap<>();
        map(entry.get("sum")).forEach((key, parts) -> sum.put(key, texts(parts)));
        return new Remedy(
                text(entry, "id"),
                text(entry, "title"),
                method,
                texts(entry.get("keys")),
                steps,
                Towards.valueOf(word(entry, "towards", "other")),
                where,
                new Edits(
                        map(entry.get("also")),
                        map(entry.get("unless-given")),
                        follow,
                        sum,
                        texts(entry.get("remove"))),
                Optional.ofNullable(entry.get("permission")).map(String::valueOf),
                text(entry, "applies"),
                text(entry, "caution"));
    }

    private static Step step(Object step, Method method) {
        if (step instanceof Map<?, ?> said) {
            known(said, STEP_KEYS);
            Object value = said.get("value");
            if (value == null) {
                throw new IllegalStateException(DATA + ": a step has no value: " + said);
            }
            return new Step(text(said, "say"), value, map(said.get("also")));
        }
        String value = String.valueOf(step);
        String said = switch (method) {
            case SCALE -> value + " times";
            case SHORTEN -> value.equals("0") ? "none" : value + " left";
            default -> value;
        };
        return new Step(said, value, Map.of());
    }

    private static void known(Map<?, ?> entry, List<String> keys) {
        for (Object key : entry.keySet()) {
            if (!keys.contains(String.valueOf(key))) {
                throw new IllegalStateException(DATA + ": unknown key " + key + " in " + entry);
            }
        }
    }

    private static String word(Map<?, ?> entry, String key, String otherwise) {
        Object word = entry.get(key);
        return (word == null ? otherwise : String.valueOf(word)).toUpperCase(Locale.ROOT);
    }

    private static String text(Map<?, ?> entry, String key) {
        if (entry.get(key) instanceof String text && !text.isBlank()) {
            return text;
        }
        throw new IllegalStateException(DATA + ": an entry has no " + key + ": " + entry);
    }

    private static List<?> list(@Nullable Object value) {
        return value instanceof List<?> list ? list : List.of();
    }

    private static List<String> texts(@Nullable Object value) {
        return value instanceof List<?> list
                ? list.stream().map(String::valueOf).toList()
                : value == null ? List.of() : List.of(String.valueOf(value));
    }

    private static Map<String, Object> map(@Nullable Object value) {
        Map<String, Object> map = new LinkedHashMap<>();
        if (value instanceof Map<?, ?> given) {
            given.forEach((key, inner) -> map.put(String.valueOf(key), inner));
        }
        return map;
    }
}
