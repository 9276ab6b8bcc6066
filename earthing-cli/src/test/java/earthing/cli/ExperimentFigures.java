package earthing.cli;

import static org.assertj.core.api.Assertions.assertThat;

import earthing.report.figure.BarChart;
import earthing.report.figure.LineChart;
import earthing.site.Site;
import earthing.site.file.ReadOutcome;
import earthing.site.file.SiteFile;
import earthing.study.Case;
import earthing.study.Curve;
import earthing.study.Result;
import earthing.study.SiteStudy;
import earthing.study.StudyResults;
import earthing.study.StudyScope;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;

/** The figures of the experiments: results of their sites, with one value of the file changed from point to point. */
final class ExperimentFigures {

    private static final String OPEN = "surge.cable-end.core.cubicle.open-voltage";
    private static final Case SLOW = new Case(Map.of("wave", "8/20", "entry", "current-into-tank"));
    /** Mutual inductance per length of parallel conductors, µ0/2π [H/m]. */
    private static final double PER_METRE = 0.2e-6;
    /** Steepest rise of 10 kA 8/20 [A/s], as the pages work it out. */
    private static final double STEEPEST = 1.490e9;

    private ExperimentFigures() {}

    static String draw(String page) {
        return switch (page) {
            case "second-rod" -> secondRod();
            case "second-earth" -> secondEarth();
            case "fat-or-short" -> fatOrShort();
            case "cubicle-height" -> cubicleHeight();
            case "near-or-far" -> nearOrFar();
            default -> throw new IllegalArgumentException("no figure for the page " + page);
        };
    }

    private static String secondRod() {
        double[] spacings = {0.5, 1, 1.5, 2, 3, 4, 6, 8, 10, 12, 15};
        double one = value("one-rod", "", "", "electrode.main.resistance", Case.NONE);
        DoubleUnaryOperator two = spacing ->
                value("two-rods", "spacing: 3 m", "spacing: " + spacing + " m", "electrode.main.resistance", Case.NONE);
        return chart(
                "second-rod",
                "Two rods of 3 m in 150 ohm.m against their spacing",
                "spacing of the rods",
                "m",
                "resistance",
                "ohm",
                trace("one rod alone", spacings, spacing -> one),
                trace("two rods, solved", spacings, two),
                trace("half of one rod", spacings, spacing -> one / 2));
    }

    private static String secondEarth() {
        StudyResults results = study("cubicle-both", "", "", StudyScope.ALL_ARRANGEMENTS);
        List<BarChart.Group> groups = new ArrayList<>();
        for (Map.Entry<String, String> quantity : List.of(
                Map.entry(OPEN, "open voltage between core and cubicle, 10 kA 8/20"),
                Map.entry("surge.cubicle.peak", "potential of the cubicle against remote earth, 10 kA 8/20"))) {
            List<BarChart.Bar> bars = new ArrayList<>();
            for (String arrangement : List.of("shared", "both", "separate")) {
                Case where = SLOW.with("arrangement", arrangement).with("screen-bond", "cubicle");
                bars.add(bar(words(arrangement), value(results, quantity.getKey(), where)));
            }
            groups.add(new BarChart.Group(quantity.getValue(), "V", bars));
        }
        return BarChart.of("second-earth", "Three ways to earth the cubicle, one stroke", groups);
    }

    private static String words(String arrangement) {
        return switch (arrangement) {
            case "shared" -> "tee only";
            case "both" -> "tee and own rod";
            default -> "own rod only";
        };
    }

    private static String fatOrShort() {
        List<BarChart.Bar> bars = new ArrayList<>();
        for (String area : List.of("16", "35", "50", "95")) {
            bars.add(bar(area + " mm², 6 m", value("lead-fat", "area: 95 mm2", "area: " + area + " mm2", OPEN, SLOW)));
        }
        for (int height = 8; height >= 5; height--) {
            bars.add(bar(
                    "16 mm², " + (height - 3) + " m",
                    value("lead-short", "tank: {height: 6 m}", "tank: {height: " + height + " m}", OPEN, SLOW)));
        }
        return BarChart.of(
                "fat-or-short",
                "A fatter and a shorter lead",
                List.of(new BarChart.Group(
                        "open voltage of a core, 10 kA 8/20, by area of the lead and length between tank and cubicle",
                        "V",
                        bars)));
    }

    private static String cubicleHeight() {
        double[] heights = {1, 1.5, 2, 3, 4, 5, 6, 7, 8};
        double coefficient = PER_METRE * Math.log(0.2 / Math.sqrt(50e-6 / Math.PI)) * STEEPEST;
        return chart(
                "cubicle-height",
                "Open voltage of a core, 10 kA 8/20, against the height of the cubicle; tank at 9 m",
                "height of the cubicle",
                "m",
                "open voltage",
                "V",
                trace(
                        "solved",
                        heights,
                        height -> value(
                                "cubicle-low",
                                "cubicle: {height: 1.5 m",
                                "cubicle: {height: " + height + " m",
                                OPEN,
                                SLOW)),
                trace("by hand", heights, height -> coefficient * (9 - height)));
    }

    private static String nearOrFar() {
        double[] separations = {0.02, 0.05, 0.1, 0.15, 0.2, 0.3, 0.4, 0.5, 0.6, 0.8, 1};
        double radius = Math.sqrt(50e-6 / Math.PI);
        return chart(
                "near-or-far",
                "Open voltage of a core, 10 kA 8/20, against the distance of the cable from the main earth",
                "distance of the axes",
                "m",
                "open voltage",
                "V",
                trace(
                        "solved",
                        separations,
                        separation -> value(
                                "cable-near", "separation: 0.05 m", "separation: " + separation + " m", OPEN, SLOW)),
                trace("by hand", separations, separation -> PER_METRE * 6 * Math.log(separation / radius) * STEEPEST));
    }

    private static String chart(
            String id, String title, String x, String xUnit, String y, String yUnit, Curve.Trace... traces) {
        return LineChart.of(new Curve(id, title, x, xUnit, y, yUnit, List.of(traces)), id);
    }

    private static Curve.Trace trace(String name, double[] x, DoubleUnaryOperator y) {
        double[] values = new double[x.length];
        for (int i = 0; i < x.length; i++) {
            values[i] = y.applyAsDouble(x[i]);
        }
        return new Curve.Trace(name, x, values);
    }

    private static BarChart.Bar bar(String name, double value) {
        return new BarChart.Bar(name, OptionalDouble.of(value), OptionalDouble.empty(), "");
    }

    private static double value(String site, String was, String is, String id, Case where) {
        return value(study(site, was, is, StudyScope.AS_BUILT), id, where);
    }

    private static double value(StudyResults results, String id, Case where) {
        List<Double> values = results.of(id).stream()
                .filter(result -> result.at().equals("nominal")
                        && result.circumstances().within(where)
                        && !result.circumstances().keys().containsKey("broken"))
                .map(Result::value)
                .toList();
        assertThat(values).as(id + " where " + where.text()).hasSize(1);
        return values.get(0);
    }

    /** The results of a site whose file says something else in one place; the place has to be there once. */
    private static StudyResults study(String name, String was, String is, StudyScope scope) {
        try {
            String text =
                    Files.readString(ExperimentPage.FOLDER.resolve("sites").resolve(name + ".yaml"));
            if (!was.isEmpty()) {
                assertThat(text).containsOnlyOnce(was);
            }
            ReadOutcome outcome = SiteFile.read(was.isEmpty() ? text : text.replace(was, is), name);
            Site site = ((ReadOutcome.Valid) outcome).site();
            return SiteStudy.of(site, scope);
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }
}
