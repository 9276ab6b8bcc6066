package earthing.reference;

import earthing.electrode.wire.Bar;
import earthing.electrode.wire.BarShapes;
import earthing.electrode.wire.Discretisation;
import earthing.electrode.wire.EarthElectrodes;
import earthing.electrode.wire.EnergisedElectrodes;
import earthing.electrode.wire.ResistanceMatrix;
import earthing.soil.SoilModel;
import earthing.soil.Wenner;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** Binds the numeric solution of buried bars. */
final class WireModels {

    private static final String NAME = "electrode";

    private WireModels() {}

    static void register(Map<String, ReferenceModel> models) {
        models.put("electrode.wire.rod", given -> {
            SoilModel soil = SoilModel.uniform(given.value("resistivity"));
            return Map.of("resistance", alone(soil, rod(given.value("length"), given.value("radius"))));
        });
        models.put("electrode.wire.rod-two-layer", given -> {
            SoilModel soil = SoilModel.twoLayer(given.value("upper"), given.value("thickness"), given.value("lower"));
            return Map.of("resistance", alone(soil, rod(given.value("length"), given.value("radius"))));
        });
        models.put("electrode.wire.season", given -> {
            SoilModel soil = SoilModel.uniform(given.value("resistivity"));
            List<Bar> rod = rod(given.value("length"), given.value("radius"));
            SoilModel dry = soil.seasonal(given.value("top-depth"), given.value("factor"));
            return Map.of("ratio", alone(dry, rod) / alone(soil, rod));
        });
        models.put("electrode.wire.rods-in-line", given -> {
            SoilModel soil = SoilModel.uniform(100);
            int rods = given.count("rods");
            double length = given.value("length");
            double radius = given.value("diameter") / 2;
            double one = alone(soil, rod(length, radius));
            double group =
                    alone(soil, BarShapes.rodsInLine(NAME, 0, 0, rods, given.value("spacing"), 0, length, radius));
            return Map.of("factor", group * rods / one, "utilisation", one / (group * rods));
        });
        models.put("electrode.wire.rods-in-ring", given -> {
            SoilModel soil = SoilModel.uniform(100);
            int rods = given.count("rods");
            double length = given.value("length");
            double radius = given.value("diameter") / 2;
            double ring = given.value("spacing") / (2 * Math.sin(Math.PI / rods));
            double group = alone(soil, BarShapes.rodsInRing(NAME, 0, 0, rods, ring, 0, length, radius));
            return Map.of("utilisation", alone(soil, rod(length, radius)) / (group * rods));
        });
        models.put("electrode.wire.driven-probes", WireModels::drivenProbes);
        models.put("electrode.wire.rod-in-concrete", given -> {
            SoilModel soil = SoilModel.uniform(given.value("soil"));
            Bar rod = rod(given.value("length"), given.value("diameter") / 2).get(0);
            Bar encased = rod.in(given.value("concrete-diameter") / 2, given.value("concrete"));
            return Map.of("resistance", alone(soil, List.of(encased)));
        });
        models.put("electrode.wire.deep-square-plate", given -> {
            double side = given.value("side");
            double resistance = alone(
                    SoilModel.uniform(given.value("resistivity")),
                    BarShapes.plate(NAME, 0, 0, given.value("depth"), side, side, false));
            return Map.of("capacitance", given.value("resistivity") / (4 * Math.PI * side * resistance));
        });
        models.put("electrode.wire.square-grid", WireModels::squareGrid);
    }

    /** A Wenner reading with four rods as probes, and what three formulas make of it. */
    private static Map<String, Double> drivenProbes(Given given) {
        double spacing = given.value("spacing");
        double driven = given.value("driven");
        double radius = given.value("radius");
        List<Bar> bars = new ArrayList<>();
        for (int i = 0; i < 4; i++) {
            bars.addAll(BarShapes.rod("probe " + i, i * spacing, 0, 0, driven, radius));
        }
        ResistanceMatrix r = EarthElectrodes.of(SoilModel.uniform(given.value("resistivity")), bars)
                .resistances();
        double reading = r.get(1, 0) - r.get(1, 3) - r.get(2, 0) + r.get(2, 3);
        return Map.of(
                "simple", Wenner.of(spacing).geometricFactor() * reading,
                "full-depth", new Wenner(spacing, driven).geometricFactor() * reading,
                "two-thirds", Wenner.driven(spacing, driven).geometricFactor() * reading);
    }

    private static List<Bar> rod(double length, double radius) {
        return BarShapes.rod(NAME, 0, 0, 0, length, radius);
    }

    private static double alone(SoilModel soil, List<Bar> bars) {
        return EarthElectrodes.of(soil, bars).resistances().alone(NAME);
    }

    /** Greatest touch voltage in a corner mesh along its diagonal, with two elements a mesh side. */
    private static Map<String, Double> squareGrid(Given given) {
        double side = given.value("side");
        int meshes = given.count("meshes");
        List<Bar> mat = BarShapes.mat(
                NAME, 0, 0, side, side, meshes, meshes, given.value("depth"), given.value("diameter") / 2);
        EarthElectrodes grid = EarthElectrodes.of(
                SoilModel.uniform(given.value("resistivity")), mat, Discretisation.STANDARD.withPerBar(2));
        EnergisedElectrodes field = grid.carrying(Map.of(NAME, given.value("current")));
        double worst = 0;
        for (int i = 1; i < 40; i++) {
            double place = side / meshes * i / 40;
            worst = Math.max(worst, field.potentialOf(NAME) - field.potential(place, place, 0));
        }
        return Map.of("resistance", grid.resistances().alone(NAME), "corner-touch", worst);
    }
}
