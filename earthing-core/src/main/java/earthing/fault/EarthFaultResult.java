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
 * @param wires return conductors, in the order of the network; none without any
 * @param earthPotentialRise potential of the tank's earth
 * @param stationPotentialRise potential of the station earth
 * @param neutralCurrent current through the source neutral
 * @param neutralDisplacement potential of the source neutral point; of the zero sequence at the busbar when isolated
 * @param busbarZeroSequence zero-sequence voltage at the busbar
 * @param phaseVoltages voltage of each phase at the pole
 * @param loopImpedance driving voltage over current of the first faulted phase, the whole loop with the electrode [Ω]
 * @param quality how well the equations are met
 */
public record EarthFaultResult(
        double frequency,
        double phaseVoltage,
        Complex totalCurrent,
        Map<Phase, Complex> phaseCurrents,
        Map<String, Complex> branchCurrents,
        List<Wire> wires,
        Complex earthPotentialRise,
        Complex stationPotentialRise,
        Complex neutralCurrent,
        Complex neutralDisplacement,
        Complex busbarZeroSequence,
        Map<Phase, Complex> phaseVoltages,
        Complex loopImpedance,
        Quality quality) {

    /**
     * How well the equations are met.
     *
     * @param residual largest residual of any equation over the sum of its terms [1]
     * @param pivots quality of the factorised matrix as the solver reports it [1], near zero when ill-conditioned
     */
    public record Quality(double residual, double pivots) {}

    /**
     * A return conductor in this fault.
     *
     * @param bonded whether it is tied to the tank's earth at the pole
     * @param bondHeight height of that bond [m]
     * @param towardsStation current into it towards the station [A]; zero where it is not bonded
     * @param beyond current into it away from the station [A]; zero where it is not bonded
     * @param profile its potential at station and every pole, in order [V]
     */
    public record Wire(
            boolean bonded, double bondHeight, Complex towardsStation, Complex beyond, List<Complex> profile) {

        /**
         * Takes a copy.
         *
         * @param bonded whether it is tied to the tank's earth at the pole
         * @param bondHeight height of that bond [m]
         * @param towardsStation current into it towards the station [A]; zero where it is not bonded
         * @param beyond current into it away from the station [A]; zero where it is not bonded
         * @param profile its potential at station and every pole, in order [V]
         */
        public Wire {
            profile = List.copyOf(profile);
        }

        /**
         * What it takes away from the tank.
         *
         * @return current both ways [A]
         */
        public Complex away() {
            return towardsStation.add(beyond);
        }
    }

    /**
     * Takes copies.
     *
     * @param frequency frequency [Hz]
     * @param phaseVoltage driving voltage to neutral [V]
     * @param totalCurrent current from all faulted phases into the tank
     * @param phaseCurrents current of each phase into the tank
     * @param branchCurrents current of each way to earth, by name
     * @param wires return conductors, in the order of the network; none without any
     * @param earthPotentialRise potential of the tank's earth
     * @param stationPotentialRise potential of the station earth
     * @param neutralCurrent current through the source neutral
     * @param neutralDisplacement potential of the source neutral point; of the zero sequence at the busbar when isolated
     * @param busbarZeroSequence zero-sequence voltage at the busbar
     * @param phaseVoltages voltage of each phase at the pole
     * @param loopImpedance driving voltage over current of the first faulted phase, the whole loop with the electrode [Ω]
     * @param quality how well the equations are met
     */
    public EarthFaultResult {
        phaseCurrents = Collections.unmodifiableMap(new LinkedHashMap<>(phaseCurrents));
        branchCurrents = Collections.unmodifiableMap(new LinkedHashMap<>(branchCurrents));
        phaseVoltages = Collections.unmodifiableMap(new LinkedHashMap<>(phaseVoltages));
        wires = List.copyOf(wires);
    }

    /**
     * Current into the return conductors towards the station.
     *
     * @return phasor sum [A], zero without any
     */
    public Complex towardsStation() {
        return wires.stream().map(Wire::towardsStation).reduce(Complex.ZERO, Complex::add);
    }

    /**
     * Current into the return conductors away from the station.
     *
     * @return phasor sum [A], zero without any
     */
    public Complex beyond() {
        return wires.stream().map(Wire::beyond).reduce(Complex.ZERO, Complex::add);
    }

    /**
     * Height at which the lowest return conductor leaves the earth lead.
     *
     * @return height [m]; empty if none is bonded
     */
    public Optional<Double> bondHeight() {
        return wires.stream().filter(Wire::bonded).map(Wire::bondHeight).min(Double::compare);
    }

    /**
     * Potential of the first return conductor at the station and every pole, in order.
     *
     * @return potentials [V]; empty without a return conductor
     */
    public List<Complex> returnProfile() {
        return wires.isEmpty() ? List.of() : wires.get(0).profile();
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
     * Current of the common earth lead at a height: all of it but what return conductors took away above.
     *
     * @param height height above ground [m]
     * @return current [A]
     */
    public Complex leadCurrent(double height) {
        if (!wires.isEmpty() && wires.stream().filter(Wire::bonded).allMatch(w -> height < w.bondHeight())) {
            return earthCurrent();
        }
        Complex left = totalCurrent;
        for (Wire wire : wires) {
            left = height < wire.bondHeight() ? left.subtract(wire.away()) : left;
        }
        return left;
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
                        .subtract(towardsStation())
                        .subtract(beyond())
                        .abs()
                / totalCurrent.abs();
    }
}
