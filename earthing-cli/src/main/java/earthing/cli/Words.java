package earthing.cli;

import java.util.Iterator;
import java.util.List;
import java.util.Locale;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/**
 * The words that an option takes, in lower case in help, completion and errors.
 *
 * @param <E> the words as an enumeration
 */
abstract class Words<E extends Enum<E>> implements Iterable<String>, ITypeConverter<E> {

    private final List<E> allowed;

    @SafeVarargs
    @SuppressWarnings("varargs") // List.copyOf keeps no reference to the array
    Words(E... allowed) {
        this.allowed = List.of(allowed);
    }

    @Override
    public Iterator<String> iterator() {
        return allowed.stream().map(Words::text).iterator();
    }

    @Override
    public E convert(String value) {
        for (E word : allowed) {
            if (text(word).equalsIgnoreCase(value)) {
                return word;
            }
        }
        throw new TypeConversionException("expected one of " + String.join(", ", this) + "; have " + value);
    }

    static String text(Enum<?> word) {
        return word.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
