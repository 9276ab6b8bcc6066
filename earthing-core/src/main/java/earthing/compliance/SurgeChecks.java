package earthing.compliance;

import earthing.compliance.Finding.Group;
import earthing.compliance.Pairs.Pair;
import earthing.quantity.Measure;
import earthing.quantity.Source;
import earthing.site.ArresterSide;
import earthing.site.Arresters;
import earthing.site.ControlCable;
import earthing.site.Criteria;
import earthing.site.NeutralMethod;
import earthing.site.Pole;
import earthing.site.ScreenBond;
import earthing.site.SwitchState;
import earthing.study.PlaceNames;
import earthing.study.Result;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Surge: screen, gaps, arresters. */
final class SurgeChecks {

    private static final Source CIRCUIT = Source.tool("circuit of the pole, docs/theory/surge-path.md");
    private static final Source MARGIN =
            Source.standard("IEEE Std C62.22", "protective margins", Source.Status.FROM_MEMORY);
    private static final Source RATING =
            Source.standard("IEC 60099-5", "selection of Uc and temporary overvoltage", Source.Status.FROM_MEMORY);
    private static final Source SIDES = Source.commonPractice(
            "a switch that can stand open needs arresters on both sides; an open end doubles the arriving wave");

    private SurgeChecks() {}

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
                            "gap, " + PlaceNames.gap(where),
                            pair.limit().source())
                    .in(pair.value().circumstances(), pair.value().at())
                    .advice(
                            where.contains("pole") && conducts(design.site().pole())
                                    ? "bond the metal of the pole to the tank and to the cubicle"
                                    : "a wider gap, or a shared earth");
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

    private static boolean conducts(@Nullable Pole pole) {
        return pole != null && pole.conducts();
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
