package earthing.network;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

/** A resistance that falls with the current, by its own formula and its limits. */
class FallingResistanceTest {

    /** 33.49 ohm, 5.68 kA, 10 kA: 33.49/sqrt(1 + 10/5.68) = 20.17 ohm, by hand. */
    @Test
    void atItsCrestByHand() {
        var curve = new NonlinearResistance.Falling(33.49, 5.68e3);
        assertThat(curve.voltage(10e3) / 10e3).isCloseTo(20.16, within(0.01));
        assertThat(curve.slope(0)).isEqualTo(33.49);
    }

    /** Odd, strictly rising, and its slope is that of its chord. */
    @Property(seed = "20261125", tries = 200)
    void risesAndIsOdd(
            @ForAll @DoubleRange(min = 1, max = 1e5) double current,
            @ForAll @DoubleRange(min = 10, max = 1e5) double limit) {
        var curve = new NonlinearResistance.Falling(10, limit);
        double h = 1e-4 * current;
        double chord = (curve.voltage(current + h) - curve.voltage(current - h)) / (2 * h);
        assertThat(curve.slope(current))
                .isCloseTo(chord, withinPercentage(1e-3))
                .isPositive();
        assertThat(curve.voltage(-current)).isEqualTo(-curve.voltage(current));
        assertThat(curve.voltage(current)).isLessThan(10 * current);
    }

    /** A constant current into it and nothing else: the solver gives the formula. */
    @Test
    void theSolverFindsIt() {
        Circuit circuit = new Circuit.Builder()
                .nonlinear("ground", "tank", Circuit.REFERENCE, new NonlinearResistance.Falling(33.49, 5.68e3))
                .inductor("lead", "top", "tank", 0, 1e-6)
                .currentSource("surge", Circuit.REFERENCE, "top", t -> 1e9 * Math.min(t, 10e-6))
                .build();
        TransientSolution solution = TransientSolution.solve(circuit, new TimeGrid(20e-6, 1e-8, 1e-5));
        assertThat(solution.potential("tank").at(20e-6))
                .isCloseTo(33.49 / Math.sqrt(1 + 10 / 5.68) * 10e3, withinPercentage(0.01));
    }

    @Test
    void nonsenseIsRefused() {
        assertThatThrownBy(() -> new NonlinearResistance.Falling(0, 1)).hasMessageContaining("> 0");
        assertThatThrownBy(() -> new NonlinearResistance.Falling(1, Double.NaN)).hasMessageContaining("> 0");
    }
}
