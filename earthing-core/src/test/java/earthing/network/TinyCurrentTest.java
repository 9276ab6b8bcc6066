package earthing.network;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.withinPercentage;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;

/**
 * A current source drives arresters in series: by Kirchhoff's law its current is theirs and the curve gives the voltage,
 * however far below the first point of the curve it lies. Behind such a source the network is stiff and what rounding
 * leaves of its equations is no refusal.
 */
class TinyCurrentTest {

    private static final NonlinearResistance CURVE = new NonlinearResistance.LogLog(
            new double[] {1, 1e3, 5e3, 10e3, 20e3}, new double[] {40e3, 63e3, 70.5e3, 75e3, 82.5e3});

    @Property(tries = 60, seed = "20261125")
    void theCurrentIsThatOfTheSource(
            @ForAll @DoubleRange(min = -12, max = 4.7) double decades,
            @ForAll @IntRange(min = 1, max = 3) int arresters,
            @ForAll boolean equalSteps,
            @ForAll boolean alternating) {
        double peak = Math.pow(10, decades);
        Wave impulse = t -> peak * t / 8e-6 * Math.exp(1 - t / 8e-6);
        Wave sine = t -> peak * Math.sin(2 * Math.PI * 50e3 * t);
        Circuit.Builder circuit =
                new Circuit.Builder().currentSource("source", "0", "n1", alternating ? sine : impulse);
        for (int k = 1; k <= arresters; k++) {
            circuit.nonlinear("arrester " + k, "n" + k, k == arresters ? "0" : "n" + (k + 1), CURVE);
        }
        TimeGrid grid = equalSteps ? TimeGrid.equal(40e-6, 20e-9) : new TimeGrid(40e-6, 20e-9, 1e-4);
        TransientSolution solution = TransientSolution.solve(circuit.build(), grid);
        for (int k = 1; k <= arresters; k++) {
            assertThat(Math.abs(solution.current("arrester " + k).peak().value()))
                    .isCloseTo(peak, withinPercentage(0.1));
        }
        assertThat(Math.abs(solution.potential("n1").peak().value()))
                .isCloseTo(arresters * CURVE.voltage(peak), withinPercentage(0.1));
    }
}
