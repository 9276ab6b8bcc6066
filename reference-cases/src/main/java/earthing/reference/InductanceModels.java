package earthing.reference;

import earthing.conductor.inductance.FilamentInductance;
import earthing.conductor.inductance.SelfInductance;
import earthing.conductor.inductance.SkinEffect;
import java.util.Map;
import org.apache.commons.math3.complex.Complex;

/** Binds the model names that begin with {@code inductance.} to the room {@code earthing.conductor.inductance}. */
final class InductanceModels {

    private InductanceModels() {}

    static void register(Map<String, ReferenceModel> models) {
        models.put("inductance.round-wire", given -> {
            double length = given.value("length");
            double radius = given.value("radius");
            return Map.of(
                    "solid", SelfInductance.solid(length, radius),
                    "tube", SelfInductance.tube(length, radius),
                    "rosa-solid", SelfInductance.rosaSolid(length, radius),
                    "rosa-skin", SelfInductance.rosaSkin(length, radius),
                    "filament", SelfInductance.filamentAtRadius(length, radius));
        });
        models.put(
                "inductance.filaments",
                given -> Map.of(
                        "inductance",
                        FilamentInductance.parallel(
                                given.value("a-from"),
                                given.value("a-to"),
                                given.value("b-from"),
                                given.value("b-to"),
                                given.value("distance"))));
        models.put("inductance.tape", given -> {
            double length = given.value("length");
            double width = given.value("width");
            return Map.of(
                    "thin", SelfInductance.thinStrip(length, width),
                    "handbook", SelfInductance.strip(length, width, 0));
        });
        models.put("inductance.internal", given -> {
            Complex z = SkinEffect.solid(
                    2 * Math.PI * given.value("frequency"), given.value("radius"), given.value("resistivity"), 1);
            return Map.of("resistance", z.getReal(), "reactance", z.getImaginary());
        });
    }
}
