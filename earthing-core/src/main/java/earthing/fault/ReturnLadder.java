package earthing.fault;

import earthing.fault.ReturnConductor.Span;
import org.apache.commons.math3.complex.Complex;

/**
 * Node potentials of a return conductor for the two currents that drive it: the fault current, which enters at the pole
 * and induces along the spans before it, and the current that the source's neutral takes out at the station. One
 * elimination without pivoting: the matrix is that of a passive chain.
 */
final class ReturnLadder {

    private static final double FLOATING = 1e-13;

    private final ReturnConductor wire;
    private final double[][] faultPotentials;
    private final double[][] neutralPotentials;
    private final Complex faultDrop;
    private final Complex neutralDrop;

    /**
     * Solves the chain.
     *
     * @param wire the conductor
     * @param stationEarth impedance of the station earth [Ω]
     * @param poleAdmittance admittance of the tank's earths [S]; counted only where the wire is bonded to them
     */
    ReturnLadder(ReturnConductor wire, Complex stationEarth, Complex poleAdmittance) {
        this.wire = wire;
        int n = wire.spans().size() + 1;
        int pole = wire.spansToPole();
        // diagonal, and the two right-hand sides, each as real and imaginary part
        double[][] d = new double[2][n];
        double[][] b1 = new double[2][n];
        double[][] b2 = new double[2][n];
        double[][] y = new double[2][n]; // y[k]: span between node k−1 and k
        add(d, 0, stationEarth.reciprocal());
        if (wire.bondedAtPole()) {
            add(d, pole, poleAdmittance);
            b1[0][pole] = 1;
        }
        b2[0][0] = -1;
        for (int k = 1; k < n; k++) {
            Span span = wire.spans().get(k - 1);
            add(d, k, span.poleEarthAdmittance());
            if (isBroken(k)) {
                continue;
            }
            double zr = span.self().getReal();
            double zi = span.self().getImaginary();
            double norm = zr * zr + zi * zi;
            double yr = zr / norm;
            double yi = -zi / norm;
            add(y, k, yr, yi);
            add(d, k, yr, yi);
            add(d, k - 1, yr, yi);
            if (k <= pole) {
                double mr = span.mutual().getReal();
                double mi = span.mutual().getImaginary();
                double inducedR = yr * mr - yi * mi;
                double inducedI = yr * mi + yi * mr;
                add(b1, k, -inducedR, -inducedI);
                add(b1, k - 1, inducedR, inducedI);
            }
        }
        for (int k = 1; k < n; k++) {
            eliminate(d, y, b1, b2, k);
        }
        for (int k = n - 1; k >= 0; k--) {
            requireEarthed(d, y, k);
            substitute(d, y, b1, k, n);
            substitute(d, y, b2, k, n);
        }
        faultPotentials = b1;
        neutralPotentials = b2;
        faultDrop = drop(1, b1);
        neutralDrop = drop(0, b2);
    }

    private boolean isBroken(int k) {
        return wire.brokenSpan().isPresent() && wire.brokenSpan().getAsInt() == k - 1;
    }

    private static void add(double[][] to, int k, Complex value) {
        add(to, k, value.getReal(), value.getImaginary());
    }

    private static void add(double[][] to, int k, double re, double im) {
        to[0][k] += re;
        to[1][k] += im;
    }

    /** Row k takes out node k−1: d(k) −= y(k)²/d(k−1), b(k) += y(k)/d(k−1)·b(k−1). */
    private static void eliminate(double[][] d, double[][] y, double[][] b1, double[][] b2, int k) {
        requireEarthed(d, y, k - 1);
        double norm = d[0][k - 1] * d[0][k - 1] + d[1][k - 1] * d[1][k - 1];
        double fr = (y[0][k] * d[0][k - 1] + y[1][k] * d[1][k - 1]) / norm;
        double fi = (y[1][k] * d[0][k - 1] - y[0][k] * d[1][k - 1]) / norm;
        d[0][k] -= fr * y[0][k] - fi * y[1][k];
        d[1][k] -= fr * y[1][k] + fi * y[0][k];
        forward(b1, fr, fi, k);
        forward(b2, fr, fi, k);
    }

    private static void forward(double[][] b, double fr, double fi, int k) {
        b[0][k] += fr * b[0][k - 1] - fi * b[1][k - 1];
        b[1][k] += fr * b[1][k - 1] + fi * b[0][k - 1];
    }

