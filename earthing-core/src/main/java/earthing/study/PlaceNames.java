package earthing.study;

import java.util.Map;

/** Parts, gaps and conductors in the words of a reader, where ids hold them with hyphens. */
public final class PlaceNames {

    private static final Map<String, String> GAPS = Map.of(
            "lead-cable", "main earth to cable",
            "lead-cubicle", "main earth to cubicle",
            "cubicle-ground", "cubicle to ground",
            "tank-pole", "tank to pole",
            "pole-top-wood", "wood above the highest earthed metal",
            "antenna-tank", "antenna to tank",
            "antenna-pole", "antenna to pole");

    private PlaceNames() {}

    /**
     * A part or a conductor.
     *
     * @param key its part of an id, for example {@code cubicle-s-own-lead}
     * @return for example {@code cubicle's own lead}
     */
    public static String of(String key) {
        String words = key.replace('.', ' ').replace('-', ' ').replace(" s ", "'s ");
        return words.startsWith("stay stay ") ? words.substring("stay ".length()) : words;
    }

    /**
     * A gap.
     *
     * @param key its part of an id, for example {@code lead-cable}
     * @return for example {@code main earth to cable}
     */
    public static String gap(String key) {
        return GAPS.getOrDefault(key, of(key));
    }
}
