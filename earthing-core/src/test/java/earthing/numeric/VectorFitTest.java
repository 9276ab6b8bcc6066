package earthing.numeric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;

class VectorFitTest {

    private static double[] omegas(double from, double to, int count) {
        double[] omega = new double[count];
        Arrays.setAll(omega, k -> from * Math.pow(to / from, k / (count - 1.0)));
        return omega;
    }

    private static double[][] ones(int functions, int count) {
        double[][] weights = new double[functions][count];
        for (double[] row : weights) {
            Arrays.fill(row, 1);
        }
        return weights;
    }

    /** The first example of the authors' own published routine (from memory): poles and residues come back. */
    @Test
    void theAuthorsFirstExampleComesBack() {
        double[] omega = omegas(2 * Math.PI, 2e4 * Math.PI, 101);
        Complex[][] values = new Complex[1][omega.length];
        Complex pole = new Complex(-100, 500);
        Complex residue = new Complex(30, 40);
        for (int k = 0; k < omega.length; k++) {
            Complex s = new Complex(0, omega[k]);
            values[0][k] = new Complex(2)
                    .divide(s.add(5))
                    .add(residue.divide(s.subtract(pole)))
                    .add(residue.conjugate().divide(s.subtract(pole.conjugate())))
                    .add(0.5);
        }
        VectorFit.Result fit = VectorFit.of(omega, values, ones(1, omega.length), 3);
        assertThat(fit.constants().get(0)).isCloseTo(0.5, within(1e-9));
        assertThat(fit.poles()).hasSize(2);
        for (int k = 0; k < 2; k++) {
            boolean pair = fit.poles().get(k).getImaginary() > 0;
            Complex due = pair ? pole : new Complex(-5, 0);
            assertThat(fit.poles().get(k).subtract(due).abs()).isLessThan(1e-6);
            assertThat(fit.residues()
                            .get(0)
                            .get(k)
                            .subtract(pair ? residue : new Complex(2, 0))
                            .abs())
                    .isLessThan(1e-6);
        }
    }

    /** Two functions of the same poles, of any size, share them in the fit. */
    @Property(seed = "20261125", tries = 30)
    void functionsShareTheirPoles(
            @ForAll @DoubleRange(min = 3, max = 4.4) double first,
            @ForAll @DoubleRange(min = 5, max = 6.5) double second,
            @ForAll @DoubleRange(min = -3, max = 3) double size) {
        double[] omega = omegas(1e2, 1e7, 60);
        double p = Math.pow(10, first);
        double q = Math.pow(10, second);
        double scale = Math.pow(10, size);
        Complex[][] values = new Complex[2][omega.length];
        double[][] weights = ones(2, omega.length);
        for (int k = 0; k < omega.length; k++) {
            Complex a = new Complex(p).divide(new Complex(p, omega[k]));
            Complex b = new Complex(q).divide(new Complex(q, omega[k]));
            values[0][k] = a.add(b.multiply(2)).add(1).multiply(scale);
            values[1][k] = a.multiply(3).subtract(b).add(2);
            weights[0][k] = 1 / scale;
        }
        VectorFit.Result fit = VectorFit.of(omega, values, weights, 2);
        double[] found =
                fit.poles().stream().mapToDouble(r -> -r.getReal()).sorted().toArray();
        assertThat(found[0]).isCloseTo(p, within(1e-5 * p));
        assertThat(found[1]).isCloseTo(q, within(1e-5 * q));
        assertThat(fit.constants().get(0)).isCloseTo(scale, within(1e-5 * scale));
    }

    @Test
    void refusesMorePolesThanFrequencies() {
        assertThatThrownBy(() -> VectorFit.of(
                        new double[] {1, 2}, new Complex[][] {{Complex.ONE, Complex.ONE}}, new double[][] {{1, 1}}, 2))
                .hasMessageContaining("more frequencies than poles");
    }
}
