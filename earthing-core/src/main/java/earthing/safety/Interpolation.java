package earthing.safety;

/** How a value is found between two printed points; the standards print points and leave this to the reader. */
public enum Interpolation {
    /** Straight between the points on logarithmic axes, as the standards draw their curves. */
    LOG_LOG("log-log between the printed points"),
    /** Straight between the points on plain axes; above the log-log value on a hollow curve, 19 % at 0.3 s. */
    LINEAR("linear between the printed points"),
    /** The value of the next longer printed duration: no value is made up. */
    NEXT_LONGER("value of the next longer printed duration");

    private final String label;

    Interpolation(String label) {
        this.label = label;
    }

    /**
     * Words for the report.
     *
     * @return readable rule
     */
    public String label() {
        return label;
    }

    /**
     * Finds a value between two points.
     *
     * @param x between x1 and x2
     * @param x1 abscissa of the first point, &gt; 0
     * @param y1 ordinate of the first point, &gt; 0
     * @param x2 abscissa of the second point, &gt; x1
     * @param y2 ordinate of the second point, &gt; 0
     * @return ordinate at x
     */
    double between(double x, double x1, double y1, double x2, double y2) {
        return switch (this) {
            case LOG_LOG -> y1 * Math.pow(y2 / y1, Math.log(x / x1) / Math.log(x2 / x1));
            case LINEAR -> y1 + (y2 - y1) * (x - x1) / (x2 - x1);
            case NEXT_LONGER -> x <= x1 ? y1 : y2;
        };
    }
}
