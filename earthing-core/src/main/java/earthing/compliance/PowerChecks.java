package earthing.compliance;

import earthing.compliance.Finding.Group;
import earthing.compliance.Pairs.Pair;
import earthing.quantity.Measure;
import earthing.quantity.Numbers;
import earthing.quantity.Source;
import earthing.site.Criteria;
import earthing.site.NeutralMethod;
import earthing.site.Protection;
import earthing.site.Site;
import earthing.site.TouchCriterion;
import earthing.study.Gap;
import earthing.study.PlaceNames;
import earthing.study.Result;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/** Power frequency: fault, potential rise, touch, step, transfer, control cable, heating. */
final class PowerChecks {

    private static final Source EPR_FLOW = Source.standard(
            "EN 50522:2010",
            "design flow, potential rise against 2 and 4 times the permissible touch voltage",
            Source.Status.FROM_MEMORY);
    private static final Source STEP = Source.standard(
            "EN 50522:2010", "touch voltage governs, no limit for step voltage", Source.Status.FROM_MEMORY);
    private static final Source RISK = Source.publication(
            "Energy Networks Association, EG-0 Power System Earthing Guide, 2010",
            "target of individual risk, appendix C",
            Source.Status.READ);
    private static final Source DETECTION = Source.owner("protection.detection-factor");
    private static final Source TRANSFER = Source.owner("neighbours.limit");
    private static final Source CABLE = Source.owner("control-cable.insulation-level");

    private PowerChecks() {}

    /** EPR above the gate of the criteria set asks for proof of touch; with the proof it is met. */
    static List<Finding> epr(Design design) {
        List<Finding> findings = new ArrayList<>();
        Optional<Result> gate =
                design.results().of("criteria.proven-up-to").stream().findFirst();
        // Without a gate in the set, a rise that is itself permissible needs no proof: no touch voltage exceeds it.
        double provenUpTo = gate.map(Result::value).orElse(1.0);
        Source basis = gate.map(Result::source).orElse(EPR_FLOW);
        for (String node : between(design, "epr.", "")) {
            Draft draft =
                    new Draft("epr." + node, Group.PERSONAL_SAFETY, "potential rise, " + PlaceNames.of(node), basis);
            Optional<Result> worst = design.own("epr." + node).stream().max(Comparator.comparingDouble(Result::value));
            if (worst.isEmpty()) {
                continue;
            }
            Result rise = worst.get();
            draft.in(rise.circumstances(), rise.at()).value(rise.value(), "V");
            rise.worked().ifPresent(draft::worked);
            List<Finding> touch = touch(design).stream()
                    .filter(f -> f.status() != Status.NOT_APPLICABLE)
                    .toList();
            boolean proven = touch.stream().allMatch(f -> f.status() == Status.MET);
            boolean failed = touch.stream().anyMatch(f -> f.status() == Status.NOT_MET);
            Optional<Double> permissible = design.results()
                    .under("touch.")
                    .filter(r -> r.id().endsWith(".permissible") && design.asBuilt(r))
                    .filter(r -> r.circumstances().within(rise.circumstances())
                            || rise.circumstances().within(r.circumstances()))
                    .map(Result::value)
                    .min(Comparator.naturalOrder());
            String ratio = permissible
                    .map(p -> "; " + Numbers.brief(rise.value() / p) + " times the permissible touch voltage "
                            + Numbers.brief(p) + " V")
                    .orElse("");
            if (permissible.isPresent() && rise.value() <= provenUpTo * permissible.get()) {
                findings.add(draft.atMost(
                        rise.value(),
                        provenUpTo * permissible.get(),
                        "V",
                        "within " + Numbers.brief(provenUpTo) + " times the permissible touch voltage"));
            } else if (proven) {
                findings.add(draft.met("touch has been shown at every reachable part" + ratio));
            } else if (failed) {
                findings.add(draft.advice("see the touch findings")
                        .notMet("touch is not met at every reachable part" + ratio));
            } else {
                findings.add(draft.advice("complete the inputs of the touch findings")
                        .ends(Status.INSUFFICIENT_DATA, "touch has to be proved and is not" + ratio));
            }
        }
        if (findings.isEmpty()) {
            findings.add(new Draft("epr.main", Group.PERSONAL_SAFETY, "potential rise", EPR_FLOW)
                    .gap(design.gapsOf("epr."), "epr.main"));
        }
        return findings;
    }

