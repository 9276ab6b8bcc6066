package earthing.report;

import earthing.compliance.Finding;
import earthing.compliance.Status;
import earthing.quantity.Source;
import earthing.quantity.Worked;
import earthing.site.Site;
import earthing.site.file.ReadOutcome;
import earthing.site.file.SiteFile;
import earthing.study.Assumption;
import earthing.study.Case;
import earthing.study.Curve;
import earthing.study.Gap;
import earthing.study.Result;
import earthing.study.StudyResults;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** A made-up site with made-up results, enough to fill every section. The numbers mean nothing. */
final class Fixtures {

    static final Source STANDARD = Source.standard("EN 50522:2022", "figure 4", Source.Status.FROM_MEMORY);
    static final Source PRACTICE = Source.commonPractice("separation of the control cable");
    static final Source TOOL = Source.tool("thin-wire solution");
    static final Source PAPER =
            Source.publication("Sunde, Earth conduction effects, 1949", "p. 75", Source.Status.FROM_MEMORY);

    static final String HASH = "0123456789abcdef".repeat(4);

    static final String SITE_FILE = """
            file-version: 1
            site: {name: "Fernmoor crossing & <switch> 3", pole: "3", stage: design}
            system:
              voltage: 22 kV
              frequency: 50 Hz
              earth-fault-current: {low: 200 A, nominal: 300 A, high: 340 A, origin: data-sheet}
              neutral: {method: resistor, resistance: unknown}
            protection: {clearing-time: 0.5 s}
            soil:
              layers:
                - resistivity: {low: 90 ohm.m, nominal: 110 ohm.m, high: 140 ohm.m, origin: measured, date: 2026-03-02}
                  thickness: 1.6 m
                - resistivity: {low: 35 ohm.m, nominal: 45 ohm.m, high: 60 ohm.m, origin: assumed}
            pole: {material: wood, height: 11 m, burial: 1.8 m}
            tank: {height: 9 m}
            line: {height: 10.4 m}
            arresters: {side: both, residual-voltage: 75 kV, line-lead: 0.3 m, earth-lead: 0.3 m, earthed-at: tank}
            main-earth:
              conductor: {material: copper, area: 35 mm2}
              segments:
                - {name: upper, from-height: 9 m, to-height: 3 m, joint: compression, intact: yes}
                - {name: lower, from-height: 3 m, to-height: 0 m, joint: exothermic, intact: no}
              guard-height: 2.5 m
              electrode: main
            electrodes:
              - name: main
                rod: {length: 3 m, diameter: 16 mm, top-depth: 0.5 m}
              - name: cubicle
                at: {x: 5 m, y: 0 m}
                rod: {length: 1.5 m, diameter: 16 mm, top-depth: 0.5 m}
            cubicle: {height: 3 m, earth: both, tee-length: 0.2 m, electrode: cubicle, other-paths: [steel water pipe]}
            control-cable:
              separation: 0.2 m
              length: 7.3 m
              screen: {bond: both, area: 6 mm2}
            stays:
              - {name: stay east, top-height: 9 m, anchor-distance: 6 m, insulated: yes}
            antenna: {height: 10.8 m, suppressor: bulkhead}
            criteria:
              touch: en-50522-2022
              departures:
                - {finding: separation.control-cable, reference: ENG-2031, date: 2026-03-02}
            """;

    private Fixtures() {}

    static Site site(String text) {
        ReadOutcome outcome = SiteFile.read(text, "fernmoor.yaml");
        if (outcome instanceof ReadOutcome.Valid read) {
            return read.site();
        }
        throw new IllegalStateException(
                ((ReadOutcome.Invalid) outcome).problems().toString());
    }

    static ReportInput input() {
        return new ReportInput(site(SITE_FILE), "fernmoor.yaml", SITE_FILE, HASH, results(), findings(), "0.1.0");
    }

    static Case kase(String... keysAndWords) {
        Case result = Case.NONE;
        for (int i = 0; i < keysAndWords.length; i += 2) {
            result = result.with(keysAndWords[i], keysAndWords[i + 1]);
        }
        return result;
    }

