package earthing.site;

/** Which body current is permissible. */
public enum CurrentCurve {
    /** Curve c1 of IEC/TS 60479-1, onset of the risk of fibrillation. */
    C1,
    /** The body currents of EN 50522, about curve c2. */
    EN_50522
}
