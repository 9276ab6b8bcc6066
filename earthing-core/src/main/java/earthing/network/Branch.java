package earthing.network;

import java.util.Optional;
import org.apache.commons.math3.complex.Complex;

/**
 * A two-terminal branch. Its voltage is the potential of {@code from} less that of {@code to}; its current is positive
 * from {@code from} to {@code to} through the branch.
 */
public sealed interface Branch {

    /**
     * The name, unique in the circuit.
     *
     * @return the name
     */
    String name();

    /**
     * The first node.
     *
     * @return node name
     */
    String from();

    /**
     * The second node.
     *
     * @return node name
     */
    String to();

    /**
     * A resistance; mutual resistances to other such branches are held by the circuit.
     *
     * @param name unique name
     * @param from first node
     * @param to second node
     * @param resistance R [Ω], above 0
     */
    record Resistor(String name, String from, String to, double resistance) implements Branch {

        /**
         * Refuses values that are not above 0.
         *
         * @param name unique name
         * @param from first node
         * @param to second node
         * @param resistance R [Ω], above 0
         */
        public Resistor {
            if (!(resistance > 0) || !Double.isFinite(resistance)) {
                throw new IllegalArgumentException(
                        "resistance of " + name + " must be > 0 ohm and finite; have " + resistance);
            }
        }
    }

    /**
     * A resistance and an inductance in series; mutual inductances are held by the circuit.
     *
     * @param name unique name
     * @param from first node
     * @param to second node
     * @param resistance R [Ω], at least 0
     * @param inductance L [H], above 0
     * @param internal impedance in series that depends on frequency, used by phasor solutions only
     */
    record Inductor(
            String name,
            String from,
            String to,
            double resistance,
            double inductance,
            Optional<InternalImpedance> internal)
            implements Branch {

        /**
         * Refuses a resistance below 0 and an inductance not above 0.
         *
         * @param name unique name
         * @param from first node
         * @param to second node
         * @param resistance R [Ω], at least 0
         * @param inductance L [H], above 0
         * @param internal impedance in series that depends on frequency, used by phasor solutions only
         */
        public Inductor {
            if (!(resistance >= 0) || !Double.isFinite(resistance)) {
                throw new IllegalArgumentException(
                        "resistance of " + name + " must be >= 0 ohm and finite; have " + resistance);
            }
            if (!(inductance > 0) || !Double.isFinite(inductance)) {
                throw new IllegalArgumentException(
                        "inductance of " + name + " must be > 0 H and finite; have " + inductance);
            }
        }
    }

    /**
     * A capacitance.
     *
     * @param name unique name
     * @param from first node
     * @param to second node
     * @param capacitance C [F], above 0
     */
    record Capacitor(String name, String from, String to, double capacitance) implements Branch {

        /**
         * Refuses values that are not above 0.
         *
         * @param name unique name
         * @param from first node
         * @param to second node
         * @param capacitance C [F], above 0
         */
        public Capacitor {
            if (!(capacitance > 0) || !Double.isFinite(capacitance)) {
                throw new IllegalArgumentException(
                        "capacitance of " + name + " must be > 0 F and finite; have " + capacitance);
            }
        }
    }

    /**
     * A current forced from {@code from} through the source to {@code to}.
     *
     * @param name unique name
     * @param from node from which the current is drawn
     * @param to node into which the current is driven
     * @param wave value in time [A]
     * @param phasor value at one frequency [A]
     */
    record CurrentSource(String name, String from, String to, Wave wave, Complex phasor) implements Branch {}

    /**
     * A voltage forced between two nodes: potential of {@code from} less that of {@code to}.
     *
     * @param name unique name
     * @param from positive node
     * @param to negative node
     * @param wave value in time [V]
     * @param phasor value at one frequency [V]
     */
    record VoltageSource(String name, String from, String to, Wave wave, Complex phasor) implements Branch {}

    /**
     * A connection without impedance whose current is known to the solution.
     *
     * @param name unique name
     * @param from first node
     * @param to second node
     */
    record Tie(String name, String from, String to) implements Branch {}

    /**
     * A nonlinear resistance.
     *
     * @param name unique name
     * @param from first node
     * @param to second node
     * @param curve voltage as a function of current
     */
    record Nonlinear(String name, String from, String to, NonlinearResistance curve) implements Branch {}

    /**
     * A gap: nothing flows until the voltage across it, of either sign, reaches its strength; from then on the arc is a
     * resistance to the end of the solution. At one frequency it is open.
     *
     * @param name unique name
     * @param from first node
     * @param to second node, in the same part of the circuit: without the gap other branches lead from one to the other
     * @param law the voltage that closes it
     * @param arc resistance of the arc [Ω], above 0
     */
    record Gap(String name, String from, String to, Breakdown law, double arc) implements Branch {

        /**
         * Refuses an arc without resistance.
         *
         * @param name unique name
         * @param from first node
         * @param to second node
         * @param law the voltage that closes it
         * @param arc resistance of the arc [Ω], above 0
         */
        public Gap {
            if (!(arc > 0) || !Double.isFinite(arc)) {
                throw new IllegalArgumentException(
                        "arc resistance of " + name + " must be > 0 ohm and finite; have " + arc);
            }
        }
    }

    /**
     * One end of one conductor of a lossless line. The voltages of the two ends meet only through the waves between
     * them, so an end is a branch of its own; {@link Circuit.Builder#line} adds all ends of a line together.
     *
     * @param name unique name
     * @param from terminal of the conductor
     * @param to node of its return, as a rule the reference
     * @param line surge impedances and time of travel
     * @param conductor which conductor of the line, from 0
     * @param lineName name of the line
     * @param far whether it is the far end
     */
    record LineEnd(String name, String from, String to, LosslessLine line, int conductor, String lineName, boolean far)
            implements Branch {

        /**
         * Refuses a conductor that the line does not have.
         *
         * @param name unique name
         * @param from terminal of the conductor
         * @param to node of its return, as a rule the reference
         * @param line surge impedances and time of travel
         * @param conductor which conductor of the line, from 0
         * @param lineName name of the line
         * @param far whether it is the far end
         */
        public LineEnd {
            if (!(conductor >= 0 && conductor < line.conductors())) {
                throw new IllegalArgumentException("line " + lineName + " has " + line.conductors()
                        + " conductors, counted from 0; have " + conductor);
            }
        }
    }

    /**
     * One port of a group of coupled admittances over frequency, such as those of buried electrodes; {@link
     * Circuit.Builder#admittance} adds all ports of a group together.
     *
     * @param name unique name
     * @param from first node
     * @param to second node
     * @param admittance own and mutual admittances of the group
     * @param port which port of the group, from 0
     * @param group name of the group
     */
    record Admittance(String name, String from, String to, RationalAdmittance admittance, int port, String group)
            implements Branch {

        /**
         * Refuses a port that the group does not have.
         *
         * @param name unique name
         * @param from first node
         * @param to second node
         * @param admittance own and mutual admittances of the group
         * @param port which port of the group, from 0
         * @param group name of the group
         */
        public Admittance {
            if (!(port >= 0 && port < admittance.ports())) {
                throw new IllegalArgumentException(
                        "admittance " + group + " has " + admittance.ports() + " ports, counted from 0; have " + port);
            }
        }
    }
}
