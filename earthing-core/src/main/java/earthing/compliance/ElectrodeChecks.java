package earthing.compliance;

import earthing.compliance.Finding.Group;
import earthing.quantity.Measure;
import earthing.quantity.Numbers;
import earthing.quantity.Source;
import earthing.quantity.Worked;
import earthing.site.Criteria;
import earthing.site.Electrode;
import earthing.site.Measurement;
import earthing.site.MeasurementKind;
import earthing.site.MeasurementMethod;
import earthing.site.Site;
import earthing.site.Soil;
import earthing.site.YesNo;
import earthing.study.EarthPaths;
import earthing.study.EarthPaths.Member;
import earthing.study.EarthPaths.Role;
import earthing.study.Result;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** Soil, electrode and the readings taken of them. */
final class ElectrodeChecks {

    private static final Source OWNER = Source.owner("criteria.electrode-resistance");
    private static final Source AGREEMENT = Source.tool(
            "band of 10 % between closed form and numeric solution, set here, no published source; docs/theory/electrode.md");
    private static final Source SURVEY =
            Source.standard("IEEE Std 81", "resistivity measurements", Source.Status.FROM_MEMORY);
    private static final Source READING =
            Source.standard("IEEE Std 81", "fall-of-potential and clamp-on methods", Source.Status.FROM_MEMORY);
    private static final Source PREDICTION = Source.tool("predicted band of the model over the declared bounds");

    private static final Source CONTINUITY = Source.commonPractice(
            "a bond reads at most twice the computed resistance of its conductor; below 10 mohm the test leads decide");

    /** Band between the closed form and the numeric solution that needs no explanation [1]. */
    static final double AGREEMENT_BAND = 0.10;
    /** Position of the potential probe as a fraction of that of the current probe, uniform soil [1]. */
    static final double PROBE_RATIO = 0.618;

    /** Below this the leads and clips of the test decide what is read [Ω]. */
    static final double TEST_LEADS = 0.010;

    private ElectrodeChecks() {}

    static List<Finding> resistance(Design design) {
        List<Finding> findings = new ArrayList<>();
        Site site = design.site();
        Optional<String> main = EarthPaths.mainElectrode(site);
        if (main.isEmpty()) {
            return List.of(new Draft("electrode.resistance", Group.ELECTRODE, "main electrode", OWNER)
                    .missing("the file describes no electrode", "electrodes"));
        }
        Criteria criteria = site.criteria();
        Measure owner = criteria == null ? null : criteria.electrodeResistance();
        for (Electrode electrode : site.electrodes()) {
            Draft draft = new Draft("electrode.resistance", Group.ELECTRODE, "electrode " + electrode.name(), OWNER);
            String id = "electrode." + electrode.name() + ".resistance";
            Optional<Result> worst = design.results().of(id).stream().max(Comparator.comparingDouble(Result::value));
            if (worst.isEmpty()) {
                findings.add(draft.gap(design.gapsOf(id), id));
                continue;
            }
            Result result = worst.get();
            draft.in(result.circumstances(), result.at()).value(result.value(), result.unit());
            result.worked().ifPresent(draft::worked);
            boolean isMain = electrode.name().equals(main.get());
            if (!isMain) {
                findings.add(draft.notApplicable("the owner's value belongs to the main electrode"));
            } else if (owner == null || !owner.isKnown()) {
                findings.add(draft.missing(
                        "the owner's highest resistance is not given; values such as 1, 10, 25 and 30 ohm belong to"
                                + " different kinds of system",
                        "criteria.electrode-resistance"));
            } else {
                findings.add(draft.advice("lengthen or add electrodes, or measure the soil to narrow its bounds")
                        .atMost(result.value(), owner.nominal(), "ohm", "highest value over soil and season"));
            }
        }
        return findings;
    }

    static List<Finding> modelAgreement(Design design) {
        List<Finding> findings = new ArrayList<>();
        for (Electrode electrode : design.site().electrodes()) {
            String id = "electrode." + electrode.name() + ".resistance";
            Draft draft =
                    new Draft("electrode.model-agreement", Group.ELECTRODE, "electrode " + electrode.name(), AGREEMENT);
            Optional<Result> numeric = at(design, id, "nominal");
            Optional<Result> formula = at(design, id + ".formula", "nominal");
            if (numeric.isEmpty()) {
                findings.add(draft.gap(design.gapsOf(id), id));
            } else if (formula.isEmpty()) {
                findings.add(draft.notApplicable("no published closed form covers this shape in this soil"));
            } else {
                double n = numeric.get().value();
                double f = formula.get().value();
                findings.add(draft.worked(Worked.of("d", "abs(R_f - R_n) / R_n")
                                .with("R_f", f, "ohm")
                                .with("R_n", n, "ohm")
                                .gives(Math.abs(f - n) / n, ""))
                        .in(numeric.get().circumstances(), "nominal")
                        .advice("look at the shape and the validity of the closed form; the numeric value is used")
                        .atMost(
                                Math.abs(f - n) / n,
                                AGREEMENT_BAND,
                                "",
                                "closed form " + Numbers.brief(f) + " ohm, numeric " + Numbers.brief(n) + " ohm; "
                                        + formula.get().model()));
            }
        }
        if (findings.isEmpty()) {
            findings.add(new Draft("electrode.model-agreement", Group.ELECTRODE, "electrode", AGREEMENT)
                    .missing("the file describes no electrode", "electrodes"));
        }
        return findings;
    }

