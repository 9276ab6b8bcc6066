package earthing.conductor;

/**
 * A flat tape or strip.
 *
 * @param width width [m], &gt; 0
 * @param thickness thickness [m], &gt; 0
 */
public record Tape(double width, double thickness) implements Shape {

    /**
     * Refuses sides that are not positive.
     *
     * @param width width [m], &gt; 0
     * @param thickness thickness [m], &gt; 0
     */
    public Tape {
        if (!(width > 0 && thickness > 0 && width < Double.POSITIVE_INFINITY && thickness < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(
                    "tape width and thickness must be > 0 m; have " + width + " and " + thickness);
        }
    }

    @Override
    public double area() {
        return width * thickness;
    }

    @Override
    public double equivalentRadius() {
        return (width + thickness) / 4;
    }

    @Override
    public double geometricMeanRadius() {
        // Maxwell's rectangle, symmetric in its sides.
        double ratio = width / thickness;
        double square = ratio * ratio;
        double mean = Math.log(Math.hypot(width, thickness))
                - square / 12 * Math.log1p(1 / square)
                - Math.log1p(square) / (12 * square)
                + 2.0 / 3 * ratio * Math.atan(1 / ratio)
                + 2.0 / 3 / ratio * Math.atan(ratio)
                - 25.0 / 12;
        return Math.exp(mean);
    }

    @Override
    public double perimeter() {
        return 2 * (width + thickness);
    }
}
