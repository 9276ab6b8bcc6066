package earthing.study;

import earthing.fault.EarthFaultResult;
import earthing.fault.clearing.RecloseSequence;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/**
 * One solved earth fault with the circuit behind it.
 *
 * @param power what touch and heating need of it
 * @param pole the pole's own network for one ampere
 * @param circuit currents and voltages of the network; empty where no way leads to earth, and for a double earth fault
 * @param ending how the protection ends it; empty where no protection is described
 * @param drivingVoltage driving voltage to neutral [V]
 */
record SolvedFault(
        PowerCase power,
        PoleNetwork.Solution pole,
        Optional<EarthFaultResult> circuit,
        Optional<RecloseSequence.Outcome> ending,
        double drivingVoltage) {

    /** Why the protection never acts; empty if it does, or if it is not described. */
    Optional<String> never() {
        return ending.filter(e -> e instanceof RecloseSequence.Outcome.Sustained)
                .map(e -> "never: " + ((RecloseSequence.Outcome.Sustained) e).reason());
    }

    /** Whether a way leads the fault current from the tank to earth. */
    boolean flows() {
        return power.current() > 0;
    }

    /**
     * The same fault with another current. The circuit is linear: another source gives everything in proportion.
     *
     * @param current current at the fault [A]
     * @param clearing how the protection ends it
     * @param circumstances the case it stands for
     * @param at where in the range of the inputs
     */
    SolvedFault carrying(double current, FaultClearing clearing, Case circumstances, String at) {
        double factor = current / power.current();
        RecloseSequence.Outcome end = clearing.sequence().run(current);
        return new SolvedFault(
                new PowerCase(
                        circumstances,
                        at,
                        power.site(),
                        power.paths(),
                        power.earth(),
                        current,
                        times(power.electrodeCurrents(), factor),
                        times(power.rise(), factor),
                        times(power.memberCurrents(), factor),
                        power.xOverR(),
                        power.frequency(),
                        FaultClearing.shots(end)),
                pole,
                Optional.empty(),
                Optional.of(end),
                drivingVoltage);
    }

    private static Map<String, Double> times(Map<String, Double> values, double factor) {
        Map<String, Double> scaled = new LinkedHashMap<>();
        values.forEach((key, value) -> scaled.put(key, value * factor));
        return scaled;
    }
}
