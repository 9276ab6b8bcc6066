package earthing.fault.line;

import earthing.quantity.Source;
import earthing.quantity.Source.Status;
import org.apache.commons.math3.complex.Complex;

/** Input impedance of a neutral or shield wire that is earthed at every pole, closed forms. */
public final class PoleEarthChain {

    /** Source of {@link #infinite} and {@link #finite}. */
    public static final Source SOURCE = Source.publication(
            "J. Endrenyi, Analysis of transmission tower potentials during ground faults, IEEE Trans. PAS-86, 1967",
            "equivalent impedance of the ground wire",
            Status.FROM_MEMORY);

    private PoleEarthChain() {}

    /**
     * Endless chain seen from its end, beginning with a span: {@code Z = Zs/2 + √(Zs²/4 + Zs·R)}.
     *
     * @param span impedance of one span with earth return [Ω]
     * @param poleEarth earth of each pole [Ω]
     * @return input impedance [Ω]
     */
    public static Complex infinite(Complex span, Complex poleEarth) {
        requirePassive(span);
        requirePassive(poleEarth);
        Complex half = span.divide(2);
        return half.add(half.multiply(half).add(span.multiply(poleEarth)).sqrt());
    }

    /**
     * A chain of a number of spans, each ending at an earthed pole, the last pole being the end of the line.
     *
     * @param span impedance of one span with earth return [Ω]
     * @param poleEarth earth of each pole [Ω], not zero together with the span
     * @param spans number of spans, ≥ 1
     * @return input impedance [Ω]
     */
    public static Complex finite(Complex span, Complex poleEarth, int spans) {
        requirePassive(span);
        requirePassive(poleEarth);
        if (spans < 1) {
            throw new IllegalArgumentException("a chain needs at least one span; have " + spans);
        }
        Complex z = span.add(poleEarth);
        for (int k = 1; k < spans; k++) {
            z = span.add(poleEarth.multiply(z).divide(poleEarth.add(z)));
        }
        return z;
    }

    /**
     * Two impedances side by side.
     *
     * @param a one [Ω]
     * @param b the other [Ω]
     * @return impedance of both in parallel [Ω]
     */
    public static Complex parallel(Complex a, Complex b) {
        return a.multiply(b).divide(a.add(b));
    }

    /**
     * Part of an earth-fault current that goes through the station earth when the rest leaves by neutrals and shield
     * wires, {@code |Zeq/(R + Zeq)|}. Conductive division only: what the phase current draws into the wires by
     * induction is not in it.
     *
     * @param earth impedance of the electrode [Ω]
     * @param equivalent impedance of all wires that leave [Ω]
     * @return split factor [1]
     */
    public static double splitFactor(Complex earth, Complex equivalent) {
        requirePassive(earth);
        requirePassive(equivalent);
        return equivalent.divide(earth.add(equivalent)).abs();
    }

    /**
     * Reduction factor of a well-earthed wire beside the phases far from both ends, {@code r = 1 − z_m/z_n}: the part of
     * the earth-fault current that is left to the soil by induction alone.
     *
     * @param mutual mutual impedance of phase and wire with earth return [Ω/m]
     * @param self self impedance of the wire with earth return [Ω/m]
     * @return complex reduction factor [1]
     */
    public static Complex reductionFactor(Complex mutual, Complex self) {
        requirePassive(self);
        if (!(self.abs() > 0)) {
            throw new IllegalArgumentException("self impedance of the wire must not be zero");
        }
        return Complex.ONE.subtract(mutual.divide(self));
    }

    private static void requirePassive(Complex z) {
        if (!(z.getReal() >= 0) || !Double.isFinite(z.getReal()) || !Double.isFinite(z.getImaginary())) {
            throw new IllegalArgumentException("impedance must be finite with a resistance >= 0 ohm; have " + z);
        }
    }
}
