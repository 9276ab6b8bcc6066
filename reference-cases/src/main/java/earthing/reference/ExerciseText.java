package earthing.reference;

import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * One exercise as its author wrote it: words, and where the numbers come from.
 *
 * @param id short name, unique over all files
 * @param title one line
 * @param question what is asked
 * @param formula the formula by name and symbols
 * @param worked the formula with its numbers; empty where there is nothing to work out
 * @param numbers where the numbers come from
 * @param blank name of the quantity asked for
 * @param tolerance how far a right answer may lie from it; empty to take that of the case
 * @param hint the mistake that is made most easily; empty to take what the case catches
 * @param slips wrong answers that tell which mistake was made
 * @param file its file
 * @param line its line
 */
record ExerciseText(
        String id,
        String title,
        String question,
        String formula,
        String worked,
        Numbers numbers,
        String blank,
        Optional<Tolerance> tolerance,
        String hint,
        List<Slip> slips,
        String file,
        int line) {

    /** Where given values and answer come from. */
    sealed interface Numbers {}

    /**
     * A row of a reference case.
     *
     * @param id the case
     * @param row given values that tell the row; empty where the case has one row
     * @param names words for given values; an empty word leaves the value out of the question
     */
    record Row(String id, Map<String, String> row, Map<String, String> names) implements Numbers {}

    /**
     * A result of a site.
     *
     * @param site the site file, from the top of the repository
     * @param result id of the result, of which the blank is asked
     * @param at bound, for example {@code nominal}
     * @param where circumstances that tell the result, for example {@code arrangement} to {@code shared}
     * @param unit unit of the answer
     * @param page the page that the question belongs to
     */
    record SiteResult(String site, String result, String at, Map<String, String> where, String unit, String page)
            implements Numbers {}

    /**
     * A wrong answer that is recognised.
     *
     * @param given values to take in place of those of the row; empty if the answer is made otherwise
     * @param times factor on the right answer; 0 if it is made otherwise
     * @param result another result of the same model; empty if it is made otherwise
     * @param because the mistake, to follow the word "if"
     */
    record Slip(Map<String, Given.Value> given, double times, String result, String because) {}
}
