package earthing.study;

import java.util.List;

/**
 * A result that could not be computed, and why. It never becomes a number.
 *
 * @param id id, or the beginning of the ids, of the results that are missing
 * @param circumstances the case
 * @param reason what is missing or why the model does not hold, as a sentence
 * @param missingKeys the keys of the site file to fill in, dotted; empty if no input would help
 */
public record Gap(String id, Case circumstances, String reason, List<String> missingKeys) {

    /**
     * Copies the keys.
     *
     * @param id id, or the beginning of the ids, of the results that are missing
     * @param circumstances the case
     * @param reason what is missing or why the model does not hold, as a sentence
     * @param missingKeys the keys of the site file to fill in, dotted; empty if no input would help
     */
    public Gap {
        missingKeys = List.copyOf(missingKeys);
    }
}
