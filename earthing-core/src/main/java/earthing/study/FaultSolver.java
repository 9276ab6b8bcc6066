package earthing.study;

import earthing.fault.DoubleEarthFault;
import earthing.fault.DrivingPoint;
import earthing.fault.EarthFault;
import earthing.fault.EarthFaultResult;
import earthing.fault.EarthFaultSystem;
import earthing.fault.PoleEarth;
import earthing.fault.ReturnConductor;
import earthing.fault.SecondWire;
import earthing.fault.clearing.RecloseSequence;
import earthing.site.Site;
import earthing.study.EarthPaths.Member;
import earthing.study.EarthPaths.Role;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.commons.math3.complex.Complex;

/** Solves one earth fault: the network with the pole in the loop, then the currents within the pole. */
final class FaultSolver {

    /** Member that stands for the neutral along the line. */
    static final String LINE_NEUTRAL = "line neutral";

    /** Member that stands for the shield wire along the line. */
    static final String SHIELD_WIRE = "shield wire";

    /** Name of the pole's own way to earth. */
    static final String POLE = "pole";

    private final Optional<FaultClearing> clearing;

    FaultSolver(Optional<FaultClearing> clearing) {
        this.clearing = clearing;
    }

    /** What belongs to the pole in one state. */
    record Pole(Site site, EarthPaths paths, SiteEarth earth, PoleNetwork.Solution network) {

        /** Size of the impedance between tank and remote earth [Ω]; 1 Ω where no way leads to earth. */
        double resistance() {
            return network.earthed() ? network.impedance().abs() : 1;
        }
    }

    SolvedFault singlePhase(Case circumstances, Pole pole, EarthFaultSystem system, double faultResistance)
            throws MissingInput {
        PoleNetwork.Solution network = pole.network();
        system = asBonded(system, pole);
        if (!network.earthed() && !bonded(system)) {
            return floating(circumstances, pole, system);
        }
        PoleEarth ways = ways(network);
        EarthFaultResult result;
        try {
            result = EarthFault.solve(system, ways, EarthFault.Kind.singlePhase(faultResistance));
        } catch (IllegalArgumentException refused) {
            throw new MissingInput("the earth fault cannot be computed: " + refused.getMessage());
        }
        Complex intoPole = network.earthed() ? result.branchCurrent(POLE) : Complex.ZERO;
        Currents currents = new Currents(
                result.totalCurrent(), intoPole, away(pole.site(), result.wires()), result.earthPotentialRise());
        return solved(circumstances, pole, system, currents, result.xOverR(), Optional.of(result));
    }

    private static boolean bonded(EarthFaultSystem system) {
        return system.returnConductor().map(ReturnConductor::bondedAtPole).orElse(false)
                || system.secondWire().map(w -> w.wire().bondedAtPole()).orElse(false);
    }

    /** The network with every wire untied whose bond at the pole is broken. */
    static EarthFaultSystem asBonded(EarthFaultSystem system, Pole pole) {
        List<String> names = ReturnWires.members(pole.site());
        EarthFaultSystem state = system;
        if (state.returnConductor().isPresent() && broken(pole.paths(), names.get(0))) {
            state = state.withReturnConductor(state.returnConductor().get().unbonded());
        }
        if (state.secondWire().isPresent() && broken(pole.paths(), names.get(1))) {
            SecondWire second = state.secondWire().get();
            state = state.withSecondWire(second.with(second.wire().unbonded()));
        }
        return state;
    }

    private static boolean broken(EarthPaths paths, String name) {
        return paths.member(name).filter(m -> !m.intact()).isPresent();
    }

    /** What each bonded wire takes, by the member that stands for it. */
    private static Map<String, Away> away(Site site, List<EarthFaultResult.Wire> wires) {
        List<String> names = ReturnWires.members(site);
        Map<String, Away> away = new LinkedHashMap<>();
        for (int i = 0; i < wires.size(); i++) {
            if (wires.get(i).bonded()) {
                away.put(
                        names.get(i), new Away(wires.get(i).away(), wires.get(i).bondHeight()));
            }
        }
        return away;
    }

    /** Whether a member stands for a wire along the line, whose ladder belongs to the fault circuit. */
    static boolean isReturnWire(String member) {
        return member.equals(LINE_NEUTRAL) || member.equals(SHIELD_WIRE);
    }

