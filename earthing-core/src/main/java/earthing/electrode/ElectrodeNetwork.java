package earthing.electrode;

import earthing.network.Circuit;
import earthing.numeric.NonNegativeLeastSquares;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.complex.Complex;

/**
 * An electrode over frequency as a chain of cells that a circuit in the time domain can hold: a resistance, an
 * inductance, and resistances with a capacitance, an inductance or both beside them. Every member is positive, so the
 * chain is passive and its response cannot run away.
 *
 * @param resistance plain resistance of the chain [Ω], ≥ 0
 * @param inductance plain inductance of the chain [H], ≥ 0
 * @param cells the others
 * @param error greatest difference from the impedance that was fitted, over its magnitude [-]
 */
public record ElectrodeNetwork(double resistance, double inductance, List<Cell> cells, double error) {

    /** What lies beside the resistance of a cell. */
    public enum Kind {
        /** A capacitance τ/R: the cell conducts better at high frequency. */
        CAPACITIVE,
        /** An inductance R·τ: the cell hinders at high frequency. */
        INDUCTIVE,
        /** Both, L = w·R·τ and C = τ/(w·R): the cell hinders about 1/τ, as a long bar does that rings. */
        RESONANT
    }

    /**
     * A resistance with what lies beside it.
     *
     * @param kind capacitance, inductance or both
     * @param resistance R [Ω], &gt; 0
     * @param time τ = R·C or L/R, of a resonance √(L·C) [s], &gt; 0
     * @param width w of a resonance [-], &gt; 0; 0 for the others
     */
    public record Cell(Kind kind, double resistance, double time, double width) {

        // A resonance of the form R·w·τs/(1 + w·τs + (τs)²).
        double capacitance() {
            return kind == Kind.RESONANT ? time / (resistance * width) : time / resistance;
        }

        double inductance() {
            return kind == Kind.RESONANT ? resistance * time * width : resistance * time;
        }

        Complex impedance(double frequency) {
            if (kind == Kind.RESONANT) {
                Complex s = new Complex(0, 2 * Math.PI * frequency * time);
                return s.multiply(width)
                        .divide(s.multiply(s).add(s.multiply(width)).add(1))
                        .multiply(resistance);
            }
            Complex turn = new Complex(0, 2 * Math.PI * frequency * time);
            Complex share = kind == Kind.CAPACITIVE ? turn.add(1).reciprocal() : turn.divide(turn.add(1));
            return share.multiply(resistance);
        }
    }

    /** Time constants a decade. */
    private static final int PER_DECADE = 3;

    /** Root of the mean squared relative error that suffices [-]. */
    private static final double ENOUGH = 5e-4;

    /** Least time constant of a resonance is that of ten times the highest frequency, the greatest that of this [Hz]. */
    private static final double SLOWEST_RESONANCE = 3e4;

    private static final double[] WIDTHS = {0.2, 0.5, 1};

    /** A member below this part of the greatest one is left out. */
    private static final double NEGLIGIBLE = 1e-7;

    /**
     * Copies the list.
     *
     * @param resistance plain resistance of the chain [Ω], ≥ 0
     * @param inductance plain inductance of the chain [H], ≥ 0
     * @param cells the others
     * @param error greatest difference from the impedance that was fitted, over its magnitude [-]
     */
    public ElectrodeNetwork {
        cells = List.copyOf(cells);
    }

