package earthing.reference;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** The tables of results beside the circuit decks hold what the simulator printed, which is kept whole in {@code output}. */
class DeckOutputsTest {

    private static final Path FOLDER = Path.of("decks");

    private static List<String[]> rows(String table) throws IOException {
        return Files.readAllLines(FOLDER.resolve(table)).stream()
                .filter(line -> !line.startsWith("#") && !line.startsWith("deck,"))
                .map(line -> line.split(",", -1))
                .toList();
    }

    private static String output(String deck) throws IOException {
        return Files.readString(FOLDER.resolve("output").resolve(deck.replace(".cir", ".txt")));
    }

    @Test
    void peaksAreThosePrinted() throws IOException {
        for (String[] row : rows("results.csv")) {
            assertThat(output(row[0]))
                    .as(String.join(",", row))
                    .containsPattern("(?m)^" + row[1] + " += +" + Pattern.quote(row[2]) + " at= +"
                            + Pattern.quote(row[3]) + "$");
        }
    }

    @Test
    void phasorsAreThosePrinted() throws IOException {
        for (String[] row : rows("results-ac.csv")) {
            String table = output(row[0]);
            // The simulator cuts the heads of its columns.
            String head = ("real(x_" + row[1]).substring(0, Math.min(15, ("real(x_" + row[1]).length()));
            int from = table.indexOf(head);
            assertThat(from).as(row[0] + " prints " + row[1]).isNotNegative();
            int to = table.indexOf("AC Analysis", from);
            assertThat(table.substring(from, to < 0 ? table.length() : to))
                    .as(String.join(",", row))
                    .containsPattern("(?m)^\\d+\\s+" + Pattern.quote(row[2]) + "\\s+" + Pattern.quote(row[3]) + "\\s+"
                            + Pattern.quote(row[4]) + "\\s*$");
        }
    }

    @Test
    void theVersionIsThatOfTheTables() throws IOException {
        for (String[] row : rows("results.csv")) {
            assertThat(output(row[0])).endsWith("ngspice-39 done\n");
        }
    }
}
