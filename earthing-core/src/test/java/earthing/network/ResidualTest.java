package earthing.network;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * What is left over of a wrong solution, by hand. It decides whether a solution is taken, and no circuit of the tests has
 * a solution so poor that a wrong residual would be noticed.
 */
class ResidualTest {

    /** (1+2j 3; 3 4−j), which takes (1+j; 2−j) to (5; 10−3j). */
    private static ComplexSymmetric matrix() {
        ComplexSymmetric a = new ComplexSymmetric(2);
        a.add(0, 0, 1, 2);
        a.add(0, 1, 3, 0);
        a.add(1, 0, 3, 0);
        a.add(1, 1, 4, -1);
        return a;
    }

    private static double residual(double rightRe0, double rightIm0, double rightRe1, double rightIm1) {
        double[] rightRe = {rightRe0, rightRe1};
        double[] rightIm = {rightIm0, rightIm1};
        return ComplexEquations.residual(matrix(), new double[] {1, 2}, new double[] {1, -1}, rightRe, rightIm);
    }

    @Test
    void theWorstRowCountsByTheSumOfItsTerms() {
        assertThat(residual(5, 0, 10, -3)).isZero();
        // Terms of the first row: right side + (1+2)(1+1) + 3(2+1); of the second: right side + 3(1+1) + (4+1)(2+1).
        assertThat(residual(5.5, 0.25, 10, -3)).isCloseTo(0.75 / (5.75 + 6 + 9), within(1e-15));
        assertThat(residual(5, 0, 9, -2.5)).isCloseTo(1.5 / (11.5 + 6 + 15), within(1e-15));
        assertThat(residual(5.5, 0.25, 9, -2.5)).isCloseTo(1.5 / 32.5, within(1e-15));
        assertThat(residual(2, 0, 10, -3.5)).isCloseTo(3.0 / (2 + 6 + 9), within(1e-15));
    }

    @Test
    void whatIsNoNumberIsLeftOverWhole() {
        assertThat(residual(Double.NaN, 0, 10, -3)).isInfinite();
        assertThat(residual(5, 0, 10, Double.NaN)).isInfinite();
        ComplexSymmetric zero = new ComplexSymmetric(1);
        double[] none = {0};
        assertThat(ComplexEquations.residual(zero, none, none, none, none)).isZero();
        ComplexSymmetric one = new ComplexSymmetric(1);
        one.add(0, 0, 1, 0);
        ComplexSymmetric broken = new ComplexSymmetric(1);
        broken.add(0, 0, Double.NaN, 0);
        assertThat(ComplexEquations.residual(one, broken)).isInfinite();
    }

    @ParameterizedTest
    @CsvSource({"0, 0, 0", "0.1, 0, 1.6", "0, 0.1, 1.6", "-0.1, 0.2, 4.8"})
    void anInverseIsAskedWithOnesAndWithAlternatingSigns(double re, double im, double left) {
        // A = 2, 4, 8 on the diagonal. The error E of the inverse leaves A E z over: in the last row 8 · 2 e.
        for (int alternating = 0; alternating < 2; alternating++) {
            ComplexSymmetric a = new ComplexSymmetric(3);
            ComplexSymmetric inverse = new ComplexSymmetric(3);
            for (int i = 0; i < 3; i++) {
                a.add(i, i, 2 << i, 0);
                inverse.add(i, i, 1.0 / (2 << i), 0);
            }
            // With one sign the error is seen by ones only, with the other by alternating signs only.
            double sign = alternating == 0 ? 1 : -1;
            inverse.add(1, 1, re, im);
            inverse.add(2, 2, re, im);
            inverse.add(1, 2, sign * re, sign * im);
            inverse.add(2, 1, sign * re, sign * im);
            assertThat(ComplexEquations.residual(a, inverse)).isCloseTo(left, within(1e-12));
        }
    }
}
