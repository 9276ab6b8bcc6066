package earthing.compliance;

import earthing.compliance.Finding.Group;
import earthing.quantity.Measure;
import earthing.quantity.Numbers;
import earthing.quantity.Source;
import earthing.quantity.Worked;
import earthing.site.Criteria;
import earthing.site.Measurement;
import earthing.site.MeasurementKind;
import earthing.site.MeasurementMethod;
import earthing.site.YesNo;
import earthing.study.EarthPaths;
import earthing.study.Gap;
import earthing.study.ResistanceBasis;
import earthing.study.Result;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Readings taken on site: whether the method fits, and whether they agree with the model and the owner's value. */
final class TestChecks {

    private static final Source READING =
            Source.standard("IEEE Std 81", "fall-of-potential and clamp-on methods", Source.Status.FROM_MEMORY);
    private static final Source PROBE_RULE = Source.commonPractice(
            "potential probe at 62 % of the distance of the current probe, at most 5 points from it");
    private static final Source PROBE_ERROR =
            Source.commonPractice("at most 5 % error of a fall-of-potential reading through the place of its probes");
    private static final Source PREDICTION = Source.tool("predicted band of the model over the declared bounds");
    private static final Source CONTINUITY = Source.commonPractice(
            "a bond reads at most twice the computed resistance of its conductor; below 10 mohm the test leads decide");
    private static final Source OWNER = Source.owner("criteria.electrode-resistance");

    /** Position of the potential probe as a fraction of that of the current probe, uniform soil [1]. */
    static final double PROBE_RATIO = 0.618;
    /** Greatest departure from it where the shape of the electrode is not known [1]. Common practice. */
    static final double PROBE_BAND = 0.05;
    /** Greatest error through the place of the probes [1]. Common practice. */
    static final double GREATEST_ERROR = 0.05;

    /** Below this the leads and clips of the test decide what is read [Ω]. */
    static final double TEST_LEADS = 0.010;

    private TestChecks() {}

    /** A reading of an electrode with the beginning of the ids of its results. */
    private record Numbered(Measurement reading, String id) {}

    /** The readings of electrodes, counted from 1 for each electrode as the study counts them. */
    private static List<Numbered> numbered(Design design) {
        Map<String, Integer> numbers = new HashMap<>();
        List<Numbered> list = new ArrayList<>();
        for (Measurement reading : design.site().measurements()) {
            if (reading.kind() == MeasurementKind.ELECTRODE_RESISTANCE) {
                int number = numbers.merge(reading.of(), 1, Integer::sum);
                if (reading.value().isKnown()) {
                    list.add(new Numbered(reading, "electrode." + reading.of() + ".reading." + number));
                }
            }
        }
        return list;
    }

    static List<Finding> validity(Design design) {
        List<Finding> findings = new ArrayList<>();
        for (Numbered each : numbered(design)) {
            findings.add(validity(design, each.reading(), each.id()));
        }
        if (findings.isEmpty()) {
            findings.add(noReading(
                    design, new Draft("test.validity", Group.ELECTRODE, "electrode reading", READING), "electrode"));
        }
        return findings;
    }

    private static Draft validityOf(Measurement reading, Source basis) {
        return new Draft("test.validity", Group.ELECTRODE, "reading of " + reading.of(), basis);
    }

    private static Finding validity(Design design, Measurement reading, String id) {
        Draft draft = validityOf(reading, READING);
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
        String where = "potential probe at " + Numbers.brief(100 * ratio) + " % of the distance";
        Optional<Result> error =
                design.results().of(id + ".probe-error").stream().findFirst();
        if (error.isPresent()) {
            double e = error.get().value();
            Optional<Result> place =
                    design.results().of(id + ".right-place").stream().findFirst();
            return validityOf(reading, PROBE_ERROR)
                    .in(error.get().circumstances(), error.get().at())
                    .advice(place.map(p -> "repeat with the potential probe at "
                                    + Numbers.brief(p.value() * current.nominal()) + " m")
                            .orElse("repeat with the current probe farther out"))
                    .atMost(
                            Math.abs(e),
                            GREATEST_ERROR,
                            "",
                            where + "; by the model it reads " + Numbers.brief(Math.abs(100 * e)) + " % "
                                    + (e < 0 ? "low" : "high") + ", on this electrode and soil the right place is "
                                    + place.map(p -> Numbers.brief(100 * p.value()) + " %")
                                            .orElse("nowhere on the line"));
        }
        return validityOf(reading, PROBE_RULE)
                .at(Measure.Bound.NOMINAL)
                .advice("repeat with the potential probe at 62 % of the distance of the current probe")
                .worked(Worked.of("d", "abs(p / c - k)")
                        .with("p", potential.nominal(), "m")
                        .with("c", current.nominal(), "m")
                        .with("k", PROBE_RATIO, "")
                        .gives(Math.abs(ratio - PROBE_RATIO), ""))
                .atMost(Math.abs(ratio - PROBE_RATIO), PROBE_BAND, "", where + "; the 62 % rule holds in uniform soil");
    }

