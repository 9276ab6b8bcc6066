package earthing.site;

/** What a core ends on. */
public enum Termination {
    /** Bonded to the tank or chassis. */
    TANK,
    /** A coil. */
    COIL,
    /** A current or voltage transformer. */
    INSTRUMENT_TRANSFORMER,
    /** An open contact. */
    CONTACT,
    /** A surge protector to chassis. */
    PROTECTOR,
    /** Nothing. */
    OPEN,
    /** Not known. */
    UNKNOWN
}
