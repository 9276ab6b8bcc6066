package earthing.study;

import earthing.quantity.Dimension;
import earthing.quantity.Measure;
import earthing.quantity.Measure.Bound;
import earthing.quantity.Numbers;
import earthing.quantity.Quantity;
import earthing.quantity.Source;
import earthing.quantity.Worked;
import earthing.site.Measurement;
import earthing.site.MeasurementKind;
import earthing.site.Site;
import earthing.site.Soil;
import earthing.site.SoilLayer;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * The ground scaled by what the reading of a built electrode says. In ground scaled as a whole every resistance scales
 * with it, so the factor is the reading, freed of the error of its probes, over the nominal resistance in the state of
 * the ground at the reading. Low and high keep their ratio to the nominal value, because one reading does not tell which
 * layer is otherwise; depths stay.
 *
 * <p>A factor that takes a layer below its declared low resistivity is not believed beyond that: a reading that low more
 * often means a second path to earth. A factor above the declared high is taken, because it is the adverse one, and told.
 */
final class CalibratedSoil {

    private static final Source SCALED =
            Source.tool("ground scaled as a whole to the reading of a built electrode, docs/theory/soil.md");

    private static final String ID = "soil.calibration";
    private static final String MODEL = "ground scaled to the reading";

    private final Site site;
    private final StudyResults results;

    private CalibratedSoil(Site site, StudyResults results) {
        this.site = site;
        this.results = results;
    }

    /** A reading with the result that tells its factor on the ground. */
    private record Told(Measurement reading, double factor) {}

    /**
     * Scales the ground where the site file asks for it.
     *
     * @param site the site with layers
     * @param readings what the study of its readings found
     * @return the site itself and no result where it does not ask
     */
    static CalibratedSoil of(Site site, StudyResults readings, EarthCache cache) {
        Soil soil = site.soil();
        String by = soil == null ? null : soil.calibrateBy();
        if (soil == null || by == null) {
            return new CalibratedSoil(site, StudyResults.EMPTY);
        }
        Optional<Told> told = latest(site, by, readings);
        if (told.isEmpty()) {
            return without(
                    site,
                    "electrode " + by
                            + " has no fall-of-potential reading, isolated, without concrete around it and with a"
                            + " known value, that could scale the ground",
                    "measurements");
        }
        double least = 0;
        double most = Double.POSITIVE_INFINITY;
        for (Measure resistivity : resistivities(soil)) {
            if (!resistivity.isKnown()) {
                return without(site, "a resistivity that is not known cannot be scaled", "soil.layers.resistivity");
            }
            least = Math.max(least, resistivity.at(Bound.LOW) / resistivity.nominal());
            most = Math.min(most, resistivity.at(Bound.HIGH) / resistivity.nominal());
        }
        double factor = told.get().factor();
        double applied = Math.max(least, factor);
        Site scaled = SiteVariant.grounded(site, scaled(soil, applied));
        List<Result> results = new ArrayList<>();
        results.add(result(ID + ".factor", "nominal", factor, ""));
        results.add(result(ID + ".least-factor", "nominal", least, ""));
        results.add(result(ID + ".greatest-factor", "nominal", most, ""));
        results.add(result(ID + ".applied-factor", "nominal", applied, "")
                .withWorked(Worked.of("k_a", "max(k, k_l)")
                        .with("k", factor, "")
                        .with("k_l", least, "")
                        .gives(applied, "")));
        Inputs in = new Inputs();
        List<Gap> gaps = new ArrayList<>();
        List<String> notes = new ArrayList<>();
        try {
            beforeAndAfter(site, scaled, cache, in, results);
            notes.add(words(told.get(), by, applied, results));
        } catch (MissingInput missing) {
            gaps.add(missing.gap(ID, Case.NONE));
        }
        return new CalibratedSoil(scaled, new StudyResults(results, List.of(), gaps, in.assumptions(), notes));
    }

    private static CalibratedSoil without(Site site, String reason, String key) {
        Gap gap = new Gap(ID, Case.NONE, reason, List.of(key));
        return new CalibratedSoil(site, new StudyResults(List.of(), List.of(), List.of(gap), List.of(), List.of()));
    }

