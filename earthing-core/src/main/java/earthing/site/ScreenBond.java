package earthing.site;

/** Which ends of a screen are bonded. */
public enum ScreenBond {
    /** Tank end only. */
    TANK,
    /** Cubicle end only. */
    CUBICLE,
    /** Both ends. */
    BOTH,
    /** Neither end. */
    NONE,
    /** The cable has no screen. */
    ABSENT,
    /** Not known. */
    UNKNOWN
}
