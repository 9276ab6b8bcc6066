package earthing.network;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;

/** The eliminations behind both solutions: against their own definition, and where they have to give way. */
class EliminationTest {

    private static double[][] positiveDefinite(int n, Random random) {
        double[][] root = new double[n][n];
        for (double[] row : root) {
            for (int j = 0; j < n; j++) {
                row[j] = random.nextGaussian();
            }
        }
        double[][] a = new double[n][n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                for (int k = 0; k < n; k++) {
                    a[i][j] += root[i][k] * root[j][k];
                }
            }
            a[i][i] += 0.1;
        }
        return a;
    }

    @Property(tries = 40, seed = "20261125")
    void inverseTimesMatrixIsOne(@ForAll @IntRange(min = 1, max = 23) int n, @ForAll @IntRange int seed) {
        double[][] a = positiveDefinite(n, new Random(seed));
        SymmetricMatrix.Inverse inverse = SymmetricMatrix.invert(a, "test");
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                double sum = 0;
                for (int k = 0; k < n; k++) {
                    sum += a[i][k] * inverse.matrix().get(k, j);
                }
                assertThat(sum).isCloseTo(i == j ? 1 : 0, within(1e-9));
            }
        }
        assertThat(inverse.residual()).isLessThan(1e-9);
        assertThat(inverse.condition()).isGreaterThanOrEqualTo(1);
    }

    /** An ideal source on a node that nothing else holds: the pivot before the border is 0, so rows must be exchanged. */
    @Test
    void borderOnAnEmptyDiagonal() {
        double[][] a = {{0, 0, 1}, {0, 2, 0}, {1, 0, 0}};
        SymmetricMatrix inverse = SymmetricMatrix.invert(a, "test").matrix();
        assertThat(inverse.get(0, 2)).isCloseTo(1, within(1e-14));
        assertThat(inverse.get(1, 1)).isCloseTo(0.5, within(1e-14));
    }

    @Test
    void refusesASingularMatrix() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> SymmetricMatrix.invert(new double[][] {{1, 1}, {1, 1}}, "the pair"))
                .withMessageContaining("the pair is singular");
    }

    /** At resonance of a coil and a capacitor the nodal diagonal vanishes; the answer is that of the rest, 1 A on 50 Ω. */
    @Test
    void resonanceLeavesTheResistor() {
        double inductance = 1e-3;
        double capacitance = 1e-6;
        Circuit circuit = new Circuit.Builder()
                .currentSource("s", "0", "a", Complex.ONE)
                .inductor("L", "a", "0", 0, inductance)
                .capacitor("C", "a", "0", capacitance)
                .resistor("R", "a", "0", 50)
                .build();
        double frequency = 1 / (2 * Math.PI * Math.sqrt(inductance * capacitance));
        Complex v = FrequencySolution.solve(circuit, frequency).potential("a");
        assertThat(v.getReal()).isCloseTo(50, within(1e-9));
        assertThat(v.getImaginary()).isCloseTo(0, within(1e-9));
    }

    @Test
    void sweepGivesWhatSingleSolutionsGive() {
        Circuit circuit = new Circuit.Builder()
                .voltageSource("s", "a", "0", new Complex(3, 1))
                .inductor("L1", "a", "b", 0.1, 2e-6)
                .inductor("L2", "b", "0", 0.2, 3e-6)
                .mutual("L1", "L2", 1e-6)
                .capacitor("C", "b", "0", 1e-9)
                .build();
        double[] frequencies = {50, 1e4, 2e6};
        List<FrequencySolution> sweep = FrequencySolution.sweep(circuit, frequencies);
        for (int k = 0; k < frequencies.length; k++) {
            FrequencySolution one = FrequencySolution.solve(circuit, frequencies[k]);
            assertThat(sweep.get(k).potential("b")).isEqualTo(one.potential("b"));
            assertThat(sweep.get(k).current("L1")).isEqualTo(one.current("L1"));
            assertThat(KirchhoffCheck.of(sweep.get(k)).within(1e-9)).isTrue();
        }
    }

    /** Two poles that share nothing: solved in one circuit each arrester carries what it carries alone. */
    @Test
    void arrestersThatDoNotSeeEachOtherAreSolvedAlike() {
        TimeGrid grid = TimeGrid.equal(20e-6, 20e-9);
        double alone = TransientSolution.solve(
                        pole(new Circuit.Builder(), "one", 1).build(), grid)
                .current("one arrester")
                .peak()
                .value();
        Circuit both = pole(pole(new Circuit.Builder(), "one", 1), "two", 0.3).build();
        TransientSolution solution = TransientSolution.solve(both, grid);
        assertThat(solution.current("one arrester").peak().value()).isCloseTo(alone, withinPercentage(1e-7));
        assertThat(KirchhoffCheck.of(solution).nodeResidual()).isLessThan(1e-9);
        assertThat(solution.current("two arrester").peak().value()).isBetween(0.2 * alone, 0.31 * alone);
    }

    private static Circuit.Builder pole(Circuit.Builder builder, String name, double factor) {
        return builder.currentSource(
                        name + " stroke", "0", name, PoleDecks.impulse820().times(factor))
                .nonlinear(
                        name + " arrester",
                        name,
                        name + " tank",
                        new NonlinearResistance.LogLog(new double[] {1, 1e3, 1e4}, new double[] {5e4, 7e4, 8e4}))
                .inductor(name + " lead", name + " tank", name + " earth", 0.01, 8e-6)
                .resistor(name + " line", name, "0", 250)
                .resistor(name + " electrode", name + " earth", "0", 30);
    }
}
