package earthing.network;

/**
 * Inverses and solutions with complex symmetric matrices of other rooms, by the elimination of this one. Matrices stand in
 * rows, real and imaginary parts in turn.
 */
public final class SymmetricPhasors {

    private SymmetricPhasors() {}

    /**
     * The inverse.
     *
     * @param values the symmetric matrix, 2·n·n numbers
     * @param n rows
     * @return its inverse in the same order
     * @throws IllegalArgumentException if it is singular to working precision
     */
    public static double[] inverse(double[] values, int n) {
        ComplexSymmetric inverse = ComplexEquations.inverse(matrix(values, n), "a complex symmetric matrix");
        double[] result = new double[2 * n * n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                result[2 * (i * n + j)] = inverse.re[i][j];
                result[2 * (i * n + j) + 1] = inverse.im[i][j];
            }
        }
        return result;
    }

    /**
     * One column of the inverse.
     *
     * @param values the symmetric matrix, 2·n·n numbers
     * @param n rows
     * @param column which column
     * @return its n entries, real and imaginary parts in turn
     * @throws IllegalArgumentException if the matrix is singular to working precision
     */
    public static double[] column(double[] values, int n, int column) {
        double[] re = new double[n];
        double[] im = new double[n];
        re[column] = 1;
        ComplexEquations.solve(matrix(values, n), re, im);
        double[] result = new double[2 * n];
        for (int i = 0; i < n; i++) {
            result[2 * i] = re[i];
            result[2 * i + 1] = im[i];
        }
        return result;
    }

    private static ComplexSymmetric matrix(double[] values, int n) {
        if (values.length != 2 * n * n) {
            throw new IllegalArgumentException(
                    "a complex matrix of " + n + " rows has " + 2 * n * n + " numbers; have " + values.length);
        }
        ComplexSymmetric matrix = new ComplexSymmetric(n);
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                matrix.re[i][j] = values[2 * (i * n + j)];
                matrix.im[i][j] = values[2 * (i * n + j) + 1];
            }
        }
        return matrix;
    }
}
