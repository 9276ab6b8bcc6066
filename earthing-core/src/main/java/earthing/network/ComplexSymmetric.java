package earthing.network;

/**
 * Elimination in a complex symmetric matrix A = UᵀDU without exchange of rows, real and imaginary parts in rows of their
 * own so that the loops over rows become vector instructions. Where real and imaginary part are both positive definite,
 * as those of coupled lossy inductances, it is stable: N. J. Higham, Factorizing complex symmetric matrices with positive
 * definite real and imaginary parts, Math. Comp. 67 (1998) 1591-1599 (from memory). Elsewhere the caller must look at
 * the residual.
 */
final class ComplexSymmetric {

    final double[][] re;
    final double[][] im;

    ComplexSymmetric(int n) {
        re = new double[n][n];
        im = new double[n][n];
    }

    int size() {
        return re.length;
    }

    void add(int row, int col, double real, double imaginary) {
        if (row >= 0 && col >= 0) {
            re[row][col] += real;
            im[row][col] += imaginary;
        }
    }

    ComplexSymmetric copy() {
        ComplexSymmetric copy = new ComplexSymmetric(0, size());
        for (int i = 0; i < size(); i++) {
            copy.re[i] = re[i].clone();
            copy.im[i] = im[i].clone();
        }
        return copy;
    }

    private ComplexSymmetric(int columns, int rows) {
        re = new double[rows][columns];
        im = new double[rows][columns];
    }

    /** Replaces the upper triangle by the factors: 1/D on the diagonal, U right of it. False if a pivot is 0. */
    boolean factorise() {
        int n = size();
        for (int k = 0; k < n; k++) {
            double[] kr = re[k];
            double[] ki = im[k];
            double size = kr[k] * kr[k] + ki[k] * ki[k];
            if (!(size > 0) || !Double.isFinite(size)) {
                return false;
            }
            double pr = kr[k] / size;
            double pi = -ki[k] / size;
            for (int i = k + 1; i < n; i++) {
                double fr = kr[i] * pr - ki[i] * pi;
                double fi = kr[i] * pi + ki[i] * pr;
                if (fr != 0 || fi != 0) {
                    addRow(re[i], im[i], -fr, -fi, kr, ki, i, n);
                }
            }
            for (int j = k + 1; j < n; j++) {
                double r = kr[j];
                kr[j] = r * pr - ki[j] * pi;
                ki[j] = r * pi + ki[j] * pr;
            }
            kr[k] = pr;
            ki[k] = pi;
        }
        return true;
    }

    /** The inverse from the factors, both triangles filled. */
    ComplexSymmetric inverse() {
        int n = size();
        // Inverse of Uᵀ, lower triangular, by rows.
        ComplexSymmetric w = new ComplexSymmetric(n);
        for (int r = 0; r < n; r++) {
            w.re[r][r] = 1;
            for (int k = 0; k < r; k++) {
                addRow(w.re[r], w.im[r], -re[k][r], -im[k][r], w.re[k], w.im[k], 0, k + 1);
            }
        }
        ComplexSymmetric x = new ComplexSymmetric(n);
        for (int i = 0; i < n; i++) {
            for (int k = i; k < n; k++) {
                double wr = w.re[k][i];
                double wi = w.im[k][i];
                addRow(
                        x.re[i],
                        x.im[i],
                        wr * re[k][k] - wi * im[k][k],
                        wr * im[k][k] + wi * re[k][k],
                        w.re[k],
                        w.im[k],
                        0,
                        i + 1);
            }
            for (int j = 0; j < i; j++) {
                x.re[j][i] = x.re[i][j];
                x.im[j][i] = x.im[i][j];
            }
        }
        return x;
    }

    /** Solves with the factors; the right-hand side becomes the solution. */
    void solve(double[] real, double[] imaginary) {
        int n = size();
        for (int k = 0; k < n; k++) {
            if (real[k] != 0 || imaginary[k] != 0) {
                addRow(real, imaginary, -real[k], -imaginary[k], re[k], im[k], k + 1, n);
            }
        }
        for (int k = n - 1; k >= 0; k--) {
            double r = real[k] * re[k][k] - imaginary[k] * im[k][k];
            double i = real[k] * im[k][k] + imaginary[k] * re[k][k];
            for (int j = k + 1; j < n; j++) {
                r -= re[k][j] * real[j] - im[k][j] * imaginary[j];
                i -= re[k][j] * imaginary[j] + im[k][j] * real[j];
            }
            real[k] = r;
            imaginary[k] = i;
        }
    }

    /** Adds the product with a vector, rows serving as columns. */
    void addProduct(double[] xr, double[] xi, double[] yr, double[] yi) {
        for (int k = 0; k < size(); k++) {
            if (xr[k] != 0 || xi[k] != 0) {
                addRow(yr, yi, xr[k], xi[k], re[k], im[k], 0, size());
            }
        }
    }

    private static void addRow(
            double[] yr, double[] yi, double fr, double fi, double[] xr, double[] xi, int from, int to) {
        for (int j = from; j < to; j++) {
            yr[j] += fr * xr[j] - fi * xi[j];
            yi[j] += fr * xi[j] + fi * xr[j];
        }
    }
}
