package earthing.site;

/** How the cubicle is earthed. */
public enum CubicleEarth {
    /** By a tee to the main earth. */
    SHARED,
    /** To an electrode of its own only. */
    SEPARATE,
    /** By a tee and by an electrode of its own. */
    BOTH,
    /** Not at all. */
    UNEARTHED,
    /** Not known. */
    UNKNOWN
}