    static List<Finding> agreement(Design design) {
        List<Finding> findings = new ArrayList<>();
        for (Numbered each : numbered(design)) {
            findings.add(band(design, each.reading(), each.id()));
            worstSeason(design, each.reading(), each.id()).ifPresent(findings::add);
        }
        if (findings.isEmpty()) {
            findings.add(noReading(
                    design,
                    new Draft("test.agreement", Group.ELECTRODE, "electrode reading", PREDICTION),
                    "electrode"));
        }
        return findings;
    }

    private static Finding band(Design design, Measurement reading, String id) {
        Draft draft = new Draft("test.agreement", Group.ELECTRODE, "reading of " + reading.of(), PREDICTION);
        if (reading.isolated() == (reading.method() == MeasurementMethod.CLAMP_ON ? YesNo.YES : YesNo.NO)) {
            return draft.notApplicable("the method does not fit, see test.validity; the reading proves nothing");
        }
        String resistance = "electrode." + reading.of() + ".resistance";
        List<Result> predicted = design.results().of(id + ".predicted");
        boolean forProbes = !predicted.isEmpty();
        if (!forProbes) {
            // Ground that was scaled to a reading cannot be held against it.
            List<Result> before = design.results().of("soil.calibration." + reading.of() + ".resistance-before");
            predicted = before.isEmpty() ? design.results().of(resistance) : before;
        }
        if (predicted.isEmpty()) {
            return draft.gap(design.gapsOf(resistance), resistance);
        }
        double low = predicted.stream().mapToDouble(Result::value).min().orElseThrow();
        double high = predicted.stream().mapToDouble(Result::value).max().orElseThrow();
        double read = reading.value().nominal();
        String band = "predicted " + Numbers.brief(low) + " to " + Numbers.brief(high) + " ohm"
                + (forProbes ? " for this place of the probes and state of the ground" : "")
                + design.results().of(id + ".soil-factor").stream()
                        .findFirst()
                        .map(k -> "; the reading says that the ground has " + Numbers.brief(k.value())
                                + " times the nominal resistivity")
                        .orElse("")
                + "; nominal by "
                + ResistanceBasis.of(design.results(), reading.of(), "nominal");
        draft.at(Measure.Bound.NOMINAL);
        if (read < low) {
            return draft.advice("look for a second path that was joined during the reading")
                    .atLeast(read, low, "ohm", band);
        }
        if (reading.method() == MeasurementMethod.CLAMP_ON) {
            return draft.atLeast(
                    read, low, "ohm", band + "; a clamp reads the loop, which may be more than the electrode");
        }
        return draft.advice("look at the electrode, its joints and the soil; correct the model")
                .atMost(read, high, "ohm", band);
    }

    /** The reading at the worst season against the owner's value, which knows no season. */
    private static Optional<Finding> worstSeason(Design design, Measurement reading, String id) {
        Criteria criteria = design.site().criteria();
        Measure owner = criteria == null ? null : criteria.electrodeResistance();
        boolean main = EarthPaths.mainElectrode(design.site())
                .map(reading.of()::equals)
                .orElse(false);
        if (!main || owner == null || !owner.isKnown()) {
            return Optional.empty();
        }
        Draft draft = new Draft(
                "test.agreement", Group.ELECTRODE, "reading of " + reading.of() + " at the worst season", OWNER);
        Optional<Result> worst =
                design.results().of(id + ".worst-season").stream().findFirst();
        if (worst.isEmpty()) {
            List<Gap> gaps = design.gapsOf(id + ".worst-season").stream()
                    .filter(gap -> gap.id().startsWith(id))
                    .toList();
            return gaps.isEmpty() ? Optional.empty() : Optional.of(draft.gap(gaps, id));
        }
        draft.in(worst.get().circumstances(), worst.get().at());
        worst.get().worked().ifPresent(draft::worked);
        return Optional.of(draft.advice("lengthen or add electrodes; a reading in the wet season flatters")
                .atMost(
                        worst.get().value(),
                        owner.nominal(),
                        "ohm",
                        "read " + Numbers.brief(reading.value().nominal())
                                + " ohm, brought to the worst season by the model"));
    }

    static List<Finding> continuity(Design design) {
        List<Finding> findings = new ArrayList<>();
        for (Measurement reading : readings(design, MeasurementKind.BOND_CONTINUITY)) {
            Draft draft = new Draft("test.continuity", Group.EARTH_PATHS, "bond " + reading.of(), CONTINUITY);
            List<Result> pieces = design.paths().members().stream()
                    .filter(member -> member.isPartOf(reading.of()))
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
