package earthing.fault;

import org.apache.commons.math3.complex.Complex;

/** How the neutral of the network is earthed at the source. */
public sealed interface NeutralMethod {

    /** Neutral tied to the station earth. */
    record Solid() implements NeutralMethod {}

    /**
     * Neutral earthed through a resistor.
     *
     * @param resistance resistance [Ω], &gt; 0
     */
    record Resistor(double resistance) implements NeutralMethod {

        /**
         * Refuses a resistance that is not positive.
         *
         * @param resistance resistance [Ω], &gt; 0
         */
        public Resistor {
            requirePositive("neutral resistor [ohm]", resistance);
        }

        /**
         * A resistor named by its current, {@code R = U/(√3·I)}.
         *
         * @param lineVoltage rated voltage between phases [V], &gt; 0
         * @param current rated current [A], &gt; 0
         * @return the resistor
         */
        public static Resistor ofCurrent(double lineVoltage, double current) {
            requirePositive("voltage [V]", lineVoltage);
            requirePositive("current [A]", current);
            return new Resistor(lineVoltage / (Math.sqrt(3) * current));
        }
    }

    /**
     * Neutral earthed through a current-limiting reactor.
     *
     * @param resistance resistance [Ω], ≥ 0
     * @param reactance reactance at network frequency [Ω], &gt; 0
     */
    record Reactor(double resistance, double reactance) implements NeutralMethod {

        /**
         * Refuses impedances out of range.
         *
         * @param resistance resistance [Ω], ≥ 0
         * @param reactance reactance at network frequency [Ω], &gt; 0
         */
        public Reactor {
            requirePositive("neutral reactor [ohm]", reactance);
            if (!(resistance >= 0) || !Double.isFinite(resistance)) {
                throw new IllegalArgumentException("resistance of the reactor must be >= 0 ohm; have " + resistance);
            }
        }
    }

    /**
     * Resonant earthing through an arc-suppression coil. Both currents belong to the phase voltage of the network at
     * voltage factor one.
     *
     * @param phaseVoltage voltage to neutral at which the currents are stated [V], &gt; 0
     * @param coilCurrent inductive current of the coil [A], &gt; 0; equal to the capacitive current of the network when
     *     in tune
     * @param dampingCurrent resistive current of coil, damping resistor and network leakage together [A], ≥ 0
     */
    record Resonant(double phaseVoltage, double coilCurrent, double dampingCurrent) implements NeutralMethod {

        /**
         * Refuses values out of range.
         *
         * @param phaseVoltage voltage to neutral at which the currents are stated [V], &gt; 0
         * @param coilCurrent inductive current of the coil [A], &gt; 0; equal to the capacitive current of the network when
         *     in tune
         * @param dampingCurrent resistive current of coil, damping resistor and network leakage together [A], ≥ 0
         */
        public Resonant {
            requirePositive("phase voltage [V]", phaseVoltage);
            requirePositive("coil current [A]", coilCurrent);
            if (!(dampingCurrent >= 0) || !Double.isFinite(dampingCurrent)) {
                throw new IllegalArgumentException("damping current must be >= 0 A; have " + dampingCurrent);
            }
        }

        /**
         * A coil set beside a network of known capacitive current.
         *
         * @param phaseVoltage voltage to neutral at which the currents are stated [V], &gt; 0
         * @param capacitiveCurrent capacitive earth-fault current of the network [A], &gt; 0
         * @param detuning (coil − capacitive)/capacitive current [1], positive when over-compensated, &gt; −1
         * @param damping resistive over capacitive current [1], ≥ 0; a few percent is usual
         * @return the method
         */
        public static Resonant detuned(double phaseVoltage, double capacitiveCurrent, double detuning, double damping) {
            return new Resonant(phaseVoltage, capacitiveCurrent * (1 + detuning), capacitiveCurrent * damping);
        }
    }

    /** No intended connection of the neutral to earth; the fault current is that of the network's capacitance. */
    record Isolated() implements NeutralMethod {}

    /**
     * Four-wire network: neutral tied to the station earth and carried along the line, earthed at many poles. The system
     * has to have a {@link ReturnConductor}.
     */
    record MultiEarthed() implements NeutralMethod {}

    /**
     * Whether the source neutral is connected to the station earth at all.
     *
     * @return false for an isolated neutral
     */
    default boolean connected() {
        return !(this instanceof Isolated);
    }

    /**
     * Impedance between neutral and station earth.
     *
     * @return impedance [Ω]
     * @throws IllegalStateException for an isolated neutral
     */
    default Complex impedance() {
        if (this instanceof Resistor r) {
            return new Complex(r.resistance(), 0);
        }
        if (this instanceof Reactor r) {
            return new Complex(r.resistance(), r.reactance());
        }
        if (this instanceof Resonant r) {
            return new Complex(r.phaseVoltage(), 0).divide(new Complex(r.dampingCurrent(), -r.coilCurrent()));
        }
        if (this instanceof Isolated) {
            throw new IllegalStateException("an isolated neutral has no impedance to earth");
        }
        return Complex.ZERO;
    }

    private static void requirePositive(String what, double value) {
        if (!(value > 0) || !Double.isFinite(value)) {
            throw new IllegalArgumentException(what + " must be > 0; have " + value);
        }
    }
}
