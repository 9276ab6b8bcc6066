package earthing.surge;

import earthing.network.Circuit;
import earthing.network.NonlinearResistance;
import earthing.quantity.Source;
import java.util.Arrays;
import java.util.Optional;

/**
 * A metal-oxide arrester as two nonlinear resistances A0 and A1 with an inductance between them, so that its voltage
 * rises with a faster front. Valid for fronts from 0.5 µs to 45 µs; not for power frequency or temporary overvoltage.
 *
 * @param residual residual voltage at 10 kA 8/20 µs [V], above 0
 * @param seriesInductance L0 at the terminal [H], above 0
 * @param seriesDamping R0 across L0 [Ω]; empty if there is none
 * @param betweenInductance L1 between A0 and A1 [H], above 0
 * @param betweenDamping R1 across L1 [Ω]; empty if there is none
 * @param shuntCapacitance C across A0 [F]; empty if neglected
 * @param shuntResistance resistance across the terminals [Ω]; empty if there is none
 */
public record TwoSectionArrester(
        double residual,
        double seriesInductance,
        Optional<Double> seriesDamping,
        double betweenInductance,
        Optional<Double> betweenDamping,
        Optional<Double> shuntCapacitance,
        Optional<Double> shuntResistance) {

    /** Source of the curves and of the elements from height and columns. */
    public static final Source SOURCE = Source.publication(
            "IEEE WG 3.4.11, Modeling of metal oxide surge arresters, IEEE Trans. Power Delivery 7 (1992) 302-309",
            "table 1 and equations for L0, R0, L1, R1, C",
            Source.Status.FROM_MEMORY);

    /** Source of the elements from residual voltages alone. */
    public static final Source SIMPLIFIED_SOURCE = Source.publication(
            "P. Pinceti, M. Giannettoni, A simplified model for zinc oxide surge arresters, IEEE Trans. Power Delivery 14"
                    + " (1999) 393-398",
            "equations for L0 and L1, R0 = 1 MΩ",
            Source.Status.FROM_MEMORY);

    /** Shortest front for which the model holds [s]. */
    public static final double SHORTEST_FRONT = 0.5e-6;

    /** Longest front for which the model holds [s]. */
    public static final double LONGEST_FRONT = 45e-6;

    private static final double[] CURRENT = {10, 100, 1e3, 2e3, 4e3, 6e3, 8e3, 10e3, 12e3, 14e3, 16e3, 18e3, 20e3};
    /** Per unit of the residual voltage at 10 kA over 1.6. */
    private static final double[] A0 = {1.40, 1.54, 1.68, 1.74, 1.80, 1.82, 1.87, 1.90, 1.93, 1.97, 2.00, 2.05, 2.10};

    private static final double[] A1 = {1.23, 1.36, 1.43, 1.48, 1.50, 1.53, 1.55, 1.56, 1.58, 1.59, 1.60, 1.61};

    /**
     * Refuses values that are not above 0.
     *
     * @param residual residual voltage at 10 kA 8/20 µs [V], above 0
     * @param seriesInductance L0 at the terminal [H], above 0
     * @param seriesDamping R0 across L0 [Ω]; empty if there is none
     * @param betweenInductance L1 between A0 and A1 [H], above 0
     * @param betweenDamping R1 across L1 [Ω]; empty if there is none
     * @param shuntCapacitance C across A0 [F]; empty if neglected
     * @param shuntResistance resistance across the terminals [Ω]; empty if there is none
     */
    public TwoSectionArrester {
        if (!(residual > 0) || !(seriesInductance > 0) || !(betweenInductance > 0)) {
            throw new IllegalArgumentException("residual voltage and inductances must be > 0; have " + residual + " V, "
                    + seriesInductance + " H, " + betweenInductance + " H");
        }
    }

    /**
     * Elements from the height of the arrester and its number of parallel columns: L0 = 0.2 d/n µH, R0 = 100 d/n Ω, L1 =
     * 15 d/n µH, R1 = 65 d/n Ω, C = 100 n/d pF. The working group adjusts L1 afterwards until the published residual
     * voltage is met; here it is as given.
     *
     * @param residual residual voltage at 10 kA 8/20 µs [V]
     * @param height d [m], above 0
     * @param columns n, at least 1
     * @return the arrester
     */
    public static TwoSectionArrester ofHeight(double residual, double height, int columns) {
        if (!(height > 0) || !(columns >= 1)) {
            throw new IllegalArgumentException(
                    "height must be > 0 m and columns >= 1; have " + height + ", " + columns);
        }
        double ratio = height / columns;
        return new TwoSectionArrester(
                residual,
                0.2e-6 * ratio,
                Optional.of(100 * ratio),
                15e-6 * ratio,
                Optional.of(65 * ratio),
                Optional.of(100e-12 / ratio),
                Optional.empty());
    }

    /**
     * Elements from published residual voltages: L1 = ¼ ΔV/V · Vn µH and L0 = a third of it, with Vn in kV and ΔV/V the
     * relative rise from 8/20 µs to a front of about 1 µs, both at 10 kA.
     *
     * @param residual residual voltage at 10 kA 8/20 µs [V]
     * @param steepResidual residual voltage at 10 kA with the steep front [V], above the former
     * @param rated rated voltage [V], above 0
     * @return the arrester; its simulated residual voltage lies 2 % to 3 % below the published one
     */
    public static TwoSectionArrester ofResidualVoltages(double residual, double steepResidual, double rated) {
        if (!(steepResidual > residual) || !(rated > 0)) {
            throw new IllegalArgumentException("the steep residual voltage must exceed the other and the rated voltage"
                    + " be > 0; have " + steepResidual + ", " + residual + ", " + rated);
        }
        double l1 = 0.25e-6 * (steepResidual - residual) / residual * rated / 1e3;
        return new TwoSectionArrester(
                residual, l1 / 3, Optional.empty(), l1, Optional.empty(), Optional.empty(), Optional.of(1e6));
    }

    /**
     * Whether the model holds for a front.
     *
     * @param front virtual front time [s]
     * @return true from 0.5 µs to 45 µs
     */
    public static boolean validFor(double front) {
        return front >= SHORTEST_FRONT && front <= LONGEST_FRONT;
    }

    private NonlinearResistance.PiecewiseLinear curve(double[] currents, double[] units) {
        return new NonlinearResistance.PiecewiseLinear(
                currents, Arrays.stream(units).map(u -> u * residual / 1.6).toArray());
    }

    /**
     * Curve of the section at the terminal.
     *
     * @return voltage [V] against current [A], 10 A to 20 kA
     */
    public NonlinearResistance.PiecewiseLinear outerCurve() {
        return curve(CURRENT, A0);
    }

    /**
     * Curve of the section behind the inductance.
     *
     * @return voltage [V] against current [A], 100 A to 20 kA
     */
    public NonlinearResistance.PiecewiseLinear innerCurve() {
        return curve(Arrays.copyOfRange(CURRENT, 1, CURRENT.length), A1);
    }

    /**
     * Adds the arrester to a circuit. Branch names begin with the given name, inner nodes likewise. The current of the
     * whole arrester is that of branch {@code name + " L0"} plus what flows in its damping and shunt branches.
     *
     * @param circuit where to add
     * @param name name of the arrester
     * @param from terminal towards the line
     * @param to terminal towards earth
     * @return the same builder
     */
    public Circuit.Builder addTo(Circuit.Builder circuit, String name, String from, String to) {
        String outer = name + " a0";
        String inner = name + " a1";
        circuit.inductor(name + " L0", from, outer, 0, seriesInductance);
        seriesDamping.ifPresent(r -> circuit.resistor(name + " R0", from, outer, r));
        shuntResistance.ifPresent(r -> circuit.resistor(name + " R", from, to, r));
        shuntCapacitance.ifPresent(c -> circuit.capacitor(name + " C", outer, to, c));
        circuit.nonlinear(name + " A0", outer, to, outerCurve());
        circuit.inductor(name + " L1", outer, inner, 0, betweenInductance);
        betweenDamping.ifPresent(r -> circuit.resistor(name + " R1", outer, inner, r));
        circuit.nonlinear(name + " A1", inner, to, innerCurve());
        return circuit;
    }
}
