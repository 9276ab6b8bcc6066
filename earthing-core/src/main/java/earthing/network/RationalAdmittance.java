package earthing.network;

import java.util.Arrays;
import java.util.List;
import org.apache.commons.math3.complex.Complex;

/**
 * Own and mutual admittances of several ports as rational functions with common poles, Y(s) = G + Σ R_k/(s − p_k): buried
 * electrodes over frequency, or anything else that was fitted. Passive: Y dissipates at every frequency, which is looked at
 * from far below the lowest to far above the highest pole and at infinity when it is made.
 */
public final class RationalAdmittance {

    /** Dissipation below this part of the own admittances, with negative sign, is rounding. */
    private static final double ROUNDING = 1e-9;

    private static final double PER_DECADE = 25;
    private static final double BEYOND = 1e3;

    private final double[][] constant;
    private final List<Term> terms;
    private final double[][] resistances;

    /** A pole with its residues; a complex one stands for the pair with its conjugate. */
    static final class Term {

        private final Complex pole;
        private final Complex[][] residue;

        Term(Complex pole, Complex[][] residue) {
            this.pole = pole;
            this.residue = residue;
        }

        Complex pole() {
            return pole;
        }

        boolean pair() {
            return pole.getImaginary() != 0;
        }

        Complex residue(int i, int j) {
            return residue[i][j];
        }
    }

    private RationalAdmittance(double[][] constant, List<Term> terms) {
        this.constant = constant;
        this.terms = terms;
        this.resistances = atRest();
    }

    /**
     * Takes a fit over.
     *
     * @param constant G [S], symmetric
     * @param poles poles [rad/s], real parts below 0, imaginary parts at least 0
     * @param residues R at each pole [S·rad/s], symmetric, real at real poles
     * @return the admittance
     * @throws IllegalArgumentException when a pole is not stable, a matrix not symmetric, or the whole not passive
     */
    public static RationalAdmittance of(double[][] constant, List<Complex> poles, List<Complex[][]> residues) {
        int n = constant.length;
        if (n == 0 || residues.size() != poles.size()) {
            throw new IllegalArgumentException(
                    "need residues of every pole; have " + residues.size() + " of " + poles.size());
        }
        Term[] terms = new Term[poles.size()];
        for (int k = 0; k < terms.length; k++) {
            Complex pole = poles.get(k);
            if (!(pole.getReal() < 0) || !(pole.getImaginary() >= 0)) {
                throw new IllegalArgumentException("a pole must lie left of the imaginary axis, one of each pair above"
                        + " the real one; have " + pole);
            }
            Complex[][] residue = new Complex[n][n];
            for (int i = 0; i < n; i++) {
                for (int j = 0; j < n; j++) {
                    Complex r = residues.get(k)[i][j];
                    if (!r.equals(residues.get(k)[j][i]) || (pole.getImaginary() == 0 && r.getImaginary() != 0)) {
                        throw new IllegalArgumentException(
                                "residues must be symmetric, and real at a real pole; have " + r);
                    }
                    residue[i][j] = r;
                }
            }
            terms[k] = new Term(pole, residue);
        }
        double[][] g = new double[n][];
        for (int i = 0; i < n; i++) {
            g[i] = constant[i].clone();
        }
        RationalAdmittance made = new RationalAdmittance(g, List.of(terms));
        made.requirePassive();
        return made;
    }

    private void requirePassive() {
        double lowest = Double.POSITIVE_INFINITY;
        double highest = 0;
        for (Term term : terms) {
            lowest = Math.min(lowest, term.pole().abs());
            highest = Math.max(highest, term.pole().abs());
        }
        double ratio = Math.pow(10, 1 / PER_DECADE);
        double[] own = new double[ports()];
        for (double w = lowest / BEYOND; w <= highest * BEYOND; w *= ratio) {
            Complex[][] y = at(w);
            for (int i = 0; i < own.length; i++) {
                own[i] = y[i][i].abs();
            }
            if (!dissipates(y, own)) {
                throw new IllegalArgumentException(
                        "the admittances are not passive: they give energy at " + w / (2 * Math.PI) + " Hz");
            }
        }
        Complex[][] far = new Complex[own.length][own.length];
        for (int i = 0; i < own.length; i++) {
            for (int j = 0; j < own.length; j++) {
                far[i][j] = new Complex(constant[i][j], 0);
            }
        }
        if (!dissipates(far, own)) {
            throw new IllegalArgumentException("the admittances are not passive: they give energy at high frequency");
        }
    }

    /** Whether the real part is positive beside the own admittances. */
    private static boolean dissipates(Complex[][] y, double[] own) {
        int n = own.length;
        double[][] scaled = new double[n][n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                scaled[i][j] = y[i][j].getReal() / Math.sqrt(own[i] * own[j]) + (i == j ? ROUNDING : 0);
            }
        }
        boolean positive = SymmetricInverse.factorise(scaled, 0);
        for (int i = 0; i < n; i++) {
            positive &= scaled[i][i] > 0;
        }
        return positive;
    }

    /**
     * Number of ports.
     *
     * @return size of the matrices
     */
    public int ports() {
        return constant.length;
    }

    /**
     * Number of poles, each of a pair counted.
     *
     * @return order of the functions
     */
    public int order() {
        return terms.stream().mapToInt(t -> t.pair() ? 2 : 1).sum();
    }

    List<Term> terms() {
        return terms;
    }

    double constant(int i, int j) {
        return constant[i][j];
    }

    /**
     * Admittances at a frequency.
     *
     * @param omega angular frequency [rad/s], ≥ 0
     * @return Y [S], symmetric
     */
    public Complex[][] at(double omega) {
        int n = ports();
        Complex[][] y = new Complex[n][n];
        Complex s = new Complex(0, omega);
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                y[i][j] = new Complex(constant[i][j], 0);
            }
        }
        for (Term term : terms) {
            Complex one = s.subtract(term.pole()).reciprocal();
            Complex other = s.subtract(term.pole().conjugate()).reciprocal();
            for (int i = 0; i < n; i++) {
                for (int j = 0; j < n; j++) {
                    Complex r = term.residue(i, j);
                    y[i][j] = y[i][j].add(r.multiply(one));
                    if (term.pair()) {
                        y[i][j] = y[i][j].add(r.conjugate().multiply(other));
                    }
                }
            }
        }
        return y;
    }

    /**
     * Own and mutual resistances at frequency 0.
     *
     * @return inverse of Y(0) [Ω]
     */
    public double[][] resistances() {
        return Arrays.stream(resistances).map(double[]::clone).toArray(double[][]::new);
    }

    double resistance(int i, int j) {
        return resistances[i][j];
    }

    private double[][] atRest() {
        Complex[][] y = at(0);
        int n = y.length;
        double[][] g = new double[n][n];
        for (int i = 0; i < n; i++) {
            int row = i;
            Arrays.setAll(g[i], j -> y[row][j].getReal());
        }
        SymmetricMatrix inverse =
                SymmetricMatrix.invert(g, "admittances at frequency 0").matrix();
        double[][] r = new double[n][n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                r[i][j] = inverse.get(i, j);
            }
        }
        return r;
    }
}
