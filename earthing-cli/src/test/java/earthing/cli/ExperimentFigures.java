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
import earthing.study.SurgeOutlook;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;

/** The figures of the experiments: results of their sites, with one value of the file changed from point to point. */
final class ExperimentFigures {

    private static final String OPEN = "surge.cable-end.core.cubicle.open-voltage";
    private static final Case SLOW = new Case(Map.of("wave", "8/20", "entry", "current-into-tank"));
    private static final Case AS_BUILT =
            new Case(Map.of("entry", "current-into-tank", "arrangement", "shared", "screen-bond", "cubicle"));
    private static final Case LARGEST = new Case(Map.of("fault", "maximum", "arrangement", "shared"));
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
            case "thirty-to-ten" -> thirtyToTen();
            case "where-you-stand" -> whereYouStand();
            case "fast-or-slow" -> fastOrSlow();
            case "broken-wire" -> brokenWire();
            case "four-shots" -> LineChart.of(curve("four-shots", "conductor.temperature-history"), page);
            case "probe-place" -> probePlace();
            case "clamp-reading" -> clampReading();
            case "frozen-ground" -> frozenGround();
            case "unit-slips" -> unitSlips();
            case "nearby-stroke" -> nearbyStroke();
            default -> throw new IllegalArgumentException("no figure for the page " + page);
        };
    }

    private static String secondRod() {
        double[] spacings = {0.5, 1, 1.5, 2, 3, 4, 6, 8, 10, 12, 15};
        double one = value("one-rod", "electrode.main.resistance", Case.NONE);
        DoubleUnaryOperator two = spacing ->
                value("two-rods", "electrode.main.resistance", Case.NONE, "spacing: 3 m", "spacing: " + spacing + " m");
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
        StudyResults results = study("cubicle-both", StudyScope.ALL_ARRANGEMENTS);
        List<BarChart.Group> groups = new ArrayList<>();
        for (Map.Entry<String, String> quantity : List.of(
                Map.entry(OPEN, "open voltage between core and cubicle, 10 kA 8/20"),
                Map.entry("surge.cubicle.peak", "potential of the cubicle against remote earth, 10 kA 8/20"))) {
            List<BarChart.Bar> bars = new ArrayList<>();
            for (String arrangement : List.of("shared", "both", "separate")) {
                Case where = SLOW.with("arrangement", arrangement).with("screen-bond", "cubicle");
                bars.add(bar(words(arrangement), value(results, quantity.getKey(), where, "nominal")));
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
            bars.add(bar(area + " mm², 6 m", value("lead-fat", OPEN, SLOW, "area: 95 mm2", "area: " + area + " mm2")));
        }
        for (int height = 8; height >= 5; height--) {
            bars.add(bar(
                    "16 mm², " + (height - 3) + " m",
                    value("lead-short", OPEN, SLOW, "tank: {height: 6 m}", "tank: {height: " + height + " m}")));
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
                                OPEN,
                                SLOW,
                                "cubicle: {height: 1.5 m",
                                "cubicle: {height: " + height + " m")),
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
                                "cable-near", OPEN, SLOW, "separation: 0.05 m", "separation: " + separation + " m")),
                trace("by hand", separations, separation -> PER_METRE * 6 * Math.log(separation / radius) * STEEPEST));
    }

    private static final String MULTI_EARTHED = """
              earth-fault-current: 2 kA
              x-over-r: 10
              neutral:
                method: multi-earthed
                station-earth-resistance: 0.5 ohm
                conductor:
                  impedance: 0.4 ohm/km
                  reactance: 0.75 ohm/km
                  mutual-resistance: 0 ohm/km
                  mutual-reactance: 0 ohm/km
                  span: 80 m
                  pole-earth-resistance: 40 ohm
                  earthed-every: 3
                  spans-to-source: 300
                  spans-beyond: 300
                  bonded-to-main-earth: yes
                  bond-height: 8 m
            """;

    private static String thirtyToTen() {
        double[] resistances = {1, 2, 5, 10, 20, 30, 50, 100};
        String solid = "  earth-fault-current: 2 kA\n  x-over-r: 10\n  neutral: {method: solid}\n";
        String source = "  three-phase-fault-current: 4 kA\n  x-over-r: 10\n  neutral: ";
        Map<String, String> neutrals = new LinkedHashMap<>();
        neutrals.put("solid, 2 kA", solid);
        neutrals.put("reactor, 12 Ω", source + "{method: reactor, reactance: 12 ohm}\n");
        neutrals.put("resistor, 40 Ω", source + "{method: resistor, resistance: 40 ohm}\n");
        neutrals.put("wire along the line", MULTI_EARTHED);
        neutrals.put("isolated, 30 A", source + "{method: isolated, capacitive-current: 30 A}\n");
        neutrals.put(
                "resonant, 20 A", source + "{method: resonant, residual-current: 20 A, capacitive-current: 200 A}\n");
        List<Curve.Trace> traces = new ArrayList<>();
        neutrals.forEach((name, text) -> traces.add(trace(
                name,
                resistances,
                resistance -> value(
                        "neutral-solid-30",
                        "epr.main",
                        LARGEST,
                        solid,
                        text,
                        "resistance: 30 ohm",
                        "resistance: " + resistance + " ohm"))));
        return chart(
                "thirty-to-ten",
                "Earth potential rise on a 20 kV line by method of the neutral, largest source",
                "resistance of the electrode",
                "ohm",
                "earth potential rise",
                "V",
                traces.toArray(Curve.Trace[]::new));
    }

    private static String whereYouStand() {
        Curve soil = curve("operator-on-soil", "touch.profile");
        Curve mat = curve("operator-on-mat", "touch.profile");
        return chart(
                "where-you-stand",
                "Potential of the ground along a line from the pole, largest source",
                soil.xLabel(),
                soil.xUnit(),
                soil.yLabel(),
                soil.yUnit(),
                trace(soil, "potential of the ground", "ground around the rod"),
                trace(soil, "cubicle to ground", "hand to feet, bare ground"),
                trace(mat, "potential of the ground", "ground with the mat"),
                trace(mat, "cubicle to ground", "hand to feet, with the mat"),
                trace(soil, "permissible touch voltage", "permissible"));
    }

    private static String fastOrSlow() {
        StudyResults results = study("fast-slow", StudyScope.ALL_ARRANGEMENTS);
        List<BarChart.Group> groups = new ArrayList<>();
        groups.add(waves(results, OPEN, "open voltage of a core", "V"));
        groups.add(waves(
                results, "surge.cable-end.core.cubicle.charge", "charge through the core when it is closed", "C"));
        return BarChart.of("fast-or-slow", "Three waves of 10 kA", groups);
    }

    private static BarChart.Group waves(StudyResults results, String id, String title, String unit) {
        List<BarChart.Bar> bars = new ArrayList<>();
        for (String wave : List.of("10/350", "8/20", "0.25/100")) {
            bars.add(bar(wave, value(results, id, AS_BUILT.with("wave", wave), "nominal")));
        }
        return new BarChart.Group(title, unit, bars);
    }

    private static String brokenWire() {
        StudyResults results = study("broken-wire", StudyScope.AS_BUILT);
        List<BarChart.Group> groups = new ArrayList<>();
        for (Map.Entry<String, String> quantity : List.of(
                Map.entry("epr.tank", "tank to remote earth, largest source"),
                Map.entry("epr.cubicle", "cubicle to remote earth"),
                Map.entry("cable.power-frequency.voltage", "across the control cable"))) {
            List<BarChart.Bar> bars = new ArrayList<>();
            bars.add(bar("nothing broken", value(results, quantity.getKey(), LARGEST, "nominal")));
            for (String broken : List.of("upper lead", "lower lead", "tee")) {
                OptionalDouble value =
                        results.one(quantity.getKey(), LARGEST.with("broken", broken), "nominal").stream()
                                .mapToDouble(Result::value)
                                .findFirst();
                bars.add(new BarChart.Bar(broken, value, OptionalDouble.empty(), ""));
            }
            groups.add(new BarChart.Group(quantity.getValue(), "V", bars));
        }
        return BarChart.of("broken-wire", "One path broken, a phase on the tank", groups);
    }

    private static String probePlace() {
        Curve curve = curve("probe-near", "electrode.main.reading.1.curve");
        return chart(
                "probe-place",
                "What the tester shows, current probe 30 m away",
                curve.xLabel(),
                curve.xUnit(),
                curve.yLabel(),
                curve.yUnit(),
                trace(curve, "nominal soil", "shown"),
                trace(curve, "resistance, nominal soil", "resistance of the rod"));
    }

    private static String clampReading() {
        StudyResults two = study("clamp-two-rods", StudyScope.AS_BUILT);
        double first = value(two, "electrode.main.resistance", Case.NONE, "nominal");
        double second = value(two, "electrode.second.resistance", Case.NONE, "nominal");
        double mutual = value(two, "electrode.mutual.main.second", Case.NONE, "nominal");
        return BarChart.of(
                "clamp-reading",
                "Two rods of 3 m, 6 m apart, in 100 ohm.m",
                List.of(new BarChart.Group(
                        "resistance",
                        "ohm",
                        List.of(
                                bar("loop of both rods", first + second - 2 * mutual),
                                bar("one rod", first),
                                bar("both, joined", value("clamp-joined", "electrode.both.resistance", Case.NONE))))));
    }

    private static String frozenGround() {
        double[] lengths = {1, 1.2, 1.5, 2, 2.5, 3, 4, 5, 6};
        return chart(
                "frozen-ground",
                "A rod in 100 ohm.m, the top 0.9 m frozen to 1000 ohm.m in winter",
                "length of the rod",
                "m",
                "resistance",
                "ohm",
                trace("winter", lengths, length -> rod(length, "high")),
                trace("summer", lengths, length -> rod(length, "nominal")));
    }

    private static double rod(double length, String at) {
        StudyResults results =
                study("frozen", StudyScope.AS_BUILT, "rod: {length: 6 m", "rod: {length: " + length + " m");
        return value(results, "electrode.long.resistance", Case.NONE, at);
    }

    private static String unitSlips() {
        String resistivity = "150 ohm.cm}";
        List<BarChart.Bar> bars = new ArrayList<>();
        for (String typed : List.of("150 ohm.m", "15000 ohm.cm", "150 ohm.ft", "150 ohm.cm")) {
            bars.add(bar(
                    typed, value("slip-accepted", "electrode.main.resistance", Case.NONE, resistivity, typed + "}")));
        }
        bars.add(bar(
                "150 ohm.m, radius",
                value(
                        "slip-accepted",
                        "electrode.main.resistance",
                        Case.NONE,
                        resistivity,
                        "150 ohm.m}",
                        "diameter: 16 mm",
                        "diameter: 8 mm")));
        return BarChart.of(
                "unit-slips",
                "What is typed and what comes out",
                List.of(new BarChart.Group("resistance of the same rod", "ohm", bars)));
    }

    private static String nearbyStroke() {
        double[] distances = {60, 80, 100, 150, 200, 300};
        return chart(
                "nearby-stroke",
                "Voltage that a stroke of 31.1 kA to the ground induces in the line",
                "distance of the stroke from the line",
                "m",
                "induced voltage",
                "V",
                trace("current that jumps", distances, distance -> 38.8 * 31.1e3 * 11.5 / distance),
                trace(
                        "current with its front",
                        distances,
                        distance -> value(
                                SurgeOutlook.added(
                                        site("nearby", change(distance)),
                                        study("nearby", StudyScope.AS_BUILT, change(distance))),
                                "surge.induced.voltage",
                                Case.NONE,
                                "nominal")));
    }

    private static String[] change(double distance) {
        return new String[] {"induced-distance: 60 m", "induced-distance: " + distance + " m"};
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

    private static double value(String site, String id, Case where, String... changes) {
        return value(study(site, StudyScope.AS_BUILT, changes), id, where, "nominal");
    }

    private static double value(StudyResults results, String id, Case where, String at) {
        List<Double> values = results.of(id).stream()
                .filter(result -> result.at().equals(at)
                        && result.circumstances().within(where)
                        && result.circumstances().keys().containsKey("broken")
                                == where.keys().containsKey("broken"))
                .map(Result::value)
                .toList();
        assertThat(values).as(id + " where " + where.text()).hasSize(1);
        return values.get(0);
    }

    private static Curve curve(String site, String id) {
        return study(site, StudyScope.ALL_ARRANGEMENTS).curves().stream()
                .filter(curve -> curve.id().equals(id))
                .findFirst()
                .orElseThrow();
    }

    private static Curve.Trace trace(Curve curve, String name, String shown) {
        Curve.Trace trace = curve.traces().stream()
                .filter(each -> each.name().equals(name))
                .findFirst()
                .orElseThrow();
        double[] x = new double[trace.size()];
        double[] y = new double[trace.size()];
        for (int i = 0; i < x.length; i++) {
            x[i] = trace.x(i);
            y[i] = trace.y(i);
        }
        return new Curve.Trace(shown, x, y);
    }

    private static StudyResults study(String name, StudyScope scope, String... changes) {
        return SiteStudy.of(site(name, changes), scope);
    }

    /** A site whose file says something else in places: what it says, what it shall say, and so on. */
    private static Site site(String name, String... changes) {
        try {
            String text =
                    Files.readString(ExperimentPage.FOLDER.resolve("sites").resolve(name + ".yaml"));
            for (int i = 0; i < changes.length; i += 2) {
                assertThat(text).containsOnlyOnce(changes[i]);
                text = text.replace(changes[i], changes[i + 1]);
            }
            return ((ReadOutcome.Valid) SiteFile.read(text, name)).site();
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }
}
