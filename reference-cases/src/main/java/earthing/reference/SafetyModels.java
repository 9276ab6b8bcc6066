package earthing.reference;

import earthing.quantity.Source;
import earthing.safety.BodyCurrent;
import earthing.safety.BodyImpedance;
import earthing.safety.BodyImpedance.Percentile;
import earthing.safety.BodyPath;
import earthing.safety.BodyWeight;
import earthing.safety.Coincidence;
import earthing.safety.Contact;
import earthing.safety.Exposure;
import earthing.safety.FibrillationChance;
import earthing.safety.FootDisc;
import earthing.safety.Footwear;
import earthing.safety.Ieee80Curve;
import earthing.safety.LocationClass;
import earthing.safety.LowVoltageStress;
import earthing.safety.PermissibleVoltage;
import earthing.safety.SafetyCriteria;
import earthing.safety.Shock;
import earthing.safety.Standing;
import earthing.safety.SurfaceCovering;
import earthing.safety.SurfaceLayerFactor;
import earthing.safety.TabulatedCurve;
import earthing.safety.TouchTables;
import earthing.safety.VoltageCurve;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** Binds the model names that begin with {@code safety.} to the room {@code earthing.safety}. */
final class SafetyModels {

    private static final Source FROM_CASE = Source.tool("given by a reference case");

    private SafetyModels() {}

    static void register(Map<String, ReferenceModel> models) {
        models.put(
                "safety.touch-table",
                given -> Map.of(
                        "touch", volts(table(given), Contact.HAND_TO_FEET, given.value("duration"), standing(given))));
        models.put(
                "safety.low-voltage-stress", given -> Map.of("limit", LowVoltageStress.limit(given.value("duration"))));
        models.put("safety.ieee80", SafetyModels::ieee80);
        models.put(
                "safety.body-current",
                given -> Map.of(
                        "kg-50", BodyWeight.KG_50.current(given.value("duration")),
                        "kg-70", BodyWeight.KG_70.current(given.value("duration"))));
        models.put("safety.body-impedance", SafetyModels::bodyImpedance);
        models.put("safety.body-share", SafetyModels::bodyShare);
        models.put(
                "safety.heart-current",
                given -> Map.of("factor", word(BodyPath.class, given, "path").heartCurrentFactor()));
        models.put(
                "safety.heart-current.reference",
                given -> Map.of(
                        "reference", word(BodyPath.class, given, "path").referenceCurrent(given.value("current"))));
        models.put(
                "safety.body-voltage",
                given -> Map.of("voltage", bodyVoltage(word(BodyPath.class, given, "path"), given.value("current"))));
        models.put("safety.mean-of-paths", SafetyModels::meanOfPaths);
        models.put("safety.surface-layer", SafetyModels::surfaceLayer);
        models.put("safety.surface-layer.1986", SafetyModels::touch1986);
        models.put("safety.epr-gates", SafetyModels::gates);
        models.put(
                "safety.location",
                given -> Map.of(
                        "additional-resistance",
                        word(LocationClass.class, given, "class").additionalResistance()));
        models.put("safety.coincidence", SafetyModels::coincidence);
        models.put("safety.risk-target", given -> Map.of("target", Coincidence.TARGET.value()));
        models.put("safety.fibrillation", SafetyModels::fibrillation);
        models.put("safety.exposures", SafetyModels::exposures);
    }

    private static <E extends Enum<E>> E word(Class<E> type, Given given, String name) {
        return Enum.valueOf(type, given.word(name).toUpperCase(Locale.ROOT).replace('-', '_'));
    }

    private static TabulatedCurve table(Given given) {
        String edition = given.word("edition");
        return TouchTables.all().stream()
                .filter(curve -> curve.edition().equals(edition))
                .findFirst()
                .orElseThrow();
    }

    private static Standing standing(Given given) {
        Standing standing = Standing.bare(given.value("resistivity", 100));
        if (given.has("surface-resistivity")) {
            standing = standing.on(new SurfaceCovering(
                    "covering",
                    given.value("surface-resistivity"),
                    given.value("surface-thickness", Double.POSITIVE_INFINITY),
                    FROM_CASE));
        }
        if (given.has("footwear")) {
            standing = standing.in(new Footwear("footwear", given.value("footwear"), FROM_CASE));
        }
        return standing;
    }

    private static double volts(VoltageCurve curve, Contact contact, double duration, Standing standing) {
        if (curve.at(contact, duration, standing) instanceof PermissibleVoltage voltage) {
            return voltage.value();
        }
        throw new IllegalArgumentException(curve.name() + " has no value at " + duration + " s");
    }

    private static Map<String, Double> ieee80(Given given) {
        Standing standing = standing(given);
        double duration = given.value("duration");
        Map<String, Double> volts = new java.util.LinkedHashMap<>();
        for (BodyWeight weight : BodyWeight.values()) {
            Ieee80Curve curve = new Ieee80Curve(weight, Ieee80Curve.LayerRule.SHORT_FORMULA, Optional.empty());
            String suffix = weight == BodyWeight.KG_50 ? "-50" : "-70";
            volts.put("touch" + suffix, volts(curve, Contact.HAND_TO_FEET, duration, standing));
            volts.put("step" + suffix, volts(curve, Contact.FOOT_TO_FOOT, duration, standing));
            volts.put("metal" + suffix, volts(curve, Contact.HAND_TO_HAND, duration, standing));
        }
        return volts;
    }

