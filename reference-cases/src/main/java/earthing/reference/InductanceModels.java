package earthing.reference;

import earthing.conductor.inductance.FilamentInductance;
import earthing.conductor.inductance.InductanceMatrix;
import earthing.conductor.inductance.Point;
import earthing.conductor.inductance.RoundConductor;
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
            double omega = 2 * Math.PI * given.value("frequency");
            double radius = given.value("radius");
            double resistivity = given.value("resistivity");
            Complex z = SkinEffect.solid(omega, radius, resistivity, 1);
            return Map.of(
                    "resistance",
                    z.getReal(),
                    "reactance",
                    z.getImaginary(),
                    "ratio",
                    z.getReal() * Math.PI * radius * radius / resistivity,
                    "inductance",
                    z.getImaginary() / omega);
        });
        models.put("inductance.skin-increase", given -> {
            double radius = 1e-3;
            double resistivity = 1.7241e-8;
            double direct = resistivity / (Math.PI * radius * radius);
            double x = given.value("xs");
            double frequency = x * x * direct / (8 * Math.PI * 1e-7);
            Complex z = SkinEffect.solid(2 * Math.PI * frequency, radius, resistivity, 1);
            return Map.of("increase", z.getReal() / direct - 1);
        });
        models.put("inductance.rectangle", given -> {
            double width = given.value("width");
            double height = given.value("height");
            double radius = given.value("radius");
            return Map.of("inductance", loop(height, radius, width) + loop(width, radius, height));
        });
        models.put("inductance.pair", given -> {
            double length = given.value("length");
            double radius = given.value("radius");
            double distance = given.value("distance");
            double own = SelfInductance.filamentAtRadius(length, radius);
            double mutual = FilamentInductance.sideBySide(length, distance);
            return Map.of("single", own, "pair", (own + mutual) / 2, "loop", 2 * (own - mutual));
        });
        models.put("inductance.above-plane", given -> {
            double height = given.value("height");
            double radius = given.value("radius");
            double image = FilamentInductance.parallel(0, height, -height, 0, 0);
            RoundConductor lead = RoundConductor.between(new Point(0, 0, 0), new Point(0, 0, height), radius);
            return Map.of(
                    "inductance",
                    SelfInductance.tube(height, radius) + image,
                    "image",
                    image,
                    "matrix",
                    InductanceMatrix.mutual(lead, lead, InductanceMatrix.Ground.PERFECT_IMAGE));
        });
        models.put("inductance.two-wire-line", given -> {
            double length = 1000;
            double radius = 1e-3;
            double distance = given.value("distance-over-radius") * radius;
            double own = SelfInductance.tube(length, radius);
            return Map.of("inductance", 2 * (own - FilamentInductance.sideBySide(length, distance)) / length);
        });
    }

    /** Two opposite sides of a rectangle, whose currents run against each other. */
    private static double loop(double length, double radius, double distance) {
        return 2 * (SelfInductance.tube(length, radius) - FilamentInductance.sideBySide(length, distance));
    }
}
