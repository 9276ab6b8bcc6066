package earthing.network;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;

class FiniteLadderTest {

    /** The recursion against the general nodal solution of the same ladder. */
    @Property(seed = "20261125", tries = 40)
    void agreesWithTheNodalSolution(
            @ForAll @IntRange(min = 1, max = 25) int spans,
            @ForAll @DoubleRange(min = 0.05, max = 2) double resistance,
            @ForAll @DoubleRange(min = 0.1, max = 3) double millihenry,
            @ForAll @DoubleRange(min = 2, max = 200) double earth) {
        double w = 2 * Math.PI * 50;
        Circuit.Builder builder = new Circuit.Builder().voltageSource("v", "n0", "0", Complex.ONE);
        Complex[] z = new Complex[spans];
        Complex[] r = new Complex[spans];
        for (int k = 0; k < spans; k++) {
            double own = earth * (1 + 0.1 * k);
            builder.inductor("L" + k, "n" + k, "n" + (k + 1), resistance, millihenry * 1e-3)
                    .resistor("R" + k, "n" + (k + 1), "0", own);
            z[k] = new Complex(resistance, w * millihenry * 1e-3);
            r[k] = new Complex(own, 0);
        }
        FrequencySolution s = FrequencySolution.solve(builder.build(), 50);
        FiniteLadder ladder = FiniteLadder.of(z, r);
        for (int k = 0; k <= spans; k++) {
            Complex expected = s.potential("n" + k);
            assertThat(ladder.potential(k).subtract(expected).abs()).isLessThan(1e-10);
        }
        assertThat(ladder.spanCurrent(0).subtract(s.current("L0")).abs()).isLessThan(1e-10);
    }

    @Test
    void thousandsOfSpansTendToTheEndlessLadder() {
        Complex span = new Complex(0.2, 0.3);
        Complex earth = new Complex(40, 0);
        Complex endless = FiniteLadder.endless(span, earth);
        FiniteLadder ladder = FiniteLadder.equal(10_000, span, earth);
        assertThat(ladder.inputImpedance().subtract(endless).abs()).isLessThan(1e-9);
        assertThat(ladder.potential(10_000).abs()).isLessThan(1e-100);
        assertThatThrownBy(() -> FiniteLadder.equal(3, Complex.ZERO, earth)).hasMessageContaining("span");
    }
}
