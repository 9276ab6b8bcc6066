package earthing.fault.clearing;

import earthing.quantity.Numbers;
import java.util.OptionalDouble;

/**
 * One stage of protection with what it needs to interrupt.
 *
 * @param name name of the stage, as on the setting sheet
 * @param characteristic its curve
 * @param breakerTime opening and arcing time of the breaker [s], ≥ 0; zero for a fuse given by total clearing time
 * @param margin allowance added for tolerance of relay and breaker [s], ≥ 0
 */
public record ProtectionStage(String name, Characteristic characteristic, double breakerTime, double margin) {

    /**
     * Refuses times that are negative.
     *
     * @param name name of the stage, as on the setting sheet
     * @param characteristic its curve
     * @param breakerTime opening and arcing time of the breaker [s], ≥ 0; zero for a fuse given by total clearing time
     * @param margin allowance added for tolerance of relay and breaker [s], ≥ 0
     */
    public ProtectionStage {
        if (name.isBlank()) {
            throw new IllegalArgumentException("a protection stage needs a name");
        }
        if (!(breakerTime >= 0 && margin >= 0) || !Double.isFinite(breakerTime + margin)) {
            throw new IllegalArgumentException(
                    "breaker time and margin must be >= 0 s; have " + breakerTime + " and " + margin);
        }
    }

    /**
     * Whether this stage ends a fault for good: a fuse, given by the points of its curve, cannot be closed again.
     *
     * @return true for a curve of points
     */
    public boolean clearsForGood() {
        return characteristic instanceof Characteristic.Points;
    }

    /**
     * When this stage ends a fault.
     *
     * @param current current that it measures [A], ≥ 0
     * @return relay, breaker and margin together, or never
     */
    public ClearingTime clear(double current) {
        OptionalDouble time = characteristic.operatingTime(current);
        return time.isPresent()
                ? new ClearingTime.Cleared(time.getAsDouble() + breakerTime + margin, name)
                : new ClearingTime.Never(
                        current > characteristic.pickup() && characteristic instanceof Characteristic.Points points
                                ? Numbers.brief(current) + " A is above what " + name + " breaks ("
                                        + Numbers.brief(points.breakingCurrent()) + " A)"
                                : Numbers.brief(current) + " A is below where " + name + " acts (pickup "
                                        + Numbers.brief(characteristic.pickup()) + " A)");
    }
}