    /** A section cut off from every earth leaves nothing on the diagonal but rounding. */
    private static void requireEarthed(double[][] d, double[][] y, int k) {
        double scale = y[0][k] * y[0][k] + y[1][k] * y[1][k];
        double size = d[0][k] * d[0][k] + d[1][k] * d[1][k];
        if (!(size > FLOATING * FLOATING * scale) || size == 0) {
            throw new IllegalArgumentException(
                    "the return conductor has a section without any earth; its potential cannot be computed");
        }
    }

    private static void substitute(double[][] d, double[][] y, double[][] b, int k, int n) {
        double re = b[0][k];
        double im = b[1][k];
        if (k + 1 < n) {
            re += y[0][k + 1] * b[0][k + 1] - y[1][k + 1] * b[1][k + 1];
            im += y[0][k + 1] * b[1][k + 1] + y[1][k + 1] * b[0][k + 1];
        }
        double norm = d[0][k] * d[0][k] + d[1][k] * d[1][k];
        b[0][k] = (re * d[0][k] + im * d[1][k]) / norm;
        b[1][k] = (im * d[0][k] - re * d[1][k]) / norm;
    }

    /** Voltage that the wire's own current induces along the phases up to the pole. */
    private Complex drop(double faultCurrent, double[][] potentials) {
        double re = 0;
        double im = 0;
        for (int k = 1; k <= wire.spansToPole(); k++) {
            if (isBroken(k)) {
                continue;
            }
            Span span = wire.spans().get(k - 1);
            double mr = span.mutual().getReal();
            double mi = span.mutual().getImaginary();
            double zr = span.self().getReal();
            double zi = span.self().getImaginary();
            double vr = potentials[0][k - 1] - potentials[0][k] - mr * faultCurrent;
            double vi = potentials[1][k - 1] - potentials[1][k] - mi * faultCurrent;
            double norm = zr * zr + zi * zi;
            double jr = (vr * zr + vi * zi) / norm;
            double ji = (vi * zr - vr * zi) / norm;
            re += mr * jr - mi * ji;
            im += mr * ji + mi * jr;
        }
        return new Complex(re, im);
    }

    private Complex current(int k, Complex before, Complex after, Complex faultCurrent) {
        if (isBroken(k)) {
            return Complex.ZERO;
        }
        Span span = wire.spans().get(k - 1);
        Complex induced = k <= wire.spansToPole() ? span.mutual().multiply(faultCurrent) : Complex.ZERO;
        return before.subtract(after).subtract(induced).divide(span.self());
    }

    private static Complex at(double[][] values, int k) {
        return new Complex(values[0][k], values[1][k]);
    }

    /** Node of the faulted pole. */
    int poleNode() {
        return wire.spansToPole();
    }

    /** Number of nodes, station included. */
    int nodes() {
        return wire.spans().size() + 1;
    }

    /** Potential of a node for one ampere of fault current [Ω]. */
    Complex faultPotential(int node) {
        return at(faultPotentials, node);
    }

    /** Potential of a node for one ampere of neutral current [Ω]. */
    Complex neutralPotential(int node) {
        return at(neutralPotentials, node);
    }

    /** Voltage along the phases for one ampere of fault current [Ω]. */
    Complex faultDrop() {
        return faultDrop;
    }

    /** Voltage along the phases for one ampere of neutral current [Ω]. */
    Complex neutralDrop() {
        return neutralDrop;
    }

    /** Potential of a node [V]. */
    Complex potential(int node, Complex faultCurrent, Complex neutralCurrent) {
        double fr = faultCurrent.getReal();
        double fi = faultCurrent.getImaginary();
        double nr = neutralCurrent.getReal();
        double ni = neutralCurrent.getImaginary();
        double[][] a = faultPotentials;
        double[][] b = neutralPotentials;
        return new Complex(
                a[0][node] * fr - a[1][node] * fi + b[0][node] * nr - b[1][node] * ni,
                a[0][node] * fi + a[1][node] * fr + b[0][node] * ni + b[1][node] * nr);
    }

    /** Current of the span that ends at a node, counted away from the station [A]. */
    Complex spanCurrent(int node, Complex faultCurrent, Complex neutralCurrent) {
        return current(
                node,
                potential(node - 1, faultCurrent, neutralCurrent),
                potential(node, faultCurrent, neutralCurrent),
                faultCurrent);
    }
}
