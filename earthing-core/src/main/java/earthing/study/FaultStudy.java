package earthing.study;

import earthing.fault.DoubleEarthFault;
import earthing.fault.EarthFaultResult;
import earthing.fault.EarthFaultSystem;
import earthing.fault.RelevantCurrent;
import earthing.fault.ReturnConductor;
import earthing.fault.SecondWire;
import earthing.quantity.Measure;
import earthing.quantity.Measure.Bound;
import earthing.quantity.Numbers;
import earthing.quantity.Source;
import earthing.site.BackUpUse;
import earthing.site.Site;
import earthing.study.FaultNetwork.State;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.UnaryOperator;
import org.apache.commons.math3.complex.Complex;

/**
 * Earth faults at the pole: the site as it is over the bounds of soil and source, the other arrangements of the cubicle's
 * earth, each earth path broken in turn.
 */
final class FaultStudy {

    /**
     * What the other studies take from here.
     *
     * @param cases the solved faults
     * @param results the numbers of this study
     * @param swept faults between the smallest and the largest current
     * @param clearing how a fault is cleared, where it is described
     * @param solved the same faults with their circuits
     */
    record Outcome(
            List<PowerCase> cases,
            StudyResults results,
            List<SweptFaults.Swept> swept,
            Optional<FaultClearing> clearing,
            List<SolvedFault> solved) {

        /** Copies the lists. */
        Outcome {
            cases = List.copyOf(cases);
            swept = List.copyOf(swept);
            solved = List.copyOf(solved);
        }
    }

    /** Word of the case of two faults at two poles. */
    static final String DOUBLE_FAULT = "double-earth-fault";

    /** Word of the case of two phases on this tank. */
    static final String TWO_PHASES = "two-phases-on-this-tank";

    /** Word of the case of the standing load current of a single-wire line. */
    static final String NORMAL_LOAD = "normal-load";

    private static final Source OTHER_POLE =
            Source.tool("an earth of no resistance at the other pole errs to the high current");

    private final Site site;
    private final EarthCache cache;
    private final StudyScope scope;
    private final Inputs in = new Inputs();
    private final Set<String> notes = new LinkedHashSet<>();
    private final FaultNetwork network;
    private final List<SolvedFault> own = new ArrayList<>();
    private final List<SolvedFault> all = new ArrayList<>();
    private final List<SweptFaults.Swept> swept = new ArrayList<>();
    private final Map<String, List<SolvedFault>> doubles = new LinkedHashMap<>();
    private final Map<String, Map<String, List<SolvedFault>>> parts = new LinkedHashMap<>();
    private final List<Curve> curves = new ArrayList<>();
    private final Map<Bound, SiteEarth> earths = new HashMap<>();
    private final List<Ground> grounds = new ArrayList<>();
    private Optional<FaultClearing> clearing = Optional.empty();

    /** The pole at a point of the ground, with the bound of the neutral's earths along the line. */
    private record Ground(FaultSolver.Pole pole, Bound others) {}

    private FaultStudy(Site site, EarthCache cache, StudyScope scope) {
        this.site = site;
        this.cache = cache;
        this.scope = scope;
        this.network = new FaultNetwork(site, in, scope);
    }

    static Outcome of(Site site, EarthCache cache) {
        return of(site, cache, StudyScope.ALL_ARRANGEMENTS);
    }

    static Outcome of(Site site, EarthCache cache, StudyScope scope) {
        return new FaultStudy(site, cache, scope).run();
    }

    private Outcome run() {
        List<Gap> gaps = new ArrayList<>();
        try {
            clearing = Optional.of(FaultClearing.of(site, in));
        } catch (MissingInput missing) {
            gaps.add(missing.gap("fault.clearing-time", Case.NONE));
        }
        FaultResults results = new FaultResults(clearing);
        gaps.forEach(results::gap);
        FaultSolver solver = new FaultSolver(clearing);
        try {
            relevantCurrents();
            ownCases(solver, clearing, results);
            network.lineResults().forEach(results::add);
            inService(solver, results);
            if (scope == StudyScope.ALL_ARRANGEMENTS) {
                curves.addAll(FaultCurves.of(site, network, own));
            }
            TransferredPotential.of(site, own, results);
            ArresterDuty.of(site, own, network.sequencesKnown(), results, in);
            if (scope != StudyScope.POINT && clearing.isPresent()) {
                ArresterDuty.worst(site, clearing.get(), overvoltages(), results, in);
            }
            if (scope != StudyScope.POINT) {
                arrangements(solver, results);
                broken(solver, results);
            }
        } catch (MissingInput missing) {
            for (String id : List.of("fault", "epr", "cable.power-frequency", "touch", "step", "conductor")) {
                results.gap(missing.gap(id, Case.NONE));
            }
            results.gap(missing.gap("contingency", Case.NONE));
            results.gap(missing.gap("surge.arrester.continuous-voltage", Case.NONE));
            results.gap(missing.gap("surge.arrester.temporary-overvoltage", Case.NONE));
            if (!site.neighbours().isEmpty() || site.lvTransformer() != null) {
                results.gap(missing.gap("transfer", Case.NONE));
            }
            results.gap(missing.gap("aux-supply.isolation", Case.NONE));
        }
        return new Outcome(
                all.stream().map(SolvedFault::power).toList(),
                new StudyResults(results.results(), curves, results.gaps(), in.assumptions(), List.copyOf(notes)),
                swept,
                clearing,
                all);
    }

