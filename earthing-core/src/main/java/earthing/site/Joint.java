package earthing.site;

/** How two conductors are joined. */
public enum Joint {
    /** Bolted. */
    BOLTED,
    /** Compression. */
    COMPRESSION,
    /** Exothermic weld. */
    EXOTHERMIC,
    /** Brazed. */
    BRAZED,
    /** Not known. */
    UNKNOWN
}
