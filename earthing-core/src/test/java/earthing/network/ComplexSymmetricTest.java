package earthing.network;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The contract of the elimination: what it gives is multiplied out again, number by number in complex arithmetic of the
 * mathematics library. In a circuit a wrong factor is not seen, because the caller looks at the residual and takes
 * another way.
 */
class ComplexSymmetricTest {

    /** Real and imaginary part positive definite, each BᵀB plus a part of the unit matrix, times a scale. */
    private static Complex[][] matrix(int n, double real, double imaginary, long seed) {
        Random random = new Random(seed);
        double[][][] parts = new double[2][n][n];
        for (double[][] part : parts) {
            double[][] b = new double[n][n];
            for (double[] row : b) {
                for (int j = 0; j < n; j++) {
                    row[j] = random.nextGaussian();
                }
            }
            for (int i = 0; i < n; i++) {
                for (int j = 0; j < n; j++) {
                    part[i][j] = i == j ? 0.3 : 0;
                    for (int k = 0; k < n; k++) {
                        part[i][j] += b[k][i] * b[k][j];
                    }
                }
            }
        }
        Complex[][] a = new Complex[n][n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                a[i][j] = new Complex(real * parts[0][i][j], imaginary * parts[1][i][j]);
            }
        }
        return a;
    }

    private static ComplexSymmetric of(Complex[][] a) {
        ComplexSymmetric symmetric = new ComplexSymmetric(a.length);
        for (int i = 0; i < a.length; i++) {
            for (int j = 0; j < a.length; j++) {
                symmetric.add(i, j, a[i][j].getReal(), a[i][j].getImaginary());
            }
        }
        return symmetric;
    }

    private static Complex product(Complex[][] a, int row, double[] re, double[] im) {
        Complex sum = Complex.ZERO;
        for (int j = 0; j < a.length; j++) {
            sum = sum.add(a[row][j].multiply(new Complex(re[j], im[j])));
        }
        return sum;
    }

    @ParameterizedTest
    @CsvSource({
        "1, 1, 1",
        "2, 1, 1",
        "3, 1, 1e-3",
        "5, 1e-3, 1",
        "8, 1, 1",
        "8, 1, 0",
        "6, 0, 1",
        "7, 1e6, 1e6",
        "7, 1e-6, 1e-6"
    })
    void theSolutionMultipliedOutIsTheRightHandSide(int n, double real, double imaginary) {
        Complex[][] a = matrix(n, real, imaginary, 17 + n);
        ComplexSymmetric factors = of(a);
        assertThat(factors.size()).isEqualTo(n);
        assertThat(factors.factorise()).isTrue();
        Random random = new Random(5);
        for (int first = 0; first < n; first++) {
            // Zeros in front are passed over.
            double[] wantedRe = new double[n];
            double[] wantedIm = new double[n];
            for (int i = first; i < n; i++) {
                wantedRe[i] = random.nextGaussian();
                wantedIm[i] = i == first ? 0 : random.nextGaussian();
            }
            double[] re = wantedRe.clone();
            double[] im = wantedIm.clone();
            factors.solve(re, im);
            for (int i = 0; i < n; i++) {
                Complex got = product(a, i, re, im);
                assertThat(got.getReal()).isCloseTo(wantedRe[i], within(1e-9));
                assertThat(got.getImaginary()).isCloseTo(wantedIm[i], within(1e-9));
            }
        }
    }

    @ParameterizedTest
    @CsvSource({"1, 1, 1", "2, 1, 1", "4, 1, 1e-2", "8, 1, 1", "5, 0, 1", "5, 1, 0"})
    void theInverseTimesTheMatrixIsOne(int n, double real, double imaginary) {
        Complex[][] a = matrix(n, real, imaginary, 31 + n);
        ComplexSymmetric factors = of(a);
        assertThat(factors.factorise()).isTrue();
        ComplexSymmetric inverse = factors.inverse();
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                // Row j of a symmetric inverse is its column.
                Complex got = product(a, i, inverse.re[j], inverse.im[j]);
                assertThat(got.getReal()).isCloseTo(i == j ? 1 : 0, within(1e-9));
                assertThat(got.getImaginary()).isCloseTo(0, within(1e-9));
                assertThat(inverse.re[i][j]).isEqualTo(inverse.re[j][i]);
                assertThat(inverse.im[i][j]).isEqualTo(inverse.im[j][i]);
            }
        }
    }

    @Test
    void aProductIsAddedAndACopyStaysAsItWas() {
        Complex[][] a = matrix(4, 1, 2, 3);
        ComplexSymmetric symmetric = of(a);
        ComplexSymmetric copy = symmetric.copy();
        assertThat(symmetric.factorise()).isTrue();
        double[] xr = {1, 0, -2, 0};
        double[] xi = {0.5, 0, 0, 3};
        double[] yr = {10, 20, 30, 40};
        double[] yi = {1, 2, 3, 4};
        copy.addProduct(xr, xi, yr, yi);
        for (int i = 0; i < 4; i++) {
            Complex expected = product(a, i, xr, xi);
            assertThat(yr[i]).isCloseTo(10 * (i + 1) + expected.getReal(), within(1e-12));
            assertThat(yi[i]).isCloseTo(i + 1 + expected.getImaginary(), within(1e-12));
        }
    }

    @Test
    void whatHasNoPivotIsRefused() {
        ComplexSymmetric zero = new ComplexSymmetric(2);
        zero.add(0, 1, 1, 1);
        zero.add(1, 0, 1, 1);
        assertThat(zero.factorise()).isFalse();
        // Rows alike: the second pivot is exactly 0.
        ComplexSymmetric alike = new ComplexSymmetric(2);
        for (int i = 0; i < 2; i++) {
            for (int j = 0; j < 2; j++) {
                alike.add(i, j, 2, 0);
            }
        }
        assertThat(alike.factorise()).isFalse();
        for (double bad : new double[] {Double.NaN, Double.POSITIVE_INFINITY}) {
            ComplexSymmetric broken = new ComplexSymmetric(1);
            broken.add(0, 0, bad, 1);
            assertThat(broken.factorise()).isFalse();
        }
    }

    @Test
    void nodesThatAreEarthAreLeftOut() {
        ComplexSymmetric symmetric = new ComplexSymmetric(1);
        symmetric.add(-1, 0, 5, 5);
        symmetric.add(0, -1, 5, 5);
        symmetric.add(-1, -1, 5, 5);
        symmetric.add(0, 0, 3, 4);
        symmetric.add(0, 0, 1, 0);
        assertThat(symmetric.re[0][0]).isEqualTo(4);
        assertThat(symmetric.im[0][0]).isEqualTo(4);
    }

    @Test
    void rowsAreExchangedWhereThePlainWayWillNotDo() {
        // (0 1; 1 0) exchanges its unknowns; no pivot of it is usable in place.
        ComplexSymmetric exchange = new ComplexSymmetric(2);
        exchange.add(0, 1, 1, 0);
        exchange.add(1, 0, 1, 0);
        double[] re = {3, 5};
        double[] im = {-1, 2};
        assertThat(ComplexEquations.solve(exchange, re, im)).isLessThan(1e-12);
        assertThat(re).containsExactly(new double[] {5, 3}, within(1e-12));
        assertThat(im).containsExactly(new double[] {2, -1}, within(1e-12));
        ComplexSymmetric inverse = ComplexEquations.inverse(exchange, "it");
        assertThat(inverse.re[0]).containsExactly(new double[] {0, 1}, within(1e-12));
        assertThat(inverse.re[1]).containsExactly(new double[] {1, 0}, within(1e-12));
        assertThat(inverse.im[0]).containsExactly(new double[] {0, 0}, within(1e-12));
        // A small pivot in front would cost all digits: (1e-20 1; 1 1) x = (1; 2) gives (1; 1).
        ComplexSymmetric graded = new ComplexSymmetric(2);
        graded.add(0, 0, 1e-20, 0);
        graded.add(0, 1, 1, 0);
        graded.add(1, 0, 1, 0);
        graded.add(1, 1, 1, 0);
        double[] x = {1, 2};
        double[] y = {0, 0};
        ComplexEquations.solve(graded, x, y);
        assertThat(x).containsExactly(new double[] {1, 1}, within(1e-9));
    }

    @Test
    void whatHasNoSolutionIsRefused() {
        ComplexSymmetric singular = new ComplexSymmetric(3);
        for (int i = 0; i < 3; i++) {
            for (int j = 0; j < 3; j++) {
                singular.add(i, j, 1, 1);
            }
        }
        assertThatIllegalArgumentException()
                .isThrownBy(() -> ComplexEquations.solve(singular, new double[] {1, 2, 3}, new double[3]))
                .withMessageContaining("singular");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> ComplexEquations.inverse(singular, "this matrix"))
                .withMessageContaining("this matrix is singular");
        assertThat(ComplexEquations.solve(new ComplexSymmetric(0), new double[0], new double[0]))
                .isZero();
    }
}
