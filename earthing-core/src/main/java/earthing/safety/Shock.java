package earthing.safety;

/**
 * One time that the voltage stands at the place, up to a trip.
 *
 * @param duration time until it is cleared [s], &gt; 0; infinite where it is never cleared
 * @param deadTime time without voltage before the next shock [s], ≥ 0; of no effect after the last one
 */
public record Shock(double duration, double deadTime) {

    /**
     * Refuses times that no sequence has.
     *
     * @param duration time until it is cleared [s], &gt; 0; infinite where it is never cleared
     * @param deadTime time without voltage before the next shock [s], ≥ 0; of no effect after the last one
     */
    public Shock {
        if (!(duration > 0)) {
            throw new IllegalArgumentException("duration of a shock must be > 0 s; have " + duration);
        }
        if (!(deadTime >= 0)) {
            throw new IllegalArgumentException("dead time must be >= 0 s; have " + deadTime);
        }
    }

    /**
     * A voltage that nothing clears.
     *
     * @return a shock without end
     */
    public static Shock neverCleared() {
        return new Shock(Double.POSITIVE_INFINITY, 0);
    }
}
