package earthing.numeric;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.complex.Complex;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.QRDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.SingularMatrixException;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.factory.DecompositionFactory_DDRM;
import org.ejml.interfaces.decomposition.EigenDecomposition_F64;

/**
 * Fits several functions of frequency by rational ones with common poles, f(s) = d + Σ r_k/(s − p_k), by relaxed vector
 * fitting: poles are moved until a weighting function of the same poles needs no residues (B. Gustavsen, A. Semlyen,
 * Rational approximation of frequency domain responses by vector fitting, IEEE Trans. Power Delivery 14 (1999) 1052-1061;
 * B. Gustavsen, Improving the pole relocating properties of vector fitting, ibid. 21 (2006) 1587-1592; both from memory).
 * Poles are stable; whether the whole is passive is not looked at.
 */
public final class VectorFit {

    private static final int ROUNDS = 8;

    private static final double REAL = 1e-9;

    private final double[] omega;
    private final Complex[][] values;
    private final double[][] weights;

    /**
     * The rational functions.
     *
     * @param poles poles [rad/s], real parts below 0; of a complex pair the one with positive imaginary part
     * @param constants d of each function
     * @param residues r of each function at each pole; at a complex pole its conjugate goes with the conjugate pole
     */
    public record Result(List<Complex> poles, List<Double> constants, List<List<Complex>> residues) {

        /**
         * Copies the lists.
         *
         * @param poles poles [rad/s]
         * @param constants d of each function
         * @param residues r of each function at each pole
         */
        public Result {
            poles = List.copyOf(poles);
            constants = List.copyOf(constants);
            residues = residues.stream().map(List::copyOf).toList();
        }
    }

    private VectorFit(double[] omega, Complex[][] values, double[][] weights) {
        this.omega = omega;
        this.values = values;
        this.weights = weights;
    }

    /**
     * Fits.
     *
     * @param omega angular frequencies [rad/s], &gt; 0, rising
     * @param values one array a function, one value a frequency
     * @param weights weight of each value, &gt; 0
     * @param order number of poles, each of a pair counted, at least 1 and less than the frequencies
     * @return the functions
     * @throws IllegalArgumentException when sizes do not fit or the equations are singular
     */
    public static Result of(double[] omega, Complex[][] values, double[][] weights, int order) {
        if (!(order >= 1 && order < omega.length) || values.length == 0 || values.length != weights.length) {
            throw new IllegalArgumentException("need more frequencies than poles and a weight of each value; have "
                    + omega.length + " frequencies, " + order + " poles");
        }
        try {
            return new VectorFit(omega, values, weights).run(order);
        } catch (SingularMatrixException singular) {
            throw new IllegalArgumentException("the equations of " + order + " poles are singular", singular);
        }
    }

    private Result run(int order) {
        List<Complex> poles = new ArrayList<>();
        double low = 3 * omega[0];
        double high = 2.5 * omega[omega.length - 1];
        for (int k = 0; k < order; k++) {
            poles.add(new Complex(-low * Math.pow(high / low, order == 1 ? 0.5 : (double) k / (order - 1)), 0));
        }
        for (int round = 0; round < ROUNDS; round++) {
            poles = relocated(poles);
        }
        return residues(poles);
    }

    private static int size(List<Complex> poles) {
        return poles.stream().mapToInt(p -> p.getImaginary() == 0 ? 1 : 2).sum();
    }

    /** Partial fractions at a frequency, two real unknowns a complex pair, and 1 behind them. */
    private static Complex[] basis(List<Complex> poles, double omega) {
        Complex[] row = new Complex[size(poles) + 1];
        Complex s = new Complex(0, omega);
        int at = 0;
        for (Complex p : poles) {
            Complex one = s.subtract(p).reciprocal();
            if (p.getImaginary() == 0) {
                row[at++] = one;
            } else {
                Complex other = s.subtract(p.conjugate()).reciprocal();
                row[at++] = one.add(other);
                row[at++] = one.subtract(other).multiply(Complex.I);
            }
        }
        row[at] = Complex.ONE;
        return row;
    }

