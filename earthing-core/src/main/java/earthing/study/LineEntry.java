package earthing.study;

import earthing.network.Breakdown;
import earthing.network.Circuit;
import earthing.network.LosslessLine;
import earthing.network.Wave;
import earthing.site.ArresterSide;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeMap;

/**
 * The line with its arresters, put in the place of the current into the tank: a stroke to one phase conductor, the line's
 * surge impedance each way, the arresters of this pole and, where they have some, of the neighbours. Equal directions are
 * taken together as one of so many parallel conductors.
 */
final class LineEntry {

    /** Phases; the stroke hits the first, an outer one. */
    static final List<String> PHASES = List.of("a", "b", "c");

    /** Neighbouring poles with arresters that are followed; beyond them the line is endless. */
    static final int FOLLOWED = 3;
    /** Node and source of an induced voltage. */
    private static final String INDUCED = "induced voltage";
    /** Beginning of the branches of the arcs over the bushings, each followed by its terminal. */
    static final String BUSHING = "bushing ";
    /** Beginning of the branches of the arcs over the open switch. */
    static final String OPEN_SWITCH = "open switch phase ";
    /** Arc over a bushing after breakdown [Ω]; small against every surge impedance. */
    private static final double ARC = 1;

    private final EntryInputs line;
    private final Situation situation;
    private final Circuit.Builder circuit;
    private final Map<String, Fitted> arresters = new TreeMap<>();
    private final List<String> terminals = new ArrayList<>();
    private String strikeNode = "";

    /**
     * Where the stroke hits and how the switch stands.
     *
     * @param here at this pole; else one span away
     * @param open whether the switch is open
     * @param strength impulse level at which bushings and the open switch break down [V]; empty: nothing breaks down
     */
    record Situation(boolean here, boolean open, OptionalDouble strength) {}

    /**
     * The arresters of one phase and side.
     *
     * @param branches branches that together carry the current of all of them
     * @param parallel how many equal ones the first branch stands for
     * @param top node between leads and arrester
     */
    record Fitted(List<String> branches, int parallel, String top) {}

    /** The circuit with what is needed to read it. */
    record Joined(
            Circuit circuit, Map<String, Fitted> arresters, List<String> terminals, String struck, int directions) {}

    private LineEntry(Circuit.Builder circuit, EntryInputs line, Situation situation) {
        this.line = line;
        this.situation = situation;
        this.circuit = circuit;
    }

    private static Circuit.Builder withoutSource(Circuit pole) {
        return pole.toBuilder().remove(PoleCircuit.SOURCE);
    }

    static Joined join(Circuit pole, EntryInputs line, Situation situation, Wave wave) {
        return new LineEntry(withoutSource(pole), line, situation).build(wave);
    }

    /**
     * A voltage that is induced alike in all phases of a line which passes the pole without end: it stands behind the
     * line's surge impedances. The neighbours' arresters are left out, and the switch is closed.
     *
     * @param strength impulse level at which bushings break down [V]; empty: nothing breaks down
     */
    static Joined induced(Circuit pole, EntryInputs line, Wave voltage, OptionalDouble strength) {
        return new LineEntry(withoutSource(pole), line, new Situation(true, false, strength)).buildInduced(voltage);
    }

    /**
     * A stroke to the pole itself: the current enters where the pole's circuit has it, and the line takes its share over
     * arresters and bushings that the risen tank drives backwards.
     *
     * @param open whether the switch is open
     * @param strength impulse level at which bushings and the open switch break down [V]; empty: nothing breaks down
     */
    static Joined beside(Circuit pole, EntryInputs line, boolean open, OptionalDouble strength) {
        return new LineEntry(pole.toBuilder(), line, new Situation(true, open, strength)).buildBeside();
    }

    /** A pole whose line is not described: nothing leaves it. */
    static Joined without(Circuit pole) {
        return new Joined(pole, Map.of(), List.of(), "", 0);
    }

