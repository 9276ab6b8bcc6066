package earthing.site.file;

import earthing.site.Site;
import java.lang.reflect.Constructor;
import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** The keys of one record of the site, in their order. */
public final class Block {

    private static final ClassValue<Block> BLOCKS = new ClassValue<>() {
        @Override
        protected Block computeValue(Class<?> type) {
            return new Block(type.asSubclass(Record.class));
        }
    };

    private final Class<? extends Record> type;
    private final Constructor<? extends Record> constructor;
    private final Map<String, Entry> entries;

    private Block(Class<? extends Record> type) {
        this.type = type;
        RecordComponent[] components = type.getRecordComponents();
        Class<?>[] types = new Class<?>[components.length];
        Map<String, Entry> map = new LinkedHashMap<>();
        for (int i = 0; i < components.length; i++) {
            Entry entry = Entry.of(components[i]);
            map.put(entry.key(), entry);
            types[i] = components[i].getType();
        }
        this.entries = Collections.unmodifiableMap(map);
        try {
            this.constructor = type.getDeclaredConstructor(types);
        } catch (NoSuchMethodException e) {
            throw new IllegalStateException("a record has its canonical constructor", e);
        }
    }

    /**
     * The keys of a record.
     *
     * @param type a record of {@link earthing.site}
     * @return its block
     */
    public static Block of(Class<? extends Record> type) {
        return BLOCKS.get(type);
    }

    /**
     * The keys at the top of the file.
     *
     * @return the block of the whole site
     */
    public static Block site() {
        return of(Site.class);
    }

    /**
     * The record behind the block.
     *
     * @return the class
     */
    public Class<? extends Record> type() {
        return type;
    }

    /**
     * The name of the block in the schema and in the key table.
     *
     * @return name of the record in kebab case, for example {@code rod-shape}
     */
    public String name() {
        return Entry.kebab(type.getSimpleName());
    }

    /**
     * The keys.
     *
     * @return in the order of the record
     */
    public List<Entry> entries() {
        return new ArrayList<>(entries.values());
    }

    /**
     * One key.
     *
     * @param key text of the key
     * @return the key, null if the block has no such key
     */
    public @Nullable Entry entry(String key) {
        return entries.get(key);
    }

    /**
     * Makes the record. A required value may be missing here, because the reader looks for further problems in a file
     * that it will refuse.
     *
     * @param values values by key; a key that is not there is absent
     * @return the record
     */
    Record make(Map<String, Object> values) {
        @Nullable Object[] arguments = new @Nullable Object[entries.size()];
        int i = 0;
        for (Entry entry : entries.values()) {
            Object value = values.get(entry.key());
            arguments[i++] = value == null && entry.isList() ? List.of() : value;
        }
        try {
            return constructor.newInstance(arguments);
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException("cannot make a " + type.getSimpleName(), e);
        }
    }
}
