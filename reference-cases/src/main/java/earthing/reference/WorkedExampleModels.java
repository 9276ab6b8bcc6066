package earthing.reference;

import earthing.quantity.Source;
import earthing.safety.BodyWeight;
import earthing.safety.Contact;
import earthing.safety.Footwear;
import earthing.safety.Ieee80Curve;
import earthing.safety.PermissibleVoltage;
import earthing.safety.Standing;
import earthing.safety.SurfaceCovering;
import java.util.Map;
import java.util.Optional;

/** Binds worked examples of handbooks and standards that go through more than one room. */
final class WorkedExampleModels {

    private WorkedExampleModels() {}

    static void register(Map<String, ReferenceModel> models) {
        models.put("safety.ieee80.tolerable-70kg", WorkedExampleModels::tolerable);
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
                "surface-factor", curve.layerFactor(standing),
                "touch", voltage(curve, Contact.HAND_TO_FEET, time, standing),
                "step", voltage(curve, Contact.FOOT_TO_FOOT, time, standing));
    }

    private static double voltage(Ieee80Curve curve, Contact contact, double time, Standing standing) {
        if (curve.at(contact, time, standing) instanceof PermissibleVoltage voltage) {
            return voltage.value();
        }
        throw new IllegalArgumentException("the curve has no value at " + time + " s");
    }
}
