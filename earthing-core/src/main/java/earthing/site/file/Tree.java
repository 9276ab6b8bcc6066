package earthing.site.file;

import java.util.List;

/** The file as it is written, before anything is known about its keys. */
sealed interface Tree {

    /** Where it starts. */
    Place place();

    /**
     * A piece of text.
     *
     * @param text the text
     * @param plain whether it is written without quotes
     * @param place where it starts
     */
    record Scalar(String text, boolean plain, Place place) implements Tree {

        /** Whether there is nothing behind the key. */
        boolean isEmpty() {
            return plain && (text.isEmpty() || text.equals("null") || text.equals("~"));
        }
    }

    /**
     * Something that has already been refused.
     *
     * @param place where it starts
     */
    record Refused(Place place) implements Tree {}

    /**
     * A list.
     *
     * @param items its items
     * @param place where it starts
     */
    record Items(List<Tree> items, Place place) implements Tree {}

    /**
     * A block of keys.
     *
     * @param pairs keys with their values, in the order of the file
     * @param place where it starts
     */
    record Pairs(List<Pair> pairs, Place place) implements Tree {}

    /**
     * A key with its value.
     *
     * @param key the key
     * @param keyPlace where the key starts
     * @param value the value
     */
    record Pair(String key, Place keyPlace, Tree value) {}
}
