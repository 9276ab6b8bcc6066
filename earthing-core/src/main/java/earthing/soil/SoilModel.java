package earthing.soil;

import java.util.ArrayList;
import java.util.List;

/**
 * Ground made of horizontal layers, each of one resistivity. Layers are numbered from 0 at the surface.
 *
 * <p>A site is described with at most five layers; the limit of {@value #MAX_LAYERS} leaves room for the season, which
 * splits a layer, and for published models of deep soundings.
 */
public sealed interface SoilModel permits UniformSoil, LayeredSoil {

    /** Most layers of a model [-]. */
    int MAX_LAYERS = 8;

    /**
     * All layers from the surface down.
     *
     * @return the layers; the thickness of the last one is infinite
     */
    List<Layer> layers();

    /**
     * Uniform ground.
     *
     * @param resistivity resistivity [Ω·m], &gt; 0, finite
     * @return the model
     */
    static SoilModel uniform(double resistivity) {
        return new UniformSoil(resistivity);
    }

    /**
     * Two layers.
     *
     * @param upper resistivity of the upper layer [Ω·m]
     * @param thickness thickness of the upper layer [m]
     * @param lower resistivity of everything below [Ω·m]
     * @return the model; uniform where both resistivities are equal
     */
    static SoilModel twoLayer(double upper, double thickness, double lower) {
        return of(List.of(new Layer(upper, thickness), Layer.below(lower)));
    }

    /**
     * Ground of any number of layers.
     *
     * @param layers the layers from the surface down; the last must have infinite thickness, the others not.
     *     Neighbouring layers of equal resistivity are joined.
     * @return the model
     * @throws IllegalArgumentException when the list is empty, too long, or a thickness stands in the wrong place
     */
    static SoilModel of(List<Layer> layers) {
        List<Layer> joined = new ArrayList<>();
        for (Layer layer : layers) {
            Layer above = joined.isEmpty() ? null : joined.get(joined.size() - 1);
            if (above != null && above.resistivity() == layer.resistivity()) {
                joined.set(joined.size() - 1, new Layer(layer.resistivity(), above.thickness() + layer.thickness()));
            } else {
                joined.add(layer);
            }
        }
        if (joined.size() == 1 && Double.isInfinite(joined.get(0).thickness())) {
            return new UniformSoil(joined.get(0).resistivity());
        }
        return new LayeredSoil(joined);
    }

    /**
     * Number of layers.
     *
     * @return 1 for uniform ground
     */
    default int layerCount() {
        return layers().size();
    }

    /**
     * Resistivity of a layer.
     *
     * @param layer index from 0 at the surface
     * @return resistivity [Ω·m]
     */
    default double resistivity(int layer) {
        return layers().get(layer).resistivity();
    }

    /**
     * Thickness of a layer.
     *
     * @param layer index from 0 at the surface
     * @return thickness [m], infinite for the lowest layer
     */
    default double thickness(int layer) {
        return layers().get(layer).thickness();
    }

    /**
     * Depth of the upper face of a layer.
     *
     * @param layer index from 0 at the surface
     * @return depth [m], 0 for the top layer
     */
    default double top(int layer) {
        double depth = 0;
        for (int i = 0; i < layer; i++) {
            depth += thickness(i);
        }
        return depth;
    }

    /**
     * The layer at a depth. A depth on a boundary belongs to the layer above it.
     *
     * @param depth depth [m], ≥ 0
     * @return index from 0 at the surface
     */
    default int layerAt(double depth) {
        if (!(depth >= 0)) {
            throw new IllegalArgumentException("depth must be >= 0 m; have " + depth);
        }
        double bottom = 0;
        for (int i = 0; i < layerCount() - 1; i++) {
            bottom += thickness(i);
            if (depth <= bottom) {
                return i;
            }
        }
        return layerCount() - 1;
    }

    /**
     * Resistivity at a depth.
     *
     * @param depth depth [m], ≥ 0
     * @return resistivity [Ω·m]
     */
    default double resistivityAt(double depth) {
        return resistivity(layerAt(depth));
    }

    /**
     * The same ground with all resistivities multiplied.
     *
     * @param factor factor [-], &gt; 0, finite
     * @return the scaled model
     */
    default SoilModel scaled(double factor) {
        requireFactor(factor);
        return of(layers().stream()
                .map(layer -> new Layer(layer.resistivity() * factor, layer.thickness()))
                .toList());
    }

    /**
     * The same ground in units of the resistivity of its top layer, so that grounds that differ by a factor are equal.
     *
     * @return the model whose top layer has 1 Ω·m
     */
    default SoilModel relative() {
        double top = resistivity(0);
        return of(layers().stream()
                .map(layer -> new Layer(layer.resistivity() / top, layer.thickness()))
                .toList());
    }

    /**
     * The same ground in another season: drying or freezing changes the resistivity of a top depth only. A layer that
     * reaches deeper is split there.
     *
     * @param topDepth depth down to which the season acts [m], &gt; 0, finite
     * @param factor factor on the resistivity of that depth [-], &gt; 0, finite
     * @return the model of that season
     */
    default SoilModel seasonal(double topDepth, double factor) {
        requireFactor(factor);
        if (!(topDepth > 0) || Double.isInfinite(topDepth)) {
            throw new IllegalArgumentException("depth of the season must be > 0 m and finite; have " + topDepth);
        }
        List<Layer> changed = new ArrayList<>();
        double top = 0;
        for (Layer layer : layers()) {
            double bottom = top + layer.thickness();
            if (bottom <= topDepth) {
                changed.add(new Layer(layer.resistivity() * factor, layer.thickness()));
            } else if (top < topDepth) {
                changed.add(new Layer(layer.resistivity() * factor, topDepth - top));
                changed.add(new Layer(layer.resistivity(), bottom - topDepth));
            } else {
                changed.add(layer);
            }
            top = bottom;
        }
        return of(changed);
    }

    private static void requireFactor(double factor) {
        if (!(factor > 0) || Double.isInfinite(factor)) {
            throw new IllegalArgumentException("factor on resistivity must be > 0 and finite; have " + factor);
        }
    }
}
