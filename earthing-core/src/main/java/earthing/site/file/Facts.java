package earthing.site.file;

import earthing.quantity.Measure;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** What the file says, by dotted key, with the place where it says it; the rules look here. */
final class Facts {

    private record Fact(Object value, Place place) {}

    private final Map<String, Fact> facts = new HashMap<>();

    void put(String path, Object value, Place place) {
        facts.put(path, new Fact(value, place));
    }

    boolean has(String path) {
        return facts.containsKey(path);
    }

    /** Where a key stands; the whole file if it does not. */
    Place place(String path) {
        Fact fact = facts.get(path);
        return fact == null ? Place.WHOLE_FILE : fact.place();
    }

    /** A value with a unit, if it is there and known. */
    Optional<Measure> measure(String path) {
        Fact fact = facts.get(path);
        return fact != null && fact.value() instanceof Measure measure && measure.isKnown()
                ? Optional.of(measure)
                : Optional.empty();
    }

    /** A text, if it is there. */
    Optional<String> text(String path) {
        Fact fact = facts.get(path);
        return fact != null && fact.value() instanceof String text ? Optional.of(text) : Optional.empty();
    }

    /** A whole number, if it is there. */
    Optional<Integer> number(String path) {
        Fact fact = facts.get(path);
        return fact != null && fact.value() instanceof Integer number ? Optional.of(number) : Optional.empty();
    }

    /** Whether a word stands there. */
    boolean is(String path, Enum<?> constant) {
        Fact fact = facts.get(path);
        return fact != null && fact.value() == constant;
    }

    /** A word, null if it is not there or not valid. */
    @Nullable
    Enum<?> word(String path) {
        Fact fact = facts.get(path);
        return fact != null && fact.value() instanceof Enum<?> constant ? constant : null;
    }

    /** How many items a list has. */
    int count(String path) {
        Fact fact = facts.get(path);
        return fact != null && fact.value() instanceof List<?> list ? list.size() : 0;
    }
}
