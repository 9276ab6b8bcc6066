package earthing.exercise;

import earthing.quantity.UnitException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** A sheet of exercises with a blank each, as Markdown, and the same sheet filled in. */
public final class AnswerSheet {

    private static final Pattern LINE = Pattern.compile("\\s*+(?:[-*>]\\s++)?+Answer\\s++([^\\s:]++)\\s*+:(.*+)");

    private static final String BLANK = "________";

    private AnswerSheet() {}

    /**
     * The empty sheet.
     *
     * @param exercises what is asked
     * @return Markdown, lines ended by a line feed
     */
    public static String of(List<Exercise> exercises) {
        StringBuilder sheet = new StringBuilder("# Exercises\n\n");
        sheet.append("Write each answer with its unit on the line that begins with *Answer*, in place of the blank.\n");
        String room = "";
        for (Exercise each : exercises) {
            if (!each.room().equals(room)) {
                room = each.room();
                sheet.append("\n## ").append(room).append('\n');
            }
            sheet.append("\n### ").append(each.title()).append("\n\n");
            sheet.append(each.question()).append("\n\n");
            if (!each.given().isEmpty()) {
                sheet.append("Given: ")
                        .append(each.given().stream()
                                .map(value -> value.name() + " " + value.text())
                                .collect(Collectors.joining(", ")))
                        .append(".\n\n");
            }
            sheet.append("Formula: ").append(each.formula()).append(".\n\n");
            sheet.append("Answer ").append(each.id()).append(": ").append(BLANK);
            if (!each.answer().unit().isEmpty()) {
                sheet.append(' ').append(each.answer().unit());
            }
            sheet.append('\n');
        }
        return sheet.toString();
    }

    /**
     * A line of a filled sheet.
     *
     * @param line its number, from 1
     * @param exercise the exercise
     * @param text the answer as written, empty if the blank was left
     */
    public record Filled(int line, Exercise exercise, String text) {

        /**
         * Judges the answer.
         *
         * @return the judgement
         * @throws UnitException if the answer is no number with a unit that fits
         */
        public Marking mark() throws UnitException {
            return Marking.of(exercise, text);
        }
    }

    /**
     * What a filled sheet says.
     *
     * @param answers its answers
     * @param problems what was not understood, each with the line
     */
    public record Content(List<Filled> answers, List<String> problems) {
        /**
         * Keeps copies.
         *
         * @param answers its answers
         * @param problems what was not understood, each with the line
         */
        public Content {
            answers = List.copyOf(answers);
            problems = List.copyOf(problems);
        }
    }

    /**
     * Reads a filled sheet. Lines that do not begin with {@code Answer} are the sheet's own and are passed over.
     *
     * @param text the sheet
     * @return its answers and what was not understood
     */
    public static Content read(String text) {
        Map<String, Exercise> known =
                ExerciseBook.all().stream().collect(Collectors.toMap(Exercise::id, exercise -> exercise));
        List<Filled> answers = new ArrayList<>();
        List<String> problems = new ArrayList<>();
        Map<String, Integer> seen = new HashMap<>();
        List<String> lines = text.lines().toList();
        for (int i = 0; i < lines.size(); i++) {
            Matcher matcher = LINE.matcher(lines.get(i));
            if (!matcher.matches()) {
                continue;
            }
            int number = i + 1;
            String id = matcher.group(1).toLowerCase(Locale.ROOT);
            Exercise exercise = known.get(id);
            Integer earlier = seen.putIfAbsent(id, number);
            if (exercise == null) {
                problems.add(number + ": there is no exercise \"" + matcher.group(1) + "\"");
            } else if (earlier != null) {
                problems.add(number + ": " + id + " is answered in line " + earlier + " already");
            } else {
                Filled filled = new Filled(number, exercise, answer(matcher.group(2), exercise));
                answers.add(filled);
                if (!filled.text().isEmpty()) {
                    unreadable(filled, problems);
                }
            }
        }
        if (answers.isEmpty() && problems.isEmpty()) {
            problems.add("1: no line begins with \"Answer\" and the name of an exercise");
        }
        return new Content(answers, problems);
    }

    private static void unreadable(Filled filled, List<String> problems) {
        try {
            filled.mark();
        } catch (UnitException e) {
            problems.add(filled.line() + ": " + filled.exercise().id() + ": " + e.getMessage());
        }
    }

    /** The answer without what is left of the blank; the unit alone is no answer. */
    private static String answer(String text, Exercise exercise) {
        String written = text.replace("_", "").replace("*", "").strip();
        return written.equals(exercise.answer().unit()) ? "" : written;
    }
}
