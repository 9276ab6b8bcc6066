package earthing.network;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.apache.commons.math3.complex.Complex;

/**
 * An immutable circuit of named nodes and branches. Potentials are to the node {@link #REFERENCE}, which stands for
 * remote earth.
 */
public final class Circuit {

    /** Name of the reference node. */
    public static final String REFERENCE = "0";

    private final List<Branch> branches;
    private final Map<String, Branch> byName;
    private final List<Mutual> mutuals;
    private final List<String> nodes;
    private final Islands islands;

    /**
     * A coupling between two inductances or two resistances.
     *
     * @param first name of a branch
     * @param second name of another branch of the same kind
     * @param value mutual inductance [H] or mutual resistance [Ω], of either sign
     */
    public record Mutual(String first, String second, double value) {}

    private Circuit(Builder builder) {
        branches = List.copyOf(builder.branches.values());
        byName = Map.copyOf(builder.branches);
        mutuals = List.copyOf(builder.mutuals.values());
        Set<String> names = new LinkedHashSet<>();
        for (Branch branch : branches) {
            names.add(branch.from());
            names.add(branch.to());
        }
        names.remove(REFERENCE);
        WholeGroups.require(this);
        nodes = List.copyOf(names);
        islands = new Islands(this);
    }

    /**
     * The branches in the order in which they were given.
     *
     * @return branches
     */
    public List<Branch> branches() {
        return branches;
    }

    /**
     * The branches of one kind in the order in which they were given.
     *
     * @param kind the record class
     * @param <T> the record class
     * @return branches of that kind
     */
    public <T extends Branch> List<T> branches(Class<T> kind) {
        return branches.stream().filter(kind::isInstance).map(kind::cast).toList();
    }

    /**
     * One branch.
     *
     * @param name its name
     * @return the branch
     * @throws IllegalArgumentException if there is none of that name
     */
    public Branch branch(String name) {
        Branch branch = byName.get(name);
        if (branch == null) {
            throw new IllegalArgumentException("no branch " + name + " in the circuit");
        }
        return branch;
    }

    /**
     * The couplings.
     *
     * @return mutual inductances and resistances
     */
    public List<Mutual> mutuals() {
        return mutuals;
    }

    /**
     * The nodes without the reference, in order of first appearance.
     *
     * @return node names
     */
    public List<String> nodes() {
        return nodes;
    }

    /**
     * The nodes that no branch but current sources connects to the reference, directly or over other nodes. A mutual
     * coupling is no connection.
     *
     * @return node names, empty in a complete circuit
     */
    public List<String> floatingNodes() {
        return islands.floatingNodes();
    }

    Islands islands() {
        return islands;
    }

    /**
     * A builder that starts from this circuit, to change or add to it.
     *
     * @return builder holding the same branches and couplings
     */
    public Builder toBuilder() {
        Builder builder = new Builder();
        for (Branch branch : branches) {
            builder.branches.put(branch.name(), branch);
        }
        for (Mutual mutual : mutuals) {
            builder.mutuals.put(Builder.key(mutual.first(), mutual.second()), mutual);
        }
        return builder;
    }

    /** Collects branches and couplings. Nodes come into being by being named. */
    public static final class Builder {

        private final Map<String, Branch> branches = new LinkedHashMap<>();
        private final Map<String, Mutual> mutuals = new LinkedHashMap<>();

        /** An empty circuit. */
        public Builder() {}

        /**
         * Adds a branch of any kind.
         *
         * @param branch the branch
         * @return this builder
         * @throws IllegalArgumentException if the name is taken or both ends are one node
         */
        public Builder add(Branch branch) {
            if (branch.name().isBlank()
                    || branch.from().isBlank()
                    || branch.to().isBlank()) {
                throw new IllegalArgumentException("branch and node names must not be blank; have " + branch);
            }
            if (branch.from().equals(branch.to())) {
                throw new IllegalArgumentException(
                        "branch " + branch.name() + " has both ends at node " + branch.from());
            }
            if (branches.putIfAbsent(branch.name(), branch) != null) {
                throw new IllegalArgumentException("branch name " + branch.name() + " is used twice");
            }
            return this;
        }

        /**
         * Takes a branch out, with its couplings: a broken earth path, a removed bond. The end of a line takes the
         * whole line with it.
         *
         * @param name name of a branch
         * @return this builder
         * @throws IllegalArgumentException if there is none of that name
         */
        public Builder remove(String name) {
            Branch removed = branches.remove(name);
            if (removed == null) {
                throw new IllegalArgumentException("no branch " + name + " to remove");
            }
            if (removed instanceof Branch.LineEnd end) {
                branches.values()
                        .removeIf(b -> b instanceof Branch.LineEnd other
                                && other.lineName().equals(end.lineName()));
            }
            mutuals.values().removeIf(m -> m.first().equals(name) || m.second().equals(name));
            return this;
        }

