package earthing.study;

import earthing.fault.EarthFaultResult;
import earthing.fault.clearing.RecloseSequence;
import earthing.quantity.Source;
import earthing.quantity.Worked;
import earthing.site.Cubicle;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.apache.commons.math3.complex.Complex;

/** Turns solved faults into results: currents, times, potential rises, stress of the control cable. */
final class FaultResults {

    static final Source CIRCUIT =
            Source.tool("earth-fault circuit with the electrode in the loop, docs/theory/fault.md");
    private static final double ROUNDING = 1e-9;
    private static final String MODEL = "earth-fault circuit with the electrode in the loop";

    private final FaultClearing clearing;
    private final boolean protectionKnown;
    private final List<Result> results = new ArrayList<>();
    private final Set<Gap> gaps = new LinkedHashSet<>();

    FaultResults(Optional<FaultClearing> clearing) {
        this.protectionKnown = clearing.isPresent();
        this.clearing = clearing.orElseGet(() -> new FaultClearing(
                RecloseSequence.none(earthing.fault.clearing.Protection.fixed(0)),
                java.util.OptionalDouble.empty(),
                List.of(),
                Optional.empty()));
    }

    List<Result> results() {
        return results;
    }

    List<Gap> gaps() {
        return List.copyOf(gaps);
    }

    void gap(Gap gap) {
        gaps.add(gap);
    }

    void add(Result result) {
        results.add(result);
    }

    private static Result number(String id, PowerCase power, double value, String unit) {
        return Result.of(id, power.circumstances(), power.at(), value, unit, MODEL, CIRCUIT);
    }

    /** Current, share of the main electrode, times, detection, X/R. */
    void fault(SolvedFault solved) {
        PowerCase power = solved.power();
        String id = "fault." + power.circumstances().keys().getOrDefault("fault", "earth") + ".";
        if (!solved.flows()) {
            gap(new Gap(
                    id + "clearing-time",
                    power.circumstances(),
                    "never: " + "no way leads the fault current from the tank to earth",
                    List.of("main-earth")));
            return;
        }
        Result current = number(id + "current", power, power.current(), "A");
        if (solved.circuit().isPresent()) {
            EarthFaultResult circuit = solved.circuit().get();
            current = current.withWorked(Worked.of("I_F", "E / Z")
                    .with("E", circuit.phaseVoltage(), "V")
                    .with("Z", circuit.loopImpedance().abs(), "ohm")
                    .gives(power.current(), "A"));
        }
        results.add(current);
        EarthPaths.mainElectrode(power.site())
                .map(name -> power.electrodeCurrents().get(name))
                .ifPresent(share -> results.add(number(id + "electrode-current", power, Math.abs(share), "A")));
        division(id, solved);
        if (power.xOverR() > 0) {
            results.add(number(id + "loop-x-over-r", power, power.xOverR(), ""));
        }
        if (!protectionKnown) {
            return;
        }
        clearing.pickup()
                .ifPresent(pickup -> results.add(number(id + "detection-ratio", power, power.current() / pickup, "")
                        .withWorked(Worked.of("n", "I_F / I_p")
                                .with("I_F", power.current(), "A")
                                .with("I_p", pickup, "A")
                                .gives(power.current() / pickup, ""))));
        solved.ending().ifPresent(ending -> times(id, power, ending));
        clearing.backUp().ifPresent(backUp -> backUp(power, backUp));
    }

    /** What leaves the tank beside the main electrode. */
    private void division(String id, SolvedFault solved) {
        PowerCase power = solved.power();
        for (EarthPaths.Member member : power.paths().withRole(EarthPaths.Role.PARALLEL)) {
            double current = power.memberCurrents().getOrDefault(member.name(), 0.0);
            if (member.intact() && current > ROUNDING * power.current()) {
                results.add(number(id + EarthPaths.key(member.name()) + "-current", power, current, "A"));
            }
        }
        solved.circuit().filter(c -> c.bondHeight().isPresent()).ifPresent(circuit -> {
            double intoPole = intoPole(solved);
            results.add(number(id + "pole-share", power, intoPole / power.current(), "")
                    .withWorked(Worked.of("s", "I_P / I_F")
                            .with("I_P", intoPole, "A")
                            .with("I_F", power.current(), "A")
                            .gives(intoPole / power.current(), "")));
            results.add(number(
                    id + "station-potential",
                    power,
                    circuit.stationPotentialRise().abs(),
                    "V"));
        });
    }

