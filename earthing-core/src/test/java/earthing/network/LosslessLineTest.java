package earthing.network;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

/** Lossless lines against lattice diagrams (closed forms) and printed values. */
class LosslessLineTest {

    private static final double Z = 400;
    private static final double DELAY = 250e-9;

    /** A wave of 100 kV on a line of 400 Ω that meets a load at its far end. */
    private static TransientSolution wave(double load, TimeGrid grid) {
        return TransientSolution.solve(
                new Circuit.Builder()
                        .currentSource("source", "0", "near", Wave.constant(500))
                        .resistor("behind", "near", "0", Z)
                        .line("line", "near", "far", LosslessLine.single(Z, DELAY))
                        .resistor("load", "far", "0", load)
                        .build(),
                grid);
    }

    /** Electrical Power Systems: Concepts, Theory and Practice, ch. 12: 100 kV, 400 Ω to 350 Ω beside 50 Ω. */
    @Test
    void junctionOfLineAndCableOfTheWorkedExample() {
        for (TimeGrid grid : List.of(TimeGrid.equal(1e-6, 5e-9), TimeGrid.adaptive(1e-6, 7e-9))) {
            TransientSolution s = TransientSolution.solve(
                    new Circuit.Builder()
                            .currentSource("source", "0", "near", Wave.constant(500))
                            .resistor("behind", "near", "0", Z)
                            .line("line", "near", "tee", LosslessLine.single(Z, DELAY))
                            .line("branch line", "tee", "end a", LosslessLine.single(350, 10e-6))
                            .line("cable", "tee", "end b", LosslessLine.single(50, 10e-6))
                            .build(),
                    grid);
            double t = 0.4e-6;
            assertThat(s.potential("tee").at(t)).isCloseTo(19.718e3, withinPercentage(0.01));
            assertThat(s.current("branch line near").at(t)).isCloseTo(56.338, withinPercentage(0.01));
            assertThat(s.current("cable near").at(t)).isCloseTo(394.37, withinPercentage(0.01));
            // Reflected wave back at the near end, which is matched: 100 kV − 80.282 kV.
            assertThat(s.potential("near").at(0.9e-6) - 100e3).isCloseTo(-80.282e3, withinPercentage(0.01));
        }
    }

    /** The same book: 400 Ω to 50 Ω and to 350 Ω. */
    @Test
    void lineToCableOfTheWorkedExample() {
        double[][] table = {{50, 22.222e3, -77.778e3, 444.44}, {350, 93.333e3, -6.6667e3, 266.667}};
        for (double[] row : table) {
            for (TimeGrid grid : List.of(TimeGrid.equal(1e-6, 5e-9), TimeGrid.adaptive(1e-6, 7e-9))) {
                TransientSolution s = wave(row[0], grid);
                assertThat(s.potential("far").at(0.4e-6)).isCloseTo(row[1], withinPercentage(0.01));
                assertThat(s.potential("near").at(0.9e-6) - 100e3).isCloseTo(row[2], withinPercentage(0.01));
                assertThat(s.current("load").at(0.4e-6)).isCloseTo(row[3], withinPercentage(0.01));
            }
        }
    }

    /** Lattice, closed form: a step of 1 kA into the top of 400 Ω, 30 ns, on 33.4927 Ω. */
    @Test
    void poleAsALineIntoItsElectrode() {
        double[] expected = {400e3, -276.38e3, 295.482e3};
        for (TimeGrid grid : List.of(TimeGrid.equal(3e-6, 1e-9), TimeGrid.adaptive(3e-6, 1.3e-9))) {
            TransientSolution s = TransientSolution.solve(
                    new Circuit.Builder()
                            .currentSource("source", "0", "top", Wave.constant(1000))
                            .line("pole", "top", "foot", LosslessLine.single(400, 30e-9))
                            .resistor("electrode", "foot", "0", 33.4927)
                            .build(),
                    grid);
            for (int k = 0; k < 3; k++) {
                assertThat(s.potential("top").at((60 * k + 30) * 1e-9)).isCloseTo(expected[k], withinPercentage(1e-3));
            }
            double reflection = (33.4927 - 400) / (33.4927 + 400);
            double sum = 400e3 * (1 + 2 * reflection / (1 - reflection));
            assertThat(sum).isCloseTo(33.4927e3, withinPercentage(1e-4));
            assertThat(s.potential("top").at(2.99e-6)).isCloseTo(sum, within(400e3 * Math.pow(-reflection, 49) * 2));
        }
    }

