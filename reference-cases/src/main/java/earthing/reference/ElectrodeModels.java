package earthing.reference;

import earthing.electrode.formula.ConcreteEncasedRod;
import earthing.electrode.formula.Disc;
import earthing.electrode.formula.GridIeee80;
import earthing.electrode.formula.GridLaurent;
import earthing.electrode.formula.GridSchwarz;
import earthing.electrode.formula.GridSverak;
import earthing.electrode.formula.Hemisphere;
import earthing.electrode.formula.HorizontalWireDwight;
import earthing.electrode.formula.HorizontalWireSunde;
import earthing.electrode.formula.PipeIs3043;
import earthing.electrode.formula.RingDwight;
import earthing.electrode.formula.RodDwight;
import earthing.electrode.formula.RodSurfacePotential;
import earthing.electrode.formula.RodTwoLayer;
import earthing.electrode.formula.RoundPlateDwight;
import earthing.electrode.formula.RulesOfThumb;
import earthing.electrode.formula.Sphere;
import earthing.electrode.formula.StarDwight;
import java.util.Arrays;
import java.util.Map;

/** Binds the model names that begin with {@code electrode.} to the rooms {@code earthing.electrode}. */
final class ElectrodeModels {

    private ElectrodeModels() {}

    static void register(Map<String, ReferenceModel> models) {
        rods(models);
        horizontal(models);
        grids(models);
        bodies(models);
        RodGroupModels.register(models);
        WireModels.register(models);
        AxialFieldModels.register(models);
    }

    private static void rods(Map<String, ReferenceModel> models) {
        models.put(
                "electrode.rod.step-ratio",
                given -> Map.of(
                        "ratio",
                        RodSurfacePotential.stepRatio(
                                given.value("length"), given.value("diameter") / 2, given.value("distance"))));
        models.put("electrode.rod.dwight", given -> Map.of("resistance", rod(given)));
        models.put("electrode.rod.in-backfill", ElectrodeModels::inBackfill);
        models.put(
                "electrode.pipe.is3043",
                given -> Map.of(
                        "resistance",
                        PipeIs3043.resistance(
                                        given.value("resistivity"), given.value("length"), given.value("diameter"))
                                .get()));
        models.put(
                "electrode.rod.concrete",
                given -> Map.of(
                        "resistance",
                        ConcreteEncasedRod.resistance(
                                        given.value("soil"),
                                        given.value("concrete"),
                                        given.value("length"),
                                        given.value("diameter"),
                                        given.value("concrete-diameter"))
                                .get()));
        models.put("electrode.rod.resistivity", given -> {
            double ofOne = RodDwight.resistance(1, given.value("length"), given.value("diameter") / 2)
                    .get();
            return Map.of("resistivity", given.value("resistance") / ofOne);
        });
        models.put(
                "electrode.rule-of-thumb.rod",
                given -> Map.of(
                        "resistance",
                        RulesOfThumb.rod(given.value("resistivity"), given.value("length"))
                                .get()));
        models.put("electrode.rod.rule-of-thumb", given -> {
            double length = given.value("length");
            // The rule refuses lengths at which it is too low; its value at one metre is scaled to show by how much.
            double rule = RulesOfThumb.rod(1, 1).get() / length;
            return Map.of(
                    "rule-ratio",
                    rule
                            / RodDwight.resistance(1, length, given.value("diameter") / 2)
                                    .get());
        });
        models.put(
                "electrode.rod.upper-layer",
                given -> Map.of(
                        "resistance",
                        RodTwoLayer.withinUpper(
                                        given.value("upper"),
                                        given.value("lower"),
                                        given.value("thickness"),
                                        given.value("length"),
                                        given.value("radius"))
                                .get()));
        models.put(
                "electrode.rod.two-layer-apparent",
                given -> Map.of(
                        "apparent-resistivity",
                        RodTwoLayer.apparentResistivity(
                                        given.value("upper"),
                                        given.value("lower"),
                                        given.value("thickness"),
                                        given.value("length"))
                                .get()));
    }

    private static double rod(Given given) {
        return RodDwight.resistance(given.value("resistivity"), given.value("length"), given.value("diameter") / 2)
                .get();
    }

    private static Map<String, Double> inBackfill(Given given) {
        double columnLength = given.value("column-length");
        double columnRadius = given.value("column-diameter") / 2;
        double backfill = given.value("backfill");
        double column = RodDwight.resistance(given.value("soil"), columnLength, columnRadius)
                .get();
        double rod = RodDwight.resistance(backfill, given.value("rod-length"), given.value("rod-diameter") / 2)
                .get();
        double inner =
                RodDwight.resistance(backfill, columnLength, columnRadius).get();
        return Map.of("column", column, "rod", rod, "backfill-column", inner, "total", column + rod - inner);
    }

