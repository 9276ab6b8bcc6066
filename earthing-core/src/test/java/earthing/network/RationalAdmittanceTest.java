package earthing.network;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Rational admittances against the circuits of plain elements whose admittances they are. */
class RationalAdmittanceTest {

    private static final Wave FRONT = t -> 10e3 * (Math.exp(-t / 50e-6) - Math.exp(-t / 0.4e-6));

    private static RationalAdmittance one(double constant, Complex pole, Complex residue) {
        return RationalAdmittance.of(
                new double[][] {{constant}}, List.of(pole), List.<Complex[][]>of(new Complex[][] {{residue}}));
    }

    /** 5 Ω and 3 µH beside 40 Ω: G = 1/40, p = −R/L, r = 1/L. */
    private static final RationalAdmittance BRANCH = one(1 / 40.0, new Complex(-5 / 3e-6, 0), new Complex(1 / 3e-6, 0));

    /** 20 Ω, 4 µH and 10 nF in a row, beside 200 Ω: y = (s/L)/(s² + s·R/L + 1/(L·C)). */
    private static RationalAdmittance resonance() {
        double half = 20 / 4e-6 / 2;
        double omega = Math.sqrt(1 / (4e-6 * 10e-9) - half * half);
        Complex pole = new Complex(-half, omega);
        return one(1 / 200.0, pole, pole.divide(4e-6).divide(new Complex(0, 2 * omega)));
    }

    /**
     * Two nodes with 6 Ω and 2 µH from the first to earth, 9 Ω and 3 µH from the second, 30 Ω and 10 µH between: one pole
     * −3e6/s for all, residues 1/L as nodal matrix.
     */
    private static RationalAdmittance two() {
        double a = 1 / 2e-6;
        double b = 1 / 3e-6;
        double c = 1 / 10e-6;
        return RationalAdmittance.of(
                new double[2][2], List.of(new Complex(-3e6, 0)), List.<Complex[][]>of(new Complex[][] {
                    {new Complex(a + c), new Complex(-c)}, {new Complex(-c), new Complex(b + c)}
                }));
    }

    private static Circuit.Builder driven() {
        return new Circuit.Builder()
                .currentSource("surge", "0", "top", FRONT)
                .inductor("lead", "top", "a", 0.01, 10e-6)
                .resistor("far", "top", "0", 300);
    }

    private static void same(Circuit one, Circuit other, String node) {
        for (TimeGrid grid : List.of(TimeGrid.equal(20e-6, 2e-9), TimeGrid.adaptive(20e-6, 2e-9))) {
            TransientSolution s = TransientSolution.solve(one, grid);
            TransientSolution t = TransientSolution.solve(other, grid);
            for (double time : new double[] {0.1e-6, 0.5e-6, 1e-6, 3e-6, 10e-6, 19e-6}) {
                double due = t.potential(node).at(time);
                // Adaptive steps of both circuits differ, since what they watch does.
                double share = grid.tolerance() == 0 ? 1e-6 : 5e-4;
                assertThat(s.potential(node).at(time))
                        .isCloseTo(due, within(share * t.potential(node).peak().value()));
            }
            assertThat(KirchhoffCheck.of(s).within(2e-3)).isTrue();
        }
        for (double f : new double[] {50, 1e4, 3e5, 4e6}) {
            FrequencySolution s = FrequencySolution.solve(phasor(one), f);
            FrequencySolution t = FrequencySolution.solve(phasor(other), f);
            assertThat(s.potential(node).subtract(t.potential(node)).abs())
                    .isLessThan(1e-9 * t.potential(node).abs());
            assertThat(KirchhoffCheck.of(s).within(1e-9)).isTrue();
        }
    }

    private static Circuit phasor(Circuit circuit) {
        return circuit.toBuilder()
                .remove("surge")
                .currentSource("surge", "0", "top", Complex.ONE)
                .build();
    }

    @Test
    void aRealPoleIsAResistanceWithAnInductance() {
        same(
                driven().admittance("g", List.of("e"), List.of("a"), BRANCH).build(),
                driven().inductor("e", "a", "0", 5, 3e-6)
                        .resistor("p", "a", "0", 40)
                        .build(),
                "a");
    }

    @Test
    void aPairOfPolesIsASeriesResonance() {
        same(
                driven().admittance("g", List.of("e"), List.of("a"), resonance())
                        .build(),
                driven().inductor("e", "a", "m", 20, 4e-6)
                        .capacitor("c", "m", "0", 10e-9)
                        .resistor("p", "a", "0", 200)
                        .build(),
                "a");
    }