    private Joined buildBeside() {
        if (situation.open()) {
            for (ArresterSide side : List.of(ArresterSide.SOURCE, ArresterSide.LOAD)) {
                int count = side == ArresterSide.SOURCE ? 1 : line.directions() - 1;
                int protectors = line.protects(side) ? 1 : 0;
                if (count > 0 || protectors > 0) {
                    side(side == ArresterSide.SOURCE ? " source" : " load", count, protectors, false);
                }
            }
        } else {
            side("", line.directions(), line.sides(), false);
        }
        if (situation.strength().isPresent()) {
            gaps(new Breakdown.Level(situation.strength().getAsDouble()));
        }
        return new Joined(circuit.build(), Collections.unmodifiableMap(arresters), terminals, "", line.directions());
    }

    private Joined buildInduced(Wave voltage) {
        List<String> nodes = new ArrayList<>();
        for (int k = 0; k < PHASES.size(); k++) {
            String node = "phase " + PHASES.get(k);
            nodes.add(node);
            terminals.add(node);
            if (k < line.phases() && line.sides() > 0) {
                arrester(PHASES.get(k), node, line.sides(), false);
            }
        }
        if (situation.strength().isPresent()) {
            gaps(new Breakdown.Level(situation.strength().getAsDouble()));
        }
        endless("line", nodes, line.directions(), INDUCED);
        circuit.voltageSource(INDUCED, INDUCED, Circuit.REFERENCE, voltage);
        return new Joined(
                circuit.build(), Collections.unmodifiableMap(arresters), terminals, nodes.get(0), line.directions());
    }

    private Joined build(Wave wave) {
        ArresterSide struck = struckSide(line, situation.open());
        int directions = line.directions();
        String struckTerminal;
        int struckDirections;
        if (situation.open()) {
            struckDirections = struck == ArresterSide.SOURCE ? 1 : directions - 1;
            struckTerminal = "";
            for (ArresterSide side : List.of(ArresterSide.SOURCE, ArresterSide.LOAD)) {
                int count = side == ArresterSide.SOURCE ? 1 : directions - 1;
                int protectors = line.protects(side) ? 1 : 0;
                if (count == 0 && protectors == 0) {
                    continue;
                }
                String suffix = side == ArresterSide.SOURCE ? " source" : " load";
                List<String> nodes = side(suffix, count, protectors, side == struck);
                if (side == struck) {
                    struckTerminal = nodes.get(0);
                }
            }
        } else {
            struckDirections = directions;
            struckTerminal = side("", directions, line.sides(), true).get(0);
        }
        if (situation.strength().isPresent()) {
            gaps(new Breakdown.Level(situation.strength().getAsDouble()));
        }
        circuit.currentSource(PoleCircuit.SOURCE, Circuit.REFERENCE, strikeNode, wave);
        return new Joined(
                circuit.build(), Collections.unmodifiableMap(arresters), terminals, struckTerminal, struckDirections);
    }

    /** Every bushing and, if it is open, the switch: an arc where the voltage reaches the impulse level. */
    private void gaps(Breakdown law) {
        for (String terminal : terminals) {
            circuit.gap(BUSHING + terminal, terminal, EarthPaths.TANK, law, ARC);
        }
        for (String phase : PHASES) {
            String source = "phase " + phase + " source";
            String load = "phase " + phase + " load";
            if (terminals.contains(source) && terminals.contains(load)) {
                circuit.gap(OPEN_SWITCH + phase, source, load, law, ARC);
            }
        }
    }

    /** The side that the stroke hits when the switch is open: the one without arresters if there is one. */
    static ArresterSide struckSide(EntryInputs line, boolean open) {
        return open && line.protects(ArresterSide.SOURCE) && !line.protects(ArresterSide.LOAD) && line.directions() > 1
                ? ArresterSide.LOAD
                : ArresterSide.SOURCE;
    }

