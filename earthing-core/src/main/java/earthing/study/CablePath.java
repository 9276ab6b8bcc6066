package earthing.study;

import earthing.network.Branch;
import earthing.network.Circuit;
import earthing.network.TransientSolution;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * The way from tank to cubicle along which a cable-end voltage is split into its resistive and inductive parts. Where
 * several ways exist the split is not unique; the way is fixed as the screen if it is bonded at both ends, else the tee,
 * else the soil.
 */
final class CablePath {

    /** Node of the main earth at the cubicle's height, where no tee leaves it. */
    static final String LEAD_AT_CUBICLE = "main earth at the cubicle's height";

    /** Beginning of the branches of electrodes. */
    private static final String ELECTRODE = "earth of ";

    /** A branch passed along the way, +1 in its own direction, -1 against it. */
    record Step(String branch, int sign) {}

    private CablePath() {}

    /**
     * The way with the fewest branches along the screen if it is bonded at both ends, else along main earth and tee, else
     * down the main earth, through the soil and up the cubicle's own lead; where the site has none of these, any way.
     */
    static List<Step> of(EarthPaths paths, Circuit circuit) {
        boolean screen = paths.withRole(EarthPaths.Role.SCREEN).stream().anyMatch(EarthPaths.Member::intact);
        List<Step> found = List.of();
        if (screen) {
            found = search(circuit, name -> name.equals(PoleCircuit.SCREEN) || name.startsWith("screen bond"));
        }
        if (found.isEmpty()) {
            Set<String> metal = branches(paths, EarthPaths.Role.MAIN_EARTH, EarthPaths.Role.TEE);
            found = search(circuit, metal::contains);
        }
        if (found.isEmpty()) {
            Set<String> leads = branches(paths, EarthPaths.Role.MAIN_EARTH, EarthPaths.Role.OWN_LEAD);
            found = search(circuit, name -> leads.contains(name) || name.startsWith(ELECTRODE));
        }
        return found.isEmpty() ? search(circuit, name -> !name.equals(PoleCircuit.CORE)) : found;
    }

    /** Whether the way leads along main earth and tee, or down the main earth and up through two electrodes. */
    static boolean alongMainEarth(List<Step> path, EarthPaths paths) {
        Set<String> lead = branches(paths, EarthPaths.Role.MAIN_EARTH);
        Set<String> tee = branches(paths, EarthPaths.Role.TEE);
        List<String> names = path.stream().map(Step::branch).toList();
        long electrodes = names.stream()
                .filter(name -> name.startsWith(ELECTRODE) && !ElectrodeCircuit.inner(name))
                .count();
        return names.stream().anyMatch(lead::contains) && (names.stream().anyMatch(tee::contains) || electrodes == 2);
    }

    /** Whether the way leads along main earth and tee. */
    static boolean throughTee(List<Step> path, EarthPaths paths) {
        Set<String> tee = branches(paths, EarthPaths.Role.TEE);
        return path.stream().map(Step::branch).anyMatch(tee::contains);
    }

    /** Branches of the members of some roles; a lead may be cut at the cubicle's height. */
    private static Set<String> branches(EarthPaths paths, EarthPaths.Role... roles) {
        Set<String> names = new HashSet<>();
        for (EarthPaths.Role role : roles) {
            for (EarthPaths.Member member : paths.withRole(role)) {
                names.add(member.name());
                names.add(member.name() + PoleCircuit.BELOW_CUBICLE);
            }
        }
        return names;
    }

    private static List<Step> search(Circuit circuit, java.util.function.Predicate<String> allowed) {
        Map<String, Step> cameBy = new HashMap<>();
        Map<String, String> cameFrom = new HashMap<>();
        Deque<String> open = new ArrayDeque<>(List.of(EarthPaths.TANK));
        while (!open.isEmpty()) {
            String node = open.removeFirst();
            for (Branch branch : circuit.branches()) {
                boolean conducts = branch instanceof Branch.Inductor
                        || branch instanceof Branch.Resistor
                        || branch instanceof Branch.Admittance
                        || (branch instanceof Branch.Nonlinear && branch.name().startsWith(ELECTRODE));
                if (!conducts || !allowed.test(branch.name())) {
                    continue;
                }
                String other =
                        branch.from().equals(node) ? branch.to() : branch.to().equals(node) ? branch.from() : "";
                if (other.isEmpty() || other.equals(EarthPaths.TANK) || cameBy.containsKey(other)) {
                    continue;
                }
                cameBy.put(other, new Step(branch.name(), branch.from().equals(node) ? 1 : -1));
                cameFrom.put(other, node);
                open.addLast(other);
            }
        }
        List<Step> steps = new ArrayList<>();
        String node = EarthPaths.CUBICLE;
        for (Step step = cameBy.get(node); step != null; step = cameBy.get(node)) {
            steps.add(0, step);
            node = cameFrom.getOrDefault(node, EarthPaths.TANK);
        }
        return node.equals(EarthPaths.TANK) ? List.copyOf(steps) : List.of();
    }

    /** Voltage along the way that resistances make at a time [V], coupled resistances of the soil included. */
    static double resistive(List<Step> path, Circuit circuit, TransientSolution solution, double time) {
        double sum = 0;
        for (Step step : path) {
            Branch branch = circuit.branch(step.branch());
            if (branch instanceof Branch.Admittance port) {
                sum += step.sign() * ElectrodeCircuit.resistive(port, circuit, solution, time);
                continue;
            }
            if (branch instanceof Branch.Nonlinear ground) {
                sum += step.sign()
                        * ground.curve().voltage(solution.current(step.branch()).at(time));
                continue;
            }
            double resistance = branch instanceof Branch.Resistor r
                    ? r.resistance()
                    : branch instanceof Branch.Inductor l ? l.resistance() : 0;
            double drop = resistance * solution.current(step.branch()).at(time);
            for (Circuit.Mutual mutual : circuit.mutuals()) {
                boolean first = mutual.first().equals(step.branch());
                if (branch instanceof Branch.Resistor
                        && (first || mutual.second().equals(step.branch()))) {
                    String other = first ? mutual.second() : mutual.first();
                    drop += mutual.value() * solution.current(other).at(time);
                }
            }
            sum += step.sign() * drop;
        }
        return sum;
    }
}
