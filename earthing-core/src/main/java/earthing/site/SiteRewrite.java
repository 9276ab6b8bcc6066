package earthing.site;

import earthing.quantity.Measure;
import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.List;
import java.util.function.BiFunction;
import org.jspecify.annotations.Nullable;

/** A site with its measures replaced one by one, whatever record they stand in; everything else stays. */
public final class SiteRewrite {

    private SiteRewrite() {}

    /**
     * Rewrites every measure of a site.
     *
     * @param site the site
     * @param change path of the key, for example {@code protection.relay.pickup}, and measure to the measure that takes
     *     its place; items of lists have no number in their path
     * @return the changed site
     */
    public static Site of(Site site, BiFunction<String, Measure, Measure> change) {
        return (Site) record("", site, change);
    }

    private static @Nullable Object rewritten(
            String path, @Nullable Object value, BiFunction<String, Measure, Measure> change) {
        if (value instanceof Measure measure) {
            return change.apply(path, measure);
        }
        if (value instanceof List<?> list) {
            List<@Nullable Object> items = new ArrayList<>();
            for (Object item : list) {
                items.add(rewritten(path, item, change));
            }
            return items;
        }
        return value instanceof Record block && block.getClass().getPackage() == Site.class.getPackage()
                ? record(path, block, change)
                : value;
    }

    private static Object record(String path, Record block, BiFunction<String, Measure, Measure> change) {
        RecordComponent[] components = block.getClass().getRecordComponents();
        Class<?>[] types = new Class<?>[components.length];
        Object[] parts = new Object[components.length];
        boolean same = true;
        try {
            for (int i = 0; i < components.length; i++) {
                types[i] = components[i].getType();
                Object before = components[i].getAccessor().invoke(block);
                String key = (path.isEmpty() ? "" : path + ".") + kebab(components[i].getName());
                Object after = rewritten(key, before, change);
                parts[i] = after;
                same &= before == null ? after == null : before.equals(after);
            }
            return same ? block : block.getClass().getDeclaredConstructor(types).newInstance(parts);
        } catch (ReflectiveOperationException impossible) {
            throw new IllegalStateException(
                    "record " + block.getClass().getName() + " cannot be rewritten", impossible);
        }
    }

    private static String kebab(String name) {
        StringBuilder key = new StringBuilder();
        for (int i = 0; i < name.length(); i++) {
            char c = name.charAt(i);
            if (Character.isUpperCase(c)) {
                key.append('-');
            }
            key.append(Character.toLowerCase(c));
        }
        return key.toString();
    }
}
