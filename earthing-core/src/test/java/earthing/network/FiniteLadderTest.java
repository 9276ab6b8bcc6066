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

    /**
     * A chain of n sections, open at its far end, by line theory: Z = z/2 + Z_T coth(n γ) with cosh γ = 1 + z/2r and
     * Z_T² = z r + z²/4 (constant-k T section of the telephone textbooks; from memory). The recursion never forms γ.
     */
    @Property(seed = "20261125", tries = 200)
    void everyLengthFollowsTheHyperbolicFormulaAndTendsToTheEndlessLadder(
            @ForAll @DoubleRange(min = 0.02, max = 2) double resistance,
            @ForAll @DoubleRange(min = 0.02, max = 2) double reactance,
            @ForAll @DoubleRange(min = 2, max = 500) double earth,
            @ForAll @IntRange(min = 1, max = 3000) int spans) {
        Complex z = new Complex(resistance, reactance);
        Complex r = new Complex(earth, 0);
        Complex endless = FiniteLadder.endless(z, r);
        Complex gamma = acosh(z.divide(r).divide(2).add(1));
        Complex t = z.multiply(r).add(z.multiply(z).divide(4)).sqrt();
        Complex input = FiniteLadder.equal(spans, z, r).inputImpedance();
        Complex expected = z.divide(2).add(t.divide(gamma.multiply(spans).tanh()));
        assertThat(input.subtract(expected).abs()).isLessThan(1e-9 * expected.abs());
        double far = input.subtract(endless).abs() / endless.abs();
        double reach = spans * gamma.getReal();
        if (reach > 12) {
            // coth x − 1 = 2 e^(−2x) beyond: 1e-10.
            assertThat(far).isLessThan(1e-9);
        }
        if (spans * gamma.abs() < 0.5) {
            // A short ladder holds its near end down far less than the endless formula says.
            assertThat(input.abs()).isGreaterThan(1.5 * endless.abs());
        }
        double farther = FiniteLadder.equal(8 * spans, z, r)
                        .inputImpedance()
                        .subtract(endless)
                        .abs()
                / endless.abs();
        assertThat(farther).isLessThanOrEqualTo(Math.max(0.5 * far, 1e-9));
    }

    private static Complex acosh(Complex x) {
        return x.add(x.multiply(x).subtract(1).sqrt()).log();
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
