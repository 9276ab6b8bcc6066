package earthing.network;

import java.util.Arrays;
import org.apache.commons.math3.complex.Complex;

/**
 * A line of spans with an earth at the end of each, as a shield wire or a multi-earthed neutral. Solved by a recursion
 * from the far end, exact for any number of spans and any values.
 */
public final class FiniteLadder {

    private final Complex input;
    private final Complex[] potentials;
    private final Complex[] spanCurrents;

    private FiniteLadder(Complex input, Complex[] potentials, Complex[] spanCurrents) {
        this.input = input;
        this.potentials = potentials;
        this.spanCurrents = spanCurrents;
    }

    /**
     * A ladder of equal spans whose far end is open behind its last earth.
     *
     * @param spans number of spans, at least 1
     * @param span series impedance of a span [Ω]
     * @param earth impedance of each earth [Ω], not 0
     * @return the ladder for 1 V at its near end
     */
    public static FiniteLadder equal(int spans, Complex span, Complex earth) {
        if (!(spans >= 1)) {
            throw new IllegalArgumentException("a ladder needs at least 1 span; have " + spans);
        }
        Complex[] series = new Complex[spans];
        Complex[] shunt = new Complex[spans];
        Arrays.fill(series, span);
        Arrays.fill(shunt, earth);
        return of(series, shunt);
    }

    /**
     * A ladder of given spans.
     *
     * @param spans series impedance of each span from the near end [Ω], not 0
     * @param earths impedance of the earth at the end of each span [Ω], not 0
     * @return the ladder for 1 V at its near end
     * @throws IllegalArgumentException if the numbers differ or an impedance is 0 or not finite
     */
    public static FiniteLadder of(Complex[] spans, Complex[] earths) {
        int n = spans.length;
        if (n == 0 || earths.length != n) {
            throw new IllegalArgumentException(
                    "a ladder needs as many earths as spans, at least one; have " + n + " and " + earths.length);
        }
        // Seen from each node outwards: Y = 1/Z_earth + 1/(Z_span + 1/Y_next).
        double[] re = new double[n + 1];
        double[] im = new double[n + 1];
        double[] outRe = new double[n];
        double[] outIm = new double[n];
        for (int k = n - 1; k >= 0; k--) {
            check(spans[k], earths[k], k);
            double er = earths[k].getReal();
            double ei = earths[k].getImaginary();
            double e2 = er * er + ei * ei;
            double yr = er / e2 + re[k + 1];
            double yi = -ei / e2 + im[k + 1];
            outRe[k] = yr;
            outIm[k] = yi;
            // 1/(z + 1/y) = y/(1 + z y)
            double zr = spans[k].getReal();
            double zi = spans[k].getImaginary();
            double dr = 1 + zr * yr - zi * yi;
            double di = zr * yi + zi * yr;
            double d2 = dr * dr + di * di;
            re[k] = (yr * dr + yi * di) / d2;
            im[k] = (yi * dr - yr * di) / d2;
        }
        Complex[] potentials = new Complex[n + 1];
        Complex[] currents = new Complex[n];
        potentials[0] = Complex.ONE;
        double vr = 1;
        double vi = 0;
        for (int k = 0; k < n; k++) {
            double ir = vr * re[k] - vi * im[k];
            double ii = vr * im[k] + vi * re[k];
            currents[k] = new Complex(ir, ii);
            // The next potential from its own admittance: no difference of near-equal numbers.
            double y2 = outRe[k] * outRe[k] + outIm[k] * outIm[k];
            vr = (ir * outRe[k] + ii * outIm[k]) / y2;
            vi = (ii * outRe[k] - ir * outIm[k]) / y2;
            potentials[k + 1] = new Complex(vr, vi);
        }
        return new FiniteLadder(new Complex(re[0], im[0]).reciprocal(), potentials, currents);
    }

    private static void check(Complex span, Complex earth, int k) {
        if (!(span.abs() > 0) || !(earth.abs() > 0) || !Double.isFinite(span.abs()) || !Double.isFinite(earth.abs())) {
            throw new IllegalArgumentException(
                    "span " + (k + 1) + ": impedances must be finite and not 0; have " + span + ", " + earth);
        }
    }

    /**
     * Impedance seen at the near end; no earth stands there, the first span begins.
     *
     * @return impedance [Ω]
     */
    public Complex inputImpedance() {
        return input;
    }

    /**
     * Number of spans.
     *
     * @return at least 1
     */
    public int spans() {
        return spanCurrents.length;
    }

    /**
     * Potential of a node per volt at the near end.
     *
     * @param node 0 for the near end, k for the end of span k
     * @return ratio
     */
    public Complex potential(int node) {
        return potentials[node];
    }

    /**
     * Current in a span per volt at the near end.
     *
     * @param span index from 0
     * @return current per volt [S]
     */
    public Complex spanCurrent(int span) {
        return spanCurrents[span];
    }

    /**
     * Input impedance of an endless ladder, Z/2 + √(Z²/4 + Z·R), as a limit and check.
     *
     * @param span series impedance Z of a span [Ω]
     * @param earth impedance R of each earth [Ω]
     * @return impedance [Ω], the root with positive real part
     */
    public static Complex endless(Complex span, Complex earth) {
        Complex root =
                span.multiply(span).multiply(0.25).add(span.multiply(earth)).sqrt();
        return span.multiply(0.5).add(root.getReal() < 0 ? root.negate() : root);
    }
}