    /** Which current is held against what. */
    private void relevantCurrents() {
        in.choice(
                "",
                network.doubleFaultsCount()
                        ? "heating: the double earth fault; potential rise and touch: the capacitive or residual current"
                        : "heating, potential rise and touch: the single-phase earth fault",
                RelevantCurrent.SOURCE);
    }

    private Case circumstances(String fault, Optional<Arrangement> arrangement) {
        Case named = Case.NONE.with("fault", fault);
        return arrangement.map(a -> named.with("arrangement", a.word())).orElse(named);
    }

    private Optional<Arrangement> arrangement() {
        return site.cubicle() == null
                ? Optional.empty()
                : Arrangement.of(site.cubicle().earth());
    }

    private SiteEarth earth(Bound bound) throws MissingInput {
        SiteEarth known = earths.get(bound);
        if (known == null) {
            known = SiteEarth.of(site, bound, in, cache);
            earths.put(bound, known);
        }
        return known;
    }

    private FaultSolver.Pole pole(Site variant, EarthPaths paths, SiteEarth earth) throws MissingInput {
        return new FaultSolver.Pole(
                variant, paths, earth, PoleNetwork.of(variant, paths, earth, network.frequency(), in, notes));
    }

    private void ownCases(FaultSolver solver, Optional<FaultClearing> clearing, FaultResults results)
            throws MissingInput {
        Map<Bound, List<SolvedFault>> byBound = new LinkedHashMap<>();
        EarthPaths paths = EarthPaths.of(site);
        for (Bound bound : SiteEarth.bounds(site, scope)) {
            FaultSolver.Pole pole = pole(site, paths, earth(bound));
            grounds.add(new Ground(pole, bound));
            List<SolvedFault> both = new ArrayList<>();
            for (State state : State.values()) {
                EarthFaultSystem system = network.single(state, bound, pole.resistance());
                SolvedFault solved = solver.singlePhase(
                        circumstances(state.word(), arrangement()), pole, system, network.faultResistance(state));
                both.add(solved);
                emit(solved, results);
                neutralBroken(solver, pole, system, state, results);
                if (network.doubleFaultsCount() && network.sequencesKnown()) {
                    doubleFault(solver, pole, network.at(state, bound), state, results);
                }
                if (network.sequencesKnown() && bound == Bound.NOMINAL && state == State.MAXIMUM) {
                    twoPhases(solver, pole, network.at(state, bound), results);
                }
            }
            byBound.put(bound, both);
        }
        List<List<SolvedFault>> groups = new ArrayList<>(byBound.values());
        List<SoilPoints.Point> points = scope == StudyScope.POINT ? List.of() : SoilPoints.of(site);
        for (SoilPoints.Point point : points) {
            SiteEarth earth =
                    SiteEarth.of(point.site(), point.bound(), in, cache).named(point.at());
            groups.add(beside(solver, pole(site, paths, earth), point.bound(), results));
        }
        for (Bound bound : scope == StudyScope.POINT ? List.<Bound>of() : List.of(Bound.LOW, Bound.HIGH)) {
            Bound opposite = bound == Bound.LOW ? Bound.HIGH : Bound.LOW;
            for (Bound line : SoilPoints.neutralEarthsVary(site) ? List.of(opposite, bound) : List.of(bound)) {
                for (Bound tied : AdverseInputs.otherEarthsVary(site) ? List.of(opposite, bound) : List.of(bound)) {
                    if (line == opposite || tied == opposite) {
                        SiteEarth earth = earth(bound)
                                .named("soil=" + earth(bound).at()
                                        + (line == opposite ? ", neutral's earths=" + word(opposite) : "")
                                        + (tied == opposite ? ", other earths=" + word(opposite) : ""));
                        Site variant = tied == opposite ? AdverseInputs.otherEarths(site, opposite) : site;
                        groups.add(beside(solver, pole(variant, paths, earth), line, results));
                    }
                }
            }
        }
        clearing.ifPresent(c -> {
            breakpoints(c, byBound, results);
            sweep(groups, c, "intermediate");
            parts.forEach((which, byPoint) -> sweep(List.copyOf(byPoint.values()), c, which + "-broken-between"));
            if (!doubles.isEmpty()) {
                sweep(List.copyOf(doubles.values()), c, DOUBLE_FAULT + "-between");
            }
        });
    }