    /** A current that flows into the pole's earth all the time. */
    SolvedFault inService(Case circumstances, Pole pole, EarthFaultSystem system, double current) throws MissingInput {
        if (!pole.network().earthed()) {
            throw new MissingInput("no way leads the load current from the tank to earth", "main-earth");
        }
        Complex whole = new Complex(current, 0);
        SolvedFault flowing = solved(
                circumstances,
                pole,
                system,
                new Currents(whole, whole, Map.of(), pole.network().impedance().multiply(current)),
                0,
                Optional.empty());
        return new SolvedFault(
                flowing.power().standing(), flowing.pole(), Optional.empty(), Optional.empty(), system.phaseVoltage());
    }

    /**
     * Two phases to earth at two poles. The other pole is the next one, so that nothing is induced along the line, and its
     * earth is its own: joined to a shield wire it would only help.
     */
    SolvedFault atTwoPoles(Case circumstances, Pole pole, EarthFaultSystem system, double otherEarth)
            throws MissingInput {
        PoleNetwork.Solution network = pole.network();
        EarthFaultSystem state = asBonded(system, pole);
        if (!network.earthed() && !bonded(state)) {
            return floating(circumstances, pole, state);
        }
        DrivingPoint here;
        try {
            here = DrivingPoint.of(state, ways(network));
        } catch (IllegalArgumentException refused) {
            throw new MissingInput("the double earth fault cannot be computed: " + refused.getMessage());
        }
        DoubleEarthFault fault = DoubleEarthFault.atTwoPoles(
                Math.sqrt(3) * state.phaseVoltage(),
                state.source().plus(state.line()),
                earthing.fault.line.SequenceImpedances.NONE,
                earthing.fault.line.SequenceImpedances.NONE,
                here.impedance(),
                new Complex(otherEarth, 0),
                0);
        Map<String, Away> away = new LinkedHashMap<>();
        away(pole.site(), here.wires())
                .forEach((name, w) -> away.put(name, new Away(w.current().multiply(fault.current()), w.bondHeight())));
        Complex intoPole = network.earthed() ? fault.firstRise().divide(network.impedance()) : Complex.ZERO;
        Currents currents = new Currents(fault.current(), intoPole, away, fault.firstRise());
        return solved(circumstances, pole, state, currents, fault.xOverR(), Optional.empty());
    }

    /**
     * Two phases on this tank: what goes from phase to phase through the bonds of arresters and tank, and what is left for
     * the ways to earth.
     */
    EarthFaultResult atOneTank(Pole pole, EarthFaultSystem system) throws MissingInput {
        try {
            return EarthFault.solve(asBonded(system, pole), ways(pole.network()), EarthFault.Kind.twoPhases(0));
        } catch (IllegalArgumentException refused) {
            throw new MissingInput("two phases on one tank cannot be computed: " + refused.getMessage());
        }
    }

    private static PoleEarth ways(PoleNetwork.Solution network) {
        return PoleEarth.of(network.earthed() ? List.of(new PoleEarth.Branch(POLE, network.impedance())) : List.of());
    }

    private record Away(Complex current, double bondHeight) {}

    private record Currents(Complex total, Complex intoPole, Map<String, Away> away, Complex tankRise) {}

