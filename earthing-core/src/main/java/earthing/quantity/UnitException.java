package earthing.quantity;

/** A text that is not a number with a unit of the expected dimension. The message is fit for a user. */
public final class UnitException extends Exception {

    private static final long serialVersionUID = 1L;

    /**
     * A text that was not understood.
     *
     * @param message what was found and what was expected
     */
    public UnitException(String message) {
        super(message);
    }
}
