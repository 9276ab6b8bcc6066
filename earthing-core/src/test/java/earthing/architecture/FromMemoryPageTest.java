package earthing.architecture;

import static org.assertj.core.api.Assertions.assertThat;

import earthing.quantity.Source;
import earthing.quantity.Source.Status;
import java.io.IOException;
import java.lang.reflect.Field;
import java.lang.reflect.Modifier;
import java.math.BigDecimal;
import java.math.MathContext;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** The page of everything that the library takes from memory is what its sources say. */
final class FromMemoryPageTest {

    private static final Path MAIN = Path.of("src", "main", "java");
    private static final Path PAGE = Path.of("..", "docs", "from-memory.md");

    private static final String TEXTS = "((?:\"(?:[^\"\\\\]|\\\\.)*\"\\s*\\+?\\s*)+)";
    /** The locus may be the parameter of a method; the constants then tell it. */
    private static final Pattern DECLARED = Pattern.compile("(?:standard|publication)\\(\\s*" + TEXTS + ",\\s*(?:"
            + TEXTS + "|locus),\\s*(?:Source\\.)?(?:Status\\.)?FROM_MEMORY");

    private static final Pattern TOKEN = Pattern.compile("Status\\.FROM_MEMORY|[(, ]FROM_MEMORY[),]");
    private static final Pattern COMPARED = Pattern.compile("[=!]= (?:Source\\.)?Status\\.FROM_MEMORY");

    private static final int MOST_NUMBERS = 24;

    /** A recalled source with the numbers that rest on it. */
    private record Row(String owner, String source, String numbers) {}

    private static final String HEAD = """
            # Values from memory

            Generated from the library; a test fails while this page is stale. Everything listed here was recalled and, where
            that is possible, recomputed; the print was not seen. Compare it with your own copy of the document before you rely
            on it. Numbers are in SI. Recalled values among the reference cases are listed in [validation.md](validation.md).

            Not in the library, because no value could be seen or recalled with confidence: permissible voltages of the
            Australian and New Zealand standards, curve c3 of IEC/TS 60479-1, reduction factors of earth wires by type
            (EN 50522 annex I names three of 110 kV lines; a site's own factor is computed from its wires).

            | where | source | numbers that rest on it |
            |---|---|---|
            """;

    @Test
    void pageIsNotStale() throws IOException {
        StringBuilder text = new StringBuilder(HEAD);
        for (Row row : rows()) {
            text.append("| `").append(row.owner()).append("` | ");
            text.append(row.source().replace("|", "\\|")).append(" | ");
            text.append(row.numbers()).append(" |\n");
        }
        if (Boolean.getBoolean("earthing.writePages")) {
            Files.writeString(PAGE, text);
        }
        assertThat(Files.readString(PAGE))
                .as("docs/from-memory.md is stale; run this test with -Dearthing.writePages=true")
                .isEqualTo(text.toString());
    }

    @Test
    void everyRecalledSourceIsDeclaredWhereThePageFindsIt() throws IOException {
        for (Path file : sources()) {
            String text = Files.readString(file);
            long tokens = TOKEN.matcher(text).results().count()
                    - COMPARED.matcher(text).results().count();
            long declared = DECLARED.matcher(text).results().count();
            assertThat(declared).as(file.toString()).isGreaterThanOrEqualTo(tokens);
        }
    }

    private static List<Path> sources() throws IOException {
        try (Stream<Path> files = Files.walk(MAIN)) {
            return files.filter(f -> f.toString().endsWith(".java"))
                    .filter(f -> !f.endsWith(Path.of("quantity", "Source.java")))
                    .sorted()
                    .toList();
        }
    }

    private static List<Row> rows() throws IOException {
        List<Row> rows = new ArrayList<>();
        for (Path file : sources()) {
            Set<String> found = new TreeSet<>();
            Set<String> byParameter = new TreeSet<>();
            Matcher matcher = DECLARED.matcher(Files.readString(file));
            while (matcher.find()) {
                if (matcher.group(2) == null) {
                    byParameter.add(plain(matcher.group(1)));
                } else {
                    String locus = plain(matcher.group(2));
                    found.add(plain(matcher.group(1)) + (locus.isEmpty() ? "" : ", " + locus));
                }
            }
            if (found.isEmpty() && byParameter.isEmpty()) {
                continue;
            }
            String name = MAIN.relativize(file).toString().replace('/', '.').replace(".java", "");
            Map<String, Set<String>> numbers = numbers(name);
            for (String title : byParameter) {
                numbers.keySet().stream().filter(k -> k.startsWith(title)).forEach(found::add);
            }
            for (String source : found) {
                rows.add(new Row(
                        name.substring("earthing.".length()),
                        source,
                        String.join("; ", numbers.getOrDefault(source, Set.of()))));
            }
        }
        assertThat(rows).hasSizeGreaterThan(60);
        return rows;
    }

