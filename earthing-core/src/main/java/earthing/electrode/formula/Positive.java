package earthing.electrode.formula;

/** Guard of the arguments of the closed forms. */
final class Positive {

    private Positive() {}

    static double require(String what, double value) {
        if (!(value > 0) || Double.isInfinite(value)) {
            throw new IllegalArgumentException(what + " must be > 0 and finite; have " + value);
        }
        return value;
    }
}
