package earthing.site;

/** Surge suppressor of the antenna feeder. */
public enum AntennaSuppressor {
    /** In the cubicle wall, bonded to the cubicle reference. */
    BULKHEAD,
    /** Inside the cubicle on a lead of its own. */
    LOOSE,
    /** None. */
    NONE,
    /** Not known. */
    UNKNOWN
}
