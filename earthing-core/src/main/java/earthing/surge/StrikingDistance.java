package earthing.surge;

import earthing.quantity.Source;

/**
 * How near a stroke to ground can come to a line without ending on it: the last step of a leader goes to whatever comes
 * within the striking distance first, r = 10 I^0.65 (m, kA) for the conductor and 0.9 r for the ground.
 */
public final class StrikingDistance {

    /** Source of the striking distances. */
    public static final Source SOURCE =
            Source.standard("IEEE Std 1410-2010", "r_s = 10 I^0.65, r_g = 0.9 r_s", Source.Status.FROM_MEMORY);

    private static final double GROUND_RATIO = 0.9;

    private StrikingDistance() {}

    /**
     * Striking distance to a conductor.
     *
     * @param peak peak of the stroke [A], above 0
     * @return distance [m]
     */
    public static double toConductor(double peak) {
        if (!(peak > 0) || !Double.isFinite(peak)) {
            throw new IllegalArgumentException("the peak of a stroke must be > 0 A; have " + peak);
        }
        return 10 * Math.pow(peak / 1e3, 0.65);
    }

    /**
     * Distance from a line within which no stroke of this peak reaches the ground:
     * {@code √(r_s² − (r_g − h)²)}, or r_s where the conductor is higher than the ground's striking distance.
     *
     * @param peak peak of the stroke [A], above 0
     * @param height height of the conductor [m], above 0
     * @return distance [m]
     */
    public static double nearestToGround(double peak, double height) {
        if (!(height > 0) || !Double.isFinite(height)) {
            throw new IllegalArgumentException("the height of a conductor must be > 0 m; have " + height);
        }
        double r = toConductor(peak);
        double below = GROUND_RATIO * r - height;
        return below <= 0 ? r : Math.sqrt(r * r - below * below);
    }
}
