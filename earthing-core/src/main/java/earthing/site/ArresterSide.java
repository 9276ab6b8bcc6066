package earthing.site;

/** Which side of the switchgear carries arresters. */
public enum ArresterSide {
    /** Source side only. */
    SOURCE,
    /** Load side only. */
    LOAD,
    /** Both sides. */
    BOTH,
    /** No arresters. */
    NONE,
    /** Not known. */
    UNKNOWN
}
