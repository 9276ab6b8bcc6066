package earthing.fault.line;

import earthing.quantity.Source;
import earthing.quantity.Source.Status;

/** Capacitive earth-fault current of a network without neutral earthing, faulted solidly. */
public final class CapacitiveCurrent {

    /** Source of {@link #overheadLineRule}. */
    public static final Source OVERHEAD_RULE = Source.publication(
            "rule of Nordic textbooks for overhead lines without shield wire",
            "I = U·l/300 with U in kV and l in km",
            Status.FROM_MEMORY);

    private CapacitiveCurrent() {}

    /**
     * Current through the capacitance of the whole galvanically connected network, {@code I = ω·3C₀·U/√3}.
     *
     * @param lineVoltage voltage between phases [V], ≥ 0
     * @param frequency frequency [Hz], &gt; 0
     * @param threePhasesToEarth capacitance of all three phases to earth, 3·C₀ [F], ≥ 0
     * @return current [A]
     */
    public static double of(double lineVoltage, double frequency, double threePhasesToEarth) {
        if (!(lineVoltage >= 0 && frequency > 0 && threePhasesToEarth >= 0)) {
            throw new IllegalArgumentException("voltage, frequency and capacitance must not be negative; have "
                    + lineVoltage + " V, " + frequency + " Hz, " + threePhasesToEarth + " F");
        }
        return 2 * Math.PI * frequency * threePhasesToEarth * lineVoltage / Math.sqrt(3);
    }

    /**
     * Inverse of {@link #of}: the capacitance that belongs to a stated capacitive earth-fault current.
     *
     * @param lineVoltage voltage between phases at which the current is stated [V], &gt; 0
     * @param frequency frequency [Hz], &gt; 0
     * @param current total capacitive earth-fault current [A], ≥ 0
     * @return capacitance of all three phases to earth, 3·C₀ [F]
     */
    public static double capacitance(double lineVoltage, double frequency, double current) {
        if (!(lineVoltage > 0 && frequency > 0 && current >= 0)) {
            throw new IllegalArgumentException("voltage and frequency must be > 0 and current >= 0; have " + lineVoltage
                    + " V, " + frequency + " Hz, " + current + " A");
        }
        return current * Math.sqrt(3) / (2 * Math.PI * frequency * lineVoltage);
    }

    /**
     * Rule of thumb for overhead lines at 50 Hz, {@code I[A] = U[kV]·l[km]/300}; about 4 % above the value from the
     * geometry of an ordinary medium-voltage line, and of no use for cable.
     *
     * @param lineVoltage voltage between phases [V], ≥ 0
     * @param length length of the connected overhead network [m], ≥ 0
     * @return current [A]
     */
    public static double overheadLineRule(double lineVoltage, double length) {
        if (!(lineVoltage >= 0 && length >= 0)) {
            throw new IllegalArgumentException(
                    "voltage and length must not be negative; have " + lineVoltage + " V, " + length + " m");
        }
        return lineVoltage / 1e3 * length / 1e3 / 300;
    }
}
