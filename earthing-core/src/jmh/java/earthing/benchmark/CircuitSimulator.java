package earthing.benchmark;

import earthing.network.Circuit;
import earthing.network.SpiceDeck;
import earthing.network.TimeGrid;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A circuit as a deck, run by ngspice as a process of its own. */
final class CircuitSimulator {

    private static final Pattern ROWS = Pattern.compile("No\\. of Data Rows : (\\d+)");

    private final Path deck;

    private CircuitSimulator(String text) {
        try {
            deck = Files.createTempFile("deck", ".cir");
            Files.writeString(deck, text);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Held to a step. */
    static CircuitSimulator held(Circuit circuit, double end, double step) {
        return new CircuitSimulator(SpiceDeck.write(circuit, "held", TimeGrid.equal(end, step)));
    }

    /** With the simulator's own steps and tolerances; its print step is a fiftieth of the end, which bounds the step. */
    static CircuitSimulator automatic(Circuit circuit, double end) {
        String deck = SpiceDeck.write(circuit, "automatic", TimeGrid.equal(end, end / 50));
        return new CircuitSimulator(deck.replaceAll("(?m)^\\.options.*\\R", "")
                .replaceAll("(?m)^\\.tran.*$", ".tran " + end / 50 + " " + end + " uic"));
    }

    /** Nothing but a resistor: what the start of the process takes. */
    static CircuitSimulator empty() {
        return new CircuitSimulator(
                "* start\nV1 n1 0 1\nR1 n1 0 1\n.tran 1e-6 2e-6 uic\n.control\nrun\nquit 0\n.endc\n.end\n");
    }

    /** Runs the deck and gives the number of points in time. */
    int run() {
        String output = output();
        Matcher rows = ROWS.matcher(output);
        if (!rows.find()) {
            throw new IllegalStateException("the simulator gave no result:\n" + output);
        }
        return Integer.parseInt(rows.group(1));
    }

    /** Runs the deck and gives the largest value of a node with its time. */
    double[] largest(Circuit circuit, String node) {
        String label = "n" + (circuit.nodes().indexOf(node) + 1);
        Matcher found =
                Pattern.compile(label + "_max\\s*=\\s*(\\S+)\\s*at=\\s*(\\S+)").matcher(output());
        if (!found.find()) {
            throw new IllegalStateException("the simulator did not measure " + node);
        }
        return new double[] {Double.parseDouble(found.group(1)), Double.parseDouble(found.group(2))};
    }

    private String output() {
        try {
            Process process = new ProcessBuilder("ngspice", "-b", "-n", deck.toString())
                    .redirectErrorStream(true)
                    .start();
            String output = new String(process.getInputStream().readAllBytes(), StandardCharsets.ISO_8859_1);
            process.waitFor();
            return output;
        } catch (IOException e) {
            throw new UncheckedIOException("ngspice is needed as the peer", e);
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }
}
