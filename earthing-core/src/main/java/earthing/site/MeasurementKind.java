package earthing.site;

/** What was measured. */
public enum MeasurementKind {
    /** Resistance of an electrode to remote earth. */
    ELECTRODE_RESISTANCE,
    /** Resistance of a bond. */
    BOND_CONTINUITY
}
