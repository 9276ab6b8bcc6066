package earthing.network;

import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.factory.LinearSolverFactory_DDRM;
import org.ejml.interfaces.linsol.LinearSolverDense;

/** A dense symmetric matrix kept by rows, for products in the inner loop of the solution in time. */
final class SymmetricMatrix {

    /** Below this a pivot before a border of zeros lets the border lose too many digits. */
    private static final double SMALLEST_PIVOT_IN_BORDER = 1e-6;

    /** Above this the inverse without exchange of rows is not taken. */
    private static final double ADMITTED_RESIDUAL = 1e-9;

    private final double[][] rows;

    private SymmetricMatrix(double[][] rows) {
        this.rows = rows;
    }

    /** An inverse with the figures that tell its worth. */
    record Inverse(SymmetricMatrix matrix, double condition, double residual) {}

    /**
     * Inverts a symmetric matrix after scaling it to unit diagonal where the diagonal is not zero, so that siemens and
     * pure numbers do not meet in one pivot search.
     *
     * @throws IllegalArgumentException if the matrix is singular to working precision relative to its own scale
     */
    static Inverse invert(double[][] a, String what) {
        int n = a.length;
        double[] scale = new double[n];
        for (int i = 0; i < n; i++) {
            scale[i] = a[i][i] != 0 ? 1 / Math.sqrt(Math.abs(a[i][i])) : 0;
        }
        for (int i = 0; i < n; i++) {
            if (scale[i] == 0) {
                double largest = 0;
                for (int j = 0; j < n; j++) {
                    largest = Math.max(largest, Math.abs(a[i][j]) * (scale[j] == 0 ? 1 : scale[j]));
                }
                scale[i] = largest > 0 ? 1 / largest : 1;
            }
        }
        double[][] scaled = new double[n][n];
        boolean bordered = false;
        for (int i = 0; i < n; i++) {
            bordered |= a[i][i] == 0;
            for (int j = 0; j < n; j++) {
                scaled[i][j] = a[i][j] * scale[i] * scale[j];
            }
        }
        double[][] inverse = new double[0][];
        double residual = Double.POSITIVE_INFINITY;
        double[][] factors = new double[n][];
        for (int i = 0; i < n; i++) {
            factors[i] = scaled[i].clone();
        }
        if (SymmetricInverse.factorise(factors, bordered ? SMALLEST_PIVOT_IN_BORDER : 0)) {
            inverse = SymmetricInverse.invert(factors);
            residual = residual(scaled, inverse);
        }
        if (!(residual < ADMITTED_RESIDUAL)) {
            inverse = invertByExchange(scaled);
            residual = residual(scaled, inverse);
        }
        double condition = inverse.length == n ? rowSum(scaled) * rowSum(inverse) : Double.POSITIVE_INFINITY;
        if (!(condition < 1e15)) {
            throw new IllegalArgumentException(
                    "cannot be computed: " + what + " is singular to working precision (condition " + condition + ")");
        }
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                inverse[i][j] *= scale[i] * scale[j];
            }
        }
        return new Inverse(new SymmetricMatrix(inverse), condition, residual);
    }

    /** By elimination with exchange of rows, for what is not positive definite; empty if singular. */
    private static double[][] invertByExchange(double[][] scaled) {
        int n = scaled.length;
        LinearSolverDense<DMatrixRMaj> solver = LinearSolverFactory_DDRM.lu(n);
        if (!solver.setA(new DMatrixRMaj(scaled))) {
            return new double[0][];
        }
        DMatrixRMaj inverse = new DMatrixRMaj(n, n);
        solver.invert(inverse);
        double[][] rows = new double[n][n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                rows[i][j] = 0.5 * (inverse.unsafe_get(i, j) + inverse.unsafe_get(j, i));
            }
        }
        return rows;
    }

    /** Largest entry of A A⁻¹ z − z for z of ones and for z of alternating sign. */
    private static double residual(double[][] a, double[][] inverse) {
        int n = a.length;
        if (inverse.length != n) {
            return Double.POSITIVE_INFINITY;
        }
        double worst = 0;
        for (int sign = 1; sign >= -1; sign -= 2) {
            double[] z = new double[n];
            for (int i = 0; i < n; i++) {
                z[i] = i % 2 == 0 ? 1 : sign;
            }
            double[] x = new double[n];
            new SymmetricMatrix(inverse).addProduct(z, x);
            double[] back = new double[n];
            new SymmetricMatrix(a).addProduct(x, back);
            for (int i = 0; i < n; i++) {
                double off = Math.abs(back[i] - z[i]);
                worst = off <= worst ? worst : Double.isNaN(off) ? Double.POSITIVE_INFINITY : off;
            }
        }
        return worst;
    }

    /** The 1-norm of a symmetric matrix. */
    private static double rowSum(double[][] rows) {
        double worst = 0;
        for (double[] row : rows) {
            double sum = 0;
            for (double value : row) {
                sum += Math.abs(value);
            }
            worst = sum <= worst ? worst : Double.isNaN(sum) ? Double.POSITIVE_INFINITY : sum;
        }
        return worst;
    }

    double get(int i, int j) {
        return rows[i][j];
    }

    int size() {
        return rows.length;
    }

    /**
     * Adds the product with a vector: y += A x. Rows serve as columns, four at a time, which the compiler turns into
     * vector instructions; a row sum would not be.
     */
    void addProduct(double[] x, double[] y) {
        int n = rows.length;
        int k = 0;
        for (; k + 3 < n; k += 4) {
            double x0 = x[k];
            double x1 = x[k + 1];
            double x2 = x[k + 2];
            double x3 = x[k + 3];
            if (x0 == 0 && x1 == 0 && x2 == 0 && x3 == 0) {
                continue;
            }
            double[] r0 = rows[k];
            double[] r1 = rows[k + 1];
            double[] r2 = rows[k + 2];
            double[] r3 = rows[k + 3];
            for (int j = 0; j < n; j++) {
                y[j] += (x0 * r0[j] + x1 * r1[j]) + (x2 * r2[j] + x3 * r3[j]);
            }
        }
        for (; k < n; k++) {
            double x0 = x[k];
            double[] r0 = rows[k];
            for (int j = 0; j < n; j++) {
                y[j] += x0 * r0[j];
            }
        }
    }
}
