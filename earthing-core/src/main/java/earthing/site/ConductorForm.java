package earthing.site;

/** Form of a conductor. */
public enum ConductorForm {
    /** One round wire. */
    SOLID,
    /** Stranded. */
    STRANDED,
    /** Flat tape. */
    TAPE
}
