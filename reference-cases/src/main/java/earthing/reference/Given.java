package earthing.reference;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * The given values of one row, as texts that are turned into SI when a model asks for them. It remembers what was
 * asked for, so that a value that no one reads can be reported. One instance serves one run of one row.
 */
public final class Given {

    /** A text or a list of given values. */
    public sealed interface Value {
        /**
         * A single text.
         *
         * @param text as written
         */
        record Text(String text) implements Value {}

        /**
         * A list.
         *
         * @param items its items
         */
        record Items(List<Value> items) implements Value {
            /**
             * Keeps a copy.
             *
             * @param items its items
             */
            public Items {
                items = List.copyOf(items);
            }
        }
    }

    private final Map<String, Value> values;
    private final Set<String> read = new LinkedHashSet<>();

    Given(Map<String, Value> values) {
        this.values = new LinkedHashMap<>(values);
    }

    /**
     * Whether a value is given.
     *
     * @param name its name
     * @return true if it is
     */
    public boolean has(String name) {
        return values.containsKey(name);
    }

    /**
     * A number in SI.
     *
     * @param name its name
     * @return the value in SI; temperatures in °C, angles in degrees
     * @throws IllegalArgumentException if it is not given or no number with a known unit
     */
    public double value(String name) {
        return number(name, text(name));
    }

    /**
     * A number in SI with a default of the model's own.
     *
     * @param name its name
     * @param otherwise the value in SI when it is not given
     * @return the value in SI
     */
    public double value(String name, double otherwise) {
        return has(name) ? value(name) : otherwise;
    }

    /**
     * A whole number.
     *
     * @param name its name
     * @return the number
     * @throws IllegalArgumentException if it is not given or not whole
     */
    public int count(String name) {
        double value = value(name);
        if (!(value == Math.rint(value) && Math.abs(value) < 1e9)) {
            throw new IllegalArgumentException(name + ": \"" + text(name) + "\" is no whole number");
        }
        return (int) value;
    }

    /**
     * A word, for example a material.
     *
     * @param name its name
     * @return the text as written
     * @throws IllegalArgumentException if it is not given
     */
    public String word(String name) {
        return text(name);
    }

    /**
     * A word with a default of the model's own.
     *
     * @param name its name
     * @param otherwise the word when it is not given
     * @return the text
     */
    public String word(String name, String otherwise) {
        return has(name) ? word(name) : otherwise;
    }

    /**
     * A yes or no.
     *
     * @param name its name
     * @return true for {@code yes} or {@code true}, false for {@code no} or {@code false}
     * @throws IllegalArgumentException for any other text
     */
    public boolean flag(String name) {
        String text = text(name);
        return switch (text) {
            case "yes", "true" -> true;
            case "no", "false" -> false;
            default -> throw new IllegalArgumentException(name + ": \"" + text + "\" is neither yes nor no");
        };
    }

    /**
     * A list of numbers in SI; a single number is a list of one.
     *
     * @param name its name
     * @return the values in SI, unmodifiable
     * @throws IllegalArgumentException if it is not given or an item is no number
     */
    public List<Double> values(String name) {
        return numbers(name, find(name));
    }

    /**
     * A list of words; a single word is a list of one.
     *
     * @param name its name
     * @return the words, unmodifiable
     * @throws IllegalArgumentException if it is not given or an item is a list
     */
    public List<String> words(String name) {
        Value value = find(name);
        if (value instanceof Value.Items items) {
            return items.items().stream().map(item -> text(name, item)).toList();
        }
        return List.of(text(name, value));
    }

    /**
     * A list of lists of numbers in SI, for example points of a curve.
     *
     * @param name its name
     * @return the rows, unmodifiable
     * @throws IllegalArgumentException if it is not given or an item is no list of numbers
     */
    public List<List<Double>> table(String name) {
        Value value = find(name);
        if (!(value instanceof Value.Items items)) {
            throw new IllegalArgumentException(name + " is no list of lists");
        }
        return items.items().stream().map(row -> numbers(name, row)).toList();
    }

    /** The names that were given and never asked for. */
    Set<String> unread() {
        Set<String> unread = new LinkedHashSet<>(values.keySet());
        unread.removeAll(read);
        return unread;
    }

    private Value find(String name) {
        Value value = values.get(name);
        if (value == null) {
            throw new IllegalArgumentException(name + " is not given; given are " + String.join(", ", values.keySet()));
        }
        read.add(name);
        return value;
    }

    private String text(String name) {
        return text(name, find(name));
    }

    private static String text(String name, Value value) {
        if (value instanceof Value.Text text) {
            return text.text();
        }
        throw new IllegalArgumentException(name + " is a list; expected one value");
    }

    private static List<Double> numbers(String name, Value value) {
        List<Double> numbers = new ArrayList<>();
        if (value instanceof Value.Items items) {
            for (Value item : items.items()) {
                numbers.add(number(name, text(name, item)));
            }
        } else {
            numbers.add(number(name, text(name, value)));
        }
        return List.copyOf(numbers);
    }

    private static double number(String name, String text) {
        try {
            return CaseQuantity.si(text);
        } catch (IllegalArgumentException e) {
            throw new IllegalArgumentException(name + ": " + e.getMessage(), e);
        }
    }
}
