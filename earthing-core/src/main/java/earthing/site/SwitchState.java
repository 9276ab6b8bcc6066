package earthing.site;

/** State of the switch. */
public enum SwitchState {
    /** Closed. */
    CLOSED,
    /** Open. */
    OPEN,
    /** Not known; both are studied. */
    UNKNOWN
}
