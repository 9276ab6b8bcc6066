package earthing.fault;

import earthing.quantity.Source;
import earthing.quantity.Source.Status;

/** Voltage factor of the driving voltage above 1 kV, for the largest and the smallest fault current. */
public enum VoltageFactor {
    /** For the largest current. */
    MAXIMUM(1.10),
    /** For the smallest current. */
    MINIMUM(1.00),
    /** The nominal voltage itself, as textbooks use it. */
    NOMINAL(1.00);

    /** Where the factors come from. */
    public static final Source SOURCE =
            Source.standard("IEC 60909-0:2016", "table 1, voltages above 1 kV", Status.FROM_MEMORY);

    private final double factor;

    VoltageFactor(double factor) {
        this.factor = factor;
    }

    /**
     * The factor.
     *
     * @return c [1]
     */
    public double factor() {
        return factor;
    }

    /**
     * Driving voltage {@code c·U/√3}.
     *
     * @param lineVoltage nominal voltage between phases [V], &gt; 0
     * @return voltage to neutral [V]
     */
    public double phaseVoltage(double lineVoltage) {
        if (!(lineVoltage > 0) || !Double.isFinite(lineVoltage)) {
            throw new IllegalArgumentException("voltage must be > 0 V; have " + lineVoltage);
        }
        return factor * lineVoltage / Math.sqrt(3);
    }
}
