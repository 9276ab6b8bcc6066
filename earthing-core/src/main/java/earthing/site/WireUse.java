package earthing.site;

/** What a conductor of the line is for. */
public enum WireUse {
    /** A phase, or the wire of a single-wire line. */
    PHASE,
    /** A neutral or shield wire, earthed at its poles. */
    RETURN
}
