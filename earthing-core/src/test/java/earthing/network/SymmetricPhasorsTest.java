package earthing.network;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

/** Complex symmetric matrices times their inverses. */
class SymmetricPhasorsTest {

    /** 1/(2 + j) = 0.4 − 0.2j, by hand. */
    @Test
    void aSingleNumber() {
        assertThat(SymmetricPhasors.inverse(new double[] {2, 1}, 1))
                .containsExactly(new double[] {0.4, -0.2}, within(1e-15));
    }

    @Property(seed = "20261125", tries = 50)
    void theProductIsUnity(
            @ForAll @IntRange(min = 1, max = 12) int n, @ForAll @IntRange(min = 0, max = 1000) int seed) {
        Random random = new Random(seed);
        double[] a = new double[2 * n * n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j <= i; j++) {
                for (int part = 0; part < 2; part++) {
                    double value = random.nextDouble() - 0.5 + (i == j ? n : 0);
                    a[2 * (i * n + j) + part] = value;
                    a[2 * (j * n + i) + part] = value;
                }
            }
        }
        double[] inverse = SymmetricPhasors.inverse(a, n);
        for (int j = 0; j < n; j++) {
            double[] column = SymmetricPhasors.column(a, n, j);
            for (int i = 0; i < n; i++) {
                double re = 0;
                double im = 0;
                for (int k = 0; k < n; k++) {
                    int left = 2 * (i * n + k);
                    int right = 2 * (k * n + j);
                    re += a[left] * inverse[right] - a[left + 1] * inverse[right + 1];
                    im += a[left] * inverse[right + 1] + a[left + 1] * inverse[right];
                }
                assertThat(re).isCloseTo(i == j ? 1 : 0, within(1e-12));
                assertThat(im).isCloseTo(0, within(1e-12));
                assertThat(column[2 * i]).isCloseTo(inverse[2 * (i * n + j)], within(1e-12));
                assertThat(column[2 * i + 1]).isCloseTo(inverse[2 * (i * n + j) + 1], within(1e-12));
            }
        }
    }

    @Test
    void aSingularOneIsRefused() {
        assertThatThrownBy(() -> SymmetricPhasors.inverse(new double[8], 2)).hasMessageContaining("singular");
        assertThatThrownBy(() -> SymmetricPhasors.column(new double[7], 2, 0)).hasMessageContaining("8 numbers");
    }
}
