package earthing.fault;

import earthing.fault.line.SequenceImpedances;
import earthing.quantity.Source;
import earthing.quantity.Source.Status;
import org.apache.commons.math3.complex.Complex;

/**
 * Two phases to earth at the same time at two places, in a network whose neutral is isolated or resonant. The neutral
 * takes no part: {@code I = c·U/(2·Z₁ + (2·Z₁ₑ + Z₀ₑ)/3 + (2·Z₁f + Z₀f)/3 + Z_A + Z_B)} with Z₁ up to where the ways part,
 * e and f the lines to either place, and both earths in the loop.
 *
 * @param current current that flows through both places [A]
 * @param firstRise earth potential rise at the first place [V]
 * @param secondRise earth potential rise at the second place [V]
 * @param firstLead current through the earth lead of the first pole [A]
 * @param loopImpedance impedance of the loop [Ω]
 */
public record DoubleEarthFault(
        Complex current, Complex firstRise, Complex secondRise, Complex firstLead, Complex loopImpedance) {

    /** Where the equation without electrodes comes from. */
    public static final Source SOURCE = Source.standard(
            "IEC 60909-3:2009", "two separate simultaneous line-to-earth faults, single-fed lines", Status.FROM_MEMORY);

    /**
     * Faults at two poles.
     *
     * @param lineVoltage driving voltage between phases, voltage factor included [V], &gt; 0
     * @param common impedances of source and line up to where the ways part [Ω]; only Z₁ and Z₂ count
     * @param toFirst line from there to the first pole [Ω]
     * @param toSecond line from there to the second pole [Ω]; {@link SequenceImpedances#NONE} if it stands at the parting
     * @param first earth of the first pole [Ω], fault resistance not included
     * @param second earth of the second pole [Ω]
     * @param faultResistance resistance of both faults together [Ω], ≥ 0
     * @return currents and potentials
     */
    public static DoubleEarthFault atTwoPoles(
            double lineVoltage,
            SequenceImpedances common,
            SequenceImpedances toFirst,
            SequenceImpedances toSecond,
            Complex first,
            Complex second,
            double faultResistance) {
        requireVoltage(lineVoltage);
        if (!(first.getReal() >= 0 && second.getReal() >= 0 && faultResistance >= 0)) {
            throw new IllegalArgumentException("earths and fault resistance must be >= 0 ohm; have " + first + ", "
                    + second + ", " + faultResistance);
        }
        Complex loop = common.positive()
                .add(common.negative())
                .add(toFirst.earthLoop())
                .add(toSecond.earthLoop())
                .add(first)
                .add(second)
                .add(faultResistance);
        Complex current = quotient(lineVoltage, loop);
        return new DoubleEarthFault(
                current, current.multiply(first), current.multiply(second).negate(), current, loop);
    }

    /**
     * Both faults at the same tank: the current goes from phase to phase through the bonds of arresters and tank, and the
     * earth lead carries none of it.
     *
     * @param lineVoltage driving voltage between phases, voltage factor included [V], &gt; 0
     * @param series impedances of source and line to the pole [Ω]; only Z₁ and Z₂ count
     * @param faultResistance resistance of both faults together [Ω], ≥ 0
     * @return currents; both potentials and the current of the lead are zero but for the capacitive current, which the
     *     fault of two phases at one tank in {@link EarthFault} gives
     */
    public static DoubleEarthFault atOneTank(double lineVoltage, SequenceImpedances series, double faultResistance) {
        requireVoltage(lineVoltage);
        if (!(faultResistance >= 0)) {
            throw new IllegalArgumentException("fault resistance must be >= 0 ohm; have " + faultResistance);
        }
        Complex loop = series.positive().add(series.negative()).add(faultResistance);
        return new DoubleEarthFault(quotient(lineVoltage, loop), Complex.ZERO, Complex.ZERO, Complex.ZERO, loop);
    }

    private static Complex quotient(double voltage, Complex loop) {
        if (!(loop.abs() > 0)) {
            throw new IllegalArgumentException("the loop of a double earth fault needs an impedance");
        }
        return new Complex(voltage, 0).divide(loop);
    }

    private static void requireVoltage(double voltage) {
        if (!(voltage > 0) || !Double.isFinite(voltage)) {
            throw new IllegalArgumentException("voltage must be > 0 V; have " + voltage);
        }
    }

    /**
     * Reactance over resistance of the loop.
     *
     * @return X/R [1]
     */
    public double xOverR() {
        return loopImpedance.getImaginary() / loopImpedance.getReal();
    }
}
