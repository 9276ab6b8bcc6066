package earthing.safety;

import earthing.quantity.Source;
import java.util.Objects;

/**
 * A layer of gravel, asphalt or the like under the feet.
 *
 * @param name readable name
 * @param resistivity resistivity when wet [Ω·m], &gt; 0
 * @param thickness thickness [m], &gt; 0; infinite for ground that is all of this material
 * @param source where the resistivity comes from
 */
public record SurfaceCovering(String name, double resistivity, double thickness, Source source) {

    /**
     * Refuses a layer that is not there.
     *
     * @param name readable name
     * @param resistivity resistivity when wet [Ω·m], &gt; 0
     * @param thickness thickness [m], &gt; 0; infinite for ground that is all of this material
     * @param source where the resistivity comes from
     */
    public SurfaceCovering {
        Objects.requireNonNull(name);
        Objects.requireNonNull(source);
        if (!(resistivity > 0 && resistivity < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("covering resistivity must be > 0 ohm.m; have " + resistivity);
        }
        if (!(thickness > 0)) {
            throw new IllegalArgumentException("covering thickness must be > 0 m; have " + thickness);
        }
    }
}
