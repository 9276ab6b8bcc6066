package earthing.site;

/** Contact of a conducting butt with the soil. */
public enum ButtContact {
    /** Metal or concrete in contact with the soil. */
    BARE,
    /** Coated or wrapped. */
    COATED,
    /** Not known; both bounds are computed. */
    UNKNOWN
}
