package earthing.soil;

/**
 * One horizontal layer of soil.
 *
 * @param resistivity resistivity [Ω·m], &gt; 0; infinite only for a lowest layer that does not conduct
 * @param thickness thickness [m], &gt; 0; infinite for the lowest layer
 */
public record Layer(double resistivity, double thickness) {

    /**
     * Refuses values that are not positive.
     *
     * @param resistivity resistivity [Ω·m], &gt; 0; infinite only for a lowest layer that does not conduct
     * @param thickness thickness [m], &gt; 0; infinite for the lowest layer
     */
    public Layer {
        if (!(resistivity > 0)) {
            throw new IllegalArgumentException("soil resistivity must be > 0 ohm.m; have " + resistivity);
        }
        if (!(thickness > 0)) {
            throw new IllegalArgumentException("layer thickness must be > 0 m; have " + thickness);
        }
    }

    /**
     * The lowest layer, which has no lower end.
     *
     * @param resistivity resistivity [Ω·m], &gt; 0
     * @return a layer of infinite thickness
     */
    public static Layer below(double resistivity) {
        return new Layer(resistivity, Double.POSITIVE_INFINITY);
    }
}