    private static Optional<Result> at(Design design, String id, String bound) {
        return design.results().of(id).stream()
                .filter(r -> r.at().equals(bound))
                .findFirst();
    }

    static List<Finding> surveyQuality(Design design) {
        Draft draft = new Draft("soil.survey-quality", Group.ELECTRODE, "soil survey", SURVEY);
        Soil soil = design.site().soil();
        if (soil == null) {
            return List.of(draft.missing("the file does not describe the soil", "soil.resistivity"));
        }
        boolean layered = !soil.layers().isEmpty();
        Measure value = layered ? soil.layers().get(0).resistivity() : soil.resistivity();
        if (value == null || !value.isKnown()) {
            return List.of(draft.missing(
                    "the resistivity is not known", layered ? "soil.layers.resistivity" : "soil.resistivity"));
        }
        List<String> missing = new ArrayList<>();
        if (value.origin() == Measure.Origin.ASSUMED || value.origin() == Measure.Origin.UNSTATED) {
            missing.add("soil.resistivity.origin");
        }
        if (soil.survey() == null) {
            missing.add("soil.survey");
        }
        if (soil.surveyDate() == null) {
            missing.add("soil.survey-date");
        }
        if (soil.season() == null) {
            missing.add("soil.season");
        }
        if (!value.hasSpread()) {
            missing.add("soil.resistivity.low and high");
        }
        if (missing.isEmpty()) {
            return List.of(draft.met("surveyed " + soil.surveyDate()
                    + ", with bounds and season; readings themselves are" + " not part of the file"));
        }
        return List.of(draft.missing(
                "method, date, season or bounds of the resistivity are not told", missing.toArray(String[]::new)));
    }

    static List<Finding> testValidity(Design design) {
        List<Finding> findings = new ArrayList<>();
        for (Measurement reading : readings(design, MeasurementKind.ELECTRODE_RESISTANCE)) {
            Draft draft = new Draft("test.validity", Group.ELECTRODE, "reading of " + reading.of(), READING);
            findings.add(validity(draft, reading));
        }
        if (findings.isEmpty()) {
            findings.add(noReading(
                    design, new Draft("test.validity", Group.ELECTRODE, "electrode reading", READING), "electrode"));
        }
        return findings;
    }

    private static Finding validity(Draft draft, Measurement reading) {
        if (reading.isolated() == YesNo.UNKNOWN) {
            return draft.missing("whether the electrode was isolated is declared unknown", "measurements.isolated");
        }
        if (reading.method() == MeasurementMethod.CLAMP_ON && reading.isolated() == YesNo.YES) {
            return draft.advice("measure by fall of potential")
                    .notMet("a clamp-on reading needs a loop through other earths; an isolated electrode has none");
        }
        if (reading.method() != MeasurementMethod.CLAMP_ON && reading.isolated() == YesNo.NO) {
            return draft.advice("measure again with the electrode isolated, line out of service and earthed elsewhere")
                    .notMet("the electrode was not isolated; the reading includes everything joined to it");
        }
        if (reading.method() != MeasurementMethod.FALL_OF_POTENTIAL) {
            return draft.met(
                    reading.method() == MeasurementMethod.CLAMP_ON
                            ? "clamp-on with the loop closed through other earths; the loop resistance bounds the electrode from"
                                    + " above"
                            : "the method fits the electrode");
        }
        Measure current = reading.currentProbeDistance();
        Measure potential = reading.potentialProbeDistance();
        if (current == null || potential == null || !current.isKnown() || !potential.isKnown()) {
            return draft.missing(
                    "the distances of the probes are not given",
                    "measurements.current-probe-distance",
                    "measurements.potential-probe-distance");
        }
        double ratio = potential.nominal() / current.nominal();
        return draft.at(Measure.Bound.NOMINAL)
                .advice("repeat with the potential probe at 62 % of the distance of the current probe")
                .worked(Worked.of("d", "abs(p / c - k)")
                        .with("p", potential.nominal(), "m")
                        .with("c", current.nominal(), "m")
                        .with("k", PROBE_RATIO, "")
                        .gives(Math.abs(ratio - PROBE_RATIO), ""))
                .atMost(
                        Math.abs(ratio - PROBE_RATIO),
                        0.05,
                        "",
                        "potential probe at " + Numbers.brief(100 * ratio)
                                + " % of the distance; the 62 % rule holds in" + " uniform soil");
    }

