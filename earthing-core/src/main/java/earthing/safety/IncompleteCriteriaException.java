package earthing.safety;

import java.util.List;

/** A criteria set was asked to judge although a value is missing. */
public final class IncompleteCriteriaException extends IllegalStateException {

    private static final long serialVersionUID = 1L;

    /**
     * Names what is missing.
     *
     * @param set name of the set
     * @param missing names of the missing values
     */
    public IncompleteCriteriaException(String set, List<String> missing) {
        super("criteria set " + set + " cannot be used, it lacks: " + String.join(", ", missing));
    }
}