    @Test
    void twoPortsAreANetworkBetweenTwoNodes() {
        Circuit fitted = driven().inductor("own", "top", "b", 0.02, 12e-6)
                .admittance("g", List.of("e", "f"), List.of("a", "b"), two())
                .build();
        Circuit plain = driven().inductor("own", "top", "b", 0.02, 12e-6)
                .inductor("x", "a", "0", 6, 2e-6)
                .inductor("y", "b", "0", 9, 3e-6)
                .inductor("z", "a", "b", 30, 10e-6)
                .build();
        same(fitted, plain, "a");
        same(fitted, plain, "b");
        assertThat(two().resistances()[0][1]).isCloseTo(1 / (1 / 6.0 + 1 / 39.0) * 9 / 39, withinPercentage(1e-6));
    }

    /** Whatever current is driven, energy goes in and does not come out again. */
    @Property(seed = "20261125", tries = 30)
    void takesEnergy(
            @ForAll @DoubleRange(min = 0.05, max = 20) double front,
            @ForAll @DoubleRange(min = 1, max = 300) double tail) {
        Circuit circuit = new Circuit.Builder()
                .currentSource("surge", "0", "a", t -> Math.exp(-t / (1e-6 * tail)) * Math.sin(t / (1e-6 * front)))
                .admittance("g", List.of("e"), List.of("a"), resonance())
                .build();
        TransientSolution s = TransientSolution.solve(circuit, TimeGrid.adaptive(5e-6 * front, 2e-9 * front));
        Waveform v = s.potential("a");
        Waveform i = s.current("e");
        double energy = 0;
        for (int k = 1; k < v.size(); k++) {
            energy += (v.value(k) * i.value(k) + v.value(k - 1) * i.value(k - 1)) / 2 * (v.time(k) - v.time(k - 1));
            assertThat(energy).isGreaterThanOrEqualTo(0);
        }
    }

    @Test
    void refusesWhatIsNotPassiveOrNotWhole() {
        assertThatThrownBy(() -> one(-0.01, new Complex(-1e6, 0), new Complex(1e6, 0)))
                .hasMessageContaining("not passive");
        assertThatThrownBy(() -> one(0.01, new Complex(-1e6, 0), new Complex(-1e6, 0)))
                .hasMessageContaining("not passive");
        assertThatThrownBy(() -> one(0.01, new Complex(1e6, 0), new Complex(1e6, 0)))
                .hasMessageContaining("left of the imaginary axis");
        assertThatThrownBy(() -> one(0.01, new Complex(-1e6, 0), new Complex(1e6, 1)))
                .hasMessageContaining("real at a real pole");
        assertThatThrownBy(() -> driven().add(new Branch.Admittance("e", "a", "0", two(), 0, "g"))
                        .build())
                .hasMessageContaining("lacks a port");
        assertThatThrownBy(() -> driven().admittance("g", List.of("e"), List.of("a"), two()))
                .hasMessageContaining("has 2 ports");
        assertThatThrownBy(() -> new Branch.Admittance("e", "a", "0", two(), 2, "g"))
                .hasMessageContaining("counted from 0");
    }

    /** The exported deck, run by ngspice where it is installed: 0.1 % of the peaks. */
    @Test
    void aCircuitSimulatorAgreesOnTheDeck(@TempDir Path folder) throws IOException, InterruptedException {
        Assumptions.assumeTrue(
                List.of(String.valueOf(System.getenv("PATH")).split(File.pathSeparator)).stream()
                        .anyMatch(p -> Files.isExecutable(Path.of(p, "ngspice"))),
                "ngspice is not installed");
        Circuit circuit = driven().inductor("own", "top", "b", 0.02, 12e-6)
                .admittance("g", List.of("e", "f"), List.of("a", "b"), two())
                .admittance("h", List.of("r"), List.of("b"), resonance())
                .build();
        Path deck = folder.resolve("ports.cir");
        Files.writeString(deck, SpiceDeck.write(circuit, "ports", TimeGrid.equal(10e-6, 1e-9)));
        Process run = new ProcessBuilder("ngspice", "-b", deck.toString())
                .directory(folder.toFile())
                .redirectErrorStream(true)
                .start();
        String text = new String(run.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        run.waitFor();
        TransientSolution s = TransientSolution.solve(circuit, TimeGrid.equal(10e-6, 1e-9));
        int number = 1;
        for (String node : circuit.nodes()) {
            Matcher found = Pattern.compile("(?m)^n" + number++ + "_max\\s*=\\s*([-+.0-9eE]+)")
                    .matcher(text);
            assertThat(found.find()).as(text).isTrue();
            assertThat(Double.parseDouble(found.group(1)))
                    .isCloseTo(s.potential(node).maximum().value(), withinPercentage(0.1));
        }
    }
}