    private static String plain(String literals) {
        return Pattern.compile("\"((?:[^\"\\\\]|\\\\.)*)\"")
                .matcher(literals)
                .results()
                .map(r -> r.group(1))
                .collect(Collectors.joining());
    }

    /** By the text of a source, the numbers that stand beside it in the constants of a class. */
    private static Map<String, Set<String>> numbers(String name) {
        Map<String, Set<String>> numbers = new TreeMap<>();
        try {
            Class<?> type = Class.forName(name);
            Set<Object> seen = Collections.newSetFromMap(new IdentityHashMap<>());
            for (Field field : type.getDeclaredFields()) {
                if (Modifier.isStatic(field.getModifiers()) && !field.getType().isPrimitive() && !field.isSynthetic()) {
                    field.setAccessible(true);
                    Object value = field.get(null);
                    if (value != null && !(value instanceof Source)) {
                        walk(field.getName(), value, 0, seen, numbers);
                    }
                }
            }
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException(e);
        }
        return numbers;
    }

    private static void walk(String label, Object value, int depth, Set<Object> seen, Map<String, Set<String>> numbers)
            throws ReflectiveOperationException {
        if (depth > 4 || !seen.add(value)) {
            return;
        }
        if (value instanceof Iterable<?> many) {
            for (Object one : many) {
                walk(label, one, depth + 1, seen, numbers);
            }
        } else if (value instanceof Map<?, ?> map) {
            for (Map.Entry<?, ?> entry : new TreeMap<>(map).entrySet()) {
                walk(label + ' ' + entry.getKey(), entry.getValue(), depth + 1, seen, numbers);
            }
        } else if (value instanceof Optional<?> one && one.isPresent()) {
            walk(label, one.get(), depth + 1, seen, numbers);
        } else if (value.getClass().getName().startsWith("earthing.")) {
            members(label, value, depth, seen, numbers);
        }
    }

    private static void members(
            String label, Object owner, int depth, Set<Object> seen, Map<String, Set<String>> numbers)
            throws ReflectiveOperationException {
        List<Double> own = new ArrayList<>();
        Optional<Source> source = Optional.empty();
        for (Field field : owner.getClass().getDeclaredFields()) {
            if (Modifier.isStatic(field.getModifiers()) || field.isSynthetic()) {
                continue;
            }
            field.setAccessible(true);
            Object member = field.get(owner);
            if (member instanceof Source one) {
                source = Optional.of(one);
            } else if (member != null) {
                collect(member, own);
                walk(label, member, depth + 1, seen, numbers);
            }
        }
        if (source.isPresent() && source.get().status() == Status.FROM_MEMORY && !own.isEmpty()) {
            String text = own.stream()
                            .limit(MOST_NUMBERS)
                            .map(FromMemoryPageTest::text)
                            .collect(Collectors.joining(", "))
                    + (own.size() > MOST_NUMBERS ? " …" : "");
            String key = source.get().title()
                    + (source.get().locus().isEmpty() ? "" : ", " + source.get().locus());
            numbers.computeIfAbsent(key, k -> new TreeSet<>()).add(label + ": " + text);
        }
    }

    private static void collect(@Nullable Object member, List<Double> into) throws ReflectiveOperationException {
        if (member instanceof Number number) {
            into.add(number.doubleValue());
        } else if (member instanceof double[] many) {
            for (double one : many) {
                into.add(one);
            }
        } else if (member instanceof List<?> many) {
            for (Object one : many) {
                if (one instanceof Number) {
                    collect(one, into);
                }
            }
        } else if (member instanceof Record record
                && member.getClass().getSimpleName().equals("Points")) {
            for (Field field : record.getClass().getDeclaredFields()) {
                if (!Modifier.isStatic(field.getModifiers())) {
                    field.setAccessible(true);
                    collect(field.get(record), into);
                }
            }
        }
    }

    private static String text(double value) {
        // Twelve digits: what was written in mm² comes back without the noise of its factor.
        BigDecimal rounded = new BigDecimal(value).round(new MathContext(12)).stripTrailingZeros();
        boolean plain = Math.abs(value) < 1e7 && (value == 0 || Math.abs(value) >= 1e-6);
        return plain
                ? rounded.toPlainString()
                : rounded.toString().replace("E+", "e").replace('E', 'e');
    }
}
