package earthing.network;

import earthing.quantity.Source;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.factory.DecompositionFactory_DDRM;

/**
 * A lossless line of one or more parallel conductors over earth on which all waves travel at one speed, as they do on
 * overhead conductors over perfectly conducting ground. At each end, with v and i the voltages to earth and the currents
 * into the line, {@code i(t) = Y v(t) − h(t)} and {@code h(t) = Y v'(t − τ) + i'(t − τ)}, where the primes belong to the
 * other end, Y is the inverse of the surge impedances and τ the time of travel (method of characteristics).
 *
 * <p>No attenuation, no distortion, no corona: each of them would lower and flatten what arrives.
 */
public final class LosslessLine {

    /** Source of the method. */
    public static final Source SOURCE = Source.publication(
            "L. Bergeron, Du coup de bélier en hydraulique au coup de foudre en électricité, Dunod 1950;"
                    + " H. W. Dommel, Digital computer solution of electromagnetic transients, IEEE Trans. PAS 88 (1969)"
                    + " 388-399",
            "equations for the lossless line",
            Source.Status.FROM_MEMORY);

    private final double[][] impedance;
    private final SymmetricMatrix admittance;
    private final double delay;

    private LosslessLine(double[][] impedance, double delay) {
        if (!(delay > 0) || !Double.isFinite(delay)) {
            throw new IllegalArgumentException("time of travel must be > 0 s and finite; have " + delay);
        }
        int n = impedance.length;
        if (n == 0) {
            throw new IllegalArgumentException("a line needs at least one conductor");
        }
        DMatrixRMaj definite = new DMatrixRMaj(n, n);
        for (int i = 0; i < n; i++) {
            if (impedance[i].length != n) {
                throw new IllegalArgumentException("surge impedances must form a square matrix");
            }
            for (int j = 0; j < n; j++) {
                if (!(Math.abs(impedance[i][j] - impedance[j][i]) <= 1e-9 * Math.abs(impedance[i][i]))) {
                    throw new IllegalArgumentException(
                            "surge impedances must be symmetric; have " + impedance[i][j] + " and " + impedance[j][i]);
                }
                definite.set(i, j, impedance[i][j]);
            }
            if (!(impedance[i][i] > 0) || !Double.isFinite(impedance[i][i])) {
                throw new IllegalArgumentException(
                        "surge impedance must be > 0 ohm and finite; have " + impedance[i][i]);
            }
        }
        if (!DecompositionFactory_DDRM.chol(n, true).decompose(definite)) {
            throw new IllegalArgumentException("own and mutual surge impedances are together not positive definite");
        }
        this.impedance = impedance;
        this.admittance = SymmetricMatrix.invert(impedance, "the surge impedances of a line")
                .matrix();
        this.delay = delay;
    }

    /**
     * One conductor.
     *
     * @param surgeImpedance Z [Ω], above 0
     * @param delay time of travel τ [s], above 0
     * @return the line
     */
    public static LosslessLine single(double surgeImpedance, double delay) {
        return new LosslessLine(new double[][] {{surgeImpedance}}, delay);
    }

    /**
     * Several conductors.
     *
     * @param surgeImpedances own and mutual surge impedances [Ω], symmetric and positive definite
     * @param delay time of travel τ [s], above 0
     * @return the line
     */
    public static LosslessLine of(double[][] surgeImpedances, double delay) {
        double[][] copy = new double[surgeImpedances.length][];
        for (int i = 0; i < copy.length; i++) {
            copy[i] = surgeImpedances[i].clone();
        }
        return new LosslessLine(copy, delay);
    }

    /**
     * Number of conductors.
     *
     * @return 1 or more
     */
    public int conductors() {
        return impedance.length;
    }

    /**
     * Own or mutual surge impedance.
     *
     * @param i conductor from 0
     * @param j conductor from 0
     * @return Z [Ω]
     */
    public double surgeImpedance(int i, int j) {
        return impedance[i][j];
    }

    /**
     * Entry of the inverse of the surge impedances.
     *
     * @param i conductor from 0
     * @param j conductor from 0
     * @return Y [S]
     */
    public double surgeAdmittance(int i, int j) {
        return admittance.get(i, j);
    }

    /**
     * Time of travel from end to end.
     *
     * @return τ [s]
     */
    public double delay() {
        return delay;
    }
}
