package earthing.conductor;

/**
 * A solid round wire or rod.
 *
 * @param radius radius [m], &gt; 0
 */
public record SolidRound(double radius) implements Shape {

    /**
     * Refuses a radius that is not positive.
     *
     * @param radius radius [m], &gt; 0
     */
    public SolidRound {
        if (!(radius > 0 && radius < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("wire radius must be > 0 m; have " + radius);
        }
    }

    /**
     * The round wire of a given area.
     *
     * @param area area [m²], &gt; 0
     * @return the wire
     */
    public static SolidRound ofArea(double area) {
        return new SolidRound(Math.sqrt(area / Math.PI));
    }

    @Override
    public double area() {
        return Math.PI * radius * radius;
    }

    @Override
    public double equivalentRadius() {
        return radius;
    }

    @Override
    public double geometricMeanRadius() {
        return radius * Math.exp(-0.25);
    }

    @Override
    public double perimeter() {
        return 2 * Math.PI * radius;
    }
}
