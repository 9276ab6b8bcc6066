package earthing.fault.line;

import java.util.Objects;
import org.apache.commons.math3.complex.Complex;

/**
 * Positive-, negative- and zero-sequence impedance [Ω] or [Ω/m] of one element of a three-phase network.
 *
 * @param positive positive-sequence impedance Z₁
 * @param negative negative-sequence impedance Z₂
 * @param zero zero-sequence impedance Z₀
 */
public record SequenceImpedances(Complex positive, Complex negative, Complex zero) {

    /** An element that is not there. */
    public static final SequenceImpedances NONE = new SequenceImpedances(Complex.ZERO, Complex.ZERO, Complex.ZERO);

    /**
     * Refuses impedances that are not finite or have a negative resistance.
     *
     * @param positive positive-sequence impedance Z₁
     * @param negative negative-sequence impedance Z₂
     * @param zero zero-sequence impedance Z₀
     */
    public SequenceImpedances {
        requirePassive("positive", positive);
        requirePassive("negative", negative);
        requirePassive("zero", zero);
    }

    private static void requirePassive(String which, Complex z) {
        Objects.requireNonNull(z);
        if (!(z.getReal() >= 0) || !Double.isFinite(z.getReal()) || !Double.isFinite(z.getImaginary())) {
            throw new IllegalArgumentException(
                    which + "-sequence impedance must be finite with a resistance >= 0; have " + z);
        }
    }

    /**
     * An element whose positive and negative sequence are alike, as of every line and transformer.
     *
     * @param positive Z₁ = Z₂
     * @param zero Z₀
     * @return the element
     */
    public static SequenceImpedances of(Complex positive, Complex zero) {
        return new SequenceImpedances(positive, positive, zero);
    }

    /**
     * The source behind a busbar from its three-phase fault level alone; nothing is known about its zero sequence, so
     * this is for networks whose earth-fault current is limited by the neutral, not by the transformer.
     *
     * @param lineVoltage voltage between phases at which the level is stated [V]
     * @param threePhaseCurrent three-phase fault current [A]
     * @param xOverR reactance over resistance of the positive sequence [1], ≥ 0
     * @param zero zero-sequence impedance of the transformer without the neutral impedance [Ω]
     * @return the source
     */
    public static SequenceImpedances ofThreePhaseLevel(
            double lineVoltage, double threePhaseCurrent, double xOverR, Complex zero) {
        return of(
                atRatio(
                        lineVoltage / (Math.sqrt(3) * requirePositive("three-phase current [A]", threePhaseCurrent)),
                        xOverR),
                zero);
    }

    /**
     * The source behind a busbar from both fault levels, {@code Z₀ = √3·U/I₁ − 2·Z₁}. Whatever stands between neutral
     * and earth at the source is then already inside Z₀.
     *
     * @param lineVoltage voltage between phases at which the levels are stated [V]
     * @param threePhaseCurrent three-phase fault current [A]
     * @param xOverR reactance over resistance of the positive sequence [1], ≥ 0
     * @param earthFaultCurrent solid single-phase earth-fault current at the same busbar [A]
     * @param earthXOverR reactance over resistance of that earth-fault loop [1], ≥ 0
     * @return the source
     * @throws IllegalArgumentException if the two levels contradict each other (negative zero-sequence resistance)
     */
    public static SequenceImpedances ofFaultLevels(
            double lineVoltage, double threePhaseCurrent, double xOverR, double earthFaultCurrent, double earthXOverR) {
        Complex positive = atRatio(
                requirePositive("voltage [V]", lineVoltage)
                        / (Math.sqrt(3) * requirePositive("three-phase current [A]", threePhaseCurrent)),
                xOverR);
        Complex loop = atRatio(
                Math.sqrt(3) * lineVoltage / requirePositive("earth-fault current [A]", earthFaultCurrent),
                earthXOverR);
        Complex zero = loop.subtract(positive.multiply(2));
        // Rounding of printed levels may leave a resistance a hair below zero; more than that is a contradiction.
        if (zero.getReal() < 0 && zero.getReal() > -1e-9 * loop.abs()) {
            zero = new Complex(0, zero.getImaginary());
        }
        if (!(zero.getReal() >= 0)) {
            throw new IllegalArgumentException("the fault levels contradict each other: they ask for a zero-sequence"
                    + " resistance of " + zero.getReal() + " ohm; check both X/R ratios");
        }
        return of(positive, zero);
    }

    private static double requirePositive(String what, double value) {
        if (!(value > 0) || !Double.isFinite(value)) {
            throw new IllegalArgumentException(what + " must be > 0 and finite; have " + value);
        }
        return value;
    }

    private static Complex atRatio(double magnitude, double xOverR) {
        if (!(xOverR >= 0) || !Double.isFinite(xOverR)) {
            throw new IllegalArgumentException("X/R must be >= 0 and finite; have " + xOverR);
        }
        double angle = Math.atan(xOverR);
        return new Complex(magnitude * Math.cos(angle), magnitude * Math.sin(angle));
    }

    /**
     * Elements in series.
     *
     * @param other the second element
     * @return sum of each sequence
     */
    public SequenceImpedances plus(SequenceImpedances other) {
        return new SequenceImpedances(positive.add(other.positive), negative.add(other.negative), zero.add(other.zero));
    }

    /**
     * A length of line from its impedances per metre, or a change of voltage base.
     *
     * @param factor length [m] or ratio [1], ≥ 0
     * @return each sequence times the factor
     */
    public SequenceImpedances times(double factor) {
        if (!(factor >= 0)) {
            throw new IllegalArgumentException("factor must be >= 0; have " + factor);
        }
        return new SequenceImpedances(positive.multiply(factor), negative.multiply(factor), zero.multiply(factor));
    }

    /**
     * Impedance of one phase with earth return, {@code (Z₁ + Z₂ + Z₀)/3}: what a single-phase earth fault sees.
     *
     * @return the mean of the three
     */
    public Complex earthLoop() {
        return positive.add(negative).add(zero).divide(3);
    }
}
