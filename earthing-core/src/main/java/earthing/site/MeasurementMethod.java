package earthing.site;

/** How it was measured. */
public enum MeasurementMethod {
    /** Current and potential probes. */
    FALL_OF_POTENTIAL,
    /** Clamp-on loop measurement. */
    CLAMP_ON,
    /** Against another earth. */
    DEAD_EARTH,
    /** Four-wire micro-ohmmeter. */
    FOUR_WIRE
}
