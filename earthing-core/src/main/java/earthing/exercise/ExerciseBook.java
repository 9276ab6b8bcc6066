package earthing.exercise;

import earthing.quantity.Dimension;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.snakeyaml.engine.v2.api.Load;
import org.snakeyaml.engine.v2.api.LoadSettings;

/** The exercises that came with the library. The file is pressed from the reference cases, never written by hand. */
public final class ExerciseBook {

    private static final String DATA = "exercises.yaml";

    private ExerciseBook() {}

    /**
     * Every exercise.
     *
     * @return the exercises, room by room
     */
    public static List<Exercise> all() {
        try (InputStream in = ExerciseBook.class.getResourceAsStream(DATA)) {
            if (in == null) {
                throw new IllegalStateException("the exercises are missing from the library");
            }
            Object tree = new Load(LoadSettings.builder().setLabel(DATA).build()).loadFromInputStream(in);
            List<Exercise> all = new ArrayList<>();
            for (Object entry : (List<?>) tree) {
                all.add(exercise((Map<?, ?>) entry));
            }
            return List.copyOf(all);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /**
     * The exercise of a name.
     *
     * @param id its name, in any case
     * @return the exercise, if there is one
     */
    public static Optional<Exercise> find(String id) {
        String name = id.strip().toLowerCase(Locale.ROOT);
        return all().stream().filter(each -> each.id().equals(name)).findFirst();
    }

    /**
     * The dimension that a unit belongs to.
     *
     * @param unit unit text, empty for a pure number
     * @return the first dimension that has this unit, if there is one
     */
    public static Optional<Dimension> dimensionOf(String unit) {
        return Arrays.stream(Dimension.values())
                .filter(dimension -> dimension.factors().containsKey(unit))
                .findFirst();
    }

    private static Exercise exercise(Map<?, ?> keys) {
        List<Exercise.GivenValue> given = new ArrayList<>();
        ((Map<?, ?>) need(keys, "given"))
                .forEach((name, value) -> given.add(new Exercise.GivenValue((String) name, (String) value)));
        List<Exercise.Slip> slips = new ArrayList<>();
        for (Object each : (List<?>) need(keys, "slips")) {
            Map<?, ?> slip = (Map<?, ?>) each;
            slips.add(new Exercise.Slip(number(slip, "gives"), text(slip, "because")));
        }
        String unit = text(keys, "unit");
        Answer answer = new Answer(
                dimensionOf(unit).orElseThrow(() -> new IllegalStateException(DATA + ": no unit: " + unit)),
                unit,
                number(keys, "answer"),
                number(keys, "within"),
                text(keys, "origin").equals("printed"));
        return new Exercise(
                text(keys, "exercise"),
                text(keys, "room"),
                text(keys, "title"),
                text(keys, "question"),
                given,
                text(keys, "asked"),
                text(keys, "formula"),
                text(keys, "worked"),
                answer,
                text(keys, "hint"),
                slips,
                text(keys, "source"));
    }

    private static double number(Map<?, ?> keys, String key) {
        return Double.parseDouble(text(keys, key));
    }

    private static String text(Map<?, ?> keys, String key) {
        if (need(keys, key) instanceof String text) {
            return text;
        }
        throw new IllegalStateException(DATA + ": " + key + " is no text: " + keys);
    }

    private static Object need(Map<?, ?> keys, String key) {
        Object value = keys.get(key);
        if (value == null) {
            throw new IllegalStateException(DATA + ": an entry has no " + key + ": " + keys);
        }
        return value;
    }
}