    private List<Complex> relocated(List<Complex> poles) {
        int n = size(poles) + 1;
        int count = omega.length;
        Complex[][] bases = new Complex[count][];
        for (int f = 0; f < count; f++) {
            bases[f] = basis(poles, omega[f]);
        }
        double[][] rows = new double[values.length * n + 1][];
        double scale = 0;
        for (int e = 0; e < values.length; e++) {
            double[][] block = new double[2 * count][2 * n];
            for (int f = 0; f < count; f++) {
                double w = weights[e][f];
                scale += values[e][f].abs() * w * values[e][f].abs() * w;
                for (int c = 0; c < n; c++) {
                    Complex own = bases[f][c].multiply(w);
                    Complex moved = own.multiply(values[e][f]).negate();
                    block[2 * f][c] = own.getReal();
                    block[2 * f + 1][c] = own.getImaginary();
                    block[2 * f][n + c] = moved.getReal();
                    block[2 * f + 1][n + c] = moved.getImaginary();
                }
            }
            // Only the part that the residues of this function cannot take is left to the weighting function.
            RealMatrix r = new QRDecomposition(new Array2DRowRealMatrix(block, false)).getR();
            for (int k = 0; k < n; k++) {
                rows[e * n + k] = r.getSubMatrix(n + k, n + k, n, 2 * n - 1).getRow(0);
            }
        }
        scale = Math.sqrt(scale) / count;
        double[] sum = new double[n];
        for (int f = 0; f < count; f++) {
            for (int c = 0; c < n; c++) {
                sum[c] += bases[f][c].getReal() * scale;
            }
        }
        rows[rows.length - 1] = sum;
        double[] right = new double[rows.length];
        right[right.length - 1] = count * scale;
        double[] x = leastSquares(rows, right);
        double d = Math.abs(x[n - 1]) > 1e-6 ? x[n - 1] : Math.copySign(1e-6, x[n - 1]);
        return zeros(poles, x, d);
    }

    /** Zeros of the weighting function, turned into the stable half of the plane. */
    private static List<Complex> zeros(List<Complex> poles, double[] x, double d) {
        int n = size(poles);
        double[][] a = new double[n][n];
        int at = 0;
        for (Complex p : poles) {
            boolean pair = p.getImaginary() != 0;
            for (int c = 0; c < n; c++) {
                a[at][c] -= (pair ? 2 : 1) * x[c] / d;
            }
            a[at][at] += p.getReal();
            if (pair) {
                a[at][at + 1] += p.getImaginary();
                a[at + 1][at] -= p.getImaginary();
                a[at + 1][at + 1] += p.getReal();
            }
            at += pair ? 2 : 1;
        }
        // Of a matrix that is diagonal but for rounding the decomposition of commons-math makes pairs of what is real.
        EigenDecomposition_F64<DMatrixRMaj> eigen = DecompositionFactory_DDRM.eig(n, false);
        if (!eigen.decompose(new DMatrixRMaj(a))) {
            throw new IllegalArgumentException("the zeros of the weighting function are not found");
        }
        List<Complex> found = new ArrayList<>();
        for (int k = 0; k < n; k++) {
            double re = -Math.abs(eigen.getEigenvalue(k).getReal());
            double im = eigen.getEigenvalue(k).getImaginary();
            double least = REAL * Math.hypot(re, im);
            if (Math.abs(im) <= least) {
                found.add(new Complex(re, 0));
            } else if (im > 0) {
                // A pair on the axis itself would never die away.
                found.add(new Complex(Math.min(re, -least), im));
            }
        }
        return found;
    }

    private Result residues(List<Complex> poles) {
        int n = size(poles) + 1;
        List<Double> constants = new ArrayList<>();
        List<List<Complex>> residues = new ArrayList<>();
        for (int e = 0; e < values.length; e++) {
            double[][] rows = new double[2 * omega.length][n];
            double[] right = new double[2 * omega.length];
            for (int f = 0; f < omega.length; f++) {
                Complex[] basis = basis(poles, omega[f]);
                for (int c = 0; c < n; c++) {
                    rows[2 * f][c] = basis[c].getReal() * weights[e][f];
                    rows[2 * f + 1][c] = basis[c].getImaginary() * weights[e][f];
                }
                right[2 * f] = values[e][f].getReal() * weights[e][f];
                right[2 * f + 1] = values[e][f].getImaginary() * weights[e][f];
            }
            double[] x = leastSquares(rows, right);
            List<Complex> own = new ArrayList<>();
            int at = 0;
            for (Complex p : poles) {
                boolean pair = p.getImaginary() != 0;
                own.add(new Complex(x[at], pair ? x[at + 1] : 0));
                at += pair ? 2 : 1;
            }
            residues.add(own);
            constants.add(x[n - 1]);
        }
        return new Result(poles, constants, residues);
    }

    /** Columns are brought to one length first, since partial fractions at low and high poles differ by decades. */
    private static double[] leastSquares(double[][] rows, double[] right) {
        int n = rows[0].length;
        double[] norm = new double[n];
        for (double[] row : rows) {
            for (int c = 0; c < n; c++) {
                norm[c] += row[c] * row[c];
            }
        }
        double[][] scaled = new double[rows.length][n];
        for (int r = 0; r < rows.length; r++) {
            for (int c = 0; c < n; c++) {
                scaled[r][c] = norm[c] > 0 ? rows[r][c] / Math.sqrt(norm[c]) : 0;
            }
        }
        double[] x = new QRDecomposition(new Array2DRowRealMatrix(scaled, false), 1e-13)
                .getSolver()
                .solve(new ArrayRealVector(right, false))
                .toArray();
        for (int c = 0; c < n; c++) {
            x[c] = norm[c] > 0 ? x[c] / Math.sqrt(norm[c]) : 0;
        }
        return x;
    }
}