    private SolvedFault solved(
            Case circumstances,
            Pole pole,
            EarthFaultSystem system,
            Currents currents,
            double xOverR,
            Optional<EarthFaultResult> circuit) {
        PoleNetwork.Solution network = pole.network();
        Complex reference = network.electrodes()
                .getOrDefault(EarthPaths.mainElectrode(pole.site()).orElse(""), Complex.ZERO)
                .multiply(currents.intoPole());
        if (!(reference.abs() > 1e-9 * currents.total().abs())) {
            reference = currents.tankRise();
        }
        Complex turn = reference.conjugate().divide(reference.abs());
        Map<String, Double> electrodes = new LinkedHashMap<>();
        network.electrodes().forEach((name, unit) -> electrodes.put(name, inPhase(unit, currents.intoPole(), turn)));
        Map<String, Double> rise = new LinkedHashMap<>();
        rise.put(EarthPaths.TANK, currents.tankRise().multiply(turn).getReal());
        Complex cubicle = network.potentials().get(EarthPaths.CUBICLE);
        if (cubicle != null) {
            rise.put(EarthPaths.CUBICLE, inPhase(cubicle, currents.intoPole(), turn));
        } else if (!network.earthed() && pole.paths().connected(EarthPaths.TANK, EarthPaths.CUBICLE)) {
            rise.put(EarthPaths.CUBICLE, currents.tankRise().multiply(turn).getReal());
        }
        // By node, because a crew may well name an electrode "cubicle" or "tank".
        for (String name : pole.earth().names()) {
            Complex unit = network.potentials().get(PoleNetwork.node(name));
            unit = unit == null ? network.floating().get(name) : unit;
            rise.put(PoleNetwork.node(name), unit == null ? 0 : inPhase(unit, currents.intoPole(), turn));
        }
        Map<String, Double> members = new LinkedHashMap<>();
        for (Member member : pole.paths().members()) {
            members.put(member.name(), memberCurrent(member, network, currents));
        }
        double total = currents.total().abs();
        Optional<RecloseSequence.Outcome> ending =
                clearing.map(c -> c.sequence().run(total));
        return new SolvedFault(
                new PowerCase(
                        circumstances,
                        pole.earth().at(),
                        pole.site(),
                        pole.paths(),
                        pole.earth(),
                        total,
                        electrodes,
                        rise,
                        members,
                        Math.max(0, xOverR),
                        system.frequency(),
                        ending.map(FaultClearing::shots).orElse(List.of())),
                network,
                circuit,
                ending,
                system.phaseVoltage());
    }

    /** A neutral that leaves the lead at its bond height takes its part only from there: above it the lead carries all. */
    private static double memberCurrent(Member member, PoleNetwork.Solution network, Currents currents) {
        if (!member.intact()) {
            return 0;
        }
        if (isReturnWire(member.name())) {
            Away away = currents.away().get(member.name());
            return away == null ? 0 : away.current().abs();
        }
        if (member.role() == Role.ELECTRODE) {
            String name = member.from().substring(EarthPaths.electrodeNode("").length());
            return network.electrodes()
                    .getOrDefault(name, Complex.ZERO)
                    .multiply(currents.intoPole())
                    .abs();
        }
        Complex current =
                network.members().getOrDefault(member.name(), Complex.ZERO).multiply(currents.intoPole());
        for (Away away : currents.away().values()) {
            boolean above = member.role() == Role.MAIN_EARTH && member.fromHeight() > away.bondHeight();
            current = above ? current.add(away.current()) : current;
        }
        return current.abs();
    }

    private static double inPhase(Complex unit, Complex current, Complex turn) {
        return unit.multiply(current).multiply(turn).getReal();
    }

    /** No way to earth: the faulted tank takes the voltage of the phase and nothing flows. */
    private static SolvedFault floating(Case circumstances, FaultSolver.Pole pole, EarthFaultSystem system) {
        Map<String, Double> rise = new LinkedHashMap<>();
        rise.put(EarthPaths.TANK, system.phaseVoltage());
        if (pole.paths().connected(EarthPaths.TANK, EarthPaths.CUBICLE)) {
            rise.put(EarthPaths.CUBICLE, system.phaseVoltage());
        } else if (pole.paths().connected(EarthPaths.CUBICLE, EarthPaths.EARTH)) {
            rise.put(EarthPaths.CUBICLE, 0.0);
        }
        Map<String, Double> members = new LinkedHashMap<>();
        pole.paths().members().forEach(m -> members.put(m.name(), 0.0));
        return new SolvedFault(
                new PowerCase(
                        circumstances,
                        pole.earth().at(),
                        pole.site(),
                        pole.paths(),
                        pole.earth(),
                        0,
                        Map.of(),
                        rise,
                        members,
                        0,
                        system.frequency(),
                        List.of(new PowerCase.FaultShot(Double.POSITIVE_INFINITY, 0))),
                pole.network(),
                Optional.empty(),
                Optional.of(
                        new RecloseSequence.Outcome.Sustained(List.of(), "no way leads the fault current to earth")),
                system.phaseVoltage());
    }
}