    static List<Finding> detection(Design design) {
        Draft draft = new Draft("fault.detection", Group.PERSONAL_SAFETY, "earth-fault protection", DETECTION);
        List<Gap> never = design.results().gaps().stream()
                .filter(g -> g.id().startsWith("fault.") && g.id().endsWith(".clearing-time"))
                .filter(g -> g.reason().startsWith("never") && !g.id().startsWith("fault.back-up."))
                .toList();
        NeutralMethod method = design.site().system().neutral().method();
        boolean carried = method == NeutralMethod.ISOLATED || method == NeutralMethod.RESONANT;
        if (carried && never.stream().noneMatch(g -> g.id().contains("double-earth-fault"))) {
            return List.of(
                    draft.notApplicable("a single earth fault is carried on by intention in this network; touch is"
                            + " held against the sustained limit, and the double earth fault is cleared"));
        }
        if (!never.isEmpty()) {
            return List.of(draft.in(never.get(0).circumstances(), "")
                    .advice("lower the pickup, add a sensitive earth-fault stage, or lower the electrode's resistance")
                    .notMet(never.get(0).reason()));
        }
        List<Result> ratios = design.results()
                .under("fault.")
                .filter(r -> r.id().endsWith(".detection-ratio") && design.asBuilt(r))
                .toList();
        if (ratios.isEmpty()) {
            Protection protection = design.site().protection();
            if (protection != null && protection.clearingTime() != null && protection.relay() == null) {
                return List.of(draft.missing(
                        "the clearing time is declared for every current; whether the protection sees the smallest one"
                                + " cannot be told without its pickup",
                        "protection.relay.pickup"));
            }
            return List.of(draft.gap(design.gapsOf("fault."), "fault.detection-ratio"));
        }
        Result least =
                ratios.stream().min(Comparator.comparingDouble(Result::value)).orElseThrow();
        draft.in(least.circumstances(), least.at());
        least.worked().ifPresent(draft::worked);
        Measure factor = design.site().protection() == null
                ? null
                : design.site().protection().detectionFactor();
        if (factor == null || !factor.isKnown()) {
            return List.of(draft.value(least.value(), "")
                    .missing(
                            "smallest earth-fault current is " + Numbers.brief(least.value())
                                    + " times the pickup; the owner's factor is not given",
                            "protection.detection-factor"));
        }
        return List.of(draft.advice("lower the pickup or add a sensitive earth-fault stage")
                .atLeast(least.value(), factor.nominal(), "", "smallest earth-fault current over pickup"));
    }

    /** Whether the back-up clears every fault of the site as it is; its time stands in the cases of its own. */
    static List<Finding> backUp(Design design) {
        Draft draft = new Draft("fault.back-up", Group.PERSONAL_SAFETY, "back-up protection", DETECTION);
        Protection protection = design.site().protection();
        if (protection == null || protection.backUp() == null) {
            return List.of(draft.notApplicable("no back-up protection is declared"));
        }
        Optional<Gap> never = design.results().gaps().stream()
                .filter(g -> g.id().startsWith("fault.back-up.") && g.reason().startsWith("never"))
                .findFirst();
        if (never.isPresent()) {
            return List.of(draft.in(never.get().circumstances(), "")
                    .advice("lower the pickup of the back-up protection, or give it a sensitive stage")
                    .notMet("if the first protection fails: " + never.get().reason()));
        }
        Optional<Result> longest = design.results()
                .under("fault.back-up.")
                .filter(r -> r.id().endsWith(".clearing-time") && design.asBuilt(r))
                .max(Comparator.comparingDouble(Result::value));
        if (longest.isEmpty()) {
            return List.of(draft.gap(design.gapsOf("fault."), "fault.back-up.<case>.clearing-time"));
        }
        Result time = longest.get();
        return List.of(draft.in(time.circumstances(), time.at())
                .value(time.value(), "s")
                .met("the back-up clears every earth fault here, at the latest after " + Numbers.brief(time.value())
                        + " s"));
    }

