package earthing.site;

/** How the neutral of the source is earthed. */
public enum NeutralMethod {
    /** Neutral connected to the station earth without an impedance. */
    SOLID,
    /** Through a resistor. */
    RESISTOR,
    /** Through a reactor of low impedance. */
    REACTOR,
    /** Through an arc-suppression coil. */
    RESONANT,
    /** Not connected to earth. */
    ISOLATED,
    /** Solid, with a neutral conductor earthed at many poles. */
    MULTI_EARTHED,
    /** Not known. */
    UNKNOWN
}
