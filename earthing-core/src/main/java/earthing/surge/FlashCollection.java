package earthing.surge;

import earthing.quantity.Source;

/** How many lightning flashes a line or a tall object collects from the ground beside it. */
public final class FlashCollection {

    /** Source of the attractive width of a line. */
    public static final Source LINE = Source.publication(
            "IEEE Std 1410-2010, after A. J. Eriksson, IEEE Trans. Power Delivery 2 (1987) 859-870",
            "N = N_g (28 h^0.6 + b)/10 for 100 km",
            Source.Status.FROM_MEMORY);

    /** Source of the flash density from thunderstorm days. */
    public static final Source THUNDERSTORM_DAYS = Source.standard(
            "IEEE Std 1410-2010", "N_g = 0.04 T_d^1.25, where no count of flashes exists", Source.Status.FROM_MEMORY);

    /** Greatest height for which the attractive radius holds [m]. */
    public static final double TALLEST = 100;

    private FlashCollection() {}

    /**
     * Distance from which a line, or a single object, draws flashes to itself: 14 h^0.6.
     *
     * @param height height of the highest conductor, or of the object [m], above 0 and up to 100 m
     * @return attractive radius [m]
     */
    public static double radius(double height) {
        if (!(height > 0 && height <= TALLEST)) {
            throw new IllegalArgumentException("the attractive radius holds for heights up to 100 m; have " + height);
        }
        return 14 * Math.pow(height, 0.6);
    }

    /**
     * Width of the strip whose flashes end on the line: 28 h^0.6 + b.
     *
     * @param height height of the highest conductor [m], above 0 and up to 100 m
     * @param breadth distance of the outermost conductors [m], at least 0
     * @return width [m]
     */
    public static double width(double height, double breadth) {
        if (!(breadth >= 0) || !Double.isFinite(breadth)) {
            throw new IllegalArgumentException("the breadth of a line must be >= 0 m; have " + breadth);
        }
        return 2 * radius(height) + breadth;
    }

    /**
     * Flashes to a line on open ground.
     *
     * @param density flashes to ground [1/(m²·a)], at least 0
     * @param height height of the highest conductor [m]
     * @param breadth distance of the outermost conductors [m]
     * @param length length of line [m], at least 0
     * @return flashes a year [1/a]
     */
    public static double lineRate(double density, double height, double breadth, double length) {
        if (!(density >= 0) || !(length >= 0) || !Double.isFinite(density * length)) {
            throw new IllegalArgumentException(
                    "flash density and length must be >= 0; have " + density + ", " + length);
        }
        return density * width(height, breadth) * length;
    }

    /**
     * Ground that an object taller than its line draws flashes from beyond the strip of the line: a circle less what the
     * strip covers of it.
     *
     * @param object height of the object's top [m]
     * @param width width of the line's strip, the object on its middle [m], at least 0
     * @return area [m²], 0 where the strip is wider than the circle
     */
    public static double areaBeyondStrip(double object, double width) {
        double r = radius(object);
        double half = width / 2;
        if (!(half >= 0)) {
            throw new IllegalArgumentException("the width of the strip must be >= 0 m; have " + width);
        }
        if (half >= r) {
            return 0;
        }
        return Math.PI * r * r - 2 * (half * Math.sqrt(r * r - half * half) + r * r * Math.asin(half / r));
    }

    /**
     * Ground flash density from the number of thunderstorm days: 0.04 T_d^1.25 a square kilometre. A rough substitute;
     * a count of flashes is better by far.
     *
     * @param days thunderstorm days a year, at least 0
     * @return flashes to ground [1/(m²·a)]
     */
    public static double ofThunderstormDays(double days) {
        if (!(days >= 0 && days <= 366)) {
            throw new IllegalArgumentException("thunderstorm days must be in [0, 366]; have " + days);
        }
        return 0.04e-6 * Math.pow(days, 1.25);
    }
}
