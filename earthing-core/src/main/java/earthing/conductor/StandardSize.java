package earthing.conductor;

import java.util.Objects;

/**
 * A size that can be bought.
 *
 * @param name as the trade writes it, for example {@code 70 mm2} or {@code 2/0 AWG}
 * @param area area [m²], &gt; 0
 */
public record StandardSize(String name, double area) {

    /**
     * Refuses an area that is not positive.
     *
     * @param name as the trade writes it, for example {@code 70 mm2} or {@code 2/0 AWG}
     * @param area area [m²], &gt; 0
     */
    public StandardSize {
        Objects.requireNonNull(name);
        if (!(area > 0)) {
            throw new IllegalArgumentException("area of a standard size must be > 0 m²; have " + area);
        }
    }
}