    /**
     * Fits a chain to an impedance: time constants at equal ratios, magnitudes by non-negative least squares of the
     * relative error.
     *
     * @param frequencies frequencies [Hz], rising, at least three
     * @param impedances impedance at each [Ω]
     * @return the chain; its {@link #error} tells how well it fits
     */
    public static ElectrodeNetwork fit(List<Double> frequencies, List<Complex> impedances) {
        int count = frequencies.size();
        if (count < 3 || impedances.size() != count) {
            throw new IllegalArgumentException("need an impedance at each of three frequencies or more; have "
                    + impedances.size() + " at " + count);
        }
        double shortest = 1 / (2 * Math.PI * frequencies.get(count - 1) * 10);
        double longest = 10 / (2 * Math.PI * frequencies.get(0));
        int times = (int) Math.ceil(PER_DECADE * Math.log10(longest / shortest)) + 1;
        List<Cell> units = new ArrayList<>();
        for (int k = 0; k < times; k++) {
            double time = shortest * Math.pow(longest / shortest, (double) k / (times - 1));
            units.add(new Cell(Kind.CAPACITIVE, 1, time, 0));
            units.add(new Cell(Kind.INDUCTIVE, 1, time, 0));
        }
        for (double time = 2 * shortest; time < 1 / (2 * Math.PI * SLOWEST_RESONANCE); time *= 1.25) {
            for (double width : WIDTHS) {
                units.add(new Cell(Kind.RESONANT, 1, time, width));
            }
        }
        double top = 2 * Math.PI * frequencies.get(count - 1);
        double[][] rows = new double[2 * count][units.size() + 2];
        double[] right = new double[2 * count];
        for (int i = 0; i < count; i++) {
            double f = frequencies.get(i);
            double size = impedances.get(i).abs();
            for (int k = 0; k < units.size(); k++) {
                Complex z = units.get(k).impedance(f);
                rows[2 * i][k] = z.getReal() / size;
                rows[2 * i + 1][k] = z.getImaginary() / size;
            }
            rows[2 * i][units.size()] = 1 / size;
            rows[2 * i + 1][units.size() + 1] = 2 * Math.PI * f / top / size;
            right[2 * i] = impedances.get(i).getReal() / size;
            right[2 * i + 1] = impedances.get(i).getImaginary() / size;
        }
        double[] x = NonNegativeLeastSquares.solve(rows, right, ENOUGH);
        double least = NEGLIGIBLE * impedances.get(0).abs();
        List<Cell> cells = new ArrayList<>();
        for (int k = 0; k < units.size(); k++) {
            if (x[k] > least) {
                Cell unit = units.get(k);
                cells.add(new Cell(unit.kind(), x[k], unit.time(), unit.width()));
            }
        }
        ElectrodeNetwork chain = new ElectrodeNetwork(x[units.size()], x[units.size() + 1] / top, cells, 0);
        double error = 0;
        for (int i = 0; i < count; i++) {
            Complex z = impedances.get(i);
            error = Math.max(
                    error, chain.impedance(frequencies.get(i)).subtract(z).abs() / z.abs());
        }
        return new ElectrodeNetwork(chain.resistance(), chain.inductance(), cells, error);
    }

    /**
     * Impedance of the chain.
     *
     * @param frequency frequency [Hz], ≥ 0
     * @return impedance [Ω]
     */
    public Complex impedance(double frequency) {
        Complex sum = new Complex(resistance, 2 * Math.PI * frequency * inductance);
        for (Cell cell : cells) {
            sum = sum.add(cell.impedance(frequency));
        }
        return sum;
    }

    /**
     * Adds the chain to a circuit.
     *
     * @param circuit the circuit under construction
     * @param name beginning of the names of its branches; nodes are named likewise
     * @param from node where the current enters
     * @param to node where it leaves
     */
    public void add(Circuit.Builder circuit, String name, String from, String to) {
        String at = from;
        if (inductance > 0 || resistance > 0 || cells.isEmpty()) {
            String next = cells.isEmpty() ? to : name + " node 0";
            if (inductance > 0) {
                circuit.inductor(name, at, next, resistance, inductance);
            } else {
                circuit.resistor(name, at, next, resistance);
            }
            at = next;
        }
        for (int k = 0; k < cells.size(); k++) {
            Cell cell = cells.get(k);
            String next = k == cells.size() - 1 ? to : name + " node " + (k + 1);
            circuit.resistor(name + " resistance " + (k + 1), at, next, cell.resistance());
            if (cell.kind() != Kind.INDUCTIVE) {
                circuit.capacitor(name + " capacitance " + (k + 1), at, next, cell.capacitance());
            }
            if (cell.kind() != Kind.CAPACITIVE) {
                circuit.inductor(name + " inductance " + (k + 1), at, next, 0, cell.inductance());
            }
            at = next;
        }
    }
}