    private void times(String id, PowerCase power, RecloseSequence.Outcome ending) {
        if (ending instanceof RecloseSequence.Outcome.Sustained sustained) {
            gap(new Gap(id + "clearing-time", power.circumstances(), "never: " + sustained.reason(), List.of()));
            return;
        }
        results.add(number(id + "clearing-time", power, ending.shots().get(0).duration(), "s"));
        List<String> names = new ArrayList<>();
        for (int i = 0; i < ending.shots().size(); i++) {
            names.add("t_" + (i + 1));
        }
        Worked.Builder sum = Worked.of("t", String.join(" + ", names));
        for (int i = 0; i < names.size(); i++) {
            sum.with(names.get(i), ending.shots().get(i).duration(), "s");
        }
        results.add(
                number(id + "total-time", power, ending.liveTime(), "s").withWorked(sum.gives(ending.liveTime(), "s")));
    }

    private void backUp(PowerCase power, RecloseSequence backUp) {
        RecloseSequence.Outcome ending = backUp.run(power.current());
        String id = "fault.back-up." + power.circumstances().keys().getOrDefault("fault", "earth");
        if (ending instanceof RecloseSequence.Outcome.Lockout) {
            results.add(number(id + ".clearing-time", power, ending.liveTime(), "s"));
        } else if (ending instanceof RecloseSequence.Outcome.Sustained sustained) {
            gap(new Gap(id + ".clearing-time", power.circumstances(), "never: " + sustained.reason(), List.of()));
        }
    }

    /** A value of two phases on this tank. */
    static Result twoPhases(String quantity, Case circumstances, double value, String unit) {
        return Result.of(
                "fault." + FaultStudy.TWO_PHASES + "." + quantity,
                circumstances,
                "nominal",
                value,
                unit,
                "two phases on this tank, information: the current goes from phase to phase through the bonds of"
                        + " arresters and tank; the hand value is that current without the earth",
                CIRCUIT);
    }

    /** Rise in a double earth fault, which no touch voltage is held against: information. */
    void doubleRise(SolvedFault solved) {
        PowerCase power = solved.power();
        Double tank = power.rise().get(EarthPaths.TANK);
        if (tank != null && solved.flows()) {
            results.add(Result.of(
                    "fault." + power.circumstances().keys().getOrDefault("fault", "") + ".potential-rise",
                    power.circumstances(),
                    power.at(),
                    Math.abs(tank),
                    "V",
                    "potential rise of the tank in a double earth fault, information: touch follows the single fault",
                    CIRCUIT));
        }
    }

    /** Potential to remote earth of each node. */
    void rise(SolvedFault solved) {
        PowerCase power = solved.power();
        Optional<String> main = EarthPaths.mainElectrode(power.site());
        main.ifPresent(name -> mainRise(power, name));
        Double tank = power.rise().get(EarthPaths.TANK);
        if (tank != null) {
            Result result = number("epr.tank", power, Math.abs(tank), "V");
            Complex impedance = solved.pole().impedance();
            results.add(
                    impedance.abs() > 0
                            ? result.withWorked(Worked.of("U_T", "I_P * Z_P")
                                    .with("I_P", Math.abs(tank) / impedance.abs(), "A")
                                    .with("Z_P", impedance.abs(), "ohm")
                                    .gives(Math.abs(tank), "V"))
                            : result);
        }
        Cubicle cubicle = power.site().cubicle();
        if (cubicle == null) {
            return;
        }
        Double rise = power.rise().get(EarthPaths.CUBICLE);
        if (rise == null) {
            gap(new Gap(
                    "epr.cubicle",
                    power.circumstances(),
                    "the cubicle floats and its capacitances are not given: its voltage cannot be computed",
                    List.of("cubicle.capacitance-to-earth", "cubicle.capacitance-to-cable")));
            return;
        }
        results.add(number("epr.cubicle", power, Math.abs(rise), "V"));
        String own = cubicle.electrode();
        if (own != null
                && power.rise().containsKey(PoleNetwork.node(own))
                && main.filter(own::equals).isEmpty()) {
            String key = EarthPaths.key(own);
            results.add(number(
                    "epr." + (key.equals("cubicle") ? "cubicle-electrode" : key),
                    power,
                    Math.abs(power.rise().getOrDefault(PoleNetwork.node(own), 0.0)),
                    "V"));
        }
    }