    /** One side of the switch, or both when it is closed: terminals, arresters, directions of the line. */
    private List<String> side(String suffix, int directions, int protectors, boolean struck) {
        List<String> nodes = new ArrayList<>();
        for (int k = 0; k < PHASES.size(); k++) {
            String phase = PHASES.get(k);
            String node = "phase " + phase + suffix;
            nodes.add(node);
            boolean fitted = k < line.phases() && protectors > 0;
            if (fitted || directions > 0) {
                terminals.add(node);
            }
            if (fitted) {
                String name = phase + (suffix.isEmpty() ? "" : "-" + suffix.strip());
                arrester(name, node, protectors, struck && k == 0);
            }
        }
        int rest = directions;
        if (struck && !situation.here()) {
            rest--;
            struckSpan("struck direction" + suffix, nodes);
        } else if (struck) {
            strikeNode = nodes.get(0);
        }
        if (rest > 0) {
            direction("line" + suffix, nodes, rest);
        }
        return nodes;
    }

    /** The arresters of one phase at this pole; those of the struck phase follow the front where the data allow it. */
    private void arrester(String name, String terminal, int parallel, boolean struck) {
        String top = "arrester " + name;
        if (struck && line.detailed().isPresent()) {
            List<String> branches = new ArrayList<>();
            for (int k = 1; k <= parallel; k++) {
                String each = k == 1 ? top : top + " " + k;
                circuit.inductor("leads of " + each, terminal, each, 0, line.leadInductance(1));
                line.detailed().get().addTo(circuit, each, each, EarthPaths.TANK);
                branches.add("leads of " + each);
            }
            arresters.put(name, new Fitted(List.copyOf(branches), 1, top));
            return;
        }
        circuit.inductor("leads of " + top, terminal, top, 0, line.leadInductance(parallel));
        circuit.nonlinear(top, top, EarthPaths.TANK, line.curve(parallel));
        arresters.put(name, new Fitted(List.of("leads of " + top), parallel, top));
    }

    /** The direction of the stroke: one span, the stroke, then the rest of the line. */
    private void struckSpan(String name, List<String> from) {
        List<String> next = nodes(name, 1);
        circuit.line(name + " span 1", from, next, LosslessLine.of(line.impedance(1), line.delay()));
        strikeNode = next.get(0);
        if (line.neighboursHaveArresters()) {
            neighbour(name, 1, next, 1);
            chain(name, next, 2, 1);
        } else {
            endless(name, next, 1);
        }
    }

    private void direction(String name, List<String> from, int parallel) {
        if (line.neighboursHaveArresters()) {
            chain(name, from, 1, parallel);
        } else {
            endless(name, from, parallel);
        }
    }

    private void chain(String name, List<String> from, int first, int parallel) {
        List<String> at = from;
        for (int k = first; k <= FOLLOWED; k++) {
            List<String> next = nodes(name, k);
            circuit.line(name + " span " + k, at, next, LosslessLine.of(line.impedance(parallel), line.delay()));
            neighbour(name, k, next, parallel);
            at = next;
        }
        endless(name, at, parallel);
    }

    private static List<String> nodes(String name, int pole) {
        return PHASES.stream()
                .map(phase -> name + " pole " + pole + " phase " + phase)
                .toList();
    }

    /** A neighbouring pole: the same arresters on all phases, one down-lead, its own earth. */
    private void neighbour(String name, int pole, List<String> nodes, int parallel) {
        String earth = name + " pole " + pole;
        for (int k = 0; k < PHASES.size(); k++) {
            circuit.nonlinear(earth + " arrester " + PHASES.get(k), nodes.get(k), earth, line.curve(parallel));
        }
        circuit.inductor(
                earth + " earth",
                earth,
                Circuit.REFERENCE,
                line.neighbourResistance() / parallel,
                line.neighbourInductance() / parallel);
    }

    /** A line without end: its surge impedances as coupled resistances. */
    private void endless(String name, List<String> nodes, int parallel) {
        endless(name, nodes, parallel, Circuit.REFERENCE);
    }

    private void endless(String name, List<String> nodes, int parallel, String far) {
        double[][] z = line.impedance(parallel);
        for (int i = 0; i < PHASES.size(); i++) {
            circuit.resistor(endlessBranch(name, i), nodes.get(i), far, z[i][i]);
            for (int j = 0; j < i; j++) {
                circuit.mutual(endlessBranch(name, i), endlessBranch(name, j), z[i][j]);
            }
        }
    }

    private static String endlessBranch(String name, int phase) {
        return name + " onward " + PHASES.get(phase);
    }
}
