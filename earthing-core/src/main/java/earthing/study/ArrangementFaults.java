package earthing.study;

import earthing.fault.EarthFaultSystem;
import earthing.quantity.Measure.Bound;
import earthing.site.ScreenBond;
import earthing.site.Site;
import earthing.study.FaultNetwork.State;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.ToDoubleFunction;

/**
 * The earth faults of the site as the cubicle could be earthed otherwise, at nominal soil, and with the screen of the
 * control cable bonded otherwise: what a person and the control cable would have to bear then.
 */
final class ArrangementFaults {

    private final Site site;
    private final EarthCache cache;
    private final FaultNetwork network;
    private final FaultSolver solver;
    private final Inputs in;
    private final Set<String> notes;
    private final FaultResults results;

    ArrangementFaults(
            Site site,
            EarthCache cache,
            FaultNetwork network,
            FaultSolver solver,
            Inputs in,
            Set<String> notes,
            FaultResults results) {
        this.site = site;
        this.cache = cache;
        this.network = network;
        this.solver = solver;
        this.in = in;
        this.notes = notes;
        this.results = results;
    }

    /**
     * The cubicle earthed otherwise.
     *
     * @param own the site's own arrangement
     * @param otherEarth resistance of the other pole's earth in a double earth fault [Ω], by state of the source
     * @return the cases that touch and heating may look at too
     */
    List<SolvedFault> earthedOtherwise(Optional<Arrangement> own, ToDoubleFunction<State> otherEarth)
            throws MissingInput {
        List<SolvedFault> solved = new ArrayList<>();
        for (Arrangement arrangement : Arrangement.values()) {
            if (own.filter(a -> a == arrangement).isEmpty()) {
                otherwise(arrangement, otherEarth, solved);
            }
        }
        return solved;
    }

    /**
     * The screen of the control cable bonded otherwise, in every arrangement.
     *
     * @param otherEarth as above
     * @return the cases that heating looks at too
     */
    List<SolvedFault> bondedOtherwise(ToDoubleFunction<State> otherEarth) throws MissingInput {
        List<SolvedFault> solved = new ArrayList<>();
        if (site.controlCable() != null) {
            ScreenBond other = SurgeStudy.otherBond(SurgeStudy.bond(site));
            for (Arrangement arrangement : Arrangement.values()) {
                bondedOtherwise(arrangement, other, otherEarth, solved);
            }
        }
        return solved;
    }

    private void otherwise(Arrangement arrangement, ToDoubleFunction<State> otherEarth, List<SolvedFault> solved)
            throws MissingInput {
        Case circumstances = Case.NONE.with("arrangement", arrangement.word());
        try {
            FaultSolver.Pole pole = pole(SiteVariant.arranged(site, arrangement, in));
            for (State state : List.of(State.MAXIMUM, State.MINIMUM)) {
                SolvedFault single = single(circumstances, pole, state);
                results.rise(single);
                results.cable(single);
                if (state == State.MAXIMUM) {
                    solved.add(single);
                }
            }
            doubleFault(circumstances, pole, otherEarth, solved);
        } catch (MissingInput missing) {
            results.gap(missing.gap("epr", circumstances.with("fault", State.MAXIMUM.word())));
        }
    }

    /** A screen bonded at both ends joins tank and cubicle, and carries what would flow in a tee. */
    private void bondedOtherwise(
            Arrangement arrangement, ScreenBond bond, ToDoubleFunction<State> otherEarth, List<SolvedFault> solved)
            throws MissingInput {
        Case circumstances =
                Case.NONE.with("arrangement", arrangement.word()).with("screen-bond", SurgeStudy.word(bond));
        try {
            FaultSolver.Pole pole = pole(SiteVariant.screened(SiteVariant.arranged(site, arrangement, in), bond, in));
            SolvedFault single = single(circumstances, pole, State.MAXIMUM);
            results.cable(single);
            solved.add(single);
            doubleFault(circumstances, pole, otherEarth, solved);
        } catch (MissingInput missing) {
            results.gap(missing.gap("cable.power-frequency", circumstances.with("fault", State.MAXIMUM.word())));
        }
    }

    private FaultSolver.Pole pole(Site variant) throws MissingInput {
        EarthPaths paths = EarthPaths.of(variant);
        SiteEarth earth = SiteEarth.of(variant, Bound.NOMINAL, in, cache);
        return new FaultSolver.Pole(
                variant, paths, earth, PoleNetwork.of(variant, paths, earth, network.frequency(), in, notes));
    }

    private SolvedFault single(Case circumstances, FaultSolver.Pole pole, State state) throws MissingInput {
        EarthFaultSystem system = network.at(state, Bound.NOMINAL);
        return solver.singlePhase(
                circumstances.with("fault", state.word()), pole, system, network.faultResistance(state));
    }

    private void doubleFault(
            Case circumstances, FaultSolver.Pole pole, ToDoubleFunction<State> otherEarth, List<SolvedFault> solved)
            throws MissingInput {
        if (network.doubleFaultsCount() && network.sequencesKnown()) {
            SolvedFault twofold = solver.atTwoPoles(
                    circumstances.with("fault", FaultStudy.DOUBLE_FAULT),
                    pole,
                    network.at(State.MAXIMUM, Bound.NOMINAL),
                    otherEarth.applyAsDouble(State.MAXIMUM));
            results.cable(twofold);
            solved.add(twofold);
        }
    }
}
