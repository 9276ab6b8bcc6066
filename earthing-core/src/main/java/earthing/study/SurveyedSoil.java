package earthing.study;

import earthing.electrode.wire.DrivenRod;
import earthing.quantity.Dimension;
import earthing.quantity.Measure;
import earthing.quantity.Numbers;
import earthing.quantity.Quantity;
import earthing.quantity.Source;
import earthing.site.Site;
import earthing.site.Soil;
import earthing.site.SoilLayer;
import earthing.site.SoilReading;
import earthing.site.file.SurveyFile;
import earthing.soil.ElectrodeArray;
import earthing.soil.FitParameter;
import earthing.soil.Layer;
import earthing.soil.Reading;
import earthing.soil.Schlumberger;
import earthing.soil.SoilModel;
import earthing.soil.Sounding;
import earthing.soil.SoundingFit;
import earthing.soil.Wenner;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** Readings of a survey in the site file turned into layers with bounds, which every other study then takes. */
final class SurveyedSoil {

    private static final Source INVERSION = Source.tool(
            "least squares in logarithms, layer count by information criterion, 90 % intervals, docs/theory/soil.md");

    private final Site site;
    private final StudyResults results;

    private SurveyedSoil(Site site, StudyResults results) {
        this.site = site;
        this.results = results;
    }

    /** Readings of a survey with what fits them; they say nothing of the site around them. */
    record Fitted(Soil soil, StudyResults results) {}

    /** The site with fitted layers; the site itself and no result where it holds no readings. */
    static SurveyedSoil of(Site site) {
        return of(site, new EarthCache());
    }

    /** The same, with the surveys that were fitted before. */
    static SurveyedSoil of(Site site, EarthCache cache) {
        Soil soil = site.soil();
        if (soil == null || !soil.isSurveyed()) {
            return new SurveyedSoil(site, StudyResults.EMPTY);
        }
        Fitted fitted = cache.surveyed(soil);
        return new SurveyedSoil(
                fitted.soil().equals(soil) ? site : SiteVariant.grounded(site, fitted.soil()), fitted.results());
    }

    /** The layers; the soil as it is where the readings give none. */
    static Fitted fitted(Soil soil) {
        String key = soil.surveyFile() == null ? "soil.soundings" : "soil.survey-file";
        SurveyStudy study;
        try {
            study = SurveyStudy.of(traverses(soil), OptionalInt.empty());
        } catch (IllegalArgumentException tooFew) {
            return new Fitted(
                    soil,
                    new StudyResults(
                            List.of(),
                            List.of(),
                            List.of(new Gap(
                                    "soil.survey",
                                    Case.NONE,
                                    "the readings give no layers: " + tooFew.getMessage(),
                                    List.of(key))),
                            List.of(),
                            List.of()));
        }
        SoundingFit fit = study.pooled().best();
        List<SoilLayer> layers = new ArrayList<>();
        for (int i = 0; i < fit.layers(); i++) {
            layers.add(new SoilLayer(
                    measure(study.taken(i, soil.season() != null), Dimension.RESISTIVITY, soil),
                    i == fit.layers() - 1 ? null : measure(fit.thickness(i), Dimension.LENGTH, soil)));
        }
        boolean uniform = layers.size() == 1;
        Soil fitted = new Soil(
                uniform ? layers.get(0).resistivity() : null,
                uniform ? List.of() : layers,
                List.of(),
                null,
                soil.season(),
                soil.calibrateBy(),
                soil.frequencyDependence(),
                soil.survey(),
                soil.surveyDate());
        return new Fitted(fitted, results(soil, study, fit));
    }

    Site site() {
        return site;
    }

    StudyResults results() {
        return results;
    }

    private static List<Sounding> traverses(Soil soil) {
        if (soil.surveyFile() != null) {
            return SurveyFile.soundings(soil.surveyFile());
        }
        Map<String, List<Reading>> byName = new LinkedHashMap<>();
        for (SoilReading reading : soil.soundings()) {
            String name = reading.traverse() == null ? "" : reading.traverse();
            byName.computeIfAbsent(name, key -> new ArrayList<>()).add(reading(reading));
        }
        List<Sounding> traverses = new ArrayList<>();
        byName.forEach((name, list) -> traverses.add(new Sounding(name, list)));
        return traverses;
    }

    private static Reading reading(SoilReading reading) {
        ElectrodeArray array = reading.rodDepth() != null
                ? new DrivenRod(reading.rodDepth().nominal(), nominal(reading.rodDiameter(), Double.NaN) / 2)
                : array(reading);
        return reading.resistance() != null
                ? Reading.ofResistance(array, reading.resistance().nominal())
                : new Reading(array, nominal(reading.resistivity(), Double.NaN));
    }

    private static ElectrodeArray array(SoilReading reading) {
        return reading.spacing() != null
                ? Wenner.driven(reading.spacing().nominal(), nominal(reading.probeDepth(), 0))
                : new Schlumberger(
                        nominal(reading.halfCurrentSpacing(), Double.NaN),
                        nominal(reading.halfPotentialSpacing(), Double.NaN));
    }

    private static double nominal(@Nullable Measure measure, double otherwise) {
        return measure == null ? otherwise : measure.nominal();
    }

    private static Measure measure(FitParameter parameter, Dimension dimension, Soil soil) {
        return new Measure(
                dimension,
                Optional.of(new Measure.Bounds(
                        Quantity.of(dimension, parameter.low()),
                        Quantity.of(dimension, parameter.value()),
                        Quantity.of(dimension, parameter.high()))),
                Measure.Origin.MEASURED,
                soil.surveyDate() == null ? "" : soil.surveyDate(),
                "fit of the readings");
    }

