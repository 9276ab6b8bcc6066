package earthing.reference;

import earthing.electrode.wire.Bar;
import earthing.electrode.wire.BarShapes;
import earthing.electrode.wire.EarthElectrodes;
import earthing.electrode.wire.EnergisedElectrodes;
import earthing.electrode.wire.ResistanceMatrix;
import earthing.safety.FootDisc;
import earthing.safety.SurfaceLayerFactor;
import earthing.soil.Layer;
import earthing.soil.SoilModel;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Binds electrodes with an axis of revolution, whose fields a finite-element program solves too; see {@code decks/field}. */
final class AxialFieldModels {

    private static final String ROD = "rod";
    private static final String RING = "ring";
    private static final String PLATE = "plate";
    /** Sides of the polygon that stands for a ring: the circle to 0.1 %. */
    private static final int SIDES = 64;

    private AxialFieldModels() {}

    static void register(Map<String, ReferenceModel> models) {
        models.put("electrode.wire.axial", AxialFieldModels::electrodes);
        models.put("safety.foot-disc", AxialFieldModels::foot);
    }

    /**
     * A rod or butt from the surface down, a ring about it, or a round plate: those whose sizes are given, each on its own,
     * and for a rod with a ring their mutual resistance, both together and the share of the rod. Potentials of the surface
     * for 1 V on one electrode, the other at 0 V, at the given distances from the axis.
     */
    private static Map<String, Double> electrodes(Given given) {
        EarthElectrodes solved = EarthElectrodes.of(soil(given), bars(given));
        ResistanceMatrix matrix = solved.resistances();
        Map<String, Double> results = new LinkedHashMap<>();
        for (String name : solved.names()) {
            results.put(name, matrix.alone(name));
        }
        if (solved.names().size() == 2) {
            results.put("mutual", matrix.mutual(ROD, RING));
            EnergisedElectrodes together = solved.atPotentials(Map.of(ROD, 1.0, RING, 1.0));
            double current = together.currentOf(ROD) + together.currentOf(RING);
            results.put("together", 1 / current);
            results.put("share", together.currentOf(ROD) / current);
        }
        List<Double> distances = given.values("distances");
        for (String name : solved.names()) {
            Map<String, Double> volts = new HashMap<>();
            solved.names().forEach(other -> volts.put(other, other.equals(name) ? 1.0 : 0.0));
            EnergisedElectrodes field = solved.atPotentials(volts);
            for (int i = 0; i < distances.size(); i++) {
                results.put(name + "-surface-" + (i + 1), field.potential(distances.get(i), 0, 0));
            }
        }
        return results;
    }

    private static SoilModel soil(Given given) {
        List<Double> resistivities = given.values("resistivities");
        if (resistivities.size() == 1) {
            return SoilModel.uniform(resistivities.get(0));
        }
        List<Double> thicknesses = given.values("thicknesses");
        List<Layer> layers = new ArrayList<>();
        for (int i = 0; i < resistivities.size(); i++) {
            layers.add(new Layer(
                    resistivities.get(i), i < thicknesses.size() ? thicknesses.get(i) : Double.POSITIVE_INFINITY));
        }
        return SoilModel.of(layers);
    }

    private static List<Bar> bars(Given given) {
        List<Bar> bars = new ArrayList<>();
        double none = Double.NaN;
        double length = given.value("rod-length", none);
        if (length > 0) {
            List<Bar> rod = BarShapes.rod(ROD, 0, 0, 0, length, given.value("rod-radius"));
            double concrete = given.value("concrete-radius", none);
            bars.addAll(concrete > 0 ? List.of(rod.get(0).in(concrete, given.value("concrete"))) : rod);
        }
        double around = given.value("ring-radius", none);
        if (around > 0) {
            bars.addAll(BarShapes.ring(
                    RING, 0, 0, around, SIDES, given.value("ring-depth"), given.value("ring-wire-radius")));
        }
        double plate = given.value("plate-radius", none);
        if (plate > 0) {
            bars.addAll(BarShapes.roundPlate(PLATE, 0, 0, given.value("plate-depth"), plate, 0, 0));
        }
        return bars;
    }

    private static Map<String, Double> foot(Given given) {
        double covering = given.value("covering");
        double thickness = given.value("thickness");
        double reflection = SurfaceLayerFactor.reflection(given.value("soil"), covering);
        double bare = covering / (4 * SurfaceLayerFactor.FOOT_RADIUS);
        return Map.of("resistance", bare * FootDisc.factor(reflection, thickness));
    }
}