    static List<Finding> testAgreement(Design design) {
        List<Finding> findings = new ArrayList<>();
        for (Measurement reading : readings(design, MeasurementKind.ELECTRODE_RESISTANCE)) {
            Draft draft = new Draft("test.agreement", Group.ELECTRODE, "reading of " + reading.of(), PREDICTION);
            String id = "electrode." + reading.of() + ".resistance";
            List<Result> predicted = design.results().of(id);
            if (predicted.isEmpty()) {
                findings.add(draft.gap(design.gapsOf(id), id));
                continue;
            }
            double low = predicted.stream().mapToDouble(Result::value).min().orElseThrow();
            double high = predicted.stream().mapToDouble(Result::value).max().orElseThrow();
            double read = reading.value().nominal();
            String band = "predicted " + Numbers.brief(low) + " to " + Numbers.brief(high) + " ohm";
            if (read < low) {
                findings.add(draft.at(Measure.Bound.NOMINAL)
                        .advice("look for a second path that was joined during the reading")
                        .atLeast(read, low, "ohm", band));
            } else {
                findings.add(draft.at(Measure.Bound.NOMINAL)
                        .advice("look at the electrode, its joints and the soil; correct the model")
                        .atMost(read, high, "ohm", band));
            }
        }
        if (findings.isEmpty()) {
            findings.add(noReading(
                    design,
                    new Draft("test.agreement", Group.ELECTRODE, "electrode reading", PREDICTION),
                    "electrode"));
        }
        return findings;
    }

    static List<Finding> testContinuity(Design design) {
        List<Finding> findings = new ArrayList<>();
        for (Measurement reading : readings(design, MeasurementKind.BOND_CONTINUITY)) {
            Draft draft = new Draft("test.continuity", Group.EARTH_PATHS, "bond " + reading.of(), CONTINUITY);
            List<Result> pieces = design.paths().members().stream()
                    .filter(member -> covers(reading.of(), member))
                    .flatMap(
                            member -> design
                                    .results()
                                    .of("conductor." + ConstructionChecks.key(member.name()) + ".resistance")
                                    .stream())
                    .toList();
            if (pieces.isEmpty()) {
                findings.add(draft.missing("no conductor of this name is described", "measurements.of"));
                continue;
            }
            double computed = pieces.stream().mapToDouble(Result::value).sum();
            double most = Math.max(2 * computed, TEST_LEADS);
            findings.add(draft.at(Measure.Bound.NOMINAL)
                    .advice("clean and remake the joints, then measure again")
                    .worked(Worked.of("R_max", "max(2 * R_c, R_0)")
                            .with("R_c", computed, "ohm")
                            .with("R_0", TEST_LEADS, "ohm")
                            .gives(most, "ohm"))
                    .atMost(
                            reading.value().nominal(),
                            most,
                            "ohm",
                            "computed resistance of the conductor " + Numbers.brief(1000 * computed) + " mohm"));
        }
        if (findings.isEmpty()) {
            findings.add(noReading(
                    design, new Draft("test.continuity", Group.EARTH_PATHS, "bonds", CONTINUITY), "bond continuity"));
        }
        return findings;
    }

    /** Whether a continuity reading speaks for a member: by its name, or as part of what the site file names. */
    static boolean covers(String reading, Member member) {
        return switch (reading) {
            case "main-earth" -> member.role() == Role.MAIN_EARTH;
            case "own-lead" -> member.role() == Role.OWN_LEAD;
            default ->
                member.name().equals(reading)
                        || member.name().equals(reading + " above the tee")
                        || member.name().equals(reading + " below the tee");
        };
    }

    private static Finding noReading(Design design, Draft draft, String what) {
        return design.beforeTests()
                ? draft.dueLater("the " + what + " is measured when it has been built")
                : draft.missing("no reading of the " + what + " is given", "measurements");
    }

    private static List<Measurement> readings(Design design, MeasurementKind kind) {
        return design.site().measurements().stream()
                .filter(m -> m.kind() == kind && m.value().isKnown())
                .toList();
    }
}
