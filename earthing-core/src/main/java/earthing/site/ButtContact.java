package earthing.site;

/** Contact of a conducting butt with the soil. */
public enum ButtContact {
    /** Metal or concrete in contact with the soil. */
    BARE,
    /** Coated or wrapped; a coating may be damaged, so the low bound is that of bare metal. */
    COATED,
    /** On an insulating base; no metal of the pole reaches the soil. */
    INSULATED,
    /** Not known; both bounds are computed. */
    UNKNOWN
}
