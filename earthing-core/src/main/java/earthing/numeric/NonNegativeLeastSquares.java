package earthing.numeric;

import java.util.Arrays;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.QRDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.SingularMatrixException;

/**
 * Least squares with unknowns that may not be negative: minimum of |A·x − b| over x ≥ 0, by the active-set method of
 * Lawson and Hanson (Solving Least Squares Problems, 1974, chapter 23).
 */
public final class NonNegativeLeastSquares {

    private static final double SMALL = 1e-12;

    private NonNegativeLeastSquares() {}

    /**
     * Solves the problem.
     *
     * @param rows coefficients, one array a row, all of one length; not changed
     * @param right right side, one value a row
     * @param enough |A·x − b| over |b| at which the search may end early [-], ≥ 0; 0 for the minimum itself
     * @return x, none negative
     */
    public static double[] solve(double[][] rows, double[] right, double enough) {
        if (!(enough >= 0)) {
            throw new IllegalArgumentException("the error at which to end must be >= 0; have " + enough);
        }
        if (rows.length == 0 || rows.length != right.length || rows[0].length == 0) {
            throw new IllegalArgumentException(
                    "need as many rows as values on the right; have " + rows.length + " and " + right.length);
        }
        int n = rows[0].length;
        RealMatrix a = new Array2DRowRealMatrix(rows);
        ArrayRealVector b = new ArrayRealVector(right);
        boolean[] free = new boolean[n];
        boolean[] barred = new boolean[n];
        double[] x = new double[n];
        double scale = Math.max(a.transpose().operate(b).getLInfNorm(), Double.MIN_NORMAL);
        for (int step = 0; step < 3 * n; step++) {
            ArrayRealVector left = b.subtract(a.operate(new ArrayRealVector(x)));
            if (left.getNorm() <= enough * b.getNorm()) {
                return x;
            }
            double[] pull = a.transpose().operate(left).toArray();
            int best = -1;
            for (int i = 0; i < n; i++) {
                boolean open = !free[i] && !barred[i] && pull[i] > SMALL * scale;
                if (open && (best < 0 || pull[i] > pull[best])) {
                    best = i;
                }
            }
            if (best < 0) {
                return x;
            }
            free[best] = true;
            double[] moved = settle(a, b, free, x);
            if (moved.length == 0 || !(moved[best] > 0)) {
                // Rounding alone pulled this unknown in: leave it out until others have moved.
                free[best] = false;
                barred[best] = true;
            } else {
                x = moved;
                Arrays.fill(barred, false);
            }
        }
        return x;
    }

    /** Solves for the free unknowns, dropping those that would turn negative; empty where they cannot be told apart. */
    private static double[] settle(RealMatrix a, ArrayRealVector b, boolean[] free, double[] start) {
        double[] x = start.clone();
        while (true) {
            int[] columns = columns(free);
            if (columns.length == 0) {
                return new double[free.length];
            }
            double[] wanted = new double[free.length];
            try {
                double[] found = new QRDecomposition(a.getSubMatrix(all(a.getRowDimension()), columns), 1e-13)
                        .getSolver()
                        .solve(b)
                        .toArray();
                for (int i = 0; i < columns.length; i++) {
                    wanted[columns[i]] = found[i];
                }
            } catch (SingularMatrixException dependent) {
                return new double[0];
            }
            double step = 1;
            for (int column : columns) {
                if (!(wanted[column] > 0)) {
                    step = Math.min(step, x[column] / (x[column] - wanted[column]));
                }
            }
            if (step == 1 && Arrays.stream(columns).allMatch(c -> wanted[c] > 0)) {
                return wanted;
            }
            for (int column : columns) {
                x[column] += step * (wanted[column] - x[column]);
                if (!(x[column] > 0) || (wanted[column] <= 0 && x[column] < SMALL)) {
                    x[column] = 0;
                    free[column] = false;
                }
            }
        }
    }

    private static int[] columns(boolean[] free) {
        int[] columns = new int[free.length];
        int count = 0;
        for (int i = 0; i < free.length; i++) {
            if (free[i]) {
                columns[count++] = i;
            }
        }
        return Arrays.copyOf(columns, count);
    }

    private static int[] all(int count) {
        int[] all = new int[count];
        Arrays.setAll(all, i -> i);
        return all;
    }
}
