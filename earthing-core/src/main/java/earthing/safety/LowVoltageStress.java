package earthing.safety;

import earthing.quantity.Source;

/**
 * How far the voltage of low-voltage equipment against its surroundings may exceed its own voltage while an earth fault
 * on the high-voltage side lasts.
 */
public final class LowVoltageStress {

    /** Where the stress is limited. */
    public static final Source SOURCE = Source.standard(
            "IEC 60364-4-44:2007",
            "table 44.A2, power-frequency stress of low-voltage equipment above its own voltage",
            Source.Status.FROM_MEMORY);

    /** Longest fault that counts as brief [s]. */
    private static final double BRIEF = 5;

    private static final double BRIEF_LIMIT = 1200;
    private static final double LASTING_LIMIT = 250;

    private LowVoltageStress() {}

    /**
     * Whether the higher limit holds.
     *
     * @param duration duration of the fault [s], ≥ 0; may be infinite
     * @return true up to 5 s
     * @throws IllegalArgumentException if the duration is negative or not a number
     */
    public static boolean brief(double duration) {
        if (!(duration >= 0)) {
            throw new IllegalArgumentException("duration of a fault must be at least 0 s; have " + duration);
        }
        return duration <= BRIEF;
    }

    /**
     * The limit after {@link #SOURCE}.
     *
     * @param duration duration of the fault [s], ≥ 0; may be infinite
     * @return voltage above the equipment's own [V]: 1200 up to 5 s, 250 beyond
     * @throws IllegalArgumentException if the duration is negative or not a number
     */
    public static double limit(double duration) {
        return brief(duration) ? BRIEF_LIMIT : LASTING_LIMIT;
    }
}
