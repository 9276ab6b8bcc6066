package earthing.safety;

import earthing.quantity.Source;
import earthing.quantity.Source.Status;
import java.util.Objects;

/**
 * What a person wears on the feet.
 *
 * @param name readable name
 * @param resistance resistance of both feet in parallel [Ω], ≥ 0
 * @param source where the value comes from
 */
public record Footwear(String name, double resistance, Source source) {

    /** Bare feet: nothing is credited. */
    public static final Footwear NONE = new Footwear("none credited", 0, Source.tool("bare feet"));

    /** Old and wet shoes. */
    public static final Footwear OLD_WET_SHOES = new Footwear(
            "old and wet shoes", 1000, Source.standard("EN 50522:2010", "annex B, R_F1", Status.FROM_MEMORY));

    /**
     * Refuses a negative resistance.
     *
     * @param name readable name
     * @param resistance resistance of both feet in parallel [Ω], ≥ 0
     * @param source where the value comes from
     */
    public Footwear {
        Objects.requireNonNull(name);
        Objects.requireNonNull(source);
        if (!(resistance >= 0 && resistance < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("footwear resistance must be >= 0 ohm; have " + resistance);
        }
    }
}
