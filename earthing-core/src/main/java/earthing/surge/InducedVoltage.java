package earthing.surge;

import earthing.quantity.Source;

/**
 * Voltage that a stroke to ground beside an overhead line induces in it, at the point of the line nearest to the stroke.
 * Valid for a straight lossless line without end and without arresters nearby, a vertical channel, a return stroke of
 * constant speed and perfectly conducting ground. The same voltage appears on every conductor of the line's height.
 *
 * @param height height of the conductor [m], above 0
 * @param distance distance of the stroke from the line [m], greater than the height
 * @param speedRatio speed of the return stroke over that of light, in (0, 1)
 */
public record InducedVoltage(double height, double distance, double speedRatio) {

    /** Source of the peak. */
    public static final Source SOURCE = Source.publication(
            "IEEE Std 1410-2010, after S. Rusck, Trans. Royal Institute of Technology Stockholm 120 (1958)",
            "U = 30 I h/y (1 + (v/c)/sqrt(2 - (v/c)^2)), 38.8 I h/y at 0.4 c",
            Source.Status.FROM_MEMORY);

    /** Source of the effective height over ground that conducts poorly. */
    public static final Source LOSSY_GROUND = Source.publication(
            "M. Darveniza, IEEE Trans. Power Delivery 22 (2007) 605-612",
            "h + 0.15 sqrt(rho) in place of h in the formula of Rusck",
            Source.Status.FROM_MEMORY);

    /** Speed of the return stroke that stands behind 38.8 [1]. */
    public static final double USUAL_SPEED_RATIO = 0.4;

    private static final double LIGHT = 299_792_458;
    /** A quarter of the wave impedance of free space over π, as rounded by the source [Ω]. */
    private static final double Z0 = 30;
    /** Factor of the simplified formula, as printed [Ω]. */
    private static final double SIMPLIFIED = 38.8;

    /**
     * Refuses values outside the stated ranges.
     *
     * @param height height of the conductor [m], above 0
     * @param distance distance of the stroke from the line [m], greater than the height
     * @param speedRatio speed of the return stroke over that of light, in (0, 1)
     */
    public InducedVoltage {
        if (!(height > 0) || !(distance > height) || !Double.isFinite(distance)) {
            throw new IllegalArgumentException("the height must be > 0 m and the distance of the stroke greater; have "
                    + height + ", " + distance);
        }
        if (!(speedRatio > 0 && speedRatio < 1)) {
            throw new IllegalArgumentException("the speed ratio must be in (0, 1); have " + speedRatio);
        }
    }

    /**
     * The simplified peak 38.8 I h/y.
     *
     * @param current peak of the stroke [A], at least 0
     * @param height height of the conductor [m], above 0
     * @param distance distance of the stroke [m], above the height
     * @return peak [V]
     */
    public static double simplifiedPeak(double current, double height, double distance) {
        if (!(current >= 0) || !(height > 0) || !(distance > height)) {
            throw new IllegalArgumentException("current must be >= 0 A, height > 0 m, distance greater; have " + current
                    + ", " + height + ", " + distance);
        }
        return SIMPLIFIED * current * height / distance;
    }

    /**
     * Height that stands for the line's height over ground of finite resistivity: h + 0.15 √ρ.
     *
     * @param height height of the conductor [m], above 0
     * @param resistivity resistivity of the ground [Ω·m], at least 0
     * @return effective height [m]
     */
    public static double effectiveHeight(double height, double resistivity) {
        if (!(height > 0) || !(resistivity >= 0) || !Double.isFinite(resistivity)) {
            throw new IllegalArgumentException(
                    "height must be > 0 m and resistivity >= 0 ohm.m; have " + height + ", " + resistivity);
        }
        return height + 0.15 * Math.sqrt(resistivity);
    }

    /**
     * Peak for a current that jumps to 1 A and stays.
     *
     * @return transfer resistance [Ω]
     */
    public double peakPerAmpere() {
        return Z0 * height / distance * (1 + speedRatio / Math.sqrt(2 - speedRatio * speedRatio));
    }

    /**
     * Voltage at a time after a current jumped to 1 A at the ground.
     *
     * @param time time from the start of the return stroke [s]
     * @return transfer resistance [Ω]; 0 before the field arrives
     */
    public double stepResponse(double time) {
        double path = LIGHT * time;
        if (!(path > distance)) {
            return 0;
        }
        double b = speedRatio * path;
        double y2 = distance * distance;
        double root = Math.sqrt(b * b + (1 - speedRatio * speedRatio) * y2);
        return 2 * Z0 * height * b / (y2 + b * b) * (1 + speedRatio * b / root);
    }

    /**
     * Time of the peak of the step response, nearly: when the return stroke has run up as far as the line is away.
     *
     * @return time [s]
     */
    public double peakTime() {
        return distance / (speedRatio * LIGHT);
    }
}
