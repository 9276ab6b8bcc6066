package earthing.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

class ChebyshevTableTest {

    private static final double BOUND = 1e-6;

    private static double[] runge(double x) {
        return new double[] {1 / (1 + 4 * x * x), Math.exp(x)};
    }

    private static final ChebyshevTable TABLE =
            ChebyshevTable.of(-1, 1, BOUND, ChebyshevTableTest::runge, (n, exact) -> Math.abs(exact[n]));

    /**
     * Runge's function has poles at ±i/2, so that interpolation in Chebyshev points converges as ((1 + √5)/2)^-n: Trefethen,
     * Approximation Theory and Approximation Practice, 2013, theorem 8.2 (from memory). 32 intervals are enough for 1e-6
     * of the half degree: 1.618^-16 is 5e-4, 1.618^-32 is 2e-7.
     */
    @Property
    void holdsItsErrorBetweenThePoints(@ForAll @DoubleRange(min = -1, max = 1) double x) {
        double[] exact = runge(x);
        double[] table = TABLE.at(x);
        assertThat(table[0]).isCloseTo(exact[0], within(5e-6));
        assertThat(table[1]).isCloseTo(exact[1], within(1e-12));
    }

    @Test
    void tellsWhatErrorItSawAndStopsWhenThatSuffices() {
        ChebyshevTable smooth =
                ChebyshevTable.of(0, 1, 1e-4, x -> new double[] {Math.exp(x)}, (n, exact) -> Math.abs(exact[n]));
        // Through 5 Chebyshev extrema on [0, 1] the error of e^x is at most e/(5! · 2^8) ≈ 9e-5 of itself (remainder
        // term).
        assertThat(smooth.error()).isPositive().isLessThan(1e-4);
        int[] asked = {0};
        ChebyshevTable kink = ChebyshevTable.of(
                -1,
                1,
                1e-9,
                x -> {
                    asked[0]++;
                    return new double[] {1 + Math.abs(x - 0.3)};
                },
                (n, exact) -> Math.abs(exact[n]));
        assertThat(kink.error()).isGreaterThan(1e-4);
        assertThat(asked[0]).isEqualTo(33);
    }

    @Test
    void oneValueIsATableOfOnePoint() {
        ChebyshevTable table = ChebyshevTable.of(2, 2, 1e-9, x -> new double[] {x}, (n, exact) -> 1);
        assertThat(table.at(2)).containsExactly(2.0);
        assertThat(table.error()).isZero();
        assertThat(table.covers(2.1)).isFalse();
    }
}
