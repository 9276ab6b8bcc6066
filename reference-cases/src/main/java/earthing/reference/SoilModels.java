package earthing.reference;

import earthing.soil.ElectrodeArray;
import earthing.soil.Layer;
import earthing.soil.PointSource;
import earthing.soil.Schlumberger;
import earthing.soil.SoilModel;
import earthing.soil.Wenner;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** Binds the model names that begin with {@code soil.} to the room {@code earthing.soil}. */
final class SoilModels {

    private SoilModels() {}

    static void register(Map<String, ReferenceModel> models) {
        models.put("soil.four-probes.resistance", given -> {
            ElectrodeArray array = new Schlumberger(given.value("outer") / 2, given.value("inner") / 2);
            return Map.of("resistance", array.resistance(layers(given)));
        });
        models.put("soil.schlumberger", given -> {
            ElectrodeArray array = new Schlumberger(given.value("half-current"), given.value("half-potential"));
            return Map.of("apparent-resistivity", array.apparentResistivity(layers(given)));
        });
        models.put(
                "soil.wenner",
                given -> Map.of(
                        "apparent-resistivity",
                        Wenner.of(given.value("spacing")).apparentResistivity(layers(given))));
        models.put("soil.wenner.two-layer-ratio", given -> {
            SoilModel soil = SoilModel.twoLayer(1, 1, ratio(given.value("contrast")));
            return Map.of("ratio", Wenner.of(given.value("spacing-ratio")).apparentResistivity(soil));
        });
        models.put("soil.insulating-base.asymptote", SoilModels::asymptote);
        models.put("soil.point-source", SoilModels::pointSource);
        models.put(
                "soil.wenner.reading",
                given -> Map.of(
                        "apparent-resistivity",
                        Wenner.of(given.value("spacing")).geometricFactor() * given.value("resistance")));
        models.put("soil.schlumberger.reading", given -> {
            double factor =
                    new Schlumberger(given.value("half-current"), given.value("half-potential")).geometricFactor();
            return Map.of(
                    "factor", factor, "apparent-resistivity", factor * given.value("voltage") / given.value("current"));
        });
        models.put(
                "soil.wenner.probe-depth",
                given -> Map.of("ratio", new Wenner(1, given.value("depth-ratio")).geometricFactor() / (2 * Math.PI)));
    }

    private static double ratio(double contrast) {
        return contrast == 1 ? Double.POSITIVE_INFINITY : (1 + contrast) / (1 - contrast);
    }

    private static Map<String, Double> asymptote(Given given) {
        SoilModel soil = SoilModel.twoLayer(1, 1, Double.POSITIVE_INFINITY);
        double ratio = given.value("spacing-ratio");
        return Map.of(
                "wenner", Wenner.of(ratio).apparentResistivity(soil) / ratio,
                "schlumberger", new Schlumberger(ratio, ratio / 1e4).apparentResistivity(soil) / ratio);
    }

    private static Map<String, Double> pointSource(Given given) {
        SoilModel soil = SoilModel.twoLayer(given.value("upper"), given.value("thickness"), given.value("lower"));
        return Map.of(
                "potential",
                PointSource.of(soil)
                        .potential(given.value("distance"), given.value("source-depth"), given.value("depth")));
    }

    private static SoilModel layers(Given given) {
        List<Double> resistivities = new ArrayList<>(given.values("resistivities"));
        if (given.has("insulating-base") && given.flag("insulating-base")) {
            resistivities.add(Double.POSITIVE_INFINITY);
        }
        List<Double> thicknesses = given.has("thicknesses") ? given.values("thicknesses") : List.of();
        List<Layer> layers = new ArrayList<>();
        for (int i = 0; i < resistivities.size(); i++) {
            layers.add(
                    i < thicknesses.size()
                            ? new Layer(resistivities.get(i), thicknesses.get(i))
                            : Layer.below(resistivities.get(i)));
        }
        return SoilModel.of(layers);
    }
}