        /**
         * Adds a resistance.
         *
         * @param name unique name
         * @param from first node
         * @param to second node
         * @param resistance R [Ω]
         * @return this builder
         */
        public Builder resistor(String name, String from, String to, double resistance) {
            return add(new Branch.Resistor(name, from, to, resistance));
        }

        /**
         * Adds a resistance and an inductance in series.
         *
         * @param name unique name
         * @param from first node
         * @param to second node
         * @param resistance R [Ω], may be 0
         * @param inductance L [H]
         * @return this builder
         */
        public Builder inductor(String name, String from, String to, double resistance, double inductance) {
            return add(new Branch.Inductor(name, from, to, resistance, inductance, Optional.empty()));
        }

        /**
         * Adds a resistance, an inductance and, for phasor solutions, an internal impedance in series.
         *
         * @param name unique name
         * @param from first node
         * @param to second node
         * @param resistance R [Ω], may be 0
         * @param inductance L [H]
         * @param internal impedance that depends on frequency
         * @return this builder
         */
        public Builder inductor(
                String name, String from, String to, double resistance, double inductance, InternalImpedance internal) {
            return add(new Branch.Inductor(name, from, to, resistance, inductance, Optional.of(internal)));
        }

        /**
         * Couples two inductances, or two resistances such as those of neighbouring earth electrodes.
         *
         * @param first name of a branch already given
         * @param second name of another branch of the same kind, already given
         * @param value mutual inductance [H] or mutual resistance [Ω]; positive if current entering both branches at
         *     {@code from} raises both voltages
         * @return this builder
         * @throws IllegalArgumentException if a branch is missing, of another kind, or the coupling is tighter than
         *     the geometric mean of the two own values
         */
        public Builder mutual(String first, String second, double value) {
            double a = own(first, second);
            double b = own(second, first);
            if (!(Math.abs(value) <= Math.sqrt(a * b) * (1 + 1e-12))) {
                throw new IllegalArgumentException("the coupling of " + first + " and " + second
                        + " must not exceed the geometric mean " + Math.sqrt(a * b) + "; have " + value);
            }
            if (mutuals.putIfAbsent(key(first, second), new Mutual(first, second, value)) != null) {
                throw new IllegalArgumentException("the coupling of " + first + " and " + second + " is given twice");
            }
            return this;
        }

        private double own(String name, String other) {
            Branch branch = branches.get(name);
            Branch partner = branches.get(other);
            if (branch instanceof Branch.Inductor inductor
                    && partner instanceof Branch.Inductor
                    && !name.equals(other)) {
                return inductor.inductance();
            }
            if (branch instanceof Branch.Resistor resistor
                    && partner instanceof Branch.Resistor
                    && !name.equals(other)) {
                return resistor.resistance();
            }
            throw new IllegalArgumentException(
                    "a coupling needs two inductances or two resistances already given; have " + name + " and "
                            + other);
        }

        private static String key(String first, String second) {
            return first.compareTo(second) < 0 ? first + "\n" + second : second + "\n" + first;
        }

        /**
         * Adds a capacitance.
         *
         * @param name unique name
         * @param from first node
         * @param to second node
         * @param capacitance C [F]
         * @return this builder
         */
        public Builder capacitor(String name, String from, String to, double capacitance) {
            return add(new Branch.Capacitor(name, from, to, capacitance));
        }

        /**
         * Adds a current source for a solution in time; a phasor solution takes it as absent.
         *
         * @param name unique name
         * @param from node from which the current is drawn
         * @param to node into which the current is driven
         * @param wave current [A]
         * @return this builder
         */
        public Builder currentSource(String name, String from, String to, Wave wave) {
            return add(new Branch.CurrentSource(name, from, to, wave, Complex.ZERO));
        }

        /**
         * Adds a current source for a phasor solution; a solution in time takes it as absent.
         *
         * @param name unique name
         * @param from node from which the current is drawn
         * @param to node into which the current is driven
         * @param phasor current [A]
         * @return this builder
         */
        public Builder currentSource(String name, String from, String to, Complex phasor) {
            return add(new Branch.CurrentSource(name, from, to, Wave.constant(0), phasor));
        }

        /**
         * Adds a voltage source for a solution in time; in a phasor solution it is a connection without impedance.
         *
         * @param name unique name
         * @param plus positive node
         * @param minus negative node
         * @param wave voltage [V]
         * @return this builder
         */
        public Builder voltageSource(String name, String plus, String minus, Wave wave) {
            return add(new Branch.VoltageSource(name, plus, minus, wave, Complex.ZERO));
        }

