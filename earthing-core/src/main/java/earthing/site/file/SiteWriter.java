package earthing.site.file;

import earthing.quantity.ColumnTable;
import earthing.quantity.Measure;
import earthing.quantity.Quantity;
import earthing.site.Site;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** Writes a site in the canonical order of its keys. */
final class SiteWriter {

    private SiteWriter() {}

    static String write(Site site) {
        StringBuilder text = new StringBuilder();
        for (String line : block(site)) {
            text.append(line).append('\n');
        }
        return text.toString();
    }

    private static List<String> block(Record block) {
        List<String> lines = new ArrayList<>();
        for (Entry entry : Block.of(block.getClass()).entries()) {
            Object value = entry.value(block);
            if (value instanceof List<?> list) {
                list(entry, list, lines);
            } else if (entry.kind() == Entry.Kind.BLOCK && value instanceof Record inner) {
                nested(entry.key(), block(inner), lines);
            } else if (value != null) {
                lines.add(entry.key() + ": " + flat(value, false));
            }
        }
        return lines;
    }

    private static void nested(String key, List<String> inner, List<String> lines) {
        if (inner.isEmpty()) {
            lines.add(key + ": {}");
            return;
        }
        lines.add(key + ':');
        for (String line : inner) {
            lines.add("  " + line);
        }
    }

    private static void list(Entry entry, List<?> list, List<String> lines) {
        if (list.isEmpty()) {
            return;
        }
        if (entry.kind() != Entry.Kind.BLOCK) {
            lines.add(entry.key() + ": ["
                    + list.stream().map(item -> flat(item, true)).collect(Collectors.joining(", ")) + ']');
            return;
        }
        lines.add(entry.key() + ':');
        for (Object item : list) {
            List<String> inner = block((Record) item);
            if (inner.isEmpty()) {
                lines.add("  - {}");
            }
            for (int i = 0; i < inner.size(); i++) {
                lines.add((i == 0 ? "  - " : "    ") + inner.get(i));
            }
        }
    }

    private static String flat(Object value, boolean inList) {
        if (value instanceof Measure measure) {
            return measure(measure, inList);
        }
        if (value instanceof Enum<?> constant) {
            return Entry.word(constant);
        }
        if (value instanceof ColumnTable table) {
            return ScalarText.of(table.file(), inList);
        }
        return value instanceof String text ? ScalarText.of(text, inList) : String.valueOf(value);
    }

    private static String measure(Measure measure, boolean inList) {
        Optional<Measure.Bounds> bounds = measure.bounds();
        Quantity nominal = bounds.map(Measure.Bounds::nominal).orElse(null);
        String nominalText = nominal == null ? ValueReader.UNKNOWN : ScalarText.of(nominal.text(), true);
        List<String> parts = new ArrayList<>();
        bounds.ifPresent(b -> bound(ValueReader.LOW, b.low(), nominal, parts));
        parts.add(ValueReader.NOMINAL + ": " + nominalText);
        bounds.ifPresent(b -> bound(ValueReader.HIGH, b.high(), nominal, parts));
        if (measure.origin() != Measure.Origin.UNSTATED) {
            parts.add(ValueReader.ORIGIN + ": " + Entry.word(measure.origin()));
        }
        part(ValueReader.DATE, measure.date(), parts);
        part(ValueReader.BY, measure.by(), parts);
        if (parts.size() > 1) {
            return '{' + String.join(", ", parts) + '}';
        }
        return nominal == null ? ValueReader.UNKNOWN : ScalarText.of(nominal.text(), inList);
    }

    private static void bound(String key, Quantity bound, @Nullable Quantity nominal, List<String> parts) {
        if (!bound.equals(nominal)) {
            parts.add(key + ": " + ScalarText.of(bound.text(), true));
        }
    }

    private static void part(String key, String text, List<String> parts) {
        if (!text.isEmpty()) {
            parts.add(key + ": " + ScalarText.of(text, true));
        }
    }
}
