package earthing.study;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * The circumstances a result belongs to: which fault, wave, arrangement and so on. Keys are kept in the fixed order of
 * the contract.
 *
 * @param keys key to word
 */
public record Case(Map<String, String> keys) {

    /** The keys of the contract, in order. */
    public static final List<String> ORDER =
            List.of("fault", "protection", "wave", "entry", "strike", "switch", "arrangement", "screen-bond", "broken");

    /** Word of {@code entry} for a stroke to a phase conductor: shown beside the standard case, never judged. */
    public static final String LINE_CONDUCTOR = "line-conductor";

    /** Key of a case in which not the first protection clears the fault. */
    public static final String PROTECTION = "protection";

    /** Word of {@link #PROTECTION}: the first protection fails and the back-up clears the fault. */
    public static final String BACK_UP = "back-up";

    /** Word of {@code entry} for a stroke to the ground beside the line: shown, never judged. */
    public static final String INDUCED = "induced";

    /** Word of {@code entry} for a stroke to the top of the pole or to its antenna: shown, never judged. */
    public static final String POLE = "pole";

    /** A result that belongs to no particular case. */
    public static final Case NONE = new Case(Map.of());

    /**
     * Sorts the keys into the order of the contract and refuses others.
     *
     * @param keys key to word
     */
    public Case {
        for (String key : keys.keySet()) {
            if (!ORDER.contains(key)) {
                throw new IllegalArgumentException("a case knows the keys " + ORDER + "; have " + key);
            }
        }
        // In the order of the contract, and looked up by hash: checks ask for keys of thousands of results.
        Map<String, String> sorted = new LinkedHashMap<>();
        for (String key : ORDER) {
            String word = keys.get(key);
            if (word != null) {
                sorted.put(key, word);
            }
        }
        keys = Collections.unmodifiableMap(sorted);
    }

    /**
     * Whether this is a way of the surge in that is shown beside the standard case and never judged.
     *
     * @return true for a stroke to the line, beside it or to the pole itself
     */
    public boolean isInformation() {
        String entry = keys.getOrDefault("entry", "");
        return entry.equals(LINE_CONDUCTOR) || entry.equals(INDUCED) || entry.equals(POLE);
    }

    /**
     * This case with one more key.
     *
     * @param key one of {@link #ORDER}
     * @param word its word
     * @return the narrower case
     */
    public Case with(String key, String word) {
        Map<String, String> more = new LinkedHashMap<>(keys);
        more.put(key, word);
        return new Case(more);
    }

    /**
     * Whether every key of another case stands here with the same word.
     *
     * @param wider the other case
     * @return true if this case lies within the wider one
     */
    public boolean within(Case wider) {
        return keys.entrySet().containsAll(wider.keys().entrySet());
    }

    /**
     * The case in words.
     *
     * @return for example {@code wave 8/20, arrangement shared}; empty for no case
     */
    public String text() {
        StringBuilder text = new StringBuilder();
        keys.forEach((key, word) ->
                text.append(text.isEmpty() ? "" : ", ").append(key).append(' ').append(word));
        return text.toString();
    }

    /**
     * The case without one of its keys.
     *
     * @param key the key; one that the case does not have changes nothing
     * @return the wider case
     */
    public Case without(String key) {
        Map<String, String> rest = new TreeMap<>(java.util.Comparator.comparingInt(ORDER::indexOf));
        rest.putAll(keys);
        rest.remove(key);
        return new Case(rest);
    }
}
