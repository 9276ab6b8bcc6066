package earthing.fleet;

/** A run that cannot begin or go on, for a reason that the user can mend. */
public final class FleetRefusal extends Exception {

    private static final long serialVersionUID = 1L;

    /**
     * A reason.
     *
     * @param message what is wrong and what to do
     */
    public FleetRefusal(String message) {
        super(message);
    }
}
