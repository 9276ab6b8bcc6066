package earthing.site;

/** Which verdicts rest on the clearing time of the back-up protection. */
public enum BackUpUse {
    /** None; it is shown as a case of its own. */
    INFORMATION,
    /** The heating of conductors. */
    HEATING,
    /** Heating and touch. */
    HEATING_AND_TOUCH
}