        /**
         * Adds a voltage source for a phasor solution; in a solution in time it is a connection without impedance.
         *
         * @param name unique name
         * @param plus positive node
         * @param minus negative node
         * @param phasor voltage [V]
         * @return this builder
         */
        public Builder voltageSource(String name, String plus, String minus, Complex phasor) {
            return add(new Branch.VoltageSource(name, plus, minus, Wave.constant(0), phasor));
        }

        /**
         * Adds a connection without impedance.
         *
         * @param name unique name
         * @param from first node
         * @param to second node
         * @return this builder
         */
        public Builder tie(String name, String from, String to) {
            return add(new Branch.Tie(name, from, to));
        }

        /**
         * Adds a gap that an arc closes.
         *
         * @param name unique name
         * @param from first node
         * @param to second node
         * @param law the voltage that closes it
         * @param arc resistance of the arc [Ω]
         * @return this builder
         */
        public Builder gap(String name, String from, String to, Breakdown law, double arc) {
            return add(new Branch.Gap(name, from, to, law, arc));
        }

        /**
         * Adds a nonlinear resistance.
         *
         * @param name unique name
         * @param from first node
         * @param to second node
         * @param curve voltage as a function of current
         * @return this builder
         */
        public Builder nonlinear(String name, String from, String to, NonlinearResistance curve) {
            return add(new Branch.Nonlinear(name, from, to, curve));
        }

        /**
         * Adds coupled admittances over frequency from nodes to the reference.
         *
         * @param group name of the group
         * @param names names of the branches, one a port
         * @param from nodes, one a port
         * @param admittance own and mutual admittances
         * @return this builder
         */
        public Builder admittance(String group, List<String> names, List<String> from, RationalAdmittance admittance) {
            if (names.size() != admittance.ports() || from.size() != admittance.ports()) {
                throw new IllegalArgumentException("admittance " + group + " has " + admittance.ports()
                        + " ports; have " + names.size() + " names and " + from.size() + " nodes");
            }
            for (int k = 0; k < names.size(); k++) {
                add(new Branch.Admittance(names.get(k), from.get(k), REFERENCE, admittance, k, group));
            }
            return this;
        }

        /**
         * Adds a lossless line of one conductor over earth. Its ends are the branches {@code name + " near"} and
         * {@code name + " far"}, whose currents are positive into the line.
         *
         * @param name name of the line
         * @param near node at the near end
         * @param far node at the far end
         * @param line surge impedance and time of travel
         * @return this builder
         */
        public Builder line(String name, String near, String far, LosslessLine line) {
            add(new Branch.LineEnd(name + " near", near, REFERENCE, line, 0, name, false));
            return add(new Branch.LineEnd(name + " far", far, REFERENCE, line, 0, name, true));
        }

        /**
         * Adds a lossless line of several conductors over earth. Its ends are the branches {@code name + " near 1"},
         * {@code name + " far 1"} and so on.
         *
         * @param name name of the line
         * @param near nodes at the near end, one a conductor
         * @param far nodes at the far end, one a conductor
         * @param line surge impedances and time of travel
         * @return this builder
         */
        public Builder line(String name, List<String> near, List<String> far, LosslessLine line) {
            if (near.size() != line.conductors() || far.size() != line.conductors()) {
                throw new IllegalArgumentException("line " + name + " has " + line.conductors() + " conductors; have "
                        + near.size() + " and " + far.size() + " nodes");
            }
            for (int k = 0; k < near.size(); k++) {
                String number = " " + (k + 1);
                add(new Branch.LineEnd(name + " near" + number, near.get(k), REFERENCE, line, k, name, false));
                add(new Branch.LineEnd(name + " far" + number, far.get(k), REFERENCE, line, k, name, true));
            }
            return this;
        }

        /**
         * The circuit.
         *
         * @return an immutable circuit
         * @throws IllegalArgumentException if it has no branch, a loop of ties and voltage sources alone, or a current
         *     source that drives a part without a path to the rest
         */
        public Circuit build() {
            if (branches.isEmpty()) {
                throw new IllegalArgumentException("a circuit needs at least one branch");
            }
            return new Circuit(this);
        }
    }

    /** Position of a node in {@link #nodes()}, -1 for the reference. */
    Map<String, Integer> nodeIndex() {
        Map<String, Integer> index = new LinkedHashMap<>();
        List<String> order = new ArrayList<>(nodes);
        for (int k = 0; k < order.size(); k++) {
            index.put(order.get(k), k);
        }
        index.put(REFERENCE, -1);
        return index;
    }
}
