package earthing.fault.clearing;

import java.util.OptionalDouble;

/** When a fault ends. */
public sealed interface ClearingTime {

    /**
     * The fault is interrupted.
     *
     * @param seconds time from the start of the fault to its interruption [s], ≥ 0
     * @param by the stage that does it
     */
    record Cleared(double seconds, String by) implements ClearingTime {

        /**
         * Refuses a time that is negative or not finite.
         *
         * @param seconds time from the start of the fault to its interruption [s], ≥ 0
         * @param by the stage that does it
         */
        public Cleared {
            if (!(seconds >= 0) || !Double.isFinite(seconds)) {
                throw new IllegalArgumentException("a clearing time must be >= 0 s and finite; have " + seconds);
            }
        }
    }

    /**
     * The fault stays; the limits for sustained faults apply and heating cannot be shown from a time.
     *
     * @param reason why nothing acts
     */
    record Never(String reason) implements ClearingTime {}

    /**
     * The time as a number, if there is one.
     *
     * @return seconds, empty for never
     */
    default OptionalDouble time() {
        return this instanceof Cleared cleared ? OptionalDouble.of(cleared.seconds()) : OptionalDouble.empty();
    }
}