    private static Map<String, Double> bodyImpedance(Given given) {
        BodyImpedance table = word(BodyImpedance.class, given, "table");
        double voltage = given.value("voltage");
        return Map.of(
                "p5", table.handToHand(voltage, Percentile.P5),
                "p50", table.handToHand(voltage, Percentile.P50),
                "p95", table.handToHand(voltage, Percentile.P95));
    }

    private static Map<String, Double> bodyShare(Given given) {
        double voltage = given.value("voltage");
        return Map.of(
                "hand-hand", BodyImpedance.DRY_2005.handToHand(voltage, Percentile.P50),
                "hand-foot", BodyImpedance.DRY_2005.on(BodyPath.LEFT_HAND_TO_FOOT, voltage, Percentile.P50),
                "hand-trunk", BodyImpedance.DRY_2005.on(BodyPath.LEFT_HAND_TO_CHEST, voltage, Percentile.P50),
                "trunk-foot", BodyImpedance.DRY_2005.on(BodyPath.FOOT_TO_FOOT, voltage, Percentile.P50) / 2);
    }

    private static double bodyVoltage(BodyPath path, double reference) {
        return BodyImpedance.DRY_2005.voltage(path, path.pathCurrent(reference), Percentile.P50);
    }

    private static Map<String, Double> meanOfPaths(Given given) {
        double current = BodyCurrent.EN_50522.points().at(given.value("duration"));
        double left = bodyVoltage(BodyPath.LEFT_HAND_TO_FEET, current);
        double right = bodyVoltage(BodyPath.RIGHT_HAND_TO_FEET, current);
        double both = bodyVoltage(BodyPath.BOTH_HANDS_TO_FEET, current);
        double hands = bodyVoltage(BodyPath.HAND_TO_HAND, current);
        return Map.of(
                "touch", (left + right + both + 0.7 * hands) / 4,
                "left", left,
                "right", right,
                "both", both,
                "hands", hands);
    }

    private static Map<String, Double> surfaceLayer(Given given) {
        double reflection = given.value("reflection");
        double thickness = given.value("thickness");
        return Map.of(
                "series", SurfaceLayerFactor.series(reflection, thickness),
                "short", SurfaceLayerFactor.shortFormula(1 + reflection, 1 - reflection, thickness),
                "series-1986", SurfaceLayerFactor.series1986(reflection, thickness),
                "disc", FootDisc.factor(reflection, thickness));
    }

    private static Map<String, Double> touch1986(Given given) {
        double layer = given.value("surface-resistivity");
        double reflection = SurfaceLayerFactor.reflection(given.value("resistivity"), layer);
        double factor = SurfaceLayerFactor.series1986(reflection, given.value("surface-thickness"));
        return Map.of(
                "touch-50",
                (Ieee80Curve.BODY + 1.5 * factor * layer) * BodyWeight.KG_50.current(given.value("duration")));
    }

    private static Map<String, Double> gates(Given given) {
        SafetyCriteria set = switch (given.word("edition")) {
            case "EN 50522:2010" -> SafetyCriteria.EN_50522_2010;
            case "EN 50522:2022" -> SafetyCriteria.EN_50522_2022;
            default -> throw new IllegalArgumentException("no gates in " + given.word("edition"));
        };
        Map<String, Double> gates = new java.util.LinkedHashMap<>();
        set.values()
                .forEach((need, value) -> gates.put(
                        switch (need) {
                            case MERGING_DEAD_TIME -> "merging";
                            case FIRST_GATE -> "first";
                            case SECOND_GATE -> "second";
                            case STEP_GATE -> "step";
                        },
                        value.value()));
        return gates;
    }

    private static Map<String, Double> fibrillation(Given given) {
        FibrillationChance chance =
                new FibrillationChance(BodyImpedance.DRY_2005, BodyPath.LEFT_HAND_TO_FEET, given.value("series", 0));
        double voltage = given.value("voltage");
        double duration = given.value("duration");
        return Map.of(
                "above-c1", chance.shareAbove(voltage, BodyCurrent.C1.points().at(duration)),
                "above-c2",
                        chance.shareAbove(voltage, BodyCurrent.EN_50522.points().at(duration)),
                "chance", chance.of(voltage, duration));
    }

    private static Map<String, Double> coincidence(Given given) {
        double yearly = Coincidence.perYear(
                given.value("faults"), given.value("contacts"), given.value("fault"), given.value("contact"));
        return Map.of(
                "coincidence",
                yearly,
                "fibrillation",
                Coincidence.permissibleChance(Coincidence.TARGET.value(), yearly));
    }

    private static Map<String, Double> exposures(Given given) {
        List<Double> durations = given.values("duration");
        List<Double> dead = given.values("dead-time");
        List<Shock> shocks = new ArrayList<>();
        for (int i = 0; i < durations.size(); i++) {
            shocks.add(new Shock(durations.get(i), i < dead.size() ? dead.get(i) : 0));
        }
        List<Exposure> exposures = Exposure.of(shocks, given.value("merging"));
        return Map.of(
                "shots", (double) shocks.size(),
                "exposures", (double) exposures.size(),
                "first", exposures.get(0).duration());
    }
}
