package earthing.electrode.tester;

import earthing.quantity.Source;
import java.util.List;

/**
 * What a clamp-on tester reads: the loop of the electrode under the clamp and all others in parallel, which close it
 * through the conductor that joins them. It bounds the electrode from above; without others there is no loop.
 */
public final class ClampOnLoop {

    /** Source of the loop. */
    public static final Source SOURCE = Source.standard(
            "IEEE Std 81", "clamp-on or stakeless method; mutual resistances neglected", Source.Status.FROM_MEMORY);

    private ClampOnLoop() {}

    /**
     * Reading of the clamp.
     *
     * @param electrode resistance of the electrode under the clamp [Ω], &gt; 0
     * @param others resistances of all others of the loop [Ω], each &gt; 0, far from each other; at least one
     * @return loop resistance [Ω]
     */
    public static double reading(double electrode, List<Double> others) {
        if (!(electrode > 0)) {
            throw new IllegalArgumentException("resistance of the electrode must be > 0 ohm; have " + electrode);
        }
        if (others.isEmpty()) {
            throw new IllegalArgumentException("a clamp-on tester needs other electrodes that close the loop");
        }
        double conductance = 0;
        for (double other : others) {
            if (!(other > 0)) {
                throw new IllegalArgumentException("resistance of another electrode must be > 0 ohm; have " + other);
            }
            conductance += 1 / other;
        }
        return electrode + 1 / conductance;
    }
}
