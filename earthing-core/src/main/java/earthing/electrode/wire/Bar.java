package earthing.electrode.wire;

/**
 * One straight buried bar of round section, bare, at one potential along its length.
 *
 * @param electrode name of the electrode it belongs to; bars of one name are bonded together
 * @param x1 first end, east [m]
 * @param y1 first end, north [m]
 * @param depth1 depth of the first end [m], ≥ 0
 * @param x2 second end, east [m]
 * @param y2 second end, north [m]
 * @param depth2 depth of the second end [m], ≥ 0
 * @param radius radius [m], &gt; 0 and at most half the length
 */
public record Bar(
        String electrode, double x1, double y1, double depth1, double x2, double y2, double depth2, double radius) {

    /**
     * Refuses bars without length, too thick ones, and ones that lie partly above ground.
     *
     * @param electrode name of the electrode it belongs to; bars of one name are bonded together
     * @param x1 first end, east [m]
     * @param y1 first end, north [m]
     * @param depth1 depth of the first end [m], ≥ 0
     * @param x2 second end, east [m]
     * @param y2 second end, north [m]
     * @param depth2 depth of the second end [m], ≥ 0
     * @param radius radius [m], &gt; 0 and at most half the length
     */
    public Bar {
        if (electrode.isBlank()) {
            throw new IllegalArgumentException("a bar needs the name of its electrode");
        }
        if (!(depth1 >= 0) || !(depth2 >= 0)) {
            throw new IllegalArgumentException("a bar must lie below ground; have depths " + depth1 + " and " + depth2);
        }
        if (!(radius > 0)) {
            throw new IllegalArgumentException("radius of a bar must be > 0 m; have " + radius);
        }
        double length = length(x1, y1, depth1, x2, y2, depth2);
        if (!(length >= 2 * radius) || Double.isInfinite(length)) {
            throw new IllegalArgumentException(
                    "a bar must be at least as long as thick; have length " + length + " m, radius " + radius + " m");
        }
        if (!((depth1 + depth2) / 2 >= radius)) {
            throw new IllegalArgumentException("a bar must be covered by soil; have mean depth " + (depth1 + depth2) / 2
                    + " m, radius " + radius + " m");
        }
    }

    private static double length(double x1, double y1, double z1, double x2, double y2, double z2) {
        return Math.sqrt((x2 - x1) * (x2 - x1) + (y2 - y1) * (y2 - y1) + (z2 - z1) * (z2 - z1));
    }

    /**
     * Length of the bar.
     *
     * @return length [m]
     */
    public double length() {
        return length(x1, y1, depth1, x2, y2, depth2);
    }
}
