package earthing.reference;

import earthing.electrode.formula.RodDwight;
import earthing.electrode.formula.RodsBs7430;
import earthing.electrode.formula.RodsEqualCurrents;
import earthing.electrode.formula.RodsFilledSquare;
import earthing.electrode.formula.RodsIeee142;
import earthing.electrode.formula.TwoRodsDwight;
import java.util.HashMap;
import java.util.Map;

/** Binds the closed forms of several rods. */
final class RodGroupModels {

    private RodGroupModels() {}

    static void register(Map<String, ReferenceModel> models) {
        models.put("electrode.rods.bs7430", RodGroupModels::bs7430);
        models.put(
                "electrode.rods.lambda-square",
                given -> Map.of("lambda", RodsBs7430.lambdaHollowSquare(given.count("rods-a-side"))));
        models.put(
                "electrode.rods.ieee142",
                given ->
                        Map.of("factor", RodsIeee142.factor(given.count("rods")).get()));
        models.put(
                "electrode.rods.equal-currents",
                given -> Map.of(
                        "resistance",
                        RodsEqualCurrents.resistance(
                                        given.value("resistivity"),
                                        given.value("single"),
                                        given.count("rods"),
                                        given.value("spacing"))
                                .get()));
        models.put(
                "electrode.rods.two-dwight",
                given -> Map.of(
                        "resistance",
                        TwoRodsDwight.resistance(
                                        given.value("resistivity"),
                                        given.value("length"),
                                        given.value("radius"),
                                        given.value("spacing"))
                                .get()));
        models.put("electrode.rods.square-group", RodGroupModels::filledSquare);
    }

    private static Map<String, Double> bs7430(Given given) {
        double resistivity = given.value("resistivity");
        double spacing = given.value("spacing");
        double single = RodDwight.resistance(resistivity, given.value("length"), given.value("diameter") / 2)
                .get();
        return Map.of(
                "single", single,
                "alpha", RodsBs7430.alpha(resistivity, single, spacing),
                "group",
                        RodsBs7430.resistance(resistivity, single, spacing, given.count("rods"), given.value("lambda"))
                                .get());
    }

    private static Map<String, Double> filledSquare(Given given) {
        int side = (int) Math.round(Math.sqrt(given.count("rods")));
        Map<String, Double> result = new HashMap<>();
        result.put("B", RodsFilledSquare.constant(side));
        if (given.has("A")) {
            result.put("factor", RodsFilledSquare.factor(side, given.value("A")).get());
        }
        return result;
    }
}
