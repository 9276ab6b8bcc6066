package earthing.fault;

import earthing.fault.EarthFault.Phase;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.commons.math3.complex.Complex;

/**
 * Currents [A] and voltages [V] of an earth fault, r.m.s. phasors with the driving voltage of phase A as reference,
 * potentials to remote earth.
 *
 * @param frequency frequency [Hz]
 * @param phaseVoltage driving voltage to neutral [V]
 * @param totalCurrent current from all faulted phases into the tank
 * @param phaseCurrents current of each phase into the tank
 * @param branchCurrents current of each way to earth, by name
 * @param towardsStation current into the return conductor towards the station
 * @param beyond current into the return conductor away from the station
 * @param bondHeight height at which the return conductor leaves the earth lead [m]; empty without one
 * @param earthPotentialRise potential of the tank's earth
 * @param stationPotentialRise potential of the station earth
 * @param neutralCurrent current through the source neutral
 * @param neutralDisplacement potential of the source neutral point; of the zero sequence at the busbar when isolated
 * @param busbarZeroSequence zero-sequence voltage at the busbar
 * @param phaseVoltages voltage of each phase at the pole
 * @param loopImpedance driving voltage over current of the first faulted phase, the whole loop with the electrode [Ω]
 * @param returnProfile potential of the return conductor at station and every pole, in order; empty without one
 * @param quality how well the equations are met
 */
public record EarthFaultResult(
        double frequency,
        double phaseVoltage,
        Complex totalCurrent,
        Map<Phase, Complex> phaseCurrents,
        Map<String, Complex> branchCurrents,
        Complex towardsStation,
        Complex beyond,
        Optional<Double> bondHeight,
        Complex earthPotentialRise,
        Complex stationPotentialRise,
        Complex neutralCurrent,
        Complex neutralDisplacement,
        Complex busbarZeroSequence,
        Map<Phase, Complex> phaseVoltages,
        Complex loopImpedance,
        List<Complex> returnProfile,
        Quality quality) {

    /**
     * How well the equations are met.
     *
     * @param residual largest residual of any equation over the sum of its terms [1]
     * @param pivots quality of the factorised matrix as the solver reports it [1], near zero when ill-conditioned
     */
    public record Quality(double residual, double pivots) {}

    /**
     * Takes copies.
     *
     * @param frequency frequency [Hz]
     * @param phaseVoltage driving voltage to neutral [V]
     * @param totalCurrent current from all faulted phases into the tank
     * @param phaseCurrents current of each phase into the tank
     * @param branchCurrents current of each way to earth, by name
     * @param towardsStation current into the return conductor towards the station
     * @param beyond current into the return conductor away from the station
     * @param bondHeight height at which the return conductor leaves the earth lead [m]; empty without one
     * @param earthPotentialRise potential of the tank's earth
     * @param stationPotentialRise potential of the station earth
     * @param neutralCurrent current through the source neutral
     * @param neutralDisplacement potential of the source neutral point; of the zero sequence at the busbar when isolated
     * @param busbarZeroSequence zero-sequence voltage at the busbar
     * @param phaseVoltages voltage of each phase at the pole
     * @param loopImpedance driving voltage over current of the first faulted phase, the whole loop with the electrode [Ω]
     * @param returnProfile potential of the return conductor at station and every pole, in order; empty without one
     * @param quality how well the equations are met
     */
    public EarthFaultResult {
        phaseCurrents = Collections.unmodifiableMap(new LinkedHashMap<>(phaseCurrents));
        branchCurrents = Collections.unmodifiableMap(new LinkedHashMap<>(branchCurrents));
        phaseVoltages = Collections.unmodifiableMap(new LinkedHashMap<>(phaseVoltages));
        returnProfile = List.copyOf(returnProfile);
    }

    /**
     * Current that goes into the soil or away through the named branches at the pole.
     *
     * @return phasor sum of the branch currents [A]
     */
    public Complex earthCurrent() {
        return branchCurrents.values().stream().reduce(Complex.ZERO, Complex::add);
    }

    /**
     * Current of one branch.
     *
     * @param name its name
     * @return current [A]
     * @throws IllegalArgumentException if there is no such branch
     */
    public Complex branchCurrent(String name) {
        return Optional.ofNullable(branchCurrents.get(name))
                .orElseThrow(() ->
                        new IllegalArgumentException("no branch " + name + "; there are " + branchCurrents.keySet()));
    }

    /**
     * Part of the total current in one branch.
     *
     * @param name its name
     * @return magnitude ratio [1]; shares of several branches need not add to one, they differ in phase
     */
    public double share(String name) {
        return branchCurrent(name).abs() / totalCurrent.abs();
    }

    /**
     * Current of the common earth lead at a height: all of it above the bond of the return conductor, what goes to earth
     * below it.
     *
     * @param height height above ground [m]
     * @return current [A]
     */
    public Complex leadCurrent(double height) {
        return bondHeight.isPresent() && height < bondHeight.get() ? earthCurrent() : totalCurrent;
    }

    /**
     * Voltage between a phase and the tank, as its arrester sees it.
     *
     * @param phase the phase
     * @return voltage [V]
     */
    public Complex phaseToTank(Phase phase) {
        return voltage(phase).subtract(earthPotentialRise);
    }

    /**
     * Voltage of a phase at the pole to remote earth.
     *
     * @param phase the phase
     * @return voltage [V]
     */
    public Complex voltage(Phase phase) {
        return Optional.ofNullable(phaseVoltages.get(phase)).orElse(Complex.ZERO);
    }

    /**
     * Largest healthy-phase voltage to the tank over the driving voltage.
     *
     * @return earth-fault factor at the tank [1]; zero when every phase is faulted
     */
    public double temporaryOvervoltage() {
        double largest = 0;
        for (Map.Entry<Phase, Complex> entry : phaseCurrents.entrySet()) {
            if (entry.getValue().equals(Complex.ZERO)) {
                largest = Math.max(largest, phaseToTank(entry.getKey()).abs());
            }
        }
        return largest / phaseVoltage;
    }

    /**
     * Reactance over resistance of the whole loop at network frequency.
     *
     * @return X/R [1], negative for a capacitive loop
     */
    public double xOverR() {
        return loopImpedance.getImaginary() / loopImpedance.getReal();
    }

    /**
     * Decrement factor of one shot, from X/R of the whole loop; one for a capacitive loop, whose transient is an
     * oscillation and no d.c. offset.
     *
     * @param duration duration of the shot [s], &gt; 0
     * @return factor [1]
     */
    public double decrementFactor(double duration) {
        return DecrementFactor.of(Math.max(0, xOverR()), frequency, duration);
    }

    /**
     * Check by Kirchhoff at the tank: what flows in less what flows out.
     *
     * @return mismatch over the total current [1]
     */
    public double tankMismatch() {
        return totalCurrent
                        .subtract(earthCurrent())
                        .subtract(towardsStation)
                        .subtract(beyond)
                        .abs()
                / totalCurrent.abs();
    }
}