    @Property(seed = "20261125", tries = 30)
    void openDoublesShortCancelsAndMatchedLeavesNothing(@ForAll @DoubleRange(min = 1, max = 12) double nanoseconds) {
        double step = nanoseconds * 1e-9;
        for (TimeGrid grid : List.of(TimeGrid.equal(1.2e-6, step), TimeGrid.adaptive(1.2e-6, step))) {
            double exact = 1e-6;
            assertThat(wave(1e12, grid).potential("far").at(0.5e-6)).isCloseTo(200e3, withinPercentage(exact));
            assertThat(wave(1e-9, grid).potential("far").at(0.5e-6)).isCloseTo(0, within(1e-3));
            assertThat(wave(1e-9, grid).current("load").at(0.5e-6)).isCloseTo(500, withinPercentage(exact));
            TransientSolution matched = wave(Z, grid);
            assertThat(matched.potential("near").at(1e-6)).isCloseTo(100e3, withinPercentage(exact));
            assertThat(matched.potential("far").at(0.2e-6)).isCloseTo(0, within(1e-9));
        }
    }

    /** A smooth wave arrives as it set out, one time of travel later, whatever the steps. */
    @Property(seed = "20261125", tries = 20)
    void smoothWaveArrivesUnchanged(@ForAll @DoubleRange(min = 3, max = 40) double nanoseconds) {
        double step = nanoseconds * 1e-9;
        Wave smooth = t -> 1000 * Math.pow(t / 1e-6, 2) * Math.exp(-t / 1e-6);
        for (boolean adaptive : new boolean[] {false, true}) {
            TransientSolution s = TransientSolution.solve(
                    new Circuit.Builder()
                            .currentSource("source", "0", "near", smooth)
                            .resistor("behind", "near", "0", Z)
                            .line("line", "near", "far", LosslessLine.single(Z, 73e-9))
                            .resistor("load", "far", "0", Z)
                            .build(),
                    adaptive ? new TimeGrid(10e-6, step, 1e-5) : TimeGrid.equal(10e-6, step));
            double peak = 1000 * 4 * Math.exp(-2);
            for (int k = 1; k < s.size(); k++) {
                double t = s.potential("far").time(k) - 73e-9;
                double exact = t > 0 ? Z / 2 * smooth.at(t) : 0;
                assertThat(s.potential("far").value(k)).isCloseTo(exact, within(2e-3 * Z / 2 * peak));
            }
        }
    }

    /** Energy of the source = energy in resistances + energy on the way; every end obeys the law of the line. */
    @Test
    void energyIsFoundAgainInResistancesAndOnTheWay() {
        Wave smooth = t -> 1000 * Math.pow(t / 1e-6, 2) * Math.exp(-t / 1e-6);
        for (double end : new double[] {0.2e-6, 1.7e-6, 9e-6}) {
            TransientSolution s = TransientSolution.solve(
                    new Circuit.Builder()
                            .currentSource("source", "0", "near", smooth)
                            .line(
                                    "span",
                                    List.of("near", "b near"),
                                    List.of("far", "b far"),
                                    LosslessLine.of(new double[][] {{450, 130}, {130, 450}}, DELAY))
                            .resistor("near b", "b near", "0", 90)
                            .resistor("far a", "far", "0", 60)
                            .inductor("far b", "b far", "0", 10, 20e-6)
                            .build(),
                    TimeGrid.equal(end, 2e-9));
            KirchhoffCheck check = KirchhoffCheck.of(s);
            assertThat(check.nodeResidual()).as(check.toString()).isLessThan(1e-9);
            assertThat(check.branchResidual()).as(check.toString()).isLessThan(1e-3);
            assertThat(check.energyResidual()).as(check.toString()).isLessThan(1e-3);
        }
    }

