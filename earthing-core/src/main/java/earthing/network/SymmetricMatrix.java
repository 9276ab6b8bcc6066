package earthing.network;

import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.CommonOps_DDRM;
import org.ejml.dense.row.NormOps_DDRM;
import org.ejml.dense.row.factory.LinearSolverFactory_DDRM;
import org.ejml.interfaces.linsol.LinearSolverDense;

/** A dense symmetric matrix kept by rows, for products in the inner loop of the solution in time. */
final class SymmetricMatrix {

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
        DMatrixRMaj scaled = new DMatrixRMaj(n, n);
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                scaled.unsafe_set(i, j, a[i][j] * scale[i] * scale[j]);
            }
        }
        LinearSolverDense<DMatrixRMaj> solver = LinearSolverFactory_DDRM.lu(n);
        DMatrixRMaj inverse = new DMatrixRMaj(n, n);
        boolean regular = solver.setA(scaled.copy());
        if (regular) {
            solver.invert(inverse);
        }
        double condition =
                regular ? NormOps_DDRM.inducedP1(scaled) * NormOps_DDRM.inducedP1(inverse) : Double.POSITIVE_INFINITY;
        if (!(condition < 1e15)) {
            throw new IllegalArgumentException(
                    "cannot be computed: " + what + " is singular to working precision (condition " + condition + ")");
        }
        DMatrixRMaj product = new DMatrixRMaj(n, n);
        CommonOps_DDRM.mult(scaled, inverse, product);
        for (int i = 0; i < n; i++) {
            product.unsafe_set(i, i, product.unsafe_get(i, i) - 1);
        }
        double residual = CommonOps_DDRM.elementMaxAbs(product);
        double[][] rows = new double[n][n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                rows[i][j] = 0.5 * (inverse.unsafe_get(i, j) + inverse.unsafe_get(j, i)) * scale[i] * scale[j];
            }
        }
        return new Inverse(new SymmetricMatrix(rows), condition, residual);
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