    static StudyResults results() {
        List<Result> results = new ArrayList<>();
        results.add(Result.of("electrode.main.resistance", Case.NONE, "low", 20, "ohm", "thin wire", TOOL));
        results.add(Result.of("electrode.main.resistance", Case.NONE, "nominal", 30, "ohm", "thin wire", TOOL));
        results.add(Result.of("electrode.main.resistance", Case.NONE, "high", 48, "ohm", "thin wire", TOOL));
        results.add(Result.of("soil.layer.1.resistivity", Case.NONE, "nominal", 110, "ohm.m", "layers as given", TOOL));
        results.add(Result.of("electrode.mutual.main.cubicle", Case.NONE, "nominal", 3.2, "ohm", "thin wire", TOOL));
        results.add(Result.of("fault.single.current", kase("fault", "single"), "high", 320, "A", "loop", TOOL)
                .withWorked(Worked.of("I", "U / sqrt(3) / R")
                        .with("U", 22000, "V")
                        .with("R", 39.69, "ohm")
                        .gives(320, "A")));
        results.add(
                Result.of("fault.single.clearing-time", kase("fault", "single"), "high", 0.5, "s", "as given", TOOL));
        results.add(Result.of("epr.main", kase("fault", "single"), "high", 10240, "V", "loop", TOOL));
        results.add(Result.of("touch.cubicle.voltage", kase("fault", "single"), "high", 3400, "V", "thin wire", TOOL));
        results.add(
                Result.of("touch.cubicle.permissible", kase("fault", "single"), "high", 220, "V", "table", STANDARD));
        results.add(
                Result.of("conductor.upper.final-temperature", Case.NONE, "high", 74, "degC", "adiabatic", STANDARD));
        results.add(Result.of("circuit.upper.self-inductance", Case.NONE, "nominal", 8.9e-6, "H", "filament", TOOL));
        double[] open = {6450, 41000, 5200, 0};
        for (int i = 0; i < 3; i++) {
            String arrangement = ResultTable.ARRANGEMENTS.get(i);
            for (String wave : List.of("8/20", "0.25/100")) {
                Case kase = kase("wave", wave, "entry", "tank", "arrangement", arrangement);
                results.add(Result.of(
                                "surge.cable-end.trip-coil.cubicle.open-voltage",
                                kase,
                                "nominal",
                                open[i],
                                "V",
                                "pole circuit",
                                TOOL)
                        .withHandValue(open[i] * 1.02));
                results.add(Result.of(
                        "surge.cable-end.trip-coil.cubicle.resistive",
                        kase,
                        "nominal",
                        open[i] / 9,
                        "V",
                        "pole circuit",
                        TOOL));
                results.add(Result.of(
                        "surge.cable-end.trip-coil.cubicle.inductive",
                        kase,
                        "nominal",
                        open[i] * 8 / 9,
                        "V",
                        "pole circuit",
                        TOOL));
                results.add(Result.of(
                        "surge.cable-end.trip-coil.cubicle.short-circuit-current",
                        kase,
                        "nominal",
                        3900,
                        "A",
                        "pole circuit",
                        TOOL));
                results.add(Result.of("surge.tank.peak", kase, "nominal", 345000, "V", "pole circuit", TOOL));
                results.add(Result.of("surge.cubicle.peak", kase, "nominal", 301000, "V", "pole circuit", TOOL));
            }
            Case fault = kase("fault", "single", "arrangement", arrangement);
            results.add(Result.of("cable.power-frequency.voltage", fault, "high", open[i] / 5, "V", "loop", TOOL));
            results.add(Result.of("touch.cubicle.voltage", fault, "high", 3000 + i, "V", "thin wire", TOOL));
            results.add(Result.of("touch.cubicle.permissible", fault, "high", 220, "V", "table", STANDARD));
        }
        results.add(Result.of(
                "surge.cubicle.peak",
                kase("wave", "8/20", "arrangement", "both", "broken", "tee"),
                "nominal",
                280000,
                "V",
                "pole circuit",
                TOOL));
        results.add(Result.of(
                "epr.main", kase("fault", "single"), "electrode-resistance=60 ohm", 15000, "V", "loop", TOOL));
        results.add(Result.of("something.new", Case.NONE, "nominal", 1.5, "", "unheard of", PAPER));
        return new StudyResults(
                results,
                List.of(waveforms(), profile(), temperature(), permissible()),
                List.of(new Gap(
                        "surge.cable-end",
                        kase("arrangement", "unearthed"),
                        "An unearthed cubicle needs its capacitances; without them there is no value.",
                        List.of("cubicle.capacitance-to-earth", "cubicle.capacitance-to-cable"))),
                List.of(
                        new Assumption("line.surge-impedance", "450 ohm", PRACTICE),
                        new Assumption("", "lumped pole", TOOL)),
                List.of("The lumped pole holds for fronts of 0.5 µs and more; 0.25/100 lies outside."));
    }

