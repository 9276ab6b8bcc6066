package earthing.site;

/** Yes, no, or declared unknown. */
public enum YesNo {
    /** Yes. */
    YES,
    /** No. */
    NO,
    /** Not known. */
    UNKNOWN
}
