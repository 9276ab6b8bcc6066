package earthing.site;

/** Where the supply comes from. */
public enum AuxiliaryKind {
    /** A low-voltage network with an earth of its own. */
    LV_NETWORK,
    /** A transformer on this pole. */
    TRANSFORMER_ON_POLE,
    /** A solar panel on this pole. */
    SOLAR,
    /** A battery in the cubicle. */
    BATTERY
}