    static List<Finding> touch(Design design) {
        List<Finding> findings = new ArrayList<>();
        for (String part : named(design, "touch.", ".voltage")) {
            boolean earths = part.equals("between-earths");
            findings.add(
                    governed(
                            design,
                            "touch." + part,
                            earths ? "hand to hand between earths" : "touch, " + PlaceNames.of(part),
                            "prospective touch voltage",
                            "faster clearing, a mat or covering at the operator's position, a guard, or a lower potential rise"));
        }
        if (findings.stream().noneMatch(f -> !f.id().equals("touch.between-earths"))) {
            findings.add(new Draft("touch.cubicle", Group.PERSONAL_SAFETY, "touch, cubicle", EPR_FLOW)
                    .gap(design.gapsOf("touch."), "touch.cubicle.voltage"));
        }
        if (findings.stream().noneMatch(f -> f.id().equals("touch.between-earths"))) {
            findings.add(new Draft("touch.between-earths", Group.PERSONAL_SAFETY, "hand to hand", EPR_FLOW)
                    .notApplicable("no two earth systems are within reach of each other"));
        }
        return findings;
    }

    static List<Finding> step(Design design) {
        boolean limited = !design.own("step.worst.permissible").isEmpty();
        Optional<Result> worst =
                design.own("step.worst.voltage").stream().max(Comparator.comparingDouble(Result::value));
        if (!limited && worst.isPresent() && touchCurveOnly(design)) {
            // EN 50522 limits touch only; with touch met, step is met as a rule, since it passes one foot to the other.
            return List.of(new Draft("step.worst", Group.PERSONAL_SAFETY, "step voltage", STEP)
                    .in(worst.get().circumstances(), worst.get().at())
                    .value(worst.get().value(), "V")
                    .notApplicable("the curve sets no limit for step; the worst step voltage is shown, touch governs"));
        }
        return List.of(governed(
                design,
                "step.worst",
                "step voltage",
                "worst step voltage around the electrode",
                "bury the electrode deeper, grade the potential with a ring, or cover the ground"));
    }

    private static boolean touchCurveOnly(Design design) {
        Criteria criteria = design.site().criteria();
        return criteria != null
                && (criteria.touch() == TouchCriterion.EN_50522_2010
                        || criteria.touch() == TouchCriterion.EN_50522_2022
                        || criteria.touch() == TouchCriterion.OWNER);
    }

    /** Individual risk a year, where the file asks for it; it stands beside the touch findings and replaces none. */
    static List<Finding> exposure(Design design) {
        List<Finding> findings = new ArrayList<>();
        Criteria criteria = design.site().criteria();
        if (criteria == null || criteria.exposure() == null) {
            return List.of(new Draft("exposure.none", Group.PERSONAL_SAFETY, "individual risk", RISK)
                    .notApplicable("the file asks for no individual risk a year"));
        }
        for (String part : named(design, "exposure.", ".individual-risk")) {
            String id = "exposure." + part;
            Draft draft = new Draft(id, Group.PERSONAL_SAFETY, "individual risk, " + part, RISK)
                    .advice("faster clearing, less time at the site, or a lower touch voltage");
            Optional<Pair> worst = Pairs.governing(Pairs.of(design, id + ".individual-risk", id + ".target"));
            if (worst.isEmpty()) {
                findings.add(draft.gap(design.gapsOf(id), id + ".individual-risk"));
                continue;
            }
            Pair pair = worst.get();
            draft.in(pair.value().circumstances(), pair.value().at());
            pair.value().worked().ifPresent(draft::worked);
            findings.add(draft.unless(
                    design.gapsOf(id),
                    draft.atMost(
                            pair.value().value(),
                            pair.limit().value(),
                            "/a",
                            "individual risk a year, an upper bound; it replaces no permissible voltage")));
        }
        if (findings.isEmpty()) {
            findings.add(new Draft("exposure.none", Group.PERSONAL_SAFETY, "individual risk", RISK)
                    .gap(design.gapsOf("exposure"), "exposure.<part>.individual-risk"));
        }
        return findings;
    }

