package earthing.site;

/** Time-current curve of a protection. */
public enum RelayCurve {
    /** The same time at every current above pickup. */
    DEFINITE_TIME,
    /** IEC 60255-151 curve A. */
    IEC_NORMAL_INVERSE,
    /** IEC 60255-151 curve B. */
    IEC_VERY_INVERSE,
    /** IEC 60255-151 curve C. */
    IEC_EXTREMELY_INVERSE,
    /** IEEE C37.112 moderately inverse. */
    IEEE_MODERATELY_INVERSE,
    /** IEEE C37.112 very inverse. */
    IEEE_VERY_INVERSE,
    /** IEEE C37.112 extremely inverse. */
    IEEE_EXTREMELY_INVERSE
}
