package earthing.site;

/** What a conductor of the line is for. */
public enum WireUse {
    /** A phase, or the wire of a single-wire line. */
    PHASE,
    /** The neutral or the shield wire, whichever the network has, earthed at its poles. */
    RETURN,
    /** The neutral, where the network has both. */
    NEUTRAL,
    /** The shield wire, where the network has both. */
    SHIELD_WIRE
}
