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
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
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
        models.put("surge.wave.heidler-sum", SurgeModels::heidlerSum);
        models.put("surge.double-exponential.product", given -> {
            ImpulseParameters shape = DoubleExponential.product(
                            given.value("amplitude"), given.value("front-constant"), given.value("tail-constant"))
                    .shape();
            // From a tenth to nine tenths, without the factor 1.25 of the front.
            return Map.of("rise", shape.currentFront() / 1.25, "width", shape.width());
        });
        models.put(
                "surge.arrester.lead-voltage",
                given -> Map.of(
                        "voltage", ProtectiveMargin.leadVoltage(given.value("inductance"), given.value("steepness"))));
        models.put("surge.arrester.lead-rule", given -> {
            double perMetre = ProtectiveMargin.leadVoltage(
                    ProtectiveMargin.LEAD_INDUCTANCE * given.value("length"), ProtectiveMargin.LEAD_STEEPNESS);
            return Map.of("voltage", perMetre);
        });
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

    /** Crest of a sum of Heidler terms, and the front of its first crest by the rule of 30 and 90 %. */
    private static Map<String, Double> heidlerSum(Given given) {
        List<Double> amplitudes = given.values("amplitudes");
        List<Double> exponents = given.values("exponents");
        List<Double> fronts = given.values("front-constants");
        List<Double> tails = given.values("tail-constants");
        List<Heidler> terms = new ArrayList<>();
        for (int k = 0; k < amplitudes.size(); k++) {
            double eta = given.has("eta")
                    ? given.values("eta").get(k)
                    : correction(fronts.get(k), tails.get(k), exponents.get(k));
            terms.add(new Heidler(amplitudes.get(k) / eta, fronts.get(k), tails.get(k), exponents.get(k)));
        }
        int samples = 200_000;
        double step = 100e-6 / samples;
        double[] wave = new double[samples];
        int crest = 0;
        int first = -1;
        for (int k = 0; k < samples; k++) {
            double time = k * step;
            wave[k] = terms.stream().mapToDouble(term -> term.at(time)).sum();
            crest = wave[k] > wave[crest] ? k : crest;
            if (first < 0 && k > 1 && wave[k] < wave[k - 1]) {
                first = k - 1;
            }
        }
        return Map.of(
                "crest",
                wave[crest],
                "front-of-first-crest",
                (reached(wave, 0.9 * wave[first]) - reached(wave, 0.3 * wave[first])) * step / 0.6);
    }

    /** Heidler's usual correction of the amplitude, exp(-(T1/T2) (n T2/T1)^(1/n)). */
    private static double correction(double front, double tail, double exponent) {
        return Math.exp(-(front / tail) * Math.pow(exponent * tail / front, 1 / exponent));
    }

    private static int reached(double[] wave, double level) {
        int k = 0;
        while (wave[k] < level) {
            k++;
        }
        return k;
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
