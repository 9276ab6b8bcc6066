package earthing.conductor;

import java.util.List;

/**
 * One passage of fault current through a conductor, up to a trip.
 *
 * @param current symmetrical r.m.s. current in this conductor [A], ≥ 0
 * @param duration time until the current is cleared [s], ≥ 0 and finite; a fault that is never cleared has no heating
 *     result
 * @param decrement decrement factor of the loop for this duration, ≥ 1; 1 without direct-current offset
 * @param deadTime time without current before the next shot [s], ≥ 0; of no effect after the last shot
 */
public record Shot(double current, double duration, double decrement, double deadTime) {

    /**
     * Refuses values that no breaker makes.
     *
     * @param current symmetrical r.m.s. current in this conductor [A], ≥ 0
     * @param duration time until the current is cleared [s], ≥ 0 and finite; a fault that is never cleared has no heating result
     * @param decrement decrement factor of the loop for this duration, ≥ 1; 1 without direct-current offset
     * @param deadTime time without current before the next shot [s], ≥ 0; of no effect after the last shot
     */
    public Shot {
        if (!(current >= 0 && current < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("shot current must be >= 0 A and finite; have " + current);
        }
        if (!(duration >= 0 && duration < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(
                    "shot duration must be >= 0 s and finite, a fault that is never cleared has no heating result; have "
                            + duration);
        }
        if (!(decrement >= 1 && decrement < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("decrement factor must be >= 1; have " + decrement);
        }
        if (!(deadTime >= 0 && deadTime < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("dead time must be >= 0 s; have " + deadTime);
        }
    }

    /**
     * A single shot without direct-current offset.
     *
     * @param current symmetrical r.m.s. current [A]
     * @param duration clearing time [s]
     * @return the shot
     */
    public static Shot of(double current, double duration) {
        return new Shot(current, duration, 1, 0);
    }

    /**
     * The heat per ohm of this shot.
     *
     * @return (decrement · current)² · duration [A²·s]
     */
    public double jouleIntegral() {
        double effective = decrement * current;
        return effective * effective * duration;
    }

    /**
     * The heat per ohm of a whole sequence; successive short circuits add without cooling, as in IEC 60909-0:2001
     * clause 4.8 (from memory).
     *
     * @param shots all shots to lockout
     * @return sum of the joule integrals [A²·s]
     */
    public static double jouleIntegral(List<Shot> shots) {
        return shots.stream().mapToDouble(Shot::jouleIntegral).sum();
    }

    /**
     * The time with current of a whole sequence.
     *
     * @param shots all shots to lockout
     * @return sum of the durations Tk [s]
     */
    public static double totalDuration(List<Shot> shots) {
        return shots.stream().mapToDouble(Shot::duration).sum();
    }

    /**
     * The equivalent thermal current of a sequence, IEC 60909-0:2001 eq. (105) (from memory): √(∑I²t/∑t).
     *
     * @param shots all shots to lockout, with a total duration &gt; 0
     * @return Ith [A]
     */
    public static double equivalentCurrent(List<Shot> shots) {
        double duration = totalDuration(shots);
        if (!(duration > 0)) {
            throw new IllegalArgumentException("total duration must be > 0 s; have " + duration);
        }
        return Math.sqrt(jouleIntegral(shots) / duration);
    }
}
