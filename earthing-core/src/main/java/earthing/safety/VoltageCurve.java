package earthing.safety;

/** A rule that gives the permissible voltage for a duration. */
public sealed interface VoltageCurve permits TabulatedCurve, Ieee80Curve, BodyCurve {

    /**
     * Name of the curve with its standard.
     *
     * @return readable name
     */
    String name();

    /**
     * Edition of the standard, or the owner's reference.
     *
     * @return edition
     */
    String edition();

    /**
     * The permissible prospective voltage.
     *
     * @param contact between which parts of the body
     * @param duration duration of the exposure [s], &gt; 0; infinite for a fault that is never cleared
     * @param standing what the person stands on and in
     * @return the voltage, or the reason why the curve has none
     */
    Permissible at(Contact contact, double duration, Standing standing);

    /**
     * Checks a duration the way every curve does.
     *
     * @param duration duration [s]
     * @return the duration
     * @throws IllegalArgumentException if it is not positive or no number
     */
    static double checked(double duration) {
        if (!(duration > 0)) {
            throw new IllegalArgumentException("duration of an exposure must be > 0 s; have " + duration);
        }
        return duration;
    }
}