    /** Two conductors in the common and the opposite mode are two single lines of Z + Zm and Z − Zm. */
    @Property(seed = "20261125", tries = 30)
    void twoConductorsAreTwoIndependentModes(
            @ForAll @DoubleRange(min = 10, max = 400) double mutual,
            @ForAll @DoubleRange(min = 5, max = 900) double load) {
        for (int sign : new int[] {1, -1}) {
            Circuit.Builder pair = new Circuit.Builder()
                    .currentSource("a", "0", "a1", Wave.constant(100))
                    .currentSource("b", "0", "b1", Wave.constant(sign * 100))
                    .line(
                            "span",
                            List.of("a1", "b1"),
                            List.of("a2", "b2"),
                            LosslessLine.of(new double[][] {{450, mutual}, {mutual, 450}}, DELAY))
                    .resistor("load a", "a2", "0", load)
                    .resistor("load b", "b2", "0", load);
            Circuit.Builder mode = new Circuit.Builder()
                    .currentSource("a", "0", "a1", Wave.constant(100))
                    .line("span", "a1", "a2", LosslessLine.single(450 + sign * mutual, DELAY))
                    .resistor("load a", "a2", "0", load);
            TimeGrid grid = TimeGrid.equal(1.4e-6, 10e-9);
            double both =
                    TransientSolution.solve(pair.build(), grid).potential("a1").at(1.35e-6);
            double alone =
                    TransientSolution.solve(mode.build(), grid).potential("a1").at(1.35e-6);
            assertThat(both).isCloseTo(alone, within(1e-9 * 100 * 900));
        }
    }

    @Test
    void refusesWhatIsNoLine() {
        LosslessLine line = LosslessLine.single(Z, DELAY);
        assertThatThrownBy(() -> LosslessLine.single(0, DELAY)).hasMessageContaining("surge impedance");
        assertThatThrownBy(() -> LosslessLine.single(Z, Double.NaN)).hasMessageContaining("time of travel");
        assertThatThrownBy(() -> LosslessLine.of(new double[][] {{400, 450}, {450, 400}}, DELAY))
                .hasMessageContaining("positive definite");
        Circuit.Builder builder =
                new Circuit.Builder().resistor("R", "a", "0", 1).line("line", "a", "b", line);
        assertThat(builder.build().branches()).hasSize(3);
        assertThatThrownBy(() -> TransientSolution.solve(builder.build(), TimeGrid.equal(1e-5, 2 * DELAY)))
                .hasMessageContaining("time of travel");
        assertThatThrownBy(() -> FrequencySolution.solve(builder.build(), 50)).hasMessageContaining("line");
        assertThat(builder.remove("line far").build().branches()).hasSize(1);
        assertThatThrownBy(() -> new Circuit.Builder()
                        .add(new Branch.LineEnd("end", "a", "0", line, 0, "line", false))
                        .build())
                .hasMessageContaining("lacks an end");
    }

    /**
     * 10 kA 8/20 on 33.5 Ω, an endless line and a span to a pole with an arrester: peaks that a general-purpose circuit
     * simulator (ngspice-39, equal steps of 10 ns) gave for the deck that the library writes of this circuit.
     */
    @Test
    void spanWithArresterAtItsEndGivesThePeaksOfTheSimulator() {
        double t = 3.911e-6;
        Circuit circuit = new Circuit.Builder()
                .currentSource("s", "0", "top", time -> 10e3 * 0.01243e18 * Math.pow(time, 3) * Math.exp(-time / t))
                .resistor("onward", "top", "0", 225)
                .line("span", "top", "next", LosslessLine.single(450, DELAY))
                .nonlinear(
                        "arrester",
                        "next",
                        "earth",
                        new NonlinearResistance.PiecewiseLinear(
                                new double[] {1, 1e3, 5e3, 10e3, 20e3},
                                new double[] {40e3, 63e3, 70.5e3, 75e3, 82.5e3}))
                .inductor("lead", "earth", "0", 40, 14e-6)
                .resistor("beyond", "next", "0", 450)
                .inductor("here", "top", "0", 33.5, 13e-6)
                .build();
        for (TimeGrid grid : List.of(TimeGrid.equal(40e-6, 20e-9), new TimeGrid(40e-6, 20e-9, 1e-3))) {
            TransientSolution s = TransientSolution.solve(circuit, grid);
            assertThat(s.potential("top").maximum().value()).isCloseTo(2.017601e5, withinPercentage(0.01));
            assertThat(s.potential("next").maximum().value()).isCloseTo(1.831036e5, withinPercentage(0.01));
            assertThat(s.potential("earth").maximum().value()).isCloseTo(1.165336e5, withinPercentage(0.01));
        }
    }

    /** The element of a general-purpose circuit simulator. */
    @Test
    void deckNamesBothEnds() {
        String deck = SpiceDeck.write(
                new Circuit.Builder()
                        .currentSource("s", "0", "a", Wave.constant(1))
                        .line("line", "a", "b", LosslessLine.single(400, 30e-9))
                        .resistor("R", "b", "0", 50)
                        .build(),
                "line",
                TimeGrid.equal(1e-6, 1e-9));
        assertThat(deck).contains("T2 n1 0 n2 0 Z0=400.0 TD=3.0E-8");
    }
}
