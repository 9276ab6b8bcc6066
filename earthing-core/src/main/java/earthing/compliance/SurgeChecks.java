package earthing.compliance;

import earthing.compliance.Finding.Group;
import earthing.compliance.Pairs.Pair;
import earthing.quantity.Measure;
import earthing.quantity.Measure.Bound;
import earthing.quantity.Numbers;
import earthing.quantity.Source;
import earthing.site.ArresterSide;
import earthing.site.Arresters;
import earthing.site.ControlCable;
import earthing.site.Core;
import earthing.site.Criteria;
import earthing.site.NeutralMethod;
import earthing.site.Protector;
import earthing.site.ScreenBond;
import earthing.site.SwitchState;
import earthing.site.Termination;
import earthing.study.Result;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Surge: cable ends, screen, gaps, arresters. */
final class SurgeChecks {

    private static final Source VERDICT = Source.tool(
            "protector, else declared tested arrangement, else declared withstand; docs/theory/surge-path.md");
    private static final Source CIRCUIT = Source.tool("circuit of the pole, docs/theory/surge-path.md");
    private static final Source MARGIN =
            Source.standard("IEEE Std C62.22", "protective margins", Source.Status.FROM_MEMORY);
    private static final Source RATING =
            Source.standard("IEC 60099-5", "selection of Uc and temporary overvoltage", Source.Status.FROM_MEMORY);
    private static final Source SIDES = Source.commonPractice(
            "a switch that can stand open needs arresters on both sides; an open end doubles the arriving wave");

    /** Waves whose front a 1.2/50 withstand speaks for: their fronts are not steeper than about 1 µs. */
    private static final Set<String> SLOW_FRONTS = Set.of("8/20", "4/10", "10/350", "1/200", "1.2/50");

    private SurgeChecks() {}

    static List<Finding> cableEnds(Design design) {
        ControlCable cable = design.site().controlCable();
        if (cable == null || cable.cores().isEmpty()) {
            return List.of(new Draft("surge.cable-end.cores", Group.SURGE, "control cable", VERDICT)
                    .missing("no core of the control cable is described", "control-cable.cores"));
        }
        List<Finding> findings = new ArrayList<>();
        for (Core core : cable.cores()) {
            for (String end : List.of("tank", "cubicle")) {
                findings.add(cableEnd(design, core, end));
            }
        }
        return findings;
    }

    private static Finding cableEnd(Design design, Core core, String end) {
        String key = ConstructionChecks.key(core.name());
        String id = "surge.cable-end." + key + "." + end;
        Draft draft = new Draft(id, Group.SURGE, core.name() + ", " + end + " end", VERDICT);
        Termination termination = end.equals("tank") ? core.tankEnd() : core.cubicleEnd();
        List<Result> open = design.own(id + ".open-voltage");
        Optional<Result> worst = open.stream().max(Comparator.comparingDouble(Result::value));
        if (worst.isEmpty()) {
            return draft.gap(design.gapsOf(id), id + ".open-voltage");
        }
        Result voltage = worst.get();
        draft.in(voltage.circumstances(), voltage.at()).value(voltage.value(), "V");
        voltage.worked().ifPresent(draft::worked);
        if (termination == Termination.TANK) {
            return draft.notApplicable("the core is bonded to chassis at this end");
        }
        return draft.unless(design.gapsOf(id), judged(design, draft, core, end, open));
    }

    /** Protector, else declared tested arrangement, else declared withstand. */
    private static Finding judged(Design design, Draft draft, Core core, String end, List<Result> open) {
        String id = "surge.cable-end." + ConstructionChecks.key(core.name()) + "." + end;
        Termination termination = end.equals("tank") ? core.tankEnd() : core.cubicleEnd();
        Protector protector = end.equals("tank") ? core.tankProtector() : core.cubicleProtector();
        if (protector != null) {
            return protectedEnd(design, draft, id, protector, end);
        }
        if (termination == Termination.PROTECTOR) {
            return draft.missing(
                    "the core ends on a protector that is not described", "control-cable.cores." + end + "-protector");
        }
        Optional<Finding> tested = testedArrangement(design, draft, id, open);
        if (tested.isPresent()) {
            return tested.get();
        }
        return declaredWithstand(draft, core, open, end, termination);
    }

