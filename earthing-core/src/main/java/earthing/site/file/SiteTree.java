package earthing.site.file;

import earthing.quantity.Measure;
import earthing.site.Site;
import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** The site walked key by key, in the order of the site file. */
public final class SiteTree {

    /**
     * One given key.
     *
     * @param path dotted path; members of a list by their name or number in brackets
     * @param value a {@link Measure}, a text, a number or a word
     */
    public record Entry(String path, Object value) {}

    private SiteTree() {}

    /**
     * Every given key of a site.
     *
     * @param site the site
     * @return the keys in the order of the site file
     */
    public static List<Entry> entries(Site site) {
        List<Entry> entries = new ArrayList<>(128);
        walk("", site, true, entries);
        return entries;
    }

    /**
     * Every given key of one block.
     *
     * @param block a record of the site
     * @return the keys below it, in the order of the site file
     */
    public static List<Entry> entriesOf(Record block) {
        List<Entry> entries = new ArrayList<>();
        walk("", block, true, entries);
        return entries;
    }

    private static void walk(String path, Object value, boolean named, List<Entry> entries) {
        if (value instanceof List<?> list) {
            for (int i = 0; i < list.size(); i++) {
                String member = named ? nameOf(list.get(i), i + 1) : Integer.toString(i + 1);
                walk(path + "[" + member + "]", list.get(i), named, entries);
            }
        } else if (value instanceof Record block && !(value instanceof Measure)) {
            for (RecordComponent component : block.getClass().getRecordComponents()) {
                Object inner = read(component, block);
                if (inner != null) {
                    String key = kebab(component.getName());
                    walk(path.isEmpty() ? key : path + "." + key, inner, named, entries);
                }
            }
        } else {
            entries.add(new Entry(path, value));
        }
    }

    /**
     * Whether a path as an author writes it, members of lists by name or number, is that of an entry.
     *
     * @param site the site
     * @param written the written path
     * @param path path of an entry
     * @return true if both are one
     */
    public static boolean names(Site site, String written, String path) {
        if (written.equals(path)) {
            return true;
        }
        List<Entry> numbered = new ArrayList<>(128);
        List<Entry> named = new ArrayList<>(128);
        walk("", site, false, numbered);
        walk("", site, true, named);
        for (int i = 0; i < named.size(); i++) {
            if (named.get(i).path().equals(path)) {
                return numbered.get(i).path().equals(written);
            }
        }
        return false;
    }

    private static String nameOf(Object member, int number) {
        if (member instanceof Record block && !(member instanceof Measure)) {
            for (RecordComponent component : block.getClass().getRecordComponents()) {
                if (component.getName().equals("name") && read(component, block) instanceof String name) {
                    return name;
                }
            }
        }
        return Integer.toString(number);
    }

    /**
     * The value of one component.
     *
     * @param component component of the record
     * @param block the record
     * @return the value, or null where the key is not given
     */
    public static @Nullable Object read(RecordComponent component, Record block) {
        try {
            return component.getAccessor().invoke(block);
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException("component " + component.getName() + " cannot be read", e);
        }
    }

    /**
     * The key of the site file: kebab case of a component's name.
     *
     * @param name name of the component
     * @return the key
     */
    public static String kebab(String name) {
        StringBuilder key = new StringBuilder(name.length() + 4);
        for (int i = 0; i < name.length(); i++) {
            char c = name.charAt(i);
            if (Character.isUpperCase(c)) {
                key.append('-').append(Character.toLowerCase(c));
            } else {
                key.append(c);
            }
        }
        return key.toString();
    }

    /**
     * The word of the site file.
     *
     * @param word a word of a closed list
     * @return the word in lower case, joined by hyphens
     */
    public static String word(Enum<?> word) {
        return word.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
