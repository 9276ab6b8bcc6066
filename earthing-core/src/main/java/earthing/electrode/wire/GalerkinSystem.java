package earthing.electrode.wire;

import java.util.stream.IntStream;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.CommonOps_DDRM;
import org.ejml.dense.row.factory.LinearSolverFactory_DDRM;
import org.ejml.interfaces.linsol.LinearSolverDense;

/** Symmetric, positive definite system of the mean potentials of all elements. */
final class GalerkinSystem {

    private static final int PARALLEL_FROM = 120;

    private final DMatrixRMaj coefficients;
    private final int[] electrode;
    private final int electrodes;

    /** Currents of all elements per volt on each electrode, and what they sum up to. */
    static final class Solution {
        final double[][] currents;
        final double[][] conductances;
        final double residual;
        final double condition;

        private Solution(double[][] currents, double[][] conductances, double residual, double condition) {
            this.currents = currents;
            this.conductances = conductances;
            this.residual = residual;
            this.condition = condition;
        }
    }

    private GalerkinSystem(DMatrixRMaj coefficients, int[] electrode, int electrodes) {
        this.coefficients = coefficients;
        this.electrode = electrode;
        this.electrodes = electrodes;
    }

    static GalerkinSystem of(Mesh mesh, PairIntegral integral, int[] electrode, int electrodes) {
        int n = mesh.size;
        DMatrixRMaj matrix = new DMatrixRMaj(n, n);
        double[] data = matrix.data;
        IntStream rows = IntStream.range(0, n);
        if (n >= PARALLEL_FROM) {
            rows = rows.parallel();
        }
        int[] firstLike = EqualPairs.of(mesh);
        double[] means = new double[n * (n + 1) / 2];
        rows.forEach(i -> {
            ImageTerms room = new ImageTerms(); // once a row: no pair takes any of the heap
            int row = i * (i + 1) / 2;
            for (int j = 0; j <= i; j++) {
                if (firstLike.length == 0 || firstLike[row + j] == row + j) {
                    means[row + j] = integral.mean(i, j, room);
                }
            }
        });
        for (int i = 0; i < n; i++) {
            int row = i * (i + 1) / 2;
            for (int j = 0; j <= i; j++) {
                double mean = means[firstLike.length == 0 ? row + j : firstLike[row + j]];
                data[i * n + j] = mean;
                data[j * n + i] = mean;
            }
            data[i * n + i] += mesh.sleeve[i];
        }
        return new GalerkinSystem(matrix, electrode, electrodes);
    }

    /** Solves for one volt on each of the chosen electrodes in turn, the others absent. */
    Solution solve(boolean[] present) {
        int[] rows = IntStream.range(0, electrode.length)
                .filter(i -> present[electrode[i]])
                .toArray();
        int[] columns = IntStream.range(0, electrodes).filter(k -> present[k]).toArray();
        int n = rows.length;
        DMatrixRMaj a = coefficients;
        if (n < electrode.length) {
            a = new DMatrixRMaj(n, n);
            CommonOps_DDRM.extract(coefficients, rows, n, rows, n, a);
        }
        DMatrixRMaj b = new DMatrixRMaj(n, columns.length);
        for (int i = 0; i < n; i++) {
            for (int k = 0; k < columns.length; k++) {
                b.set(i, k, electrode[rows[i]] == columns[k] ? 1 : 0);
            }
        }
        LinearSolverDense<DMatrixRMaj> solver = LinearSolverFactory_DDRM.symmPosDef(n);
        if (!solver.setA(a.copy())) {
            throw new IllegalArgumentException("the bars cannot be solved: two of them probably overlap");
        }
        DMatrixRMaj x = new DMatrixRMaj(n, columns.length);
        solver.solve(b.copy(), x);
        DMatrixRMaj back = new DMatrixRMaj(n, columns.length);
        CommonOps_DDRM.mult(a, x, back);
        CommonOps_DDRM.subtractEquals(back, b);
        double[][] currents = new double[columns.length][electrode.length];
        double[][] conductances = new double[columns.length][columns.length];
        for (int k = 0; k < columns.length; k++) {
            for (int i = 0; i < n; i++) {
                currents[k][rows[i]] = x.get(i, k);
            }
            for (int m = 0; m < columns.length; m++) {
                for (int i = 0; i < n; i++) {
                    conductances[m][k] += electrode[rows[i]] == columns[m] ? x.get(i, k) : 0;
                }
            }
        }
        return new Solution(
                currents, symmetric(conductances), CommonOps_DDRM.elementMaxAbs(back), condition(a, solver));
    }

    /** Power that given currents of the elements lose [V·A]. */
    double loss(double[] currents) {
        int n = coefficients.numRows;
        double sum = 0;
        for (int i = 0; i < n; i++) {
            if (currents[i] != 0) {
                double inner = 0;
                for (int j = 0; j < n; j++) {
                    inner += coefficients.data[i * n + j] * currents[j];
                }
                sum += currents[i] * inner;
            }
        }
        return sum;
    }

    static double[][] symmetric(double[][] matrix) {
        for (int i = 0; i < matrix.length; i++) {
            for (int j = 0; j < i; j++) {
                double mean = (matrix[i][j] + matrix[j][i]) / 2;
                matrix[i][j] = mean;
                matrix[j][i] = mean;
            }
        }
        return matrix;
    }

    /** Condition in the 1-norm, the norm of the inverse by Hager's estimate. */
    private static double condition(DMatrixRMaj a, LinearSolverDense<DMatrixRMaj> solver) {
        int n = a.numRows;
        double norm = 0;
        for (int i = 0; i < n; i++) {
            double sum = 0;
            for (int j = 0; j < n; j++) {
                sum += Math.abs(a.data[i * n + j]);
            }
            norm = Math.max(norm, sum);
        }
        DMatrixRMaj x = new DMatrixRMaj(n, 1);
        DMatrixRMaj y = new DMatrixRMaj(n, 1);
        DMatrixRMaj z = new DMatrixRMaj(n, 1);
        CommonOps_DDRM.fill(x, 1.0 / n);
        double estimate = 0;
        for (int step = 0; step < 5; step++) {
            solver.solve(x.copy(), y);
            double sum = CommonOps_DDRM.elementSumAbs(y);
            if (!(sum > estimate)) {
                break;
            }
            estimate = sum;
            for (int i = 0; i < n; i++) {
                x.data[i] = Math.signum(y.data[i]);
            }
            solver.solve(x, z);
            int largest = 0;
            for (int i = 1; i < n; i++) {
                largest = Math.abs(z.data[i]) > Math.abs(z.data[largest]) ? i : largest;
            }
            CommonOps_DDRM.fill(x, 0);
            x.data[largest] = 1;
        }
        return norm * estimate;
    }
}
