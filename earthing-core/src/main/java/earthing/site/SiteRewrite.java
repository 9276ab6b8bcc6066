package earthing.site;

import earthing.quantity.Measure;
import java.lang.reflect.Constructor;
import java.lang.reflect.Method;
import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
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

    /**
     * Rewrites the measures of one block of a site; nothing else is looked at.
     *
     * @param site the site
     * @param block key of the block at the top of the site, for example {@code system}
     * @param change as in {@link #of}
     * @return the changed site, the same object if nothing changed
     */
    public static Site of(Site site, String block, BiFunction<String, Measure, Measure> change) {
        Shape shape = Shape.OF.get(Site.class);
        int at = shape.keys.indexOf(block);
        if (at < 0) {
            throw new IllegalArgumentException("a site has no block " + block);
        }
        try {
            Object before = shape.accessors.get(at).invoke(site);
            Object after = before == null ? null : rewritten(block, before, change);
            if (after == before) {
                return site;
            }
            Object[] parts = new Object[shape.keys.size()];
            for (int i = 0; i < parts.length; i++) {
                parts[i] = i == at ? after : shape.accessors.get(i).invoke(site);
            }
            return (Site) shape.constructor.newInstance(parts);
        } catch (ReflectiveOperationException impossible) {
            throw new IllegalStateException("a site cannot be rewritten", impossible);
        }
    }

    /**
     * Puts another block into the place of the one of its kind at the top of a site.
     *
     * @param site the site
     * @param block the block
     * @return the changed site
     * @throws IllegalArgumentException if the top of a site has no single block of this kind
     */
    public static Site with(Site site, Record block) {
        Shape shape = Shape.OF.get(Site.class);
        Object[] parts = new Object[shape.keys.size()];
        boolean found = false;
        try {
            for (int i = 0; i < parts.length; i++) {
                boolean here = shape.accessors.get(i).getReturnType() == block.getClass();
                parts[i] = here ? block : shape.accessors.get(i).invoke(site);
                found |= here;
            }
            if (!found) {
                throw new IllegalArgumentException("a site has no block of " + block.getClass());
            }
            return (Site) shape.constructor.newInstance(parts);
        } catch (ReflectiveOperationException impossible) {
            throw new IllegalStateException("a site cannot be rewritten", impossible);
        }
    }

    private static @Nullable Object rewritten(
            String path, @Nullable Object value, BiFunction<String, Measure, Measure> change) {
        if (value instanceof Measure measure) {
            return change.apply(path, measure);
        }
        if (value instanceof List<?> list) {
            List<@Nullable Object> items = new ArrayList<>();
            boolean same = true;
            for (Object item : list) {
                Object after = rewritten(path, item, change);
                items.add(after);
                same &= after == item;
            }
            return same ? list : items;
        }
        return value instanceof Record block && block.getClass().getPackage() == Site.class.getPackage()
                ? record(path, block, change)
                : value;
    }

    /** What reflection tells of a record; asked for once, because a sweep rewrites a site dozens of times. */
    private static final class Shape {
        final List<String> keys = new ArrayList<>();
        final List<Method> accessors = new ArrayList<>();
        /** Whether a component can be a measure or hold one. */
        final List<Boolean> holds = new ArrayList<>();

        private final Map<String, String[]> paths = new ConcurrentHashMap<>();
        final Constructor<?> constructor;

        static final ClassValue<Shape> OF = new ClassValue<>() {
            @Override
            protected Shape computeValue(Class<?> type) {
                return new Shape(type);
            }
        };

        private Shape(Class<?> type) {
            List<Class<?>> types = new ArrayList<>();
            for (RecordComponent component : type.getRecordComponents()) {
                keys.add(kebab(component.getName()));
                accessors.add(component.getAccessor());
                types.add(component.getType());
                holds.add(holds(component.getType()));
            }
            try {
                constructor = type.getDeclaredConstructor(types.toArray(Class<?>[]::new));
            } catch (NoSuchMethodException impossible) {
                throw new IllegalStateException("record " + type.getName() + " has no constructor", impossible);
            }
        }

        private static boolean holds(Class<?> type) {
            return !type.isPrimitive()
                    && !type.isEnum()
                    && type != String.class
                    && !Number.class.isAssignableFrom(type);
        }

        /** Path of a component of a block that stands at a path. */
        String path(String of, int component) {
            return paths.computeIfAbsent(
                            of,
                            at -> keys.stream()
                                    .map(key -> at.isEmpty() ? key : at + "." + key)
                                    .toArray(String[]::new))[component];
        }
    }

    private static Object record(String path, Record block, BiFunction<String, Measure, Measure> change) {
        Shape shape = Shape.OF.get(block.getClass());
        Object[] parts = new Object[shape.keys.size()];
        boolean same = true;
        try {
            for (int i = 0; i < parts.length; i++) {
                Object before = shape.accessors.get(i).invoke(block);
                parts[i] = before;
                if (before != null && shape.holds.get(i)) {
                    parts[i] = rewritten(shape.path(path, i), before, change);
                }
                same &= before == parts[i];
            }
            return same ? block : shape.constructor.newInstance(parts);
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
