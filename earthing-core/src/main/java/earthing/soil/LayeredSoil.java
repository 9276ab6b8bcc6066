package earthing.soil;

import java.util.List;

/**
 * Ground of two or more horizontal layers.
 *
 * @param layers layers from the surface down, at least two; only the last has infinite thickness, and only the last may
 *     have infinite resistivity
 */
public record LayeredSoil(List<Layer> layers) implements SoilModel {

    /**
     * Checks the order of finite and infinite layers.
     *
     * @param layers layers from the surface down, at least two; only the last has infinite thickness, and only the last may have infinite resistivity
     */
    public LayeredSoil {
        layers = List.copyOf(layers);
        if (layers.size() < 2 || layers.size() > MAX_LAYERS) {
            throw new IllegalArgumentException(
                    "layered soil needs 2 to " + MAX_LAYERS + " layers; have " + layers.size());
        }
        for (int i = 0; i < layers.size(); i++) {
            boolean last = i == layers.size() - 1;
            Layer layer = layers.get(i);
            if (Double.isInfinite(layer.thickness()) != last) {
                throw new IllegalArgumentException(
                        last ? "the lowest layer must have no lower end" : "layer " + (i + 1) + " must end somewhere");
            }
            if (Double.isInfinite(layer.resistivity()) && !last) {
                throw new IllegalArgumentException("only the lowest layer may have infinite resistivity");
            }
        }
    }
}
