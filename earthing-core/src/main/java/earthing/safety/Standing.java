package earthing.safety;

import java.util.Objects;
import java.util.Optional;

/**
 * What a person stands on and in.
 *
 * @param soilResistivity resistivity of the top soil [Ω·m], &gt; 0
 * @param covering layer over the soil, empty for bare soil
 * @param footwear footwear that is credited
 */
public record Standing(double soilResistivity, Optional<SurfaceCovering> covering, Footwear footwear) {

    /**
     * Refuses soil without resistivity.
     *
     * @param soilResistivity resistivity of the top soil [Ω·m], &gt; 0
     * @param covering layer over the soil, empty for bare soil
     * @param footwear footwear that is credited
     */
    public Standing {
        Objects.requireNonNull(covering);
        Objects.requireNonNull(footwear);
        if (!(soilResistivity > 0 && soilResistivity < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("soil resistivity must be > 0 ohm.m; have " + soilResistivity);
        }
    }

    /**
     * Bare feet on bare soil.
     *
     * @param soilResistivity resistivity of the top soil [Ω·m]
     * @return the standing
     */
    public static Standing bare(double soilResistivity) {
        return new Standing(soilResistivity, Optional.empty(), Footwear.NONE);
    }

    /**
     * The same place with a covering.
     *
     * @param layer the covering
     * @return the standing
     */
    public Standing on(SurfaceCovering layer) {
        return new Standing(soilResistivity, Optional.of(layer), footwear);
    }

    /**
     * The same place in shoes.
     *
     * @param shoes the footwear
     * @return the standing
     */
    public Standing in(Footwear shoes) {
        return new Standing(soilResistivity, covering, shoes);
    }

    /**
     * Words for the report.
     *
     * @return name of the covering, or bare soil
     */
    public String surface() {
        return covering.map(SurfaceCovering::name).orElse("bare soil");
    }
}
