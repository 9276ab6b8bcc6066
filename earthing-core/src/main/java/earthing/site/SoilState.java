package earthing.site;

/** State of the ground. */
public enum SoilState {
    /** Moist, the season of the lowest resistance. */
    WET,
    /** Dry. */
    DRY,
    /** Frozen. */
    FROZEN,
    /** Not known. */
    UNKNOWN
}
