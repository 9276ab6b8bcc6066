package earthing.reference;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** The fields of {@code decks/field}: what the cases print is what the program printed, and its own meshes are fine enough. */
class FieldDecksTest {

    private static final Path FOLDER = Path.of("decks", "field");
    private static final Path CASES = Path.of("cases", "electrode", "fields.yaml");
    private static final Pattern NUMBER = Pattern.compile("(?<![\\w.-])\\d+\\.\\d+(?:e-?\\d+)?");

    /** What one deck printed: the resistances of each mesh, and the potentials of the last. */
    private record Printed(List<Map<String, Double>> meshes, List<Double> potentials) {
        Map<String, Double> last() {
            return meshes.get(meshes.size() - 1);
        }
    }

    private static Map<String, Printed> results() throws IOException {
        Map<String, Printed> decks = new LinkedHashMap<>();
        Printed deck = new Printed(new ArrayList<>(), new ArrayList<>());
        for (String line : Files.readAllLines(FOLDER.resolve("results.txt"))) {
            String[] words = line.split(" ", -1);
            switch (words[0]) {
                case "deck" -> {
                    deck = new Printed(new ArrayList<>(), new ArrayList<>());
                    decks.put(words[1], deck);
                }
                case "level" -> {
                    Map<String, Double> values = new LinkedHashMap<>();
                    for (int i = 4; i < words.length; i += 2) {
                        values.put(words[i], Double.valueOf(words[i + 1]));
                    }
                    deck.meshes().add(values);
                }
                case "at" -> {
                    for (int i = 3; i < words.length; i++) {
                        deck.potentials().add(Double.valueOf(words[i]));
                    }
                }
                default -> assertThat(line).startsWithIgnoringCase(line.startsWith("#") ? "#" : "warning");
            }
        }
        return decks;
    }

    private static Printed printed(String deck) throws IOException {
        return Objects.requireNonNull(results().get(deck), deck);
    }

    @Test
    void everyDeckHasAResult() throws IOException {
        Set<String> decks = new TreeSet<>();
        try (var files = Files.list(FOLDER)) {
            files.map(file -> file.getFileName().toString())
                    .filter(name -> name.endsWith(".edp")
                            && !Set.of("borders.edp", "solve.edp").contains(name))
                    .forEach(name -> decks.add(name.replace(".edp", "")));
        }
        assertThat(results().keySet()).containsExactlyInAnyOrderElementsOf(decks);
    }

    @Test
    void theLastMeshesAgree() throws IOException {
        results().forEach((name, printed) -> {
            Map<String, Double> before = printed.meshes().get(printed.meshes().size() - 2);
            printed.last()
                    .forEach((quantity, value) -> assertThat(value / before.getOrDefault(quantity, Double.NaN))
                            .as("%s of %s", quantity, name)
                            .isBetween(1 - 1e-5, 1 + 1e-5));
        });
    }

    @Test
    void exactFieldsComeBack() throws IOException {
        assertThat(printed("hemisphere").last().getOrDefault("R11", Double.NaN) / (100 / Math.PI))
                .isBetween(1 - 1e-4, 1 + 1e-4);
        assertThat(printed("foot-bare").last().getOrDefault("R11", Double.NaN) / (100 / (4 * 0.08)))
                .isBetween(1 - 2e-5, 1 + 2e-5);
    }

    @Test
    void theCasesPrintWhatTheProgramPrinted() throws IOException {
        String cases = Files.readString(CASES);
        int seen = 0;
        for (String block : cases.split("(?m)^- case: ", -1)) {
            Matcher locus = Pattern.compile("locus: decks/field/(.*)").matcher(block);
            if (!locus.find()) {
                continue;
            }
            Set<String> printed = new TreeSet<>();
            for (String deck : locus.group(1).split(", ", -1)) {
                Printed found = printed(deck.replace(".edp", ""));
                found.last().values().forEach(value -> printed.addAll(rounded(value)));
                found.potentials().forEach(value -> printed.addAll(rounded(value)));
            }
            Matcher expected = NUMBER.matcher(
                    block.contains("  expect:")
                            ? line(block, "  expect:")
                            : block.substring(block.indexOf("  rows:"), block.indexOf("  tolerance:")));
            while (expected.find()) {
                String number = expected.group();
                if (number.length() > 5) {
                    assertThat(printed)
                            .as(block.lines().findFirst().orElseThrow())
                            .contains(plain(Double.parseDouble(number)));
                    seen++;
                }
            }
        }
        assertThat(seen).isEqualTo(97);
    }

    private static String line(String block, String start) {
        return block.lines().filter(line -> line.startsWith(start)).findFirst().orElseThrow();
    }

    /** A value to five and to six digits, as the cases print it. */
    private static List<String> rounded(double value) {
        return List.of(plain(round(value, 5)), plain(round(value, 6)));
    }

    private static double round(double value, int digits) {
        return new BigDecimal(value)
                .round(new MathContext(digits, RoundingMode.HALF_EVEN))
                .doubleValue();
    }

    private static String plain(double value) {
        return Double.toString(value);
    }
}
