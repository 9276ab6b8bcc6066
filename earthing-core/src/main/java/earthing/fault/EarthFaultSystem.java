package earthing.fault;

import earthing.fault.line.SequenceImpedances;
import java.util.Optional;
import org.apache.commons.math3.complex.Complex;

/**
 * The network as an earth fault at the pole sees it.
 *
 * @param frequency frequency [Hz], &gt; 0
 * @param phaseVoltage driving voltage to neutral, voltage factor included [V], &gt; 0
 * @param source impedances behind the busbar, neutral impedance not included in Z₀ [Ω]
 * @param neutral how the neutral is earthed
 * @param line impedances of the three phases from busbar to pole with earth return, neutral or shield wire not reduced
 *     into them [Ω]
 * @param networkCapacitance capacitance of all three phases of the whole galvanically connected network to earth, 3·C₀
 *     [F], ≥ 0; lumped at the busbar
 * @param stationEarth impedance of the station earth to remote earth [Ω]; may be zero only without a return conductor
 * @param returnConductor neutral or shield wire
 * @param secondWire a second return conductor beside it, on the same poles
 */
public record EarthFaultSystem(
        double frequency,
        double phaseVoltage,
        SequenceImpedances source,
        NeutralMethod neutral,
        SequenceImpedances line,
        double networkCapacitance,
        Complex stationEarth,
        Optional<ReturnConductor> returnConductor,
        Optional<SecondWire> secondWire) {

    /**
     * Refuses networks in which an earth fault has no defined current.
     *
     * @param frequency frequency [Hz], &gt; 0
     * @param phaseVoltage driving voltage to neutral, voltage factor included [V], &gt; 0
     * @param source impedances behind the busbar, neutral impedance not included in Z₀ [Ω]
     * @param neutral how the neutral is earthed
     * @param line impedances of the three phases from busbar to pole with earth return, neutral or shield wire not reduced
     *     into them [Ω]
     * @param networkCapacitance capacitance of all three phases of the whole galvanically connected network to earth, 3·C₀
     *     [F], ≥ 0; lumped at the busbar
     * @param stationEarth impedance of the station earth to remote earth [Ω]; may be zero only without a return conductor
     * @param returnConductor neutral or shield wire
     * @param secondWire a second return conductor beside it, on the same poles
     */
    public EarthFaultSystem {
        if (!(frequency > 0) || !Double.isFinite(frequency)) {
            throw new IllegalArgumentException("frequency must be > 0 Hz; have " + frequency);
        }
        if (!(phaseVoltage > 0) || !Double.isFinite(phaseVoltage)) {
            throw new IllegalArgumentException("phase voltage must be > 0 V; have " + phaseVoltage);
        }
        if (!(networkCapacitance >= 0) || !Double.isFinite(networkCapacitance)) {
            throw new IllegalArgumentException("capacitance of the network must be >= 0 F; have " + networkCapacitance);
        }
        if (!(stationEarth.getReal() >= 0) || !Double.isFinite(stationEarth.abs())) {
            throw new IllegalArgumentException("station earth must be finite and passive; have " + stationEarth);
        }
        if (!neutral.connected() && networkCapacitance == 0) {
            throw new IllegalArgumentException("with an isolated neutral the current is that of the capacitance;"
                    + " it must be > 0 F, or the current cannot be computed");
        }
        if (neutral instanceof NeutralMethod.MultiEarthed && returnConductor.isEmpty()) {
            throw new IllegalArgumentException("a multi-earthed neutral needs its conductor along the line");
        }
        if (returnConductor.isPresent() && !(stationEarth.abs() > 0)) {
            throw new IllegalArgumentException(
                    "with a return conductor the station earth must be > 0 ohm; have " + stationEarth);
        }
        if (secondWire.isPresent() && returnConductor.isEmpty()) {
            throw new IllegalArgumentException("a second return conductor needs a first one beside it");
        }
    }

    /**
     * A network with one return conductor or none.
     *
     * @param frequency frequency [Hz], &gt; 0
     * @param phaseVoltage driving voltage to neutral, voltage factor included [V], &gt; 0
     * @param source impedances behind the busbar, neutral impedance not included in Z₀ [Ω]
     * @param neutral how the neutral is earthed
     * @param line impedances of the three phases from busbar to pole with earth return [Ω]
     * @param networkCapacitance capacitance of all three phases of the whole connected network to earth, 3·C₀ [F], ≥ 0
     * @param stationEarth impedance of the station earth to remote earth [Ω]
     * @param returnConductor neutral or shield wire
     */
    public EarthFaultSystem(
            double frequency,
            double phaseVoltage,
            SequenceImpedances source,
            NeutralMethod neutral,
            SequenceImpedances line,
            double networkCapacitance,
            Complex stationEarth,
            Optional<ReturnConductor> returnConductor) {
        this(
                frequency,
                phaseVoltage,
                source,
                neutral,
                line,
                networkCapacitance,
                stationEarth,
                returnConductor,
                Optional.empty());
    }

    /**
     * The same network with another return conductor, for contingencies.
     *
     * @param other the conductor
     * @return the network
     */
    public EarthFaultSystem withReturnConductor(ReturnConductor other) {
        return new EarthFaultSystem(
                frequency,
                phaseVoltage,
                source,
                neutral,
                line,
                networkCapacitance,
                stationEarth,
                Optional.of(other),
                secondWire);
    }

    /**
     * The same network with another second return conductor.
     *
     * @param other the conductor
     * @return the network
     */
    public EarthFaultSystem withSecondWire(SecondWire other) {
        return new EarthFaultSystem(
                frequency,
                phaseVoltage,
                source,
                neutral,
                line,
                networkCapacitance,
                stationEarth,
                returnConductor,
                Optional.of(other));
    }

    /**
     * The same network at another driving voltage.
     *
     * @param other voltage to neutral [V], &gt; 0
     * @return the network
     */
    public EarthFaultSystem withPhaseVoltage(double other) {
        return new EarthFaultSystem(
                frequency, other, source, neutral, line, networkCapacitance, stationEarth, returnConductor, secondWire);
    }
}
