package earthing.reference;

import earthing.electrode.tester.AttachedRodTechnique;
import earthing.electrode.tester.ClampOnLoop;
import earthing.electrode.tester.FallOfPotential;
import earthing.electrode.tester.ProbeLine;
import earthing.electrode.tester.SimplifiedTest;
import earthing.electrode.tester.SlopeMethod;
import earthing.electrode.tester.ThreePointMethod;
import earthing.electrode.wire.BarShapes;
import earthing.soil.PointSource;
import earthing.soil.SoilModel;
import earthing.soil.SurfacePotential;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import org.apache.commons.math3.analysis.solvers.BrentSolver;

/** Binds earth-tester readings: the place of the potential probe follows from the surface potential of the ground. */
final class EarthTesterModels {

    private static final double ACCURACY = 1e-13;
    private static final int STEPS = 200;

    private EarthTesterModels() {}

    static void register(Map<String, ReferenceModel> models) {
        models.put("soil.fall-of-potential.probe", EarthTesterModels::probe);
        models.put("electrode.fall-of-potential", EarthTesterModels::rod);
        models.put("soil.fall-of-potential.slope", given -> Map.of("place", SlopeMethod.place(given.value("slope"))));
        models.put("soil.fall-of-potential.simplified", given -> {
            List<Double> readings = given.values("readings");
            SimplifiedTest test = SimplifiedTest.of(readings.get(0), readings.get(1), readings.get(2));
            return Map.of("resistance", test.resistance(), "deviation", test.deviation(), "accuracy", test.accuracy());
        });
        models.put("soil.clamp-on", EarthTesterModels::clamp);
        models.put(
                "soil.attached-rod",
                given -> Map.of(
                        "resistance", AttachedRodTechnique.resistance(given.value("voltage"), given.value("current"))));
        models.put("soil.three-point", given -> {
            List<Double> readings = given.values("readings");
            ThreePointMethod found = ThreePointMethod.of(readings.get(0), readings.get(1), readings.get(2));
            return Map.of("a", found.first(), "b", found.second(), "c", found.third());
        });
    }

    /** A rod tested through the thin-wire solution, with the current probe as a second electrode. */
    private static Map<String, Double> rod(Given given) {
        double distance = given.value("distance");
        FallOfPotential test = FallOfPotential.of(
                PointSource.of(
                        SoilModel.twoLayer(given.value("upper"), given.value("thickness"), given.value("lower"))),
                BarShapes.rod("rod", 0, 0, 0, given.value("length"), given.value("radius")),
                "rod",
                new ProbeLine(0, 0, 0, distance));
        return Map.of(
                "place",
                test.rightPlace().orElseThrow() / distance,
                "shortfall",
                test.resistance() - test.reading(given.value("probe", distance / 2)));
    }

    private static Map<String, Double> clamp(Given given) {
        List<Double> others =
                new ArrayList<>(Collections.nCopies(given.count("others"), given.value("resistance-of-others")));
        double bad = given.value("bad", Double.NaN);
        if (!Double.isNaN(bad)) {
            others.add(bad);
        }
        return Map.of("reading", ClampOnLoop.reading(given.value("electrode"), others));
    }

    /** Electrode and current probe as points at distance 1: true resistance where V(1 − p) = V(1) + V(p). */
    private static Map<String, Double> probe(Given given) {
        double contrast = given.value("contrast");
        double thickness = given.value("thickness-ratio");
        SoilModel soil = contrast == 0
                ? SoilModel.uniform(100)
                : SoilModel.twoLayer(100, thickness, 100 * (1 + contrast) / (1 - contrast));
        SurfacePotential potential = SurfacePotential.of(soil);
        double place = new BrentSolver(ACCURACY)
                .solve(STEPS, p -> potential.at(1 - p) - potential.at(1) - potential.at(p), 0.05, 0.98);
        return Map.of("place", place, "probe", place * given.value("distance", 1));
    }
}
