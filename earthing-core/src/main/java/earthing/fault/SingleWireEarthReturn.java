package earthing.fault;

import earthing.fault.line.SequenceImpedances;
import java.util.Optional;
import org.apache.commons.math3.complex.Complex;

/**
 * A line of one wire whose load current returns through the soil, fed by an isolating transformer. Its earths carry load
 * current all the time, and a fault current at the pole.
 *
 * @param voltage voltage of the wire to earth [V], &gt; 0
 * @param source impedance of network and isolating transformer on the side of the wire [Ω]
 * @param line self impedance of the wire with earth return to the pole [Ω]
 * @param sourceEarth earth of the isolating transformer [Ω]
 */
public record SingleWireEarthReturn(double voltage, Complex source, Complex line, Complex sourceEarth) {

    /**
     * Refuses values that are not passive.
     *
     * @param voltage voltage of the wire to earth [V], &gt; 0
     * @param source impedance of network and isolating transformer on the side of the wire [Ω]
     * @param line self impedance of the wire with earth return to the pole [Ω]
     * @param sourceEarth earth of the isolating transformer [Ω]
     */
    public SingleWireEarthReturn {
        if (!(voltage > 0) || !Double.isFinite(voltage)) {
            throw new IllegalArgumentException("voltage must be > 0 V; have " + voltage);
        }
        if (!(source.getReal() >= 0 && line.getReal() >= 0 && sourceEarth.getReal() >= 0)) {
            throw new IllegalArgumentException(
                    "impedances must be passive; have " + source + ", " + line + ", " + sourceEarth);
        }
    }

    /**
     * A current with the potentials that it raises.
     *
     * @param current current of the wire [A]
     * @param earthPotentialRise potential at the pole [V]
     * @param sourcePotentialRise potential at the isolating transformer [V]
     * @param loopImpedance impedance of the whole loop [Ω]
     */
    public record Result(
            Complex current, Complex earthPotentialRise, Complex sourcePotentialRise, Complex loopImpedance) {}

    /**
     * Fault of the wire to the pole's earth.
     *
     * @param earth earth of the pole [Ω]
     * @param faultResistance fault resistance [Ω], ≥ 0
     * @return current and potentials
     */
    public Result fault(Complex earth, double faultResistance) {
        return through(earth, new Complex(faultResistance, 0));
    }

    /**
     * Load at the pole, in normal service: the potential stands all the time.
     *
     * @param earth earth of the load's transformer [Ω]
     * @param load impedance of the load with its transformer, on the side of the wire [Ω]
     * @return current and potentials
     */
    public Result load(Complex earth, Complex load) {
        return through(earth, load);
    }

    /**
     * The same loop as a network of one phase, to be solved with everything that a pole's earth may be.
     *
     * @param frequency frequency [Hz], &gt; 0
     * @return the network; its positive- and negative-sequence impedances are zero, all of the loop is zero sequence
     */
    public EarthFaultSystem system(double frequency) {
        return new EarthFaultSystem(
                frequency,
                voltage,
                SequenceImpedances.of(Complex.ZERO, source.multiply(3)),
                new NeutralMethod.Solid(),
                SequenceImpedances.of(Complex.ZERO, line.multiply(3)),
                0,
                sourceEarth,
                Optional.empty());
    }

    private Result through(Complex earth, Complex between) {
        if (!(earth.getReal() >= 0 && between.getReal() >= 0)) {
            throw new IllegalArgumentException("earth, load and fault must be passive; have " + earth + ", " + between);
        }
        Complex loop = source.add(line).add(sourceEarth).add(earth).add(between);
        if (!(loop.abs() > 0)) {
            throw new IllegalArgumentException("the loop needs an impedance");
        }
        Complex current = new Complex(voltage, 0).divide(loop);
        return new Result(
                current, current.multiply(earth), current.multiply(sourceEarth).negate(), loop);
    }
}
