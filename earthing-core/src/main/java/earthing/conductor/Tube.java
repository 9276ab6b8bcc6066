package earthing.conductor;

/**
 * A round tube, such as a hollow pole or a screen.
 *
 * @param outerRadius outer radius [m], &gt; 0
 * @param wall thickness of the wall [m], &gt; 0 and below the outer radius
 */
public record Tube(double outerRadius, double wall) implements Shape {

    /**
     * Refuses a wall that leaves no bore.
     *
     * @param outerRadius outer radius [m], &gt; 0
     * @param wall thickness of the wall [m], &gt; 0 and below the outer radius
     */
    public Tube {
        if (!(wall > 0 && outerRadius > wall && outerRadius < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(
                    "tube wall must be > 0 m and below the outer radius " + outerRadius + " m; have " + wall);
        }
    }

    @Override
    public double area() {
        return Math.PI * wall * (2 * outerRadius - wall);
    }

    @Override
    public double equivalentRadius() {
        return outerRadius;
    }

    @Override
    public double geometricMeanRadius() {
        double inner = outerRadius - wall;
        double relative = wall / outerRadius;
        if (relative < 1e-3) {
            // Thin wall: the closed form loses its digits, this is its series in the wall.
            return outerRadius * (1 - relative / 3 + relative * relative / 18);
        }
        double a = outerRadius * outerRadius;
        double b = inner * inner;
        double difference = a - b;
        double mean = Math.log(outerRadius)
                - b * b / difference / difference * Math.log(outerRadius / inner)
                + (3 * b - a) / (4 * difference);
        return Math.exp(mean);
    }

    @Override
    public double perimeter() {
        return 2 * Math.PI * outerRadius;
    }
}
