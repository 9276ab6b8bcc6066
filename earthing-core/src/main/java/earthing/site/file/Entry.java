package earthing.site.file;

import earthing.quantity.ColumnTable;
import earthing.quantity.Measure;
import earthing.site.Key;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** One key of a block, with what it takes and means. */
public final class Entry {

    /** What a key takes; a list takes any number of them. */
    public enum Kind {
        /** A value with a unit, a {@link Measure}. */
        QUANTITY,
        /** A text. */
        TEXT,
        /** A whole number. */
        NUMBER,
        /** One word of a closed list, an enum. */
        WORD,
        /** A block with keys of its own, a record. */
        BLOCK,
        /** The name of a file of columns beside the site file, a {@link ColumnTable}. */
        TABLE
    }

    private final String key;
    private final Kind kind;
    private final boolean list;
    private final Class<?> type;
    private final Key meaning;
    private final Method accessor;

    private Entry(String key, Kind kind, boolean list, Class<?> type, Key meaning, Method accessor) {
        this.key = key;
        this.kind = kind;
        this.list = list;
        this.type = type;
        this.meaning = meaning;
        this.accessor = accessor;
    }

    static Entry of(RecordComponent component) {
        Key meaning = component.getAnnotation(Key.class);
        if (meaning == null) {
            throw new IllegalStateException("component " + component + " has no @Key");
        }
        boolean list = component.getType() == List.class;
        Class<?> type = list
                ? (Class<?>) ((ParameterizedType) component.getGenericType()).getActualTypeArguments()[0]
                : component.getType();
        return new Entry(kebab(component.getName()), kind(type), list, type, meaning, component.getAccessor());
    }

    private static Kind kind(Class<?> type) {
        if (type == Measure.class) {
            return Kind.QUANTITY;
        }
        if (type == String.class) {
            return Kind.TEXT;
        }
        if (type == Integer.class) {
            return Kind.NUMBER;
        }
        if (type.isEnum()) {
            return Kind.WORD;
        }
        if (type == ColumnTable.class) {
            return Kind.TABLE;
        }
        if (type.isRecord()) {
            return Kind.BLOCK;
        }
        throw new IllegalStateException("no key can take a " + type);
    }

    /** A Java name in kebab case. */
    static String kebab(String name) {
        StringBuilder text = new StringBuilder(name.length() + 4);
        for (int i = 0; i < name.length(); i++) {
            char c = name.charAt(i);
            if (c >= 'A' && c <= 'Z') {
                if (i > 0) {
                    text.append('-');
                }
                text.append((char) (c - 'A' + 'a'));
            } else {
                text.append(c);
            }
        }
        return text.toString();
    }

    /**
     * The word that stands for a constant in the file.
     *
     * @param constant the constant
     * @return its name in lower case with hyphens, for example {@code galvanised-steel}
     */
    public static String word(Enum<?> constant) {
        String name = constant.name();
        StringBuilder text = new StringBuilder(name.length());
        for (int i = 0; i < name.length(); i++) {
            char c = name.charAt(i);
            text.append(c == '_' ? '-' : c >= 'A' && c <= 'Z' ? (char) (c - 'A' + 'a') : c);
        }
        return text.toString();
    }

    /**
     * The text of the key.
     *
     * @return for example {@code clearing-time}
     */
    public String key() {
        return key;
    }

    /**
     * What it takes.
     *
     * @return the kind of the value, or of the items of a list
     */
    public Kind kind() {
        return kind;
    }

    /**
     * Whether it takes a list.
     *
     * @return true for a list
     */
    public boolean isList() {
        return list;
    }

    /**
     * What it means.
     *
     * @return the annotation of the component
     */
    public Key meaning() {
        return meaning;
    }

    /**
     * The block behind the key.
     *
     * @return the block
     * @throws IllegalStateException if the key takes no block
     */
    public Block block() {
        if (kind != Kind.BLOCK) {
            throw new IllegalStateException(key + " takes no block");
        }
        return Block.of(type.asSubclass(Record.class));
    }

    /**
     * The only texts that are read.
     *
     * @return words of the enum or the texts named by the key; empty if any text is read
     */
    public List<String> words() {
        if (kind != Kind.WORD) {
            return List.of(meaning.words());
        }
        List<String> words = new ArrayList<>();
        for (Object constant : type.getEnumConstants()) {
            words.add(word((Enum<?>) constant));
        }
        return words;
    }

    /**
     * The constant behind a word.
     *
     * @param word the word
     * @return the constant, null if the enum has no such word
     */
    @Nullable
    Object constant(String word) {
        for (Object constant : type.getEnumConstants()) {
            if (word((Enum<?>) constant).equals(word)) {
                return constant;
            }
        }
        return null;
    }

    /**
     * The value of the key in a record.
     *
     * @param owner a record of the block that this key belongs to
     * @return the value, null if the key is absent; a list is empty instead
     */
    public @Nullable Object value(Record owner) {
        try {
            return accessor.invoke(owner);
        } catch (IllegalAccessException | InvocationTargetException e) {
            throw new IllegalStateException("cannot ask " + owner.getClass() + " for " + key, e);
        }
    }
}
