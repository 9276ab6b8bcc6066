package earthing.site;

/** State of the skin at large areas of contact. */
public enum SkinState {
    /** Dry. */
    DRY,
    /** Wet by water. */
    WATER_WET,
    /** Wet by salt water. */
    SALTWATER_WET
}
