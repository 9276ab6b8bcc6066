package earthing.site;

/** How a plate lies. */
public enum PlateLie {
    /** Flat, parallel to the surface. */
    HORIZONTAL,
    /** Upright, its length down. */
    VERTICAL
}
