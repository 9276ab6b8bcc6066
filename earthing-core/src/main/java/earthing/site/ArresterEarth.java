package earthing.site;

/** Where the arresters are earthed. */
public enum ArresterEarth {
    /** On the tank's earth terminal, with short leads. */
    TANK,
    /** On the main earth below the tank, not through the tank. */
    MAIN_EARTH,
    /** By a lead of their own to an electrode. */
    OWN_LEAD,
    /** Not known. */
    UNKNOWN
}