    private static StudyResults results(Soil soil, SurveyStudy study, SoundingFit fit) {
        List<Result> results = new ArrayList<>();
        boolean season = soil.season() != null;
        results.add(result("soil.survey.misfit", "nominal", fit.misfit(), ""));
        results.add(result("soil.survey.readings", "nominal", fit.readings().size(), ""));
        results.add(result("soil.survey.set-aside", "nominal", fit.setAside().size(), ""));
        results.add(Result.of(
                "soil.survey.least-spread",
                Case.NONE,
                "nominal",
                study.leastSpread(season),
                "",
                "bounds of a fitted resistivity",
                SurveyStudy.LEAST_SPREAD));
        for (int i = 0; i < fit.layers(); i++) {
            bounds(results, "soil.survey.layer." + (i + 1) + ".resistivity", study.taken(i, season), "ohm.m");
            interval(results, "soil.survey.layer." + (i + 1) + ".interval", fit.resistivityAtThickness(i));
            if (i < fit.layers() - 1) {
                bounds(results, "soil.survey.layer." + (i + 1) + ".thickness", fit.thickness(i), "m");
            }
        }
        List<String> notes = new ArrayList<>();
        if (soil.surveyFile() != null) {
            notes.add("soil survey: the readings stand in " + soil.surveyFile());
            SurveyFile.warnings(soil.surveyFile()).forEach(warning -> notes.add("soil survey: " + warning));
        }
        study.remarks().forEach(remark -> notes.add("soil survey: " + remark));
        notes.add("soil survey: " + fit.layers() + " layers fit all readings with a misfit of "
                + Numbers.brief(100 * fit.misfit())
                + " %; low and high resistivities are the ends of the 90 % intervals"
                + (study.widened(season).isEmpty()
                        ? ""
                        : ", widened to " + Numbers.brief(study.leastSpread(season)) + " times either way in layer "
                                + study.widened(season).stream()
                                        .map(i -> Integer.toString(i + 1))
                                        .collect(Collectors.joining(" and "))
                                + ", where the scatter of the readings alone would promise more than a line of probes can"
                                + " know of the ground beside it")
                + ", taken for all layers together. The intervals hold the scatter of these readings, not what the ground is like"
                + " elsewhere or in another season");
        return new StudyResults(results, List.of(curve(study, fit, season)), List.of(), List.of(), notes);
    }

    private static void bounds(List<Result> results, String id, FitParameter parameter, String unit) {
        results.add(result(id, "low", parameter.low(), unit));
        results.add(result(id, "nominal", parameter.value(), unit));
        results.add(result(id, "high", parameter.high(), unit));
    }

    /** The 90 % interval alone, before any widening. */
    private static void interval(List<Result> results, String id, FitParameter parameter) {
        results.add(result(id, "low", parameter.low(), "ohm.m"));
        results.add(result(id, "high", parameter.high(), "ohm.m"));
    }

    private static Result result(String id, String at, double value, String unit) {
        return Result.of(id, Case.NONE, at, value, unit, "inversion of the readings in the site file", INVERSION);
    }

    private static Curve curve(SurveyStudy study, SoundingFit fit, boolean season) {
        List<Curve.Trace> traces = new ArrayList<>();
        for (Sounding traverse : study.traverses()) {
            int n = traverse.readings().size();
            double[] x = new double[n];
            double[] y = new double[n];
            List<Reading> sorted = traverse.readings().stream()
                    .sorted(Comparator.comparingDouble(Reading::spacing))
                    .toList();
            for (int i = 0; i < n; i++) {
                x[i] = sorted.get(i).spacing();
                y[i] = sorted.get(i).apparentResistivity();
            }
            traces.add(new Curve.Trace(
                    "readings" + (traverse.traverse().isEmpty() ? "" : ", " + traverse.traverse()), x, y));
        }
        for (Measure.Bound bound : Measure.Bound.values()) {
            traces.add(model(study, fit, season, bound));
        }
        return new Curve(
                "soil.survey.sounding",
                "Readings of the soil survey, the layers that fit them and the bounds taken",
                study.byDrivenRods() ? "depth of the rod" : "spacing",
                "m",
                "apparent resistivity",
                "ohm.m",
                traces);
    }

    /** What the same arrays would read over the fitted layers, all resistivities at one end of their intervals. */
    private static Curve.Trace model(SurveyStudy study, SoundingFit fit, boolean season, Measure.Bound bound) {
        List<Layer> layers = new ArrayList<>();
        for (int i = 0; i < fit.layers(); i++) {
            FitParameter rho = study.taken(i, season);
            double value = switch (bound) {
                case LOW -> rho.low();
                case NOMINAL -> rho.value();
                case HIGH -> rho.high();
            };
            layers.add(
                    i == fit.layers() - 1
                            ? Layer.below(value)
                            : new Layer(value, fit.thickness(i).value()));
        }
        SoilModel soil = SoilModel.of(layers);
        List<Reading> readings = study.pooled().sounding().readings().stream()
                .sorted(Comparator.comparingDouble(Reading::spacing))
                .toList();
        double[] x = readings.stream().mapToDouble(Reading::spacing).toArray();
        double[] y = readings.stream()
                .mapToDouble(reading -> reading.array().apparentResistivity(soil))
                .toArray();
        String name = switch (bound) {
            case LOW -> "low layers";
            case NOMINAL -> "fitted layers";
            case HIGH -> "high layers";
        };
        return new Curve.Trace(name, x, y);
    }
}