    private static Finding protectedEnd(Design design, Draft draft, String id, Protector protector, String end) {
        Optional<Result> current =
                design.own(id + ".short-circuit-current").stream().max(Comparator.comparingDouble(Result::value));
        if (current.isEmpty()
                || !protector.current().isKnown()
                || !protector.level().isKnown()) {
            return draft.missing(
                    "the rating of the protector is not known", "control-cable.cores." + end + "-protector.current");
        }
        Result through = current.get();
        draft.in(through.circumstances(), through.at());
        through.worked().ifPresent(draft::worked);
        double rating = protector.current().at(Bound.LOW);
        if (!(through.value() <= rating)) {
            return draft.advice("a protector of higher discharge current, or a screen bonded at both ends")
                    .atMost(through.value(), rating, "A", "current through the protector against its rating");
        }
        Optional<Result> charge = design.own(id + ".charge").stream().max(Comparator.comparingDouble(Result::value));
        Measure ratedCharge = protector.charge();
        if (charge.isPresent()
                && ratedCharge != null
                && ratedCharge.isKnown()
                && !(charge.get().value() <= ratedCharge.at(Bound.LOW))) {
            return draft.advice("a protector of higher charge rating")
                    .atMost(charge.get().value(), ratedCharge.at(Bound.LOW), "C", "charge through the protector");
        }
        Measure port = protector.portWithstand();
        if (port == null || !port.isKnown()) {
            return draft.missing(
                    "the protector carries " + Numbers.brief(through.value() / 1000) + " kA of its "
                            + Numbers.brief(rating / 1000) + " kA; the withstand of the port behind it is not given",
                    "control-cable.cores." + end + "-protector.port-withstand");
        }
        if (!(protector.level().at(Bound.HIGH) <= port.at(Bound.LOW))) {
            return draft.advice("a protector with a lower protection level")
                    .atMost(
                            protector.level().at(Bound.HIGH),
                            port.at(Bound.LOW),
                            "V",
                            "protection level against the withstand of the port");
        }
        return draft.atMost(
                through.value(),
                rating,
                "A",
                "the protector conducts within its rating and its level is below the port's withstand");
    }

    private static Optional<Finding> testedArrangement(Design design, Draft draft, String id, List<Result> open) {
        List<Result> testedOpen = design.results().of("surge.tested-arrangement.open-voltage");
        List<Result> testedShort = design.results().of("surge.tested-arrangement.short-circuit-current");
        if (testedOpen.isEmpty() || testedShort.isEmpty()) {
            return Optional.empty();
        }
        String wave = testedOpen.get(0).circumstances().keys().getOrDefault("wave", "");
        List<Result> onWave = onWave(open, wave);
        List<Result> shortOnWave = onWave(design.own(id + ".short-circuit-current"), wave);
        if (onWave.isEmpty() || onWave.size() < open.size() || shortOnWave.isEmpty()) {
            // A test on one wave says nothing about the others.
            return Optional.empty();
        }
        double voltage = max(onWave);
        double current = max(shortOnWave);
        double testedVoltage = max(testedOpen);
        double testedCurrent = max(testedShort);
        draft.advice("bring length and separation to those of the tested arrangement, or declare a protector");
        return Optional.of(
                current / testedCurrent > voltage / testedVoltage
                        ? draft.atMost(
                                current, testedCurrent, "A", "short-circuit current against the tested arrangement")
                        : draft.atMost(voltage, testedVoltage, "V", "open voltage against the tested arrangement"));
    }

