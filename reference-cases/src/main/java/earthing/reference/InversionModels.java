package earthing.reference;

import earthing.soil.FitParameter;
import earthing.soil.Layer;
import earthing.soil.Reading;
import earthing.soil.ReadingFit;
import earthing.soil.SoilModel;
import earthing.soil.Sounding;
import earthing.soil.SoundingFit;
import earthing.soil.SoundingInversion;
import earthing.soil.Wenner;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Binds the model names that begin with {@code soil.inversion.}. */
final class InversionModels {

    private InversionModels() {}

    static void register(Map<String, ReferenceModel> models) {
        models.put("soil.inversion.published-model", InversionModels::publishedModel);
        models.put("soil.inversion.published-misfit", given -> {
            SoilModel printed = printed(given);
            double worst = 0;
            for (Reading reading : sounding(given).readings()) {
                double relative = reading.array().apparentResistivity(printed) / reading.apparentResistivity() - 1;
                worst = Math.max(worst, Math.abs(relative));
            }
            return Map.of("worst-reading", worst);
        });
        models.put("soil.inversion.two-layer", given -> {
            SoundingFit fit = SoundingInversion.of(sounding(given), 2).best();
            return Map.of(
                    "upper", fit.resistivity(0).value(),
                    "lower", fit.resistivity(1).value(),
                    "thickness", fit.thickness(0).value(),
                    "misfit", fit.misfit());
        });
        models.put("soil.inversion.middle-layer", InversionModels::middleLayer);
    }

    private static Map<String, Double> publishedModel(Given given) {
        SoilModel printed = printed(given);
        SoundingFit fit = SoundingInversion.of(sounding(given)).best();
        double squares = 0;
        for (ReadingFit one : fit.readings()) {
            double computed = one.reading().array().apparentResistivity(printed);
            squares += Math.pow(one.reading().apparentResistivity() / computed - 1, 2);
        }
        double misfit = Math.sqrt(squares / fit.readings().size());
        int inside = 0;
        for (int i = 0; i < Math.min(fit.layers(), printed.layerCount()); i++) {
            inside += holds(fit.resistivity(i), printed.resistivity(i)) ? 1 : 0;
            if (i < fit.layers() - 1) {
                inside += holds(fit.thickness(i), printed.thickness(i)) ? 1 : 0;
            }
        }
        return Map.of(
                "layers", (double) fit.layers(),
                "inside", (double) inside,
                "misfit-is-not-worse", fit.misfit() <= misfit ? 1.0 : 0.0);
    }

    private static Map<String, Double> middleLayer(Given given) {
        SoundingFit fit = SoundingInversion.of(sounding(given)).best();
        Map<String, Double> results = new LinkedHashMap<>();
        results.put("layers", (double) fit.layers());
        results.put(
                "resolved", fit.resistivity(1).resolved() || fit.thickness(1).resolved() ? 1.0 : 0.0);
        results.put("first", fit.resistivity(0).value());
        results.put("first-thickness", fit.thickness(0).value());
        results.put("last", fit.resistivity(fit.layers() - 1).value());
        fit.equivalent(1)
                .ifPresent(product -> results.put(
                        product.kind() == FitParameter.Kind.TRANSVERSE_RESISTANCE
                                ? "transverse-resistance"
                                : "conductance",
                        product.value()));
        return results;
    }

    private static boolean holds(FitParameter parameter, double value) {
        return parameter.low() <= value && value <= parameter.high();
    }

    private static Sounding sounding(Given given) {
        List<Double> spacings = given.values("spacings");
        List<Double> apparent = given.values("apparent-resistivities");
        List<Reading> readings = new ArrayList<>();
        for (int i = 0; i < spacings.size(); i++) {
            readings.add(new Reading(Wenner.of(spacings.get(i)), apparent.get(i)));
        }
        return new Sounding("", readings);
    }

    private static SoilModel printed(Given given) {
        List<Double> resistivities = given.values("resistivities");
        List<Double> thicknesses = given.values("thicknesses");
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
