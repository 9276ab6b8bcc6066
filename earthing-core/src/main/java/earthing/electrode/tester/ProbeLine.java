package earthing.electrode.tester;

/**
 * The straight line on the ground along which both probes are driven.
 *
 * @param x east of the terminal of the electrode, from which distances count [m], finite
 * @param y north of it [m], finite
 * @param direction direction of the line, from east towards north [rad], finite
 * @param distance distance of the current probe [m], &gt; 0, finite
 */
public record ProbeLine(double x, double y, double direction, double distance) {

    /**
     * Refuses a line without length.
     *
     * @param x east of the terminal of the electrode [m], finite
     * @param y north of it [m], finite
     * @param direction direction of the line, from east towards north [rad], finite
     * @param distance distance of the current probe [m], &gt; 0, finite
     */
    public ProbeLine {
        if (!Double.isFinite(x) || !Double.isFinite(y) || !Double.isFinite(direction)) {
            throw new IllegalArgumentException(
                    "the line of the probes needs finite x, y, direction; have " + x + ", " + y + ", " + direction);
        }
        if (!(distance > 0) || Double.isInfinite(distance)) {
            throw new IllegalArgumentException("distance of the current probe must be > 0 m; have " + distance);
        }
    }

    double east(double along) {
        return x + along * Math.cos(direction);
    }

    double north(double along) {
        return y + along * Math.sin(direction);
    }
}
