package earthing.site.file;

import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** In which line of a file each key stands. */
public final class KeyPlaces {

    private final Map<String, Integer> lines = new HashMap<>();

    private KeyPlaces() {}

    /**
     * Looks through a site file that has been read.
     *
     * @param text text of the file
     * @return the lines of its keys
     */
    public static KeyPlaces of(String text) {
        KeyPlaces places = new KeyPlaces();
        Tree root = TreeReader.read(text, new ProblemList("")).root();
        if (root != null) {
            places.walk("", root);
        }
        return places;
    }

    private void walk(String path, Tree tree) {
        if (tree instanceof Tree.Pairs pairs) {
            for (Tree.Pair pair : pairs.pairs()) {
                String key = BlockReader.join(path, pair.key());
                lines.putIfAbsent(key, pair.keyPlace().line());
                walk(key, pair.value());
            }
        } else if (tree instanceof Tree.Items items) {
            List<Tree> all = items.items();
            for (int i = 0; i < all.size(); i++) {
                String item = path + '[' + (i + 1) + ']';
                lines.putIfAbsent(item, all.get(i).place().line());
                walk(item, all.get(i));
            }
        }
    }

    /**
     * The line of a key or of the innermost block about it that the file has.
     *
     * @param path dotted path, items of lists by their number from 1
     * @return the line, from 1; 0 if not even its first part is there
     */
    public int line(String path) {
        String wanted = path;
        while (!wanted.isEmpty()) {
            Integer line = lines.get(wanted);
            if (line != null) {
                return line;
            }
            wanted = wanted.substring(0, Math.max(0, wanted.lastIndexOf('.')));
        }
        return 0;
    }
}
