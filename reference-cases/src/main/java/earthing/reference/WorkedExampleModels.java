package earthing.reference;

import earthing.conductor.inductance.FilamentInductance;
import earthing.electrode.formula.Hemisphere;
import earthing.electrode.formula.RodDwight;
import earthing.quantity.Source;
import earthing.safety.BodyWeight;
import earthing.safety.Contact;
import earthing.safety.Footwear;
import earthing.safety.Ieee80Curve;
import earthing.safety.PermissibleVoltage;
import earthing.safety.Standing;
import earthing.safety.SurfaceCovering;
import earthing.safety.SurfaceLayerFactor;
import java.util.Map;
import java.util.Optional;

/** Binds worked examples of handbooks and standards that go through more than one room. */
final class WorkedExampleModels {

    private WorkedExampleModels() {}

    static void register(Map<String, ReferenceModel> models) {
        models.put("electrode.rod.hemisphere-ratio", WorkedExampleModels::hemisphereRatio);
        models.put("inductance.parallel-filaments", WorkedExampleModels::parallelFilaments);
        models.put("safety.ieee80.tolerable-70kg", WorkedExampleModels::tolerable);
    }

    /** Radius of the hemisphere of the rod's resistance, over the spacing. */
    private static Map<String, Double> hemisphereRatio(Given given) {
        double rod = RodDwight.resistance(1, given.value("length"), given.value("diameter") / 2)
                .get();
        double hemisphere = Hemisphere.resistance(1, 1) / rod;
        return Map.of("ratio", hemisphere / given.value("spacing"));
    }

    /** The pair is only named; a filament with itself lies at the distance of its radius. */
    private static Map<String, Double> parallelFilaments(Given given) {
        if (given.word("pair").isBlank()) {
            throw new IllegalArgumentException("a pair of filaments needs a name");
        }
        return Map.of(
                "inductance",
                FilamentInductance.parallel(
                        given.value("a-from"),
                        given.value("a-to"),
                        given.value("b-from"),
                        given.value("b-to"),
                        given.value("distance")));
    }

    private static Map<String, Double> tolerable(Given given) {
        Ieee80Curve curve = new Ieee80Curve(BodyWeight.KG_70, Ieee80Curve.LayerRule.SHORT_FORMULA, Optional.empty());
        Standing standing = new Standing(
                given.value("resistivity"),
                Optional.of(new SurfaceCovering(
                        "crushed rock",
                        given.value("surface-resistivity"),
                        given.value("surface-thickness"),
                        Source.standard("IEEE Std 80-2000", "annex B", Source.Status.FROM_MEMORY))),
                Footwear.NONE);
        double time = given.value("time");
        return Map.of(
                "reflection",
                SurfaceLayerFactor.reflection(given.value("resistivity"), given.value("surface-resistivity")),
                "surface-factor",
                curve.layerFactor(standing),
                "touch",
                voltage(curve, Contact.HAND_TO_FEET, time, standing),
                "step",
                voltage(curve, Contact.FOOT_TO_FOOT, time, standing));
    }

    private static double voltage(Ieee80Curve curve, Contact contact, double time, Standing standing) {
        if (curve.at(contact, time, standing) instanceof PermissibleVoltage voltage) {
            return voltage.value();
        }
        throw new IllegalArgumentException("the curve has no value at " + time + " s");
    }
}