    private static String word(Bound bound) {
        return bound.name().toLowerCase(Locale.ROOT);
    }

    /** Currents in between, ended by the protection, and by its back-up where the file rests a verdict on that. */
    private void sweep(List<List<SolvedFault>> groups, FaultClearing ended, String word) {
        Case circumstances = circumstances(word, arrangement());
        swept.addAll(SweptFaults.of(groups, ended, circumstances));
        BackUpUse use = site.protection() == null ? null : site.protection().backUpFor();
        if (use == BackUpUse.HEATING || use == BackUpUse.HEATING_AND_TOUCH) {
            ended.asBackUp()
                    .map(backUp -> SweptFaults.of(groups, backUp, circumstances.with(Case.PROTECTION, Case.BACK_UP)))
                    .ifPresent(more -> more.forEach(s -> swept.add(
                            new SweptFaults.Swept(s.fault(), s.touch() && use == BackUpUse.HEATING_AND_TOUCH))));
        }
    }

    /** Smallest and largest fault at a point beside the bounds. */
    private List<SolvedFault> beside(FaultSolver solver, FaultSolver.Pole pole, Bound others, FaultResults results)
            throws MissingInput {
        grounds.add(new Ground(pole, others));
        List<SolvedFault> both = new ArrayList<>();
        for (State state : State.values()) {
            EarthFaultSystem system = network.single(state, others, pole.resistance());
            SolvedFault solved = solver.singlePhase(
                    circumstances(state.word(), arrangement()), pole, system, network.faultResistance(state));
            both.add(solved);
            emit(solved, results);
            neutralBroken(solver, pole, system, state, results);
        }
        return both;
    }

    private void emit(SolvedFault solved, FaultResults results) {
        own.add(solved);
        all.add(solved);
        clearedByBackUp(solved).ifPresent(all::add);
        results.fault(solved);
        results.rise(solved);
        results.cable(solved);
    }

    /** The same fault if the first protection fails: only the time differs. */
    private Optional<SolvedFault> clearedByBackUp(SolvedFault solved) {
        if (!solved.flows()) {
            return Optional.empty();
        }
        return clearing.flatMap(FaultClearing::backUp).map(backUp -> {
            PowerCase p = solved.power();
            earthing.fault.clearing.RecloseSequence.Outcome ending = backUp.run(p.current());
            return new SolvedFault(
                    p.clearedByBackUp(FaultClearing.shots(ending)),
                    solved.pole(),
                    solved.circuit(),
                    Optional.of(ending),
                    solved.drivingVoltage());
        });
    }

    /** The load current that returns through this pole's earth all the time, on a single-wire line. */
    private void inService(FaultSolver solver, FaultResults results) throws MissingInput {
        Measure load = site.system().neutral().earthReturnLoad();
        if (load == null) {
            return;
        }
        EarthPaths paths = EarthPaths.of(site);
        for (Bound bound : Bound.values()) {
            SolvedFault standing = solver.inService(
                    circumstances(NORMAL_LOAD, arrangement()),
                    pole(site, paths, earth(bound)),
                    network.at(State.MAXIMUM, bound),
                    in.need(load, "system.neutral.earth-return-load", Bound.HIGH));
            all.add(standing);
            results.rise(standing);
        }
    }

    /** A wire along the line that is parted in the span before this pole. */
    private record Parted(String wire, UnaryOperator<EarthFaultSystem> change) {}

