package earthing.fault;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * The same fault over several states of network and earth: largest and smallest source, wet and dry soil. No quantity has
 * a fixed adverse end, so each question takes its own worst state.
 *
 * @param cases every state with its result, at least one
 */
public record EarthFaultRange(List<Case> cases) {

    /**
     * One state.
     *
     * @param name what it is called
     * @param result what flows
     */
    public record Case(String name, EarthFaultResult result) {}

    /**
     * A state of the network or of the pole's earth under its name.
     *
     * @param <T> what is named
     * @param name name, for example {@code minimum source}
     * @param value the state
     */
    public record Named<T>(String name, T value) {}

    /**
     * Takes a copy.
     *
     * @param cases every state with its result, at least one
     */
    public EarthFaultRange {
        cases = List.copyOf(cases);
        if (cases.isEmpty()) {
            throw new IllegalArgumentException("a range needs at least one case");
        }
    }

    /**
     * Solves every network with every earth.
     *
     * @param systems states of the network
     * @param earths states of the pole's earth
     * @param kind what is faulted
     * @return all combinations
     */
    public static EarthFaultRange of(
            List<Named<EarthFaultSystem>> systems, List<Named<PoleEarth>> earths, EarthFault.Kind kind) {
        List<Case> cases = new ArrayList<>();
        for (Named<EarthFaultSystem> system : systems) {
            for (Named<PoleEarth> earth : earths) {
                cases.add(new Case(
                        system.name() + ", " + earth.name(), EarthFault.solve(system.value(), earth.value(), kind)));
            }
        }
        return new EarthFaultRange(cases);
    }

    /**
     * The state with the largest total current.
     *
     * @return the case
     */
    public Case largestCurrent() {
        return cases.stream()
                .max(Comparator.comparingDouble(c -> c.result().totalCurrent().abs()))
                .orElseThrow();
    }

    /**
     * The state with the smallest total current.
     *
     * @return the case
     */
    public Case smallestCurrent() {
        return cases.stream()
                .min(Comparator.comparingDouble(c -> c.result().totalCurrent().abs()))
                .orElseThrow();
    }

    /**
     * The state with the highest earth potential rise.
     *
     * @return the case
     */
    public Case highestRise() {
        return cases.stream()
                .max(Comparator.comparingDouble(
                        c -> c.result().earthPotentialRise().abs()))
                .orElseThrow();
    }
}
