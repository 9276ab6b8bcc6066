package earthing.site;

/** How many of a hundred persons have a lower body impedance. */
public enum BodyShare {
    /** Five of a hundred. */
    FIVE_PERCENT,
    /** Half. */
    FIFTY_PERCENT,
    /** Ninety-five of a hundred. */
    NINETY_FIVE_PERCENT
}