    private void mainRise(PowerCase power, String name) {
        Double rise = power.rise().get(PoleNetwork.node(name));
        Double current = power.electrodeCurrents().get(name);
        if (rise == null || current == null) {
            return;
        }
        double resistance = power.earth().resistance(name, name);
        double others = 0;
        for (Map.Entry<String, Double> other : power.electrodeCurrents().entrySet()) {
            if (!other.getKey().equals(name)) {
                others += power.earth().resistance(name, other.getKey()) * other.getValue();
            }
        }
        double along = power.earth().inSeries(name);
        String own = along == 0 ? "I_E * R_E" : "I_E * (R_E + R_S)";
        Worked.Builder line = Math.abs(others) < ROUNDING * Math.abs(rise)
                ? Worked.of("U_E", own)
                : Worked.of("U_E", own + " + U_M").with("U_M", others, "V");
        if (along != 0) {
            line.with("R_S", along, "ohm");
        }
        results.add(Result.of(
                        "epr.main",
                        power.circumstances(),
                        power.at(),
                        Math.abs(rise),
                        "V",
                        MODEL
                                + "; the hand value is the fault current times the electrodes' own resistances side by side:"
                                + " what leaves by neutral, shield wire, stay and screen, and what the electrodes lift each"
                                + " other, is not in it",
                        CIRCUIT)
                .withHandValue(power.current() * sideBySide(power))
                .withWorked(line.with("I_E", current, "A")
                        .with("R_E", resistance, "ohm")
                        .gives(Math.abs(rise), "V")));
    }

    /** Own resistances of the electrodes that carry current, as if they stood far apart [Ω]. */
    private static double sideBySide(PowerCase power) {
        double conductance = 0;
        for (Map.Entry<String, Double> electrode : power.electrodeCurrents().entrySet()) {
            String name = electrode.getKey();
            if (Math.abs(electrode.getValue()) > ROUNDING * power.current() && !name.equals(ElectrodeBars.POLE_BUTT)) {
                conductance += 1 / power.earth().resistance(name, name);
            }
        }
        return conductance > 0 ? 1 / conductance : 0;
    }

    /** What stands across the control cable, and what its screen carries. */
    void cable(SolvedFault solved) {
        PowerCase power = solved.power();
        if (power.site().controlCable() == null) {
            return;
        }
        Double tank = power.rise().get(EarthPaths.TANK);
        Double cubicle = power.rise().get(EarthPaths.CUBICLE);
        if (tank == null || cubicle == null) {
            gap(new Gap(
                    "cable.power-frequency",
                    power.circumstances(),
                    "the cubicle floats and its capacitances are not given: the voltage across the cable cannot be"
                            + " computed",
                    List.of("cubicle.capacitance-to-earth", "cubicle.capacitance-to-cable")));
            return;
        }
        double voltage = cableVoltage(solved, tank - cubicle);
        Result result = number("cable.power-frequency.voltage", power, voltage, "V");
        results.add(
                voltage > 0.01 * Math.abs(tank)
                        ? result.withWorked(Worked.of("U", "U_T - U_C")
                                .with("U_T", tank, "V")
                                .with("U_C", cubicle, "V")
                                .gives(voltage, "V"))
                        : result.withWorked(Worked.of("U", "I_P * Z_TC")
                                .with("I_P", intoPole(solved), "A")
                                .with("Z_TC", intoPole(solved) > 0 ? voltage / intoPole(solved) : 0, "ohm")
                                .gives(voltage, "V")));
        for (EarthPaths.Member member : power.paths().withRole(EarthPaths.Role.SCREEN)) {
            double current = power.memberCurrents().getOrDefault(member.name(), 0.0);
            // A screen that ends on a floating cubicle carries a rounding error.
            results.add(number(
                    "cable.power-frequency.screen-current",
                    power,
                    current > ROUNDING * power.current() ? current : 0,
                    "A"));
        }
    }

    private static double intoPole(SolvedFault solved) {
        double impedance = solved.pole().impedance().abs();
        Double tank = solved.power().rise().get(EarthPaths.TANK);
        return impedance > 0 && tank != null ? Math.abs(tank) / impedance : 0;
    }

    /** The phasor difference where both potentials are of the pole's network: along a lead it is partly reactive. */
    private static double cableVoltage(SolvedFault solved, double difference) {
        Complex tank = solved.pole().potentials().get(EarthPaths.TANK);
        Complex cubicle = solved.pole().potentials().get(EarthPaths.CUBICLE);
        if (tank == null || cubicle == null) {
            return Math.abs(difference);
        }
        return tank.subtract(cubicle).abs() * intoPole(solved);
    }

    static String word(Enum<?> constant) {
        return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
