package earthing.network;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A circuit with gaps as a deck: what ngspice, with its own switch, makes of it against this library. */
class SpiceDeckGapTest {

    private static final TimeGrid GRID = TimeGrid.equal(20e-6, 2e-9);

    /** A lead in two pieces; a gap from its foot to a cubicle on an earth of its own, and a second one behind it. */
    private static Circuit pole(Breakdown first, Breakdown second) {
        return new Circuit.Builder()
                .currentSource("surge", "0", "tank", new Rise())
                .inductor("upper", "tank", "foot", 0.001, 8e-6)
                .inductor("lower", "foot", "main", 0.001, 3e-6)
                .mutual("upper", "lower", 0.6e-6)
                .resistor("earth", "main", "0", 30)
                .inductor("own lead", "cubicle", "own", 0.001, 3e-6)
                .resistor("own earth", "own", "0", 60)
                .gap("gap", "foot", "cubicle", first, 1)
                .resistor("far", "beyond", "0", 20)
                .gap("second gap", "cubicle", "beyond", second, 1)
                .build();
    }

    /** 10 kA that rises in some microseconds and falls, as an expression both programs read. */
    private static final class Rise implements Wave {
        @Override
        public double at(double time) {
            return 12e3 * (Math.exp(-time / 30e-6) - Math.exp(-time / 2e-6));
        }

        @Override
        public java.util.Optional<String> expression() {
            return java.util.Optional.of("12000*(exp(-time/30e-6)-exp(-time/2e-6))");
        }
    }

    private static double measured(String output, String label, String which) {
        Matcher found =
                Pattern.compile(label + "_" + which + "\\s*=\\s*(\\S+)\\s*at=").matcher(output);
        assertThat(found.find()).as(label + " in " + output).isTrue();
        return Double.parseDouble(found.group(1));
    }

    private static String simulated(Circuit circuit, Path folder) throws IOException, InterruptedException {
        Path deck = folder.resolve("deck.cir");
        Files.writeString(deck, SpiceDeck.write(circuit, "gap", GRID));
        Process process;
        try {
            process = new ProcessBuilder("ngspice", "-b", "-n", deck.toString())
                    .redirectErrorStream(true)
                    .start();
        } catch (IOException missing) {
            Assumptions.abort("ngspice is not installed");
            throw missing;
        }
        String output = new String(process.getInputStream().readAllBytes(), StandardCharsets.ISO_8859_1);
        process.waitFor();
        return output;
    }

    /** The residual curve of an arrester, bent between its points, above a lead: peak over it and through it. */
    @Test
    void aBentCurveIsTheSameInBoth(@TempDir Path folder) throws IOException, InterruptedException {
        Circuit circuit = new Circuit.Builder()
                .currentSource("surge", "0", "line", new Rise())
                .nonlinear(
                        "arrester",
                        "line",
                        "tank",
                        new NonlinearResistance.LogLog(
                                new double[] {1e-3, 1, 1e3, 5e3, 1e4, 4e4},
                                new double[] {40e3, 48e3, 62e3, 70e3, 76e3, 92e3}))
                .resistor("bleeder", "line", "0", 50)
                .inductor("lead", "tank", "foot", 0.001, 8e-6)
                .resistor("earth", "foot", "0", 30)
                .build();
        TransientSolution here = TransientSolution.solve(circuit, GRID);
        String output = simulated(circuit, folder);
        for (String node : circuit.nodes()) {
            String label = "n" + (circuit.nodes().indexOf(node) + 1);
            assertThat(measured(output, label, "max"))
                    .as(node)
                    .isCloseTo(here.potential(node).maximum().value(), withinPercentage(0.1));
        }
    }

    private static void compare(Circuit circuit, Path folder) throws IOException, InterruptedException {
        TransientSolution here = TransientSolution.solve(circuit, GRID);
        assertThat(here.flashovers()).hasSize(2);
        String output = simulated(circuit, folder);
        for (String node : circuit.nodes()) {
            String label = "n" + (circuit.nodes().indexOf(node) + 1);
            // A step late is 2 ns of a rise of about 10 us.
            assertThat(here.potential(node).maximum().value())
                    .as(node)
                    .isCloseTo(measured(output, label, "max"), withinPercentage(0.2));
        }
    }

    @Test
    void twoGapsInARowAgainstNgspice(@TempDir Path folder) throws IOException, InterruptedException {
        compare(pole(new Breakdown.Level(100e3), new Breakdown.Level(60e3)), folder);
    }

    @Test
    void voltTimeCurveAgainstNgspice(@TempDir Path folder) throws IOException, InterruptedException {
        compare(pole(new Breakdown.VoltTime(0.2), new Breakdown.VoltTime(0.1)), folder);
    }

    /** An arc that has struck stays although its voltage falls to nothing: the switch may not open again. */
    @Test
    void theArcStays() {
        String deck = SpiceDeck.write(pole(new Breakdown.Level(100e3), new Breakdown.Level(60e3)), "gap", GRID);
        assertThat(deck).contains("V = abs(v(n2)-v(n4))/(100000.0)").contains("sw(vt=-499.5 vh=500.5 ron=1.0");
    }
}
