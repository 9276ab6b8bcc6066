package earthing.reference;

import earthing.surge.ConcaveFront;
import earthing.surge.DoubleExponential;
import earthing.surge.FlashCollection;
import earthing.surge.Heidler;
import earthing.surge.Impulse;
import earthing.surge.ImpulseParameters;
import earthing.surge.InducedVoltage;
import earthing.surge.InducedWave;
import earthing.surge.PowerExponential;
import earthing.surge.ProtectiveMargin;
import earthing.surge.StrikingDistance;
import earthing.surge.StrokeDistribution;
import earthing.surge.StrokeStatistics;
import earthing.surge.TwoSectionArrester;
import java.util.HashMap;
import java.util.Map;

/** Binds the model names that begin with {@code surge.} to the room {@code earthing.surge}. */
final class SurgeModels {

    private static final double SPEED = 3e8;

    private SurgeModels() {}

    static void register(Map<String, ReferenceModel> models) {
        models.put("surge.impulse", given -> parameters(impulse(given.word("shape"), given.value("nominal"))));
        models.put(
                "surge.double-exponential",
                given -> parameters(
                        new DoubleExponential(given.value("amplitude"), given.value("alpha"), given.value("beta"))));
        models.put("surge.concave-front", given -> {
            ConcaveFront front = new ConcaveFront(
                    given.value("peak"), given.value("front"), given.value("steepness"), given.value("half"));
            return Map.of(
                    "exponent", front.exponent(),
                    "join", front.joinTime(),
                    "linear", front.linearCoefficient(),
                    "slow-tail", front.slowTail(),
                    "true-peak", front.shape().peak());
        });
        models.put(
                "surge.stroke.exceedance",
                given -> Map.of("probability", distribution(given.word("set")).exceedance(given.value("peak"))));
        models.put("surge.stroke.given-peak", given -> {
            double peak = given.value("peak");
            return Map.of(
                    "steepness", StrokeStatistics.firstSteepnessGivenPeak(peak),
                    "front", StrokeStatistics.firstFrontGivenPeak(peak));
        });
        models.put(
                "surge.strokes.line-rate",
                given -> Map.of(
                        "rate",
                        FlashCollection.lineRate(
                                given.value("flash-density"),
                                given.value("height"),
                                given.value("width"),
                                given.value("length"))));
        models.put(
                "surge.strokes.flash-density",
                given -> Map.of("density", FlashCollection.ofThunderstormDays(given.value("thunderstorm-days"))));
        models.put(
                "surge.strokes.induced-voltage",
                given -> Map.of(
                        "voltage",
                        InducedVoltage.simplifiedPeak(
                                given.value("current"), given.value("height"), given.value("distance"))));
        models.put("surge.strokes.induced-factor", given -> {
            double distance = given.value("distance");
            InducedVoltage unit = new InducedVoltage(1, distance, given.value("speed-ratio"));
            return Map.of("factor", unit.peakPerAmpere() * distance);
        });
        models.put(
                "surge.strokes.effective-height",
                given -> Map.of(
                        "effective-height",
                        InducedVoltage.effectiveHeight(given.value("height"), given.value("resistivity"))));
        models.put("surge.strokes.induced-ramp", given -> {
            double time = given.value("time");
            InducedWave wave = new InducedWave(given.value("height"), given.value("distance"));
            double[] voltages =
                    wave.voltages(new double[] {0, time}, new double[] {0, given.value("steepness") * time});
            return Map.of("voltage", voltages[1]);
        });
        models.put(
                "surge.strokes.antenna-area",
                given -> Map.of(
                        "area",
                        FlashCollection.areaBeyondStrip(
                                given.value("antenna"),
                                FlashCollection.width(given.value("height"), given.value("width")))));
        models.put("surge.strokes.striking-distance", given -> {
            double peak = given.value("current");
            return Map.of(
                    "distance", StrikingDistance.toConductor(peak),
                    "nearest", StrikingDistance.nearestToGround(peak, given.value("height")));
        });
        models.put(
                "surge.stroke.parameter",
                given -> Map.of("probability", parameter(given.word("set")).exceedance(given.value("value"))));
        models.put("surge.arrester.curve", given -> {
            TwoSectionArrester unit = TwoSectionArrester.ofHeight(1, 1, 1);
            double current = given.value("current");
            return Map.of(
                    "outer", unit.outerCurve().voltage(current),
                    "inner", unit.innerCurve().voltage(current));
        });
        models.put("surge.arrester.simplified", given -> {
            TwoSectionArrester arrester = TwoSectionArrester.ofResidualVoltages(
                    given.value("residual"), given.value("steep-residual"), given.value("rated"));
            return Map.of("between", arrester.betweenInductance(), "series", arrester.seriesInductance());
        });
        models.put("surge.arrester.margin", given -> {
            double margin = ProtectiveMargin.margin(
                    given.value("withstand"), given.value("protective-level"), given.value("lead", 0));
            // Some books refer the margin to the withstand instead of the protective level.
            return Map.of("margin", margin, "of-withstand", margin / (1 + margin));
        });
        models.put(
                "surge.arrester.separation",
                given -> Map.of(
                        "distance",
                        ProtectiveMargin.longestDistance(
                                given.value("protective-level"),
                                given.value("steepness"),
                                given.value("withstand") / (1 + given.value("margin")),
                                SPEED)));
        models.put(
                "surge.arrester.at-distance",
                given -> Map.of(
                        "voltage",
                        ProtectiveMargin.atDistance(
                                given.value("protective-level"),
                                given.value("steepness"),
                                given.value("distance"),
                                SPEED)));
    }

