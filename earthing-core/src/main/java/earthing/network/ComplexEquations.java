package earthing.network;

import org.ejml.data.ZMatrixRMaj;
import org.ejml.dense.row.factory.LinearSolverFactory_ZDRM;
import org.ejml.interfaces.linsol.LinearSolverDense;

/** Inverts and solves complex symmetric matrices; by elimination with exchange of rows where the plain one will not do. */
final class ComplexEquations {

    /** Above this a result without exchange of rows is not taken. */
    private static final double ADMITTED = 1e-10;

    private static final double SINGULAR = 1e-6;

    private ComplexEquations() {}

    /**
     * The inverse.
     *
     * @throws IllegalArgumentException if the matrix is singular to working precision
     */
    static ComplexSymmetric inverse(ComplexSymmetric a, String what) {
        ComplexSymmetric factors = a.copy();
        if (factors.factorise()) {
            ComplexSymmetric inverse = factors.inverse();
            if (residual(a, inverse) < ADMITTED) {
                return inverse;
            }
        }
        int n = a.size();
        LinearSolverDense<ZMatrixRMaj> solver = LinearSolverFactory_ZDRM.lu(n);
        // The solver's own quality figure looks at real parts only and calls a purely inductive matrix singular.
        boolean regular = solver.setA(dense(a));
        double residual = Double.NaN;
        ComplexSymmetric result = new ComplexSymmetric(n);
        if (regular) {
            ZMatrixRMaj inverse = new ZMatrixRMaj(n, n);
            solver.invert(inverse);
            for (int i = 0; i < n; i++) {
                for (int j = 0; j < n; j++) {
                    result.re[i][j] = inverse.data[2 * (i * n + j)];
                    result.im[i][j] = inverse.data[2 * (i * n + j) + 1];
                }
            }
            residual = residual(a, result);
        }
        if (!(residual < SINGULAR)) {
            throw new IllegalArgumentException(
                    "cannot be computed: " + what + " is singular to working precision (residual " + residual + ")");
        }
        return result;
    }

    /** Largest entry of A A⁻¹ z − z for z of ones and for z of alternating sign. */
    static double residual(ComplexSymmetric a, ComplexSymmetric inverse) {
        int n = a.size();
        double worst = 0;
        for (int sign = 1; sign >= -1; sign -= 2) {
            double[] z = new double[n];
            for (int i = 0; i < n; i++) {
                z[i] = i % 2 == 0 ? 1 : sign;
            }
            double[] xr = new double[n];
            double[] xi = new double[n];
            inverse.addProduct(z, new double[n], xr, xi);
            double[] br = new double[n];
            double[] bi = new double[n];
            a.addProduct(xr, xi, br, bi);
            for (int i = 0; i < n; i++) {
                double off = Math.abs(br[i] - z[i]) + Math.abs(bi[i]);
                worst = off <= worst ? worst : Double.isNaN(off) ? Double.POSITIVE_INFINITY : off;
            }
        }
        return worst;
    }

    /**
     * Solves; the right-hand side becomes the solution.
     *
     * @return the worst row: what is left over, as a part of the sum of the row's terms
     * @throws IllegalArgumentException if the network is singular to working precision
     */
    static double solve(ComplexSymmetric a, double[] re, double[] im) {
        int n = a.size();
        if (n == 0) {
            return 0;
        }
        double[] rightRe = re.clone();
        double[] rightIm = im.clone();
        ComplexSymmetric factors = a.copy();
        if (factors.factorise()) {
            factors.solve(re, im);
            double residual = residual(a, re, im, rightRe, rightIm);
            if (residual < ADMITTED) {
                return residual;
            }
        }
        LinearSolverDense<ZMatrixRMaj> solver = LinearSolverFactory_ZDRM.lu(n);
        if (!solver.setA(dense(a))) {
            throw new IllegalArgumentException("cannot be computed: the network is singular");
        }
        ZMatrixRMaj right = new ZMatrixRMaj(n, 1);
        for (int i = 0; i < n; i++) {
            right.set(i, 0, rightRe[i], rightIm[i]);
        }
        ZMatrixRMaj x = new ZMatrixRMaj(n, 1);
        solver.solve(right, x);
        for (int i = 0; i < n; i++) {
            re[i] = x.data[2 * i];
            im[i] = x.data[2 * i + 1];
        }
        double residual = residual(a, re, im, rightRe, rightIm);
        if (!(residual < SINGULAR)) {
            throw new IllegalArgumentException(
                    "cannot be computed: the network is singular to working precision (residual " + residual + ")");
        }
        return residual;
    }

    /** Row by row against the size of the row's own terms: siemens and pure numbers stand in one matrix. */
    static double residual(ComplexSymmetric a, double[] re, double[] im, double[] rightRe, double[] rightIm) {
        int n = a.size();
        double worst = 0;
        for (int i = 0; i < n; i++) {
            double leftRe = -rightRe[i];
            double leftIm = -rightIm[i];
            double terms = Math.abs(rightRe[i]) + Math.abs(rightIm[i]);
            double[] ar = a.re[i];
            double[] ai = a.im[i];
            for (int j = 0; j < n; j++) {
                leftRe += ar[j] * re[j] - ai[j] * im[j];
                leftIm += ar[j] * im[j] + ai[j] * re[j];
                terms += (Math.abs(ar[j]) + Math.abs(ai[j])) * (Math.abs(re[j]) + Math.abs(im[j]));
            }
            double off = Math.abs(leftRe) + Math.abs(leftIm);
            double part = terms > 0 ? off / terms : off;
            worst = part <= worst ? worst : Double.isNaN(part) ? Double.POSITIVE_INFINITY : part;
        }
        return worst;
    }

    private static ZMatrixRMaj dense(ComplexSymmetric a) {
        int n = a.size();
        ZMatrixRMaj dense = new ZMatrixRMaj(n, n);
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                dense.set(i, j, a.re[i][j], a.im[i][j]);
            }
        }
        return dense;
    }
}
