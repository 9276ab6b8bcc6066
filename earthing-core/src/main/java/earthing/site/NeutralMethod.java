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
    /** One wire fed by an isolating transformer, the current returns through the soil. */
    SINGLE_WIRE_EARTH_RETURN,
    /** Not known. */
    UNKNOWN
}