    /** The pair of voltage and permissible voltage with the least margin. */
    private static Finding governed(Design design, String id, String subject, String what, String advice) {
        List<Pair> pairs = Pairs.of(design, id + ".voltage", id + ".permissible");
        Optional<Pair> worst = Pairs.governing(pairs);
        if (worst.isEmpty()) {
            return new Draft(id, Group.PERSONAL_SAFETY, subject, EPR_FLOW)
                    .gap(design.gapsOf(id), id + ".voltage and its permissible value");
        }
        Pair pair = worst.get();
        Draft draft = new Draft(id, Group.PERSONAL_SAFETY, subject, pair.limit().source())
                .in(pair.value().circumstances(), pair.value().at())
                .advice(advice);
        pair.value().worked().ifPresent(draft::worked);
        return draft.unless(
                design.gapsOf(id),
                draft.atMost(
                        pair.value().value(),
                        pair.limit().value(),
                        "V",
                        what + offTheMat(design, id) + "; " + pair.limit().model()));
    }

    /** A mat helps who stands on it; what waits beside it is told with the verdict. */
    private static String offTheMat(Design design, String id) {
        return design.own(id + ".beside-the-mat").stream()
                .max(Comparator.comparingDouble(Result::value))
                .map(r -> " on the operator's mat, for nobody who reaches it from off the mat, where it is up to "
                        + Numbers.brief(r.value()) + " V")
                .orElse("");
    }

    static List<Finding> transfer(Design design) {
        List<Finding> findings = new ArrayList<>();
        for (String where : named(design, "transfer.", ".voltage")) {
            String id = "transfer." + where;
            Optional<Pair> worst = Pairs.governing(Pairs.of(design, id + ".voltage", id + ".limit"));
            if (worst.isPresent()) {
                Pair pair = worst.get();
                Draft draft = new Draft(
                                id,
                                Group.PERSONAL_SAFETY,
                                "transfer, " + PlaceNames.of(where),
                                pair.limit().source())
                        .in(pair.value().circumstances(), pair.value().at())
                        .advice("separate the earths further, or lower the potential rise");
                pair.value().worked().ifPresent(draft::worked);
                findings.add(draft.atMost(
                        pair.value().value(),
                        pair.limit().value(),
                        "V",
                        pair.limit().model()));
            } else {
                Draft draft = new Draft(id, Group.PERSONAL_SAFETY, "transfer, " + PlaceNames.of(where), TRANSFER);
                design.own(id + ".voltage").stream()
                        .max(Comparator.comparingDouble(Result::value))
                        .ifPresent(r -> draft.in(r.circumstances(), r.at()).value(r.value(), "V"));
                List<Gap> gaps = design.gapsOf(id);
                findings.add(
                        gaps.isEmpty()
                                ? draft.missing("the limit of the transferred voltage is not given", "neighbours.limit")
                                : draft.gap(gaps, id + ".limit"));
            }
        }
        if (findings.isEmpty()) {
            Draft draft = new Draft("transfer.none", Group.PERSONAL_SAFETY, "transferred potential", TRANSFER);
            List<Gap> gaps = design.gapsOf("transfer.");
            Site site = design.site();
            boolean none = site.neighbours().isEmpty() && site.lvTransformer() == null && site.hvCable() == null;
            findings.add(
                    gaps.isEmpty() && none
                            ? draft.notApplicable("no neighbour, low-voltage network or high-voltage cable is declared")
                            : draft.gap(gaps, "transfer"));
        }
        return findings;
    }

