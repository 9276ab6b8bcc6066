package earthing.numeric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

class NonNegativeLeastSquaresTest {

    @Test
    void findsWhatIsPositiveAndCutsWhatIsNot() {
        double[][] rows = {{1, 0}, {0, 1}, {1, 1}};
        assertThat(NonNegativeLeastSquares.solve(rows, new double[] {2, 3, 5}, 0))
                .containsExactly(new double[] {2, 3}, within(1e-12));
        // By hand: with x2 = 0 the least squares of x1 over (1, 0, 1) and (2, -3, -1) is 1/2.
        assertThat(NonNegativeLeastSquares.solve(rows, new double[] {2, -3, -1}, 0))
                .containsExactly(new double[] {0.5, 0}, within(1e-12));
        assertThatThrownBy(() -> NonNegativeLeastSquares.solve(rows, new double[] {1}, 0))
                .hasMessageContaining("rows");
        assertThatThrownBy(() -> NonNegativeLeastSquares.solve(rows, new double[] {1, 2, 3}, -1))
                .hasMessageContaining(">= 0");
    }

    /** Kuhn and Tucker: the gradient is zero where x is positive and not negative where x is zero. */
    @Property(seed = "20261125", tries = 100)
    void holdsTheConditionsOfTheMinimum(@ForAll @IntRange(min = 0, max = 1_000_000) int seed) {
        SplittableRandom random = new SplittableRandom(seed);
        int m = random.nextInt(2, 12);
        int n = random.nextInt(1, 9);
        double[][] rows = new double[m][n];
        double[] right = new double[m];
        for (int i = 0; i < m; i++) {
            right[i] = random.nextDouble() - 0.5;
            for (int j = 0; j < n; j++) {
                rows[i][j] = random.nextDouble() - 0.3;
            }
        }
        double[] x = NonNegativeLeastSquares.solve(rows, right, 0);
        for (int j = 0; j < n; j++) {
            double gradient = 0;
            for (int i = 0; i < m; i++) {
                double left = -right[i];
                for (int k = 0; k < n; k++) {
                    left += rows[i][k] * x[k];
                }
                gradient += rows[i][j] * left;
            }
            assertThat(x[j]).isGreaterThanOrEqualTo(0);
            assertThat(gradient).isGreaterThan(-1e-9);
            assertThat(gradient * Math.min(1, x[j])).isCloseTo(0, within(1e-9));
        }
    }
}
