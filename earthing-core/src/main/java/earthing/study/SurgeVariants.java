package earthing.study;

import earthing.quantity.Measure.Bound;
import earthing.quantity.Numbers;
import earthing.quantity.Source;
import earthing.site.PoleMaterial;
import earthing.site.Site;
import earthing.site.Surges;
import earthing.site.YesNo;
import java.util.ArrayList;
import java.util.List;

/**
 * What the cable end would get if one thing were otherwise: length of the tee, separation of the cable, bond of a
 * conducting pole, images in the earth. The full circuit again each time; 8/20 into the tank, nominal soil.
 */
final class SurgeVariants {

    private static final Source MODEL =
            Source.tool("the circuit of the pole with one input changed, docs/theory/surge-path.md");
    private static final double[] TEES = {0.1, 0.2, 0.3, 0.5, 0.8, 1.2, 1.6, 2};
    private static final double[] SEPARATIONS = {0.05, 0.1, 0.15, 0.2, 0.3, 0.5, 0.75, 1};

    private final EarthCache cache;
    private final Inputs in = new Inputs();
    private final List<Result> results = new ArrayList<>();
    private final List<Gap> gaps = new ArrayList<>();
    private final List<Curve> curves = new ArrayList<>();
    private StudyResults models = StudyResults.EMPTY;

    private SurgeVariants(EarthCache cache) {
        this.cache = cache;
    }

    static StudyResults of(Site site, EarthCache cache) {
        return new SurgeVariants(cache).run(site);
    }

    private StudyResults run(Site site) {
        try {
            Site own = OwnPole.of(site, cache, in).arranged();
            double peak = in.orElse(
                    site.surges() == null ? null : site.surges().current(),
                    "surges.current",
                    SurgeStudy.CURRENT,
                    earthing.quantity.Dimension.CURRENT,
                    SurgeStudy.STANDARD_CURRENT);
            lengths(own, peak);
            pole(own, peak);
            images(own, peak);
            if (ElectrodeModelStudy.asked(own)) {
                models = ElectrodeModelStudy.of(own, cache, peak, in);
            }
        } catch (MissingInput missing) {
            gaps.add(missing.gap("surge.variant", Case.NONE));
        }
        return StudyResults.join(List.of(new StudyResults(results, curves, gaps, in.assumptions(), List.of()), models));
    }

    private SurgeCase.Outcome solve(Site site, double peak) throws MissingInput {
        return SurgeCase.solve(
                site, EarthPaths.of(site), cache, Bound.NOMINAL, SurgeWave.named(Surges.STANDARD_WAVE), peak, in);
    }

    private void lengths(Site site, double peak) throws MissingInput {
        List<Curve.Trace> voltages = new ArrayList<>();
        List<Curve.Trace> currents = new ArrayList<>();
        if (!EarthPaths.of(site).withRole(EarthPaths.Role.TEE).isEmpty()) {
            sweep(site, peak, "tee-length", "cubicle.tee-length", TEES, voltages, currents);
        }
        sweep(site, peak, "separation", "control-cable.separation", SEPARATIONS, voltages, currents);
        curves.add(new Curve(
                "surge.variant.open-voltage",
                "What if: open voltage of a core at the cubicle against length of the tee and separation, 8/20",
                "length",
                "m",
                "open voltage",
                "V",
                voltages));
        curves.add(new Curve(
                "surge.variant.short-circuit-current",
                "What if: short-circuit current of a core against length of the tee and separation, 8/20",
                "length",
                "m",
                "short-circuit current",
                "A",
                currents));
    }

    private void sweep(
            Site site,
            double peak,
            String name,
            String key,
            double[] values,
            List<Curve.Trace> voltages,
            List<Curve.Trace> currents)
            throws MissingInput {
        double[] voltage = new double[values.length];
        double[] current = new double[values.length];
        for (int k = 0; k < values.length; k++) {
            Site changed = name.equals("separation")
                    ? SiteVariant.separated(site, values[k])
                    : SiteVariant.teed(site, values[k]);
            SurgeCase.Outcome outcome = solve(changed, peak);
            voltage[k] = outcome.open().voltage();
            current[k] = outcome.shortCurrent();
            pair("surge.variant." + name, key + "=" + Numbers.full(values[k]) + " m", outcome);
        }
        String words = name.replace('-', ' ');
        voltages.add(new Curve.Trace(words, values, voltage));
        currents.add(new Curve.Trace(words, values, current));
    }

    private void pair(String id, String at, SurgeCase.Outcome outcome) {
        results.add(number(id + ".open-voltage", at, outcome.open().voltage(), "V"));
        results.add(number(id + ".short-circuit-current", at, outcome.shortCurrent(), "A"));
        results.add(number(id + ".cubicle-to-main-earth", at, outcome.across("lead-cubicle"), "V"));
    }

    private void pole(Site site, double peak) throws MissingInput {
        PoleMaterial material = site.pole() == null ? null : site.pole().material();
        if (material != PoleMaterial.STEEL && material != PoleMaterial.CONCRETE) {
            return;
        }
        for (YesNo bonded : List.of(YesNo.YES, YesNo.NO)) {
            SurgeCase.Outcome outcome = solve(SiteVariant.poleBonded(site, bonded), peak);
            pair(
                    "surge.variant.pole-bond",
                    "pole.bonded-to-main-earth=" + (bonded == YesNo.YES ? "yes" : "no"),
                    outcome);
        }
    }

    /** The effect of the images, whichever way the site counts. */
    private void images(Site site, double peak) throws MissingInput {
        SurgeCase.Outcome without = solve(SiteVariant.imaged(site, YesNo.NO), peak);
        SurgeCase.Outcome with = solve(SiteVariant.imaged(site, YesNo.YES), peak);
        change("open-voltage", with.open().voltage(), without.open().voltage());
        change("short-circuit-current", with.shortCurrent(), without.shortCurrent());
        change("tank", with.tank(), without.tank());
    }

    private void change(String what, double with, double without) {
        if (without > 0) {
            results.add(Result.of(
                    "surge.images." + what + "-change",
                    Case.NONE,
                    "nominal",
                    with / without - 1,
                    "",
                    "change by images in perfectly conducting earth, part of the value without them",
                    MODEL));
        }
    }

    private static Result number(String id, String at, double value, String unit) {
        return Result.of(id, Case.NONE, at, value, unit, "8/20 into the tank with one input changed", MODEL);
    }
}
