package earthing.soil;

import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * The ground of a given number of layers that fits a sounding best.
 *
 * @param soil the ground
 * @param parameters resistivities from the surface down, then thicknesses
 * @param products for every layer but the lowest its transverse resistance, then for every such layer its longitudinal
 *     conductance
 * @param readings every reading of the sounding in its order, with the fit
 * @param misfit r.m.s. of measured over computed less 1, readings set aside left out [-]
 * @param criterion information criterion; of two fits of one sounding the lower is the better supported
 * @param condition ratio of the greatest to the smallest singular value of the derivatives of the readings [-]; above
 *     about 1e3 some combination of parameters is unknown
 */
public record SoundingFit(
        SoilModel soil,
        List<FitParameter> parameters,
        List<FitParameter> products,
        List<ReadingFit> readings,
        double misfit,
        double criterion,
        double condition) {

    /**
     * Copies the lists.
     *
     * @param soil the ground
     * @param parameters resistivities from the surface down, then thicknesses
     * @param products transverse resistances, then longitudinal conductances
     * @param readings every reading of the sounding in its order, with the fit
     * @param misfit r.m.s. of measured over computed less 1 [-]
     * @param criterion information criterion
     * @param condition ratio of the greatest to the smallest singular value
     */
    public SoundingFit {
        parameters = List.copyOf(parameters);
        products = List.copyOf(products);
        readings = List.copyOf(readings);
    }

    /**
     * Number of layers of the fit.
     *
     * @return 1 … 4
     */
    public int layers() {
        return (parameters.size() + 1) / 2;
    }

    /**
     * Resistivity of a layer.
     *
     * @param layer layer from 0 at the surface
     * @return resistivity with its interval [Ω·m]
     */
    public FitParameter resistivity(int layer) {
        return parameters.get(Objects.checkIndex(layer, layers()));
    }

    /**
     * Thickness of a layer.
     *
     * @param layer layer from 0 at the surface, not the lowest
     * @return thickness with its interval [m]
     */
    public FitParameter thickness(int layer) {
        return parameters.get(layers() + Objects.checkIndex(layer, layers() - 1));
    }

    /**
     * What is known of a layer whose resistivity and thickness cannot be told apart.
     *
     * @param layer layer from 0 at the surface
     * @return the better known of transverse resistance and longitudinal conductance; empty where resistivity and
     *     thickness are both resolved, where neither product is, or for the lowest layer
     */
    public Optional<FitParameter> equivalent(int layer) {
        if (layer == layers() - 1
                || (resistivity(layer).resolved() && thickness(layer).resolved())) {
            return Optional.empty();
        }
        FitParameter transverse = products.get(layer);
        FitParameter longitudinal = products.get(layers() - 1 + layer);
        FitParameter better = transverse.high() / transverse.low() < longitudinal.high() / longitudinal.low()
                ? transverse
                : longitudinal;
        return better.resolved() ? Optional.of(better) : Optional.empty();
    }

    /**
     * The resistivity of a layer with what remains open when its thickness is held at the best value: for a layer that
     * is known by a product only, the interval of that product.
     *
     * @param layer layer from 0 at the surface
     * @return resistivity with its interval [Ω·m]
     */
    public FitParameter resistivityAtThickness(int layer) {
        FitParameter own = resistivity(layer);
        if (equivalent(layer).isEmpty()) {
            return own;
        }
        FitParameter product = equivalent(layer).get();
        double thickness = thickness(layer).value();
        boolean transverse = product.kind() == FitParameter.Kind.TRANSVERSE_RESISTANCE;
        return new FitParameter(
                own.kind(),
                layer,
                own.value(),
                transverse ? product.low() / thickness : thickness / product.high(),
                transverse ? product.high() / thickness : thickness / product.low(),
                false);
    }

    /**
     * The readings that were set aside.
     *
     * @return those that contradict the others, in their order
     */
    public List<ReadingFit> setAside() {
        return readings.stream().filter(ReadingFit::setAside).toList();
    }
}
