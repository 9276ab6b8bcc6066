package earthing.network;

/**
 * Inverts a real symmetric matrix by A = UᵀDU without exchange of rows, in place and by rows: n³/2 multiplications, all
 * in loops over contiguous rows that the compiler turns into vector instructions. Stable for a positive definite matrix
 * (N. J. Higham, Accuracy and Stability of Numerical Algorithms, 2nd ed., SIAM 2002, chapter 10, from memory). Where a
 * border of zeros on the diagonal follows a positive definite part, it holds as long as no pivot is small.
 */
final class SymmetricInverse {

    private SymmetricInverse() {}

    /**
     * Factorises: afterwards the rows hold D on the diagonal and DU right of it. Only the upper triangle is read.
     *
     * @param a rows, at most {@code n} used
     * @param smallest least admitted magnitude of a pivot
     * @return whether all pivots were admitted
     */
    static boolean factorise(double[][] a, double smallest) {
        int n = a.length;
        int k = 0;
        for (; k + 3 < n; k += 4) {
            for (int p = k; p < k + 4; p++) {
                if (!(Math.abs(a[p][p]) > smallest)) {
                    return false;
                }
                for (int r = p + 1; r < k + 4; r++) {
                    addRow(a[r], -a[p][r] / a[p][p], a[p], r, n);
                }
            }
            double[] r0 = a[k];
            double[] r1 = a[k + 1];
            double[] r2 = a[k + 2];
            double[] r3 = a[k + 3];
            for (int i = k + 4; i < n; i++) {
                addRows(
                        a[i],
                        -r0[i] / r0[k],
                        r0,
                        -r1[i] / r1[k + 1],
                        r1,
                        -r2[i] / r2[k + 2],
                        r2,
                        -r3[i] / r3[k + 3],
                        r3,
                        i,
                        n);
            }
        }
        for (; k < n; k++) {
            if (!(Math.abs(a[k][k]) > smallest)) {
                return false;
            }
            for (int r = k + 1; r < n; r++) {
                addRow(a[r], -a[k][r] / a[k][k], a[k], r, n);
            }
        }
        return true;
    }

    /**
     * The inverse from the factors, both triangles filled.
     *
     * @param a what {@link #factorise} left
     * @return rows of the inverse
     */
    static double[][] invert(double[][] a) {
        int n = a.length;
        // The inverse of Uᵀ, lower triangular: row r is the unit vector less the sum over k < r of U[k][r] times row k.
        double[][] w = new double[n][n];
        for (int k = 0; k < n; k++) {
            double[] u = a[k];
            double reciprocal = 1 / u[k];
            for (int j = k + 1; j < n; j++) {
                u[j] *= reciprocal;
            }
        }
        for (int r = 0; r < n; r++) {
            double[] row = w[r];
            int k = 0;
            for (; k + 3 < r; k += 4) {
                addRows(
                        row,
                        -a[k][r],
                        w[k],
                        -a[k + 1][r],
                        w[k + 1],
                        -a[k + 2][r],
                        w[k + 2],
                        -a[k + 3][r],
                        w[k + 3],
                        0,
                        k + 4);
            }
            for (; k < r; k++) {
                addRow(row, -a[k][r], w[k], 0, k + 1);
            }
            row[r] = 1;
        }
        // A⁻¹ = Σ over k of w[k]ᵀ w[k] / D[k], lower triangle; then mirrored.
        double[][] x = new double[n][n];
        for (int i = 0; i < n; i++) {
            double[] row = x[i];
            int k = i;
            for (; k + 3 < n; k += 4) {
                addRows(
                        row,
                        w[k][i] / a[k][k],
                        w[k],
                        w[k + 1][i] / a[k + 1][k + 1],
                        w[k + 1],
                        w[k + 2][i] / a[k + 2][k + 2],
                        w[k + 2],
                        w[k + 3][i] / a[k + 3][k + 3],
                        w[k + 3],
                        0,
                        i + 1);
            }
            for (; k < n; k++) {
                addRow(row, w[k][i] / a[k][k], w[k], 0, i + 1);
            }
            for (int j = 0; j < i; j++) {
                x[j][i] = row[j];
            }
        }
        return x;
    }

    private static void addRow(double[] y, double f, double[] x, int from, int to) {
        for (int j = from; j < to; j++) {
            y[j] += f * x[j];
        }
    }

    private static void addRows(
            double[] y,
            double f0,
            double[] x0,
            double f1,
            double[] x1,
            double f2,
            double[] x2,
            double f3,
            double[] x3,
            int from,
            int to) {
        for (int j = from; j < to; j++) {
            y[j] += (f0 * x0[j] + f1 * x1[j]) + (f2 * x2[j] + f3 * x3[j]);
        }
    }
}
