package earthing.study;

/** How much of a site is studied. The findings are the same with each but POINT; a test holds them equal. */
public enum StudyScope {
    /**
     * The pole as it is built at one point of its inputs, none of which has bounds: what the findings that have a value
     * and a limit rest on. No path is broken.
     */
    POINT,
    /** The pole as it is built, all that a finding rests on and no figure: for an answer at once. */
    AS_BUILT,
    /**
     * Beside it the other arrangements of the cubicle's earth and of the screen, the electrode under impulse and the
     * figures: for a report.
     */
    ALL_ARRANGEMENTS
}
