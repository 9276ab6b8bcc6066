package earthing.soil;

import java.util.List;

/**
 * Ground of one resistivity.
 *
 * @param resistivity resistivity [Ω·m], &gt; 0, finite
 */
public record UniformSoil(double resistivity) implements SoilModel {

    /**
     * Refuses a resistivity that is not positive and finite.
     *
     * @param resistivity resistivity [Ω·m], &gt; 0, finite
     */
    public UniformSoil {
        if (!(resistivity > 0) || Double.isInfinite(resistivity)) {
            throw new IllegalArgumentException("soil resistivity must be > 0 ohm.m and finite; have " + resistivity);
        }
    }

    @Override
    public List<Layer> layers() {
        return List.of(Layer.below(resistivity));
    }
}