    private static Finding declaredWithstand(
            Draft draft, Core core, List<Result> open, String end, Termination termination) {
        Measure withstand = core.withstand();
        String wave = core.withstandWave();
        if (withstand != null && withstand.isKnown() && wave != null) {
            List<Result> steeper = open.stream()
                    .filter(r -> !comparable(wave, r.circumstances().keys().getOrDefault("wave", "")))
                    .toList();
            if (steeper.isEmpty()) {
                return draft.advice("a protector, a screen bonded at both ends, or a shared earth")
                        .atMost(
                                max(open),
                                withstand.at(Bound.LOW),
                                "V",
                                "open voltage against the declared " + wave + " withstand");
            }
            return draft.missing(
                    "the declared " + wave + " withstand does not speak for the wave "
                            + steeper.get(0).circumstances().keys().get("wave"),
                    "control-cable.cores." + end + "-protector",
                    "tested-arrangement");
        }
        return draft.missing(
                "it ends on a " + termination.name().toLowerCase(Locale.ROOT).replace('_', ' ')
                        + " and no protector, tested arrangement or withstand is declared",
                "control-cable.cores." + end + "-protector",
                "tested-arrangement",
                "control-cable.cores.withstand");
    }

    private static boolean comparable(String withstandWave, String wave) {
        return withstandWave.equals(wave) || (withstandWave.equals("1.2/50") && SLOW_FRONTS.contains(wave));
    }

    private static List<Result> onWave(List<Result> results, String wave) {
        return results.stream()
                .filter(r -> r.circumstances().keys().getOrDefault("wave", "").equals(wave))
                .toList();
    }

    private static double max(List<Result> results) {
        return results.stream().mapToDouble(Result::value).max().orElse(Double.NaN);
    }

    static List<Finding> screen(Design design) {
        Draft draft = new Draft("surge.screen", Group.SURGE, "screen of the control cable", CIRCUIT);
        ControlCable cable = design.site().controlCable();
        if (cable == null || cable.screen() == null || cable.screen().bond() == ScreenBond.UNKNOWN) {
            return List.of(draft.missing("the screen and its bonds are not described", "control-cable.screen"));
        }
        if (cable.screen().bond() != ScreenBond.BOTH) {
            return List.of(draft.notApplicable("a screen that is not bonded at both ends carries no surge current"));
        }
        Optional<Pair> worst =
                Pairs.governing(Pairs.of(design, "surge.screen.final-temperature", "surge.screen.temperature-limit"));
        if (worst.isEmpty()) {
            return List.of(draft.gap(design.gapsOf("surge.screen"), "surge.screen.final-temperature"));
        }
        Pair pair = worst.get();
        draft.in(pair.value().circumstances(), pair.value().at()).advice("a screen of larger cross-section");
        pair.value().worked().ifPresent(draft::worked);
        return List.of(draft.unless(
                design.gapsOf("surge.screen"),
                draft.atMost(
                        pair.value().value(),
                        pair.limit().value(),
                        "degC",
                        pair.limit().model())));
    }

    static List<Finding> gaps(Design design) {
        List<Finding> findings = new ArrayList<>();
        for (String where : PowerChecks.between(design, "surge.gap.", ".voltage")) {
            String id = "surge.gap." + where;
            Optional<Pair> worst = Pairs.governing(Pairs.of(design, id + ".voltage", id + ".strength"));
            if (worst.isEmpty()) {
                continue;
            }
            Pair pair = worst.get();
            Draft draft = new Draft(
                            "surge.gap",
                            Group.SURGE,
                            "gap, " + where,
                            pair.limit().source())
                    .in(pair.value().circumstances(), pair.value().at())
                    .advice("a wider gap, or a shared earth");
            pair.value().worked().ifPresent(draft::worked);
            findings.add(draft.unless(
                    design.gapsOf(id),
                    draft.atMost(
                            pair.value().value(),
                            pair.limit().value(),
                            "V",
                            pair.limit().model())));
        }
        if (findings.isEmpty()) {
            findings.add(
                    new Draft("surge.gap", Group.SURGE, "gaps", CIRCUIT).gap(design.gapsOf("surge.gap"), "surge.gap"));
        }
        return findings;
    }

