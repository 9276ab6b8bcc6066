package earthing.reference;

import earthing.conductor.AdiabaticHeating;
import earthing.conductor.CorrosionAllowance;
import earthing.conductor.FusingCurrent;
import earthing.conductor.JointType;
import earthing.conductor.LightningHeating;
import earthing.conductor.Metal;
import earthing.conductor.MinimumSize;
import earthing.conductor.NonAdiabaticFactor;
import earthing.conductor.Shot;
import earthing.conductor.SizeSeries;
import earthing.conductor.StandardSize;
import earthing.conductor.Stranded;
import earthing.conductor.Tape;
import earthing.conductor.ThermalConstants;
import earthing.conductor.ThermalEdition;
import earthing.conductor.ThermalTable;
import earthing.fault.DecrementFactor;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** Binds the model names that begin with {@code conductor.} to the room {@code earthing.conductor}. */
final class ConductorModels {

    private ConductorModels() {}

    static void register(Map<String, ReferenceModel> models) {
        models.put(
                "conductor.constant", given -> Map.of("constant", metal(given).constant()));
        models.put(
                "conductor.factor",
                given -> Map.of(
                        "factor", AdiabaticHeating.factor(metal(given), given.value("initial"), given.value("final"))));
        models.put("conductor.withstand", ConductorModels::withstand);
        models.put("conductor.ieee-factor", ConductorModels::ieeeFactor);
        models.put("conductor.area", ConductorModels::area);
        models.put("conductor.final-temperature", ConductorModels::finalTemperature);
        models.put("conductor.thermal-equivalent", ConductorModels::thermalEquivalent);
        models.put(
                "conductor.non-adiabatic",
                given -> Map.of(
                        "factor",
                        NonAdiabaticFactor.formula(
                                given.value("x"), given.value("y"), given.value("area"), given.value("duration"))));
        models.put("conductor.fusing", ConductorModels::fusing);
        models.put(
                "conductor.fusing.onderdonk",
                given -> Map.of(
                        "current",
                        FusingCurrent.onderdonk(given.value("area"), given.value("duration"), given.value("initial"))));
        models.put(
                "conductor.lightning-rise",
                given -> Map.of(
                        "rise",
                        LightningHeating.rise(
                                word(LightningHeating.Material.class, given, "material"),
                                given.value("area"),
                                given.value("specific-energy"))));
        models.put(
                "conductor.joint",
                given -> Map.of(
                        "temperature",
                        word(JointType.class, given, "joint").temperature().orElseThrow()));
        models.put("conductor.minimum-size", ConductorModels::minimumSize);
        models.put(
                "conductor.corrosion",
                given -> Map.of(
                        "area",
                        CorrosionAllowance.enlarged(
                                given.value("area"),
                                given.value("yearly-loss"),
                                given.value("years"),
                                given.value("factor"))));
        models.put("conductor.size", ConductorModels::size);
        models.put("conductor.strand", given -> {
            Stranded strand = Stranded.ofArea(given.count("strands"), 70e-6);
            return Map.of("ratio", strand.geometricMeanRadius() / strand.equivalentRadius());
        });
        models.put(
                "conductor.tape-mean-radius",
                given -> Map.of("ratio", new Tape(1, given.value("thickness-over-width")).geometricMeanRadius()));
    }

    private static ThermalConstants metal(Given given) {
        ThermalEdition edition =
                given.has("edition") ? word(ThermalEdition.class, given, "edition") : ThermalEdition.IEC_60949;
        return ThermalTable.require(Metal.find(given.word("material")).orElseThrow(), edition);
    }

    private static <E extends Enum<E>> E word(Class<E> type, Given given, String name) {
        return Enum.valueOf(type, given.word(name).toUpperCase(Locale.ROOT).replace('-', '_'));
    }

    private static Map<String, Double> withstand(Given given) {
        double area = given.value("area", 1);
        double current = AdiabaticHeating.permissibleCurrent(
                metal(given), area, given.value("duration"), given.value("initial"), given.value("final"));
        return Map.of("current", current, "density", current / area);
    }

    private static Map<String, Double> ieeeFactor(Given given) {
        ThermalConstants metal = metal(given);
        double maximum =
                given.has("final") ? given.value("final") : metal.fusing().orElseThrow();
        double printedUnit = AdiabaticHeating.ieeeFactor(metal, given.value("initial"), maximum);
        return Map.of("factor", printedUnit * AdiabaticHeating.KCMIL * 1e-3);
    }

    private static Map<String, Double> area(Given given) {
        double current = given.value("current");
        ThermalConstants metal = metal(given);
        double end = given.has("final") ? given.value("final") : metal.fusing().orElseThrow();
        return Map.of(
                "area",
                AdiabaticHeating.requiredArea(
                        metal, current * current * given.value("duration"), given.value("initial"), end));
    }

    private static List<Shot> shots(Given given) {
        List<Double> currents = given.values("current");
        List<Double> durations = given.values("duration");
        List<Shot> shots = new ArrayList<>();
        for (int i = 0; i < durations.size(); i++) {
            shots.add(Shot.of(currents.get(currents.size() == 1 ? 0 : i), durations.get(i)));
        }
        return shots;
    }

    private static Map<String, Double> finalTemperature(Given given) {
        return Map.of(
                "temperature",
                AdiabaticHeating.finalTemperature(
                        metal(given), given.value("area"), Shot.jouleIntegral(shots(given)), given.value("initial")));
    }

    private static Map<String, Double> thermalEquivalent(Given given) {
        List<Shot> shots = shots(given);
        return Map.of(
                "joule-integral", Shot.jouleIntegral(shots),
                "duration", Shot.totalDuration(shots),
                "current", Shot.equivalentCurrent(shots));
    }

    private static Map<String, Double> fusing(Given given) {
        double duration = given.value("duration");
        double decrement = given.has("x-over-r")
                ? DecrementFactor.of(given.value("x-over-r"), given.value("frequency"), duration)
                : 1;
        return Map.of(
                "current",
                FusingCurrent.ieee(metal(given), given.value("area"), duration, decrement, given.value("initial")));
    }

    private static Map<String, Double> minimumSize(Given given) {
        List<MinimumSize> rows =
                MinimumSize.find(word(MinimumSize.Use.class, given, "use"), word(Metal.Family.class, given, "metal"));
        if (rows.size() != 1) {
            throw new IllegalArgumentException("expected one printed minimum, have " + rows.size());
        }
        return Map.of(
                rows.get(0).measure() == MinimumSize.SizeMeasure.AREA ? "area" : "diameter",
                rows.get(0).value());
    }

    private static Map<String, Double> size(Given given) {
        String name = given.word("size");
        StandardSize found = SizeSeries.AWG_KCMIL.sizes().stream()
                .filter(size -> size.name().equals(name))
                .findFirst()
                .orElseThrow();
        return Map.of("area", found.area(), "diameter", Math.sqrt(4 * found.area() / Math.PI));
    }
}
