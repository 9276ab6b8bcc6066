package earthing.study;

/** How much of a site is studied. The findings are the same either way; a test holds them equal. */
public enum StudyScope {
    /** The pole as it is built, all that a finding rests on and no figure: for an answer at once. */
    AS_BUILT,
    /**
     * Beside it the other arrangements of the cubicle's earth and of the screen, the electrode under impulse and the
     * figures: for a report.
     */
    ALL_ARRANGEMENTS
}
