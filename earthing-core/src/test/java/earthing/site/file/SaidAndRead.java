package earthing.site.file;

import earthing.quantity.ColumnTable;
import earthing.quantity.Measure;
import earthing.quantity.Quantity;
import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.snakeyaml.engine.v2.api.Load;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.schema.FailsafeSchema;

/**
 * Compares what a site file says with the site that was read from it. What it says is taken from the YAML library's own
 * maps, lists and strings (failsafe schema of YAML 1.2, chapter 10.1), not from the reader under test; the site is taken
 * from its record components.
 */
final class SaidAndRead {

    private static final Pattern QUANTITY = Pattern.compile("([-+0-9.eE]*[0-9.])\\s*(.*)");

    private final List<String> differences = new ArrayList<>();

    private SaidAndRead() {}

    /**
     * Every difference.
     *
     * @param text text of a site file
     * @param site what was read
     * @return paths with what was said and read; empty if all agrees
     */
    static List<String> differences(String text, Record site) {
        LoadSettings settings =
                LoadSettings.builder().setSchema(new FailsafeSchema()).build();
        Object said = new Load(settings).loadFromString(text);
        SaidAndRead both = new SaidAndRead();
        both.compare("", said, site);
        return both.differences;
    }

    private void compare(String path, @Nullable Object said, @Nullable Object read) {
        if (read instanceof Measure measure) {
            measure(path, said, measure);
        } else if (said instanceof Map<?, ?> map && read instanceof Record block) {
            block(path, map, block);
        } else if (said instanceof List<?> list && read instanceof List<?> items && list.size() == items.size()) {
            for (int i = 0; i < list.size(); i++) {
                compare(path + '[' + i + ']', list.get(i), items.get(i));
            }
        } else if (said instanceof String digits
                && read instanceof Integer number
                && digits.strip().matches("0[0-9]+")) {
            // Decimal with zeros before it, YAML 1.2, chapter 10.3.2.
            same(path, digits.strip().replaceFirst("^0+(?=.)", ""), number.toString());
        } else if (!(said instanceof String text) || !text.strip().equals(written(read))) {
            differs(path, said, read);
        }
    }

    private void block(String path, Map<?, ?> said, Record block) {
        Map<String, Object> read = new HashMap<>();
        for (RecordComponent component : block.getClass().getRecordComponents()) {
            Object value = SiteTree.read(component, block);
            if (value != null) {
                read.put(SiteTree.kebab(component.getName()), value);
            }
        }
        Set<Object> keys = new HashSet<>(said.keySet());
        keys.addAll(read.keySet());
        for (Object key : keys) {
            Object value = read.get(key);
            // A list that is not given is empty.
            if (said.containsKey(key) || !List.of().equals(value)) {
                compare(path + '.' + key, said.get(key), value);
            }
        }
    }

    private static @Nullable String written(@Nullable Object read) {
        if (read instanceof Enum<?> word) {
            return word.name().toLowerCase(Locale.ROOT).replace('_', '-');
        }
        if (read instanceof ColumnTable table) {
            return table.file();
        }
        return read instanceof String || read instanceof Integer ? read.toString() : null;
    }

    private void measure(String path, @Nullable Object said, Measure read) {
        Map<?, ?> parts = said instanceof Map<?, ?> map ? map : Map.of("nominal", Objects.requireNonNullElse(said, ""));
        Object nominal = parts.get("nominal");
        Optional<Measure.Bounds> bounds = read.bounds();
        if (bounds.isEmpty()) {
            same(path + ".nominal", nominal, "unknown");
        } else {
            quantity(path + ".nominal", nominal, bounds.get().nominal());
            quantity(
                    path + ".low",
                    parts.containsKey("low") ? parts.get("low") : nominal,
                    bounds.get().low());
            quantity(
                    path + ".high",
                    parts.containsKey("high") ? parts.get("high") : nominal,
                    bounds.get().high());
        }
        String origin = read.origin() == Measure.Origin.UNSTATED ? "" : String.valueOf(written(read.origin()));
        same(path + ".origin", Objects.requireNonNullElse(parts.get("origin"), ""), origin);
        same(path + ".date", Objects.requireNonNullElse(parts.get("date"), ""), read.date());
        same(path + ".by", Objects.requireNonNullElse(parts.get("by"), ""), read.by());
        for (Object key : parts.keySet()) {
            if (!Set.of("low", "nominal", "high", "origin", "date", "by").contains(String.valueOf(key))) {
                differs(path + '.' + key, parts.get(key), null);
            }
        }
    }

    private void quantity(String path, @Nullable Object said, Quantity read) {
        same(path, said, read.text());
        Matcher matcher = QUANTITY.matcher(read.text());
        Double factor = matcher.matches() ? read.dimension().factors().get(matcher.group(2)) : null;
        // Wire gauges, cycles and degrees Fahrenheit have no factor.
        if (factor != null) {
            double expected = Double.parseDouble(matcher.group(1)) * factor;
            if (Math.abs(read.si() - expected) > 1e-14 * Math.abs(expected) + Double.MIN_NORMAL) {
                differs(path, said, read.si());
            }
        }
    }

    private void same(String path, @Nullable Object said, String read) {
        if (!(said instanceof String text) || !text.strip().equals(read)) {
            differs(path, said, read);
        }
    }

    private void differs(String path, @Nullable Object said, @Nullable Object read) {
        differences.add(path + ": the file says " + said + ", the site " + read);
    }
}
