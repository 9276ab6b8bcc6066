package earthing.study;

import earthing.electrode.wire.Bar;
import earthing.electrode.wire.Discretisation;
import earthing.electrode.wire.EarthElectrodes;
import earthing.quantity.Measure.Bound;
import earthing.quantity.Source;
import earthing.site.Site;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * What the division of the bars into elements costs: the electrodes of a site at nominal ground with shorter and shorter
 * elements. Information; every other study takes the standard elements.
 */
final class ConvergenceStudy {

    private static final Source METHOD =
            Source.tool("the same equation with shorter elements, docs/theory/electrode.md");

    /** Beyond so many elements nothing is solved for information. */
    private static final int MOST = 1000;

    private static final Discretisation STANDARD = Discretisation.STANDARD;

    private ConvergenceStudy() {}

    /** The rules by the last word of their ids: lengths halved, halved again, and refined as the gates of accuracy are. */
    private static Map<String, Discretisation> rules(int bars) {
        Map<String, Discretisation> rules = new LinkedHashMap<>();
        rules.put("half", STANDARD.shorter(2));
        rules.put("quarter", STANDARD.shorter(4));
        if (bars <= 4) {
            rules.put("refined", new Discretisation(96, 0.75, 0.25, 0.25));
        }
        return rules;
    }

    static StudyResults of(Site site, EarthCache cache) {
        List<Result> results = new ArrayList<>();
        try {
            SiteEarth earth = SiteEarth.of(site, Bound.NOMINAL, new Inputs(), cache);
            if (earth.fields().isPresent()) {
                EarthElectrodes standard = earth.fields().get();
                add("standard", standard, standard, earth, results);
                List<Bar> bars = earth.bars();
                int quarter = EarthElectrodes.elementCount(earth.soil(), bars, STANDARD.shorter(4));
                rules(bars.size()).forEach((word, rule) -> {
                    int count = EarthElectrodes.elementCount(earth.soil(), bars, rule);
                    if (count <= MOST && (!word.equals("refined") || count > quarter)) {
                        add(word, EarthElectrodes.of(earth.soil(), bars, rule), standard, earth, results);
                    }
                });
            }
        } catch (MissingInput missing) {
            return StudyResults.EMPTY; // told where the resistances themselves are asked for
        }
        return new StudyResults(results, List.of(), List.of(), List.of(), List.of());
    }

    private static void add(
            String word, EarthElectrodes solved, EarthElectrodes standard, SiteEarth earth, List<Result> results) {
        for (String name : solved.names()) {
            String id = "electrode." + name + ".convergence." + word;
            double value = solved.resistances().mutual(name, name);
            results.add(result(id + ".elements", earth, solved.elementCount(), ""));
            results.add(result(id + ".resistance", earth, value, "ohm"));
            results.add(
                    result(id + ".standard-apart", earth, standard.resistances().mutual(name, name) / value - 1, ""));
        }
    }

    private static Result result(String id, SiteEarth earth, double value, String unit) {
        return Result.of(id, Case.NONE, earth.at(), value, unit, "thin-wire Galerkin, kernel of the tube", METHOD);
    }
}