    private static Impulse impulse(String shape, double nominal) {
        return switch (shape) {
            case "first-positive" -> Heidler.firstPositive(nominal);
            case "first-negative" -> Heidler.firstNegative(nominal);
            case "subsequent" -> Heidler.subsequent(nominal);
            case "generator-voltage" -> Heidler.generatorVoltage(nominal);
            case "generator-current" -> Heidler.generatorCurrent(nominal);
            case "8/20" -> PowerExponential.impulse820(nominal);
            case "1.2/50" -> DoubleExponential.impulse1250(nominal);
            default -> throw new IllegalArgumentException("no impulse shape " + shape);
        };
    }

    private static Map<String, Double> parameters(Impulse impulse) {
        ImpulseParameters p = impulse.shape();
        Map<String, Double> found = new HashMap<>();
        found.put("peak", p.peak());
        found.put("peak-time", p.peakTime());
        found.put("front", p.currentFront());
        found.put("tail", p.currentTail());
        found.put("voltage-front", p.voltageFront());
        found.put("voltage-tail", p.voltageTail());
        found.put("width", p.width());
        found.put("charge", p.charge());
        found.put("specific-energy", p.specificEnergy());
        found.put("steepness", p.steepest());
        return found;
    }

    private static StrokeDistribution parameter(String set) {
        return switch (set) {
            case "first-front" -> StrokeStatistics.FIRST_FRONT;
            case "first-steepness" -> StrokeStatistics.FIRST_STEEPNESS;
            case "subsequent-front" -> StrokeStatistics.SUBSEQUENT_FRONT;
            case "subsequent-steepness" -> StrokeStatistics.SUBSEQUENT_STEEPNESS;
            default -> throw new IllegalArgumentException("no set of stroke parameters " + set);
        };
    }

    private static StrokeDistribution distribution(String set) {
        return switch (set) {
            case "first-wide" -> StrokeStatistics.FIRST_PEAK_WIDE;
            case "first-two-slope" -> StrokeStatistics.FIRST_PEAK_TWO_SLOPE;
            case "first-simplified" -> StrokeStatistics.FIRST_PEAK_SIMPLIFIED;
            case "subsequent-simplified" -> StrokeStatistics.SUBSEQUENT_PEAK_SIMPLIFIED;
            default -> throw new IllegalArgumentException("no set of strokes " + set);
        };
    }
}
