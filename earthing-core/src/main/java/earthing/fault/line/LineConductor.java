package earthing.fault.line;

/**
 * One conductor of an overhead line, seen along the line.
 *
 * @param name name, unique on the line
 * @param offset horizontal position from any common reference [m]
 * @param height mean height above ground [m], &gt; 0
 * @param resistance a.c. resistance at the temperature of interest [Ω/m], ≥ 0
 * @param geometricMeanRadius geometric mean radius, internal flux included [m], &gt; 0
 * @param radius outer radius, for the capacitance [m], &gt; 0
 */
public record LineConductor(
        String name, double offset, double height, double resistance, double geometricMeanRadius, double radius) {

    /**
     * Refuses impossible sizes.
     *
     * @param name name, unique on the line
     * @param offset horizontal position from any common reference [m]
     * @param height mean height above ground [m], &gt; 0
     * @param resistance a.c. resistance at the temperature of interest [Ω/m], ≥ 0
     * @param geometricMeanRadius geometric mean radius, internal flux included [m], &gt; 0
     * @param radius outer radius, for the capacitance [m], &gt; 0
     */
    public LineConductor {
        if (name.isBlank()) {
            throw new IllegalArgumentException("a line conductor needs a name");
        }
        if (!Double.isFinite(offset)) {
            throw new IllegalArgumentException("offset of " + name + " must be finite; have " + offset);
        }
        requirePositive(name, "height", height);
        requirePositive(name, "geometric mean radius", geometricMeanRadius);
        requirePositive(name, "radius", radius);
        if (!(resistance >= 0) || !Double.isFinite(resistance)) {
            throw new IllegalArgumentException("resistance of " + name + " must be >= 0 ohm/m; have " + resistance);
        }
        if (!(radius < height && geometricMeanRadius < height)) {
            throw new IllegalArgumentException("radius of " + name + " must be below its height; have " + radius);
        }
    }

    private static void requirePositive(String name, String what, double value) {
        if (!(value > 0) || !Double.isFinite(value)) {
            throw new IllegalArgumentException(what + " of " + name + " must be > 0 m; have " + value);
        }
    }

    /**
     * A solid round wire of non-magnetic metal, geometric mean radius {@code r·e^(−1/4)}.
     *
     * @param name name, unique on the line
     * @param offset horizontal position [m]
     * @param height mean height above ground [m]
     * @param resistance a.c. resistance [Ω/m]
     * @param radius radius [m]
     * @return the conductor
     */
    public static LineConductor solid(String name, double offset, double height, double resistance, double radius) {
        return new LineConductor(name, offset, height, resistance, radius * Math.exp(-0.25), radius);
    }

    /**
     * Distance to another conductor.
     *
     * @param other the other
     * @return distance of the axes [m]
     */
    public double distance(LineConductor other) {
        return Math.hypot(offset - other.offset, height - other.height);
    }

    /**
     * Distance to the mirror image of another conductor in a perfectly conducting ground surface.
     *
     * @param other the other, or this conductor itself
     * @return distance [m]
     */
    public double imageDistance(LineConductor other) {
        return Math.hypot(offset - other.offset, height + other.height);
    }
}
