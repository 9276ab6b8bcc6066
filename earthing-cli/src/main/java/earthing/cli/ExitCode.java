package earthing.cli;

/** How a run ended; the numbers are part of the interface. */
public enum ExitCode {
    /** Ran; every applicable requirement is met. */
    MET(0),
    /** Ran; at least one requirement is not met. */
    NOT_MET(1),
    /** The command was not understood, or its output has nowhere to go. */
    USAGE(2),
    /** Ran; nothing failed, something could not be assessed. */
    NOT_ASSESSED(3),
    /** The input file is unreadable or invalid. */
    INVALID_INPUT(65),
    /** A fault of this program. */
    INTERNAL(70),
    /** A long run was interrupted; what was done is kept. */
    INTERRUPTED(130);

    private final int code;

    ExitCode(int code) {
        this.code = code;
    }

    /**
     * The number the process ends with.
     *
     * @return 0 … 130
     */
    public int code() {
        return code;
    }
}
