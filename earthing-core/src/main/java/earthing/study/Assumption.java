package earthing.study;

import earthing.quantity.Source;

/**
 * A value or a model choice that the site file did not give; echoed in the report under effective inputs.
 *
 * @param key the key of the site file that would replace it, dotted; empty for a model choice
 * @param text the value with its unit, or the choice
 * @param source why this one
 */
public record Assumption(String key, String text, Source source) {}
