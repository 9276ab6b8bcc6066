package earthing.conductor.inductance;

/**
 * A point in space.
 *
 * @param x first horizontal coordinate [m]
 * @param y second horizontal coordinate [m]
 * @param z height above ground [m], negative below
 */
public record Point(double x, double y, double z) {

    /**
     * Refuses coordinates that are not finite.
     *
     * @param x first horizontal coordinate [m]
     * @param y second horizontal coordinate [m]
     * @param z height above ground [m], negative below
     */
    public Point {
        if (!Double.isFinite(x) || !Double.isFinite(y) || !Double.isFinite(z)) {
            throw new IllegalArgumentException("coordinates must be finite; have " + x + ", " + y + ", " + z);
        }
    }

    /**
     * Distance to another point.
     *
     * @param other the other point
     * @return distance [m]
     */
    public double distance(Point other) {
        return Math.hypot(Math.hypot(other.x - x, other.y - y), other.z - z);
    }
}
