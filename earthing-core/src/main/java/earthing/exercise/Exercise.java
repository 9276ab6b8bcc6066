package earthing.exercise;

import java.util.List;

/**
 * One question with one number as its answer.
 *
 * @param id short name, lower case
 * @param room the room of the library whose physics it is about
 * @param title one line
 * @param question what is asked, in a few sentences
 * @param given the given values
 * @param asked name of the quantity asked for
 * @param formula the formula by name and symbols
 * @param worked the formula with its numbers, giving the answer in its unit; empty for a table
 * @param answer the right answer
 * @param hint the mistake that is made most easily, or where to look
 * @param slips wrong answers that tell which mistake was made
 * @param source where the answer comes from
 */
public record Exercise(
        String id,
        String room,
        String title,
        String question,
        List<GivenValue> given,
        String asked,
        String formula,
        String worked,
        Answer answer,
        String hint,
        List<Slip> slips,
        String source) {

    /**
     * Keeps copies.
     *
     * @param id short name, lower case
     * @param room the room of the library whose physics it is about
     * @param title one line
     * @param question what is asked, in a few sentences
     * @param given the given values
     * @param asked name of the quantity asked for
     * @param formula the formula by name and symbols
     * @param worked the formula with its numbers, giving the answer in its unit; empty for a table
     * @param answer the right answer
     * @param hint the mistake that is made most easily, or where to look
     * @param slips wrong answers that tell which mistake was made
     * @param source where the answer comes from
     */
    public Exercise {
        given = List.copyOf(given);
        slips = List.copyOf(slips);
    }

    /**
     * A given value.
     *
     * @param name its name
     * @param text number and unit, or a word
     */
    public record GivenValue(String name, String text) {}

    /**
     * A wrong answer that is easily recognised.
     *
     * @param value what the mistake gives, in the unit of the answer
     * @param because the mistake
     */
    public record Slip(double value, String because) {}
}
