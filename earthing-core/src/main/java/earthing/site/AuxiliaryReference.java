package earthing.site;

/** Whose earth a supply is referenced to. */
public enum AuxiliaryReference {
    /** The main earth of this pole. */
    MAIN_EARTH,
    /** The earth of the low-voltage network. */
    LV_NETWORK,
    /** None, it is isolated. */
    ISOLATED,
    /** Not known. */
    UNKNOWN
}
