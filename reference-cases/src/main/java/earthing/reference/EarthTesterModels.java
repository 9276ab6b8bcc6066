package earthing.reference;

import earthing.soil.SoilModel;
import earthing.soil.SurfacePotential;
import java.util.Map;
import org.apache.commons.math3.analysis.solvers.BrentSolver;

/** Binds earth-tester readings: the place of the potential probe follows from the surface potential of the ground. */
final class EarthTesterModels {

    private static final double ACCURACY = 1e-13;
    private static final int STEPS = 200;

    private EarthTesterModels() {}

    static void register(Map<String, ReferenceModel> models) {
        models.put("soil.fall-of-potential.probe", EarthTesterModels::probe);
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