    private List<Parted> wires(EarthFaultSystem system) {
        List<String> names = ReturnWires.members(site);
        List<Parted> wires = new ArrayList<>();
        if (system.returnConductor().filter(ReturnConductor::bondedAtPole).isPresent()) {
            wires.add(new Parted(
                    names.get(0),
                    s -> s.withReturnConductor(parted(s.returnConductor().orElseThrow()))));
        }
        if (system.secondWire().filter(w -> w.wire().bondedAtPole()).isPresent()) {
            wires.add(new Parted(names.get(1), s -> {
                SecondWire second = s.secondWire().orElseThrow();
                return s.withSecondWire(second.with(parted(second.wire())));
            }));
        }
        return wires;
    }

    /** Each wire in turn parted in the span before this pole; what lies beyond stays joined to the pole. */
    private void neutralBroken(
            FaultSolver solver, FaultSolver.Pole pole, EarthFaultSystem system, State state, FaultResults results)
            throws MissingInput {
        for (Parted wire : wires(system)) {
            wireBroken(solver, pole, wire.change().apply(system), state, wire.wire(), results);
        }
    }

    private Case wireBroken(String wire, State state) {
        return circumstances(wireKey(wire) + "-broken" + (state == State.MAXIMUM ? "" : "-minimum"), arrangement());
    }

    private static String wireKey(String wire) {
        return wire.equals(FaultSolver.LINE_NEUTRAL) ? "neutral" : EarthPaths.key(wire);
    }

    /** The faults among which one may strain the arresters more than those at the bounds do. */
    private List<ArresterDuty.Asked> overvoltages() throws MissingInput {
        boolean othersVary = SoilPoints.neutralEarthsVary(site);
        List<OvervoltageSearch.Ground> points = grounds.stream()
                .filter(g -> g.pole().network().earthed())
                .map(g -> new OvervoltageSearch.Ground(
                        g.pole().earth().at(),
                        othersVary ? g.others() : Bound.NOMINAL,
                        g.pole().network().impedance()))
                .toList();
        if (points.isEmpty() || !network.sequencesKnown() || network.singleWire()) {
            return List.of();
        }
        boolean nothingVaries = AdverseInputs.ofNetwork(site).isEmpty()
                && points.stream()
                                .map(OvervoltageSearch.Ground::pole)
                                .distinct()
                                .count()
                        == 1;
        if (nothingVaries) {
            return List.of();
        }
        FaultSolver.Pole pole = grounds.get(0).pole();
        List<ArresterDuty.Asked> asked = new ArrayList<>();
        for (State state : State.values()) {
            asked.add(new ArresterDuty.Asked(
                    state,
                    circumstances(state.word(), arrangement()),
                    asBonded(pole, UnaryOperator.identity()),
                    points));
            for (Parted wire : wires(network.at(state, Bound.NOMINAL))) {
                asked.add(new ArresterDuty.Asked(
                        state, wireBroken(wire.wire(), state), asBonded(pole, wire.change()), points));
            }
        }
        return asked;
    }

    private static OvervoltageSearch.Network asBonded(FaultSolver.Pole pole, UnaryOperator<EarthFaultSystem> change) {
        return (point, state, others) -> {
            try {
                return Optional.of(FaultSolver.asBonded(change.apply(FaultNetwork.exact(point, state, others)), pole));
            } catch (MissingInput contradiction) {
                return Optional.empty();
            }
        };
    }

    private static ReturnConductor parted(ReturnConductor wire) {
        return wire.broken(wire.spansToPole() - 1);
    }

    private void wireBroken(
            FaultSolver solver,
            FaultSolver.Pole pole,
            EarthFaultSystem parted,
            State state,
            String wire,
            FaultResults results) {
        String which = wireKey(wire);
        Case circumstances = wireBroken(wire, state);
        try {
            SolvedFault solved = solver.singlePhase(circumstances, pole, parted, network.faultResistance(state));
            emit(solved, results);
            parts.computeIfAbsent(which, w -> new LinkedHashMap<>())
                    .computeIfAbsent(solved.power().at(), at -> new ArrayList<>())
                    .add(solved);
        } catch (MissingInput missing) {
            results.gap(missing.gap("fault." + which + "-broken", circumstances));
        }
    }

    private void doubleFault(
            FaultSolver solver, FaultSolver.Pole pole, EarthFaultSystem system, State state, FaultResults results)
            throws MissingInput {
        double other = otherEarth(state);
        if (system.returnConductor().isPresent()) {
            notes.add("the double earth fault takes the other pole's earth as its own, not joined to the shield wire:"
                    + " the potential rise errs high");
        }
        SolvedFault solved = solver.atTwoPoles(
                circumstances(DOUBLE_FAULT + (state == State.MAXIMUM ? "" : "-minimum"), arrangement()),
                pole,
                system,
                other);
        all.add(solved);
        clearedByBackUp(solved).ifPresent(all::add);
        doubles.computeIfAbsent(solved.power().at(), at -> new ArrayList<>()).add(solved);
        results.fault(solved);
        results.doubleRise(solved);
        results.cable(solved);
    }