    Site site() {
        return site;
    }

    StudyResults results() {
        return results;
    }

    /** The latest reading of an electrode that the study of readings could evaluate. */
    private static Optional<Told> latest(Site site, String electrode, StudyResults readings) {
        Map<String, Integer> numbers = new HashMap<>();
        Optional<Told> latest = Optional.empty();
        for (Measurement reading : site.measurements()) {
            if (reading.kind() != MeasurementKind.ELECTRODE_RESISTANCE) {
                continue;
            }
            String id = TesterStudy.id(reading, numbers.merge(reading.of(), 1, Integer::sum)) + ".soil-factor";
            List<Result> factor = readings.of(id);
            boolean later = latest.isEmpty()
                    || reading.date().compareTo(latest.get().reading().date()) >= 0;
            if (reading.of().equals(electrode) && !factor.isEmpty() && later) {
                latest = Optional.of(new Told(reading, factor.get(0).value()));
            }
        }
        return latest;
    }

    private static List<Measure> resistivities(Soil soil) {
        List<Measure> all = new ArrayList<>();
        if (soil.resistivity() != null) {
            all.add(soil.resistivity());
        }
        soil.layers().forEach(layer -> all.add(layer.resistivity()));
        return all;
    }

    private static Soil scaled(Soil soil, double factor) {
        return new Soil(
                scaled(soil.resistivity(), factor),
                soil.layers().stream()
                        .map(layer -> new SoilLayer(known(layer.resistivity(), factor), layer.thickness()))
                        .toList(),
                soil.soundings(),
                soil.surveyFile(),
                soil.season(),
                soil.calibrateBy(),
                soil.frequencyDependence(),
                soil.survey(),
                soil.surveyDate());
    }

    private static @Nullable Measure scaled(@Nullable Measure measure, double factor) {
        return measure == null ? null : known(measure, factor);
    }

    private static Measure known(Measure measure, double factor) {
        Dimension dimension = measure.dimension();
        return new Measure(
                dimension,
                measure.bounds()
                        .map(b -> new Measure.Bounds(
                                Quantity.of(dimension, factor * b.low().si()),
                                Quantity.of(dimension, factor * b.nominal().si()),
                                Quantity.of(dimension, factor * b.high().si()))),
                measure.origin(),
                measure.date(),
                measure.by());
    }

    private static void beforeAndAfter(Site before, Site after, EarthCache cache, Inputs in, List<Result> results)
            throws MissingInput {
        for (Bound bound : Bound.values()) {
            SiteEarth old = SiteEarth.of(before, bound, in, cache);
            SiteEarth scaled = SiteEarth.of(after, bound, in, cache);
            for (String name : old.names()) {
                if (old.hasShape(name)) {
                    String id = ID + "." + name + ".resistance-";
                    results.add(result(id + "before", old.at(), old.resistance(name, name), "ohm"));
                    results.add(result(id + "after", scaled.at(), scaled.resistance(name, name), "ohm"));
                }
            }
        }
    }

    private static String words(Told told, String by, double applied, List<Result> results) {
        return "soil calibration: the reading of "
                + Numbers.brief(told.reading().value().nominal()) + " ohm on " + by + " of "
                + told.reading().date() + " asks for " + Numbers.brief(told.factor())
                + " times the nominal resistivities; every study takes " + Numbers.brief(applied)
                + " times. Resistance of " + by
                + " at low, nominal and high, high with the worst season where a season is"
                + " described: " + bounds(ID + "." + by + ".resistance-before", results) + " ohm before, "
                + bounds(ID + "." + by + ".resistance-after", results)
                + " ohm after. One reading on one day does not tell which layer is otherwise, nor the ground elsewhere";
    }

    private static String bounds(String id, List<Result> results) {
        List<String> values = results.stream()
                .filter(r -> r.id().equals(id))
                .map(r -> Numbers.brief(r.value()))
                .toList();
        return String.join(", ", values);
    }

    private static Result result(String id, String at, double value, String unit) {
        return Result.of(id, Case.NONE, at, value, unit, MODEL, SCALED);
    }
}
