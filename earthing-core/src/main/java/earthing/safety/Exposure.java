package earthing.safety;

import earthing.quantity.Source;
import earthing.quantity.Source.Status;
import java.util.ArrayList;
import java.util.List;

/**
 * What a person at the place lives through as one event: one shock, or several that follow each other so closely that
 * the standard adds their durations.
 *
 * @param firstShot number of its first shot, from 1
 * @param lastShot number of its last shot
 * @param duration sum of the durations of its shots [s]; infinite where the last is never cleared
 */
public record Exposure(int firstShot, int lastShot, double duration) {

    /** Where the adding of close shocks comes from. */
    public static final Source SOURCE = Source.standard(
            "IEEE Std 80-2000",
            "clause 5.3: closely spaced shocks, sum of the individual durations; about 0.3 to 0.5 s apart",
            Status.FROM_MEMORY);

    /**
     * Refuses shots out of order.
     *
     * @param firstShot number of its first shot, from 1
     * @param lastShot number of its last shot
     * @param duration sum of the durations of its shots [s]; infinite where the last is never cleared
     */
    public Exposure {
        if (!(firstShot >= 1 && lastShot >= firstShot)) {
            throw new IllegalArgumentException(
                    "shots must be numbered from 1 in order; have " + firstShot + " to " + lastShot);
        }
        if (!(duration > 0)) {
            throw new IllegalArgumentException("duration of an exposure must be > 0 s; have " + duration);
        }
    }

    /**
     * Whether nothing clears it.
     *
     * @return true if the duration is infinite
     */
    public boolean isSustained() {
        return Double.isInfinite(duration);
    }

    /**
     * Groups the shocks of a reclose sequence.
     *
     * @param shocks all shocks in order, at least one; nothing follows one that is never cleared
     * @param mergingDeadTime dead time [s], ≥ 0, below which two shocks are one exposure
     * @return exposures in order
     */
    public static List<Exposure> of(List<Shock> shocks, double mergingDeadTime) {
        if (shocks.isEmpty()) {
            throw new IllegalArgumentException("a sequence needs at least one shock");
        }
        if (!(mergingDeadTime >= 0 && mergingDeadTime < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("merging dead time must be >= 0 s; have " + mergingDeadTime);
        }
        List<Exposure> exposures = new ArrayList<>();
        int first = 1;
        double sum = 0;
        for (int i = 0; i < shocks.size(); i++) {
            Shock shock = shocks.get(i);
            boolean last = i == shocks.size() - 1;
            if (!last && Double.isInfinite(shock.duration())) {
                throw new IllegalArgumentException("shot " + (i + 1) + " is never cleared, yet another follows it");
            }
            sum += shock.duration();
            if (last || shock.deadTime() >= mergingDeadTime) {
                exposures.add(new Exposure(first, i + 1, sum));
                first = i + 2;
                sum = 0;
            }
        }
        return List.copyOf(exposures);
    }
}