    private void twoPhases(FaultSolver solver, FaultSolver.Pole pole, EarthFaultSystem system, FaultResults results) {
        Case circumstances = circumstances(TWO_PHASES, arrangement());
        try {
            EarthFaultResult fault = solver.atOneTank(pole, system);
            double hand = DoubleEarthFault.atOneTank(
                            Math.sqrt(3) * system.phaseVoltage(),
                            system.source().plus(system.line()),
                            0)
                    .current()
                    .abs();
            double bond = fault.phaseCurrents().values().stream()
                    .mapToDouble(Complex::abs)
                    .max()
                    .orElse(0);
            results.add(FaultResults.twoPhases("bond-current", circumstances, bond, "A")
                    .withHandValue(hand));
            results.add(FaultResults.twoPhases(
                    "earth-current", circumstances, fault.totalCurrent().abs(), "A"));
            results.add(FaultResults.twoPhases(
                    "potential-rise", circumstances, fault.earthPotentialRise().abs(), "V"));
        } catch (MissingInput missing) {
            results.gap(missing.gap("fault." + TWO_PHASES, circumstances));
        }
    }

    /** Earth of the other pole of a double earth fault [Ω]. */
    private double otherEarth(State state) {
        Measure neighbour = site.line() == null ? null : site.line().neighbourEarthResistance();
        if (neighbour != null && neighbour.isKnown()) {
            return neighbour.at(state == State.MAXIMUM ? Bound.LOW : Bound.HIGH);
        }
        in.choice("line.neighbour-earth-resistance", "0 ohm", OTHER_POLE);
        return 0;
    }

    /** Currents at which the clearing time changes its course, where they lie between smallest and largest source. */
    private void breakpoints(FaultClearing clearing, Map<Bound, List<SolvedFault>> byBound, FaultResults results) {
        Set<Double> done = new LinkedHashSet<>();
        for (Bound bound : List.of(Bound.NOMINAL, Bound.HIGH, Bound.LOW)) {
            List<SolvedFault> both = byBound.getOrDefault(bound, List.of());
            if (both.isEmpty()) {
                continue;
            }
            double low =
                    both.stream().mapToDouble(s -> s.power().current()).min().orElse(0);
            SolvedFault largest = both.get(both.size() - 1);
            for (double current : clearing.between(low, largest.power().current())) {
                if (done.add(current)) {
                    SolvedFault between = largest.carrying(
                            current,
                            clearing,
                            circumstances("intermediate", arrangement()),
                            "current=" + Numbers.brief(current) + " A");
                    own.add(between);
                    all.add(between);
                    results.fault(between);
                }
            }
        }
    }

    /** The other three arrangements at nominal soil, for comparison. */
    private void arrangements(FaultSolver solver, FaultResults results) throws MissingInput {
        if (site.cubicle() != null) {
            ArrangementFaults others = new ArrangementFaults(site, cache, network, solver, in, notes, results);
            List<SolvedFault> solved = others.earthedOtherwise(arrangement(), this::otherEarth);
            if (scope == StudyScope.ALL_ARRANGEMENTS) {
                all.addAll(solved);
                all.addAll(others.bondedOtherwise(this::otherEarth));
            }
        }
    }

    private void broken(FaultSolver solver, FaultResults results) throws MissingInput {
        EarthPaths paths = EarthPaths.of(site);
        EarthFaultSystem system = network.at(State.MAXIMUM, Bound.NOMINAL);
        for (EarthPaths.Member member : PathBreaks.members(paths)) {
            Case circumstances =
                    circumstances(State.MAXIMUM.word(), arrangement()).with("broken", member.name());
            try {
                SolvedFault solved = solver.singlePhase(
                        circumstances,
                        pole(site, paths.broken(member.name()), earth(Bound.NOMINAL)),
                        system,
                        network.faultResistance(State.MAXIMUM));
                all.add(solved);
                results.rise(solved);
                results.cable(solved);
                PathBreaks.consequences(solved, member).forEach(results::add);
            } catch (MissingInput missing) {
                results.gap(missing.gap("contingency", circumstances));
            }
        }
    }
}
