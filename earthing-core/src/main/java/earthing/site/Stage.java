package earthing.site;

/** How far the work has come; tests and records that belong to a later stage are due later. */
public enum Stage {
    /** Before the crew goes out. */
    DESIGN,
    /** Built, being tested. */
    AS_BUILT,
    /** In service. */
    IN_SERVICE
}