    static Curve waveforms() {
        List<Curve.Trace> traces = new ArrayList<>();
        for (int k = 0; k < 4; k++) {
            double[] t = new double[2000];
            double[] u = new double[2000];
            for (int i = 0; i < t.length; i++) {
                t[i] = i * 25e-9;
                double s = t[i] / (6e-6 + k * 2e-6);
                u[i] = 9000 * (1 - 0.1 * k) * (3 - s) * s * s * Math.exp(-s);
            }
            traces.add(new Curve.Trace(
                    ResultTable.ARRANGEMENTS.get(k) + (k == 1 ? " with a rather long name that goes on" : ""), t, u));
        }
        return new Curve(
                "surge.cable-end.waveforms",
                "Voltage at the cubicle end, open, 8/20",
                "Time",
                "s",
                "Voltage core to chassis",
                "V",
                traces);
    }

    private static Curve profile() {
        double[] x = new double[101];
        double[] y = new double[101];
        double[] limit = new double[101];
        for (int i = 0; i < x.length; i++) {
            x[i] = i * 0.2;
            y[i] = 10000 / (1 + x[i]);
            limit[i] = 220;
        }
        return new Curve(
                "touch.profile",
                "Surface potential along x",
                "Distance from the pole",
                "m",
                "Potential",
                "V",
                List.of(new Curve.Trace("surface potential", x, y), new Curve.Trace("permissible touch", x, limit)));
    }

    private static Curve temperature() {
        return new Curve(
                "conductor.history",
                "Temperature over the reclose sequence",
                "Time",
                "s",
                "Temperature",
                "degC",
                List.of(new Curve.Trace(
                        "upper", new double[] {0, 0.5, 1.5, 2.0, 20}, new double[] {30, 52, 51, 74, 60})));
    }

    private static Curve permissible() {
        double[] t = {0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10};
        double[] u = {716, 654, 537, 220, 117, 96, 86, 85};
        return new Curve(
                "safety.permissible",
                "Permissible touch voltage",
                "Time",
                "s",
                "Voltage",
                "V",
                List.of(new Curve.Trace("EN 50522:2022", t, u)));
    }

    static Finding finding(String id, Finding.Group group, Status status, double value, double limit, String unit) {
        return new Finding(
                id,
                group,
                "subject of " + id,
                status,
                OptionalDouble.of(value),
                OptionalDouble.of(limit),
                unit,
                OptionalDouble.of((limit - value) / limit),
                kase("fault", "single"),
                "high",
                STANDARD,
                Optional.of(Worked.of("U", "I * R")
                        .with("I", 320, "A")
                        .with("R", value / 320, "ohm")
                        .gives(value, unit)),
                "Value and limit were compared.",
                status == Status.NOT_MET ? "Lower the resistance of the main electrode." : "");
    }

    static Finding plain(String id, Finding.Group group, Status status, Source basis) {
        return new Finding(
                id,
                group,
                "subject of " + id,
                status,
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                "",
                OptionalDouble.empty(),
                Case.NONE,
                "",
                basis,
                Optional.empty(),
                "This was found on the drawing.",
                "Fill in control-cable.screen.bond.");
    }

    static List<Finding> findings() {
        return List.of(
                finding("touch.cubicle", Finding.Group.PERSONAL_SAFETY, Status.NOT_MET, 3400, 220, "V"),
                finding("step.worst", Finding.Group.PERSONAL_SAFETY, Status.MET, 800, 3000, "V"),
                finding("conductor.upper.heating", Finding.Group.CONDUCTOR_HEATING, Status.MET, 74, 250, "degC"),
                plain("surge.cable-end.trip-coil", Finding.Group.SURGE, Status.INSUFFICIENT_DATA, TOOL),
                plain("path.contingency.tee", Finding.Group.CONTINGENCY, Status.NOT_MET, TOOL),
                plain("separation.control-cable", Finding.Group.EARTH_PATHS, Status.ACCEPTED_DEPARTURE, PRACTICE),
                plain("antenna.suppressor", Finding.Group.OTHER, Status.NOT_APPLICABLE, PRACTICE),
                plain("test.continuity", Finding.Group.ELECTRODE, Status.DUE_LATER, PRACTICE),
                plain("corrosion.couple", Finding.Group.ELECTRODE, Status.NOT_ASSESSED, STANDARD));
    }
}