    private static void horizontal(Map<String, ReferenceModel> models) {
        models.put(
                "electrode.horizontal.dwight",
                given -> Map.of(
                        "resistance",
                        HorizontalWireDwight.resistance(
                                        given.value("resistivity"),
                                        given.value("length"),
                                        given.value("radius"),
                                        given.value("depth"))
                                .get()));
        models.put(
                "electrode.horizontal.sunde",
                given -> Map.of(
                        "resistance",
                        HorizontalWireSunde.resistance(
                                        given.value("resistivity"),
                                        given.value("length"),
                                        given.value("radius"),
                                        given.value("depth"))
                                .get()));
        models.put("electrode.horizontal.rule-of-thumb", given -> {
            double length = given.value("length");
            double rule = RulesOfThumb.strip(1, 1).get() / length;
            double formula = HorizontalWireSunde.resistance(1, length, given.value("radius"), given.value("depth"))
                    .get();
            return Map.of("rule-ratio", rule / formula);
        });
        models.put(
                "electrode.ring.dwight",
                given -> Map.of(
                        "resistance",
                        RingDwight.resistance(
                                        given.value("resistivity"),
                                        given.value("ring-diameter"),
                                        given.value("radius"),
                                        given.value("depth"))
                                .get()));
        models.put(
                "electrode.rule-of-thumb.strip",
                given -> Map.of(
                        "resistance",
                        RulesOfThumb.strip(given.value("resistivity"), given.value("length"))
                                .get()));
        models.put("electrode.rule-of-thumb.ring-and-foundation", given -> {
            double resistivity = given.value("resistivity");
            return Map.of(
                    "ring", RulesOfThumb.ring(resistivity, given.value("area")).get(),
                    "foundation",
                            RulesOfThumb.foundation(resistivity, given.value("volume"))
                                    .get());
        });
        models.put("electrode.ring.rule-of-thumb", given -> {
            double diameter = given.value("diameter");
            double ofOneMetre = RulesOfThumb.ring(1, Math.PI / 4).get();
            double formula = RingDwight.resistance(1, diameter, given.value("radius"), given.value("depth"))
                    .get();
            return Map.of("rule-ratio", ofOneMetre / diameter / formula);
        });
        models.put("electrode.star.polynomial", given -> {
            int arms = given.count("arms");
            StarDwight.Arms shape = Arrays.stream(StarDwight.Arms.values())
                    .filter(each -> each.count() == arms)
                    .findFirst()
                    .orElseThrow();
            return Map.of("polynomial", shape.polynomial(given.value("ratio")));
        });
    }

    private static void grids(Map<String, ReferenceModel> models) {
        models.put(
                "electrode.grid.sverak",
                given -> Map.of(
                        "resistance",
                        GridSverak.resistance(
                                        given.value("resistivity"),
                                        given.value("area"),
                                        given.value("total-length"),
                                        given.value("depth"))
                                .get()));
        models.put("electrode.grid.mesh-step", ElectrodeModels::meshAndStep);
        models.put("electrode.grid.schwarz", given -> {
            GridSchwarz grid = new GridSchwarz(
                    given.value("grid-resistivity"),
                    given.value("rod-resistivity"),
                    given.value("grid-length"),
                    given.value("area"),
                    given.value("diameter"),
                    given.value("depth"),
                    given.count("rods"),
                    given.value("rod-length"),
                    given.value("rod-diameter"),
                    given.value("k1"),
                    given.value("k2"));
            return Map.of(
                    "grid", grid.grid(),
                    "rod-bed", grid.rodBed(),
                    "mutual", grid.mutual(),
                    "resistance", grid.joined().get());
        });
    }

    private static Map<String, Double> meshAndStep(Given given) {
        double rodLength = given.value("rod-length");
        GridIeee80 grid = new GridIeee80(
                given.value("spacing"),
                given.value("depth"),
                given.value("diameter"),
                given.value("grid-length"),
                given.value("perimeter"),
                given.value("area"),
                given.value("length-x"),
                given.value("length-y"),
                rodLength,
                given.value("total-rod-length"),
                rodLength > 0);
        double resistivity = given.value("resistivity");
        double current = given.value("current");
        return Map.of(
                "n", grid.effectiveNumber(),
                "Ki", grid.irregularity(),
                "Kii", grid.cornerWeight(),
                "Km", grid.meshFactor(),
                "Ks", grid.stepFactor(),
                "mesh-voltage", grid.meshVoltage(resistivity, current).get(),
                "step-voltage", grid.stepVoltage(resistivity, current).get());
    }

    private static void bodies(Map<String, ReferenceModel> models) {
        models.put("electrode.plate.square", given -> {
            double side = given.value("side");
            double resistivity = given.value("resistivity");
            return Map.of(
                    "equal-area-disc", GridLaurent.plate(resistivity, side * side),
                    "square", Disc.squareOnSurface(resistivity, side));
        });
        models.put("electrode.plate.dwight", given -> {
            double resistivity = given.value("resistivity");
            double radius = given.value("radius");
            double depth = given.value("depth");
            return Map.of(
                    "flat",
                    RoundPlateDwight.resistance(RoundPlateDwight.Lie.HORIZONTAL, resistivity, radius, depth)
                            .get(),
                    "upright",
                    RoundPlateDwight.resistance(RoundPlateDwight.Lie.VERTICAL, resistivity, radius, depth)
                            .get());
        });
        models.put(
                "electrode.sphere.two-deep",
                given -> Map.of(
                        "resistance",
                        Sphere.betweenTwoDeep(
                                        given.value("resistivity"), given.value("radius"), given.value("distance"))
                                .get()));
        models.put(
                "electrode.sphere.touching",
                given -> Map.of(
                        "resistance", Sphere.touchingSurface(given.value("resistivity"), given.value("radius"))));
        models.put(
                "electrode.disc",
                given -> Map.of(
                        "surface", Disc.onSurface(given.value("resistivity"), given.value("radius")),
                        "deep", Disc.deep(given.value("resistivity"), given.value("radius"))));
        models.put("electrode.hemisphere.two", given -> {
            double resistivity = given.value("resistivity");
            double distance = given.value("distance");
            return Map.of(
                    "resistance",
                    Hemisphere.twoInParallel(resistivity, given.value("radius"), distance)
                            .get(),
                    "mutual",
                    Hemisphere.resistance(resistivity, distance));
        });
    }
}