    static List<Finding> controlCable(Design design) {
        Draft draft = new Draft("cable.power-frequency", Group.SURGE, "control cable during an earth fault", CABLE);
        if (design.site().controlCable() == null) {
            return List.of(draft.missing("the file describes no control cable", "control-cable"));
        }
        Optional<Result> worst =
                design.own("cable.power-frequency.voltage").stream().max(Comparator.comparingDouble(Result::value));
        if (worst.isEmpty()) {
            return List.of(draft.gap(design.gapsOf("cable.power-frequency"), "cable.power-frequency.voltage"));
        }
        Result voltage = worst.get();
        draft.in(voltage.circumstances(), voltage.at());
        voltage.worked().ifPresent(draft::worked);
        Measure level = design.site().controlCable().insulationLevel();
        String every = CableCases.words(design);
        if (level == null || !level.isKnown()) {
            return List.of(draft.value(voltage.value(), "V")
                    .missing(
                            "the insulation level of the cable and its ends is not given; " + every,
                            "control-cable.insulation-level"));
        }
        return List.of(draft.advice("share the earth by a tee, or isolate the ends for this voltage")
                .atMost(
                        voltage.value(),
                        level.at(Measure.Bound.LOW),
                        "V",
                        "voltage across the cable, whole sequence; " + every));
    }

    static List<Finding> heating(Design design) {
        List<Finding> findings = new ArrayList<>();
        Set<String> segments = new LinkedHashSet<>(between(design, "conductor.", ".final-temperature"));
        for (String segment : segments) {
            String id = "conductor." + segment;
            Optional<Pair> worst =
                    Pairs.governing(Pairs.of(design, id + ".final-temperature", id + ".temperature-limit"));
            if (worst.isEmpty()) {
                findings.add(new Draft(id + ".heating", Group.CONDUCTOR_HEATING, PlaceNames.of(segment), EPR_FLOW)
                        .gap(design.gapsOf(id), id + ".temperature-limit"));
                continue;
            }
            Pair pair = worst.get();
            Draft draft = new Draft(
                            id + ".heating",
                            Group.CONDUCTOR_HEATING,
                            PlaceNames.of(segment),
                            pair.limit().source())
                    .in(pair.value().circumstances(), pair.value().at())
                    .advice("a larger conductor, another joint, fewer shots or faster clearing");
            pair.value().worked().ifPresent(draft::worked);
            findings.add(draft.unless(
                    design.gapsOf(id + "."),
                    draft.atMost(
                            pair.value().value(),
                            pair.limit().value(),
                            "degC",
                            pair.limit().model())));
        }
        for (Gap gap : design.gapsOf("conductor.")) {
            if (gap.id().startsWith("conductor.")
                    && segments.stream().noneMatch(s -> gap.id().startsWith("conductor." + s + "."))) {
                String segment = gap.id().split("\\.", 3)[1];
                // The same segment stays unanswered in several cases; one finding tells it.
                segments.add(segment);
                findings.add(new Draft(
                                "conductor." + segment + ".heating",
                                Group.CONDUCTOR_HEATING,
                                PlaceNames.of(segment),
                                EPR_FLOW)
                        .gap(List.of(gap), gap.id()));
            }
        }
        if (findings.isEmpty()) {
            findings.add(new Draft("conductor.lead.heating", Group.CONDUCTOR_HEATING, "main earth", EPR_FLOW)
                    .gap(design.gapsOf("conductor."), "conductor.<segment>.final-temperature"));
        }
        return findings;
    }

    /** The middle parts of all ids for which there is a number or a gap of their own. */
    private static Set<String> named(Design design, String prefix, String suffix) {
        Set<String> names = new LinkedHashSet<>(between(design, prefix, suffix));
        for (Gap gap : design.gapsOf(prefix)) {
            if (gap.id().startsWith(prefix) && gap.id().length() > prefix.length()) {
                names.add(gap.id().substring(prefix.length()).split("\\.", 2)[0]);
            }
        }
        return names;
    }

    /** The middle parts of all ids with this beginning and end that belong to the site as it is. */
    static List<String> between(Design design, String prefix, String suffix) {
        Stream<Result> matching = design.results()
                .under(prefix)
                .filter(r -> r.id().endsWith(suffix) && r.id().length() > prefix.length() + suffix.length());
        return matching.filter(design::asBuilt)
                .map(r -> r.id().substring(prefix.length(), r.id().length() - suffix.length()))
                .filter(middle -> middle.indexOf('.') < 0)
                .distinct()
                .toList();
    }
}
