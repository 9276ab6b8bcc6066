package earthing.site;

/** How a surge protector limits. */
public enum ProtectorKind {
    /** It holds the voltage near its level while it conducts: varistor, suppressor diode. */
    CLAMPING,
    /** It fires at its level and then burns at some tens of volts: gas tube, spark gap. */
    SWITCHING,
    /** Not known. */
    UNKNOWN
}
