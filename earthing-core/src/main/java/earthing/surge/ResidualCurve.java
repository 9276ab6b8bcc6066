package earthing.surge;

import earthing.network.NonlinearResistance;
import java.util.Arrays;

/**
 * The residual voltages of an arrester at lightning currents 8/20 µs from its data sheet, interpolated on
 * double-logarithmic axes.
 */
public final class ResidualCurve {

    private final double[] currents;
    private final double[] voltages;
    private final NonlinearResistance.LogLog resistance;

    /**
     * A curve from data-sheet points.
     *
     * @param currents peaks of the current [A], above 0 and rising, at least two
     * @param voltages residual voltages [V], above 0 and rising
     */
    public ResidualCurve(double[] currents, double[] voltages) {
        this.resistance = new NonlinearResistance.LogLog(currents, voltages);
        this.currents = currents.clone();
        this.voltages = voltages.clone();
    }

    /**
     * Residual voltage at a current within the data.
     *
     * @param current peak [A]
     * @return residual voltage [V]
     * @throws IllegalArgumentException outside the data
     */
    public double at(double current) {
        if (!(current >= currents[0] && current <= currents[currents.length - 1])) {
            throw new IllegalArgumentException(
                    "the data cover " + currents[0] + " A to " + currents[currents.length - 1] + " A; have " + current);
        }
        return resistance.voltage(current);
    }

    /**
     * The curve as a branch of a circuit, without dependence on the front.
     *
     * @return nonlinear resistance
     */
    public NonlinearResistance resistance() {
        return resistance;
    }

    @Override
    public String toString() {
        return "residual curve " + Arrays.toString(currents) + " A, " + Arrays.toString(voltages) + " V";
    }
}