    static List<Finding> arresterMargin(Design design) {
        Arresters arresters = design.site().arresters();
        Draft first = new Draft("arrester.margin", Group.SURGE, "bushing insulation", MARGIN);
        if (arresters == null || arresters.side() == ArresterSide.UNKNOWN) {
            return List.of(first.missing("the arresters are not described", "arresters"));
        }
        if (arresters.side() == ArresterSide.NONE) {
            return List.of(
                    first.advice("fit arresters on both sides").notMet("no arresters protect the bushing insulation"));
        }
        Criteria criteria = design.site().criteria();
        @Nullable Measure least = criteria == null ? null : criteria.protectiveMargin();
        List<Finding> findings = new ArrayList<>();
        for (String which : List.of("margin", "chopped-margin")) {
            String id = "surge.insulation." + which;
            boolean lightning = which.equals("margin");
            Draft draft = new Draft(
                    "arrester.margin",
                    Group.SURGE,
                    lightning ? "margin, lightning impulse level" : "margin, chopped-wave level",
                    MARGIN);
            Optional<Result> worst = design.own(id).stream().min(Comparator.comparingDouble(Result::value));
            if (worst.isEmpty()) {
                if (lightning || !design.gapsOf(id).isEmpty()) {
                    findings.add(draft.gap(design.gapsOf(id), id));
                }
                continue;
            }
            Result margin = worst.get();
            draft.in(margin.circumstances(), margin.at()).value(margin.value(), "");
            margin.worked().ifPresent(draft::worked);
            findings.add(
                    least == null || !least.isKnown()
                            ? draft.missing(
                                    "the owner's least margin is not given; 20 % is usual",
                                    "criteria.protective-margin")
                            : draft.advice("shorter arrester leads, or arresters of lower residual voltage")
                                    .atLeast(
                                            margin.value(),
                                            least.nominal(),
                                            "",
                                            "(withstand - stress) / stress, only leads in parallel with the insulation"
                                                    + " counted"));
        }
        return findings;
    }

    static List<Finding> arresterRating(Design design) {
        List<Finding> findings = new ArrayList<>();
        Arresters arresters = design.site().arresters();
        if (arresters == null || arresters.side() == ArresterSide.UNKNOWN) {
            return List.of(new Draft("arrester.rating", Group.SURGE, "arresters", RATING)
                    .missing("the arresters are not described", "arresters"));
        }
        if (arresters.side() == ArresterSide.NONE) {
            return List.of(new Draft("arrester.rating", Group.SURGE, "arresters", RATING)
                    .notApplicable("no arresters are fitted"));
        }
        for (String which : List.of("continuous-voltage", "temporary-overvoltage")) {
            Draft draft = new Draft("arrester.rating", Group.SURGE, which.replace('-', ' '), RATING);
            String id = "surge.arrester." + which;
            if (which.equals("temporary-overvoltage")
                    && design.site().system().neutral().method() == NeutralMethod.SINGLE_WIRE_EARTH_RETURN) {
                findings.add(draft.notApplicable("a single wire has no healthy phase that a fault could raise"));
                continue;
            }
            Optional<Pair> worst = Pairs.governing(Pairs.of(design, id, id + ".rating"));
            if (worst.isEmpty()) {
                findings.add(draft.gap(design.gapsOf(id), id));
                continue;
            }
            Pair pair = worst.get();
            draft.in(pair.value().circumstances(), pair.value().at()).advice("an arrester of higher rating");
            pair.value().worked().ifPresent(draft::worked);
            findings.add(draft.atMost(
                    pair.value().value(),
                    pair.limit().value(),
                    "V",
                    pair.limit().model()));
        }
        Draft sides = new Draft("arrester.rating", Group.SURGE, "both sides protected", SIDES);
        boolean canOpen = design.site().tank() == null || design.site().tank().switchState() != SwitchState.CLOSED;
        findings.add(
                arresters.side() == ArresterSide.BOTH
                        ? sides.met("arresters on both sides")
                        : canOpen
                                ? sides.advice("fit arresters on the other side too")
                                        .notMet("one side has no arresters and the switch can stand open")
                                : sides.met("one side only, and the switch is declared closed"));
        return findings;
    }
}
