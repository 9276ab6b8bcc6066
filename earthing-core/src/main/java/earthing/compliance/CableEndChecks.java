package earthing.compliance;

import earthing.compliance.Finding.Group;
import earthing.quantity.Measure;
import earthing.quantity.Measure.Bound;
import earthing.quantity.Numbers;
import earthing.quantity.Source;
import earthing.quantity.Worked;
import earthing.site.ControlCable;
import earthing.site.Core;
import earthing.site.Protector;
import earthing.site.ProtectorKind;
import earthing.site.Termination;
import earthing.study.Result;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Each end of each core, in this order: the declared protector conducts within its current, charge and let-through; else
 * the stress is not above that of the declared tested arrangement; else a declared withstand is met on a comparable wave;
 * else the data do not suffice. The reason and the line of working name the branch that decided.
 */
final class CableEndChecks {

    private static final Source VERDICT = Source.tool(
            "protector, else declared tested arrangement, else declared withstand; docs/theory/surge-path.md");

    /** Waves whose front a 1.2/50 withstand speaks for: their fronts are not steeper than about 1 µs. */
    private static final Set<String> SLOW_FRONTS = Set.of("8/20", "4/10", "10/350", "1/200", "1.2/50");

    private CableEndChecks() {}

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
        Optional<Result> worst = worst(open);
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
            return protectedEnd(design, draft, id, core, protector, end);
        }
        if (termination == Termination.PROTECTOR) {
            return draft.missing(
                    "the core ends on a protector that is not described", "control-cable.cores." + end + "-protector");
        }
        Optional<Finding> tested = testedArrangement(design, draft, id, open);
        if (tested.isPresent()) {
            return tested.get();
        }
        // A winding's capacitance can ring with the loop and bring more than the open voltage.
        List<Result> stress = new ArrayList<>(open);
        stress.addAll(design.own(id + ".terminal-voltage"));
        return declaredWithstand(draft, core, stress, end, termination);
    }

    private static Finding protectedEnd(
            Design design, Draft draft, String id, Core core, Protector protector, String end) {
        String key = "control-cable.cores." + end + "-protector.";
        // Of a protector of unknown kind the current is that of a short circuit: a fired one hinders it no more.
        boolean solved = protector.kind() != null && protector.kind() != ProtectorKind.UNKNOWN;
        Optional<Result> current = worst(design.own(id + (solved ? ".protector-current" : ".short-circuit-current")));
        Optional<Result> letThrough = worst(design.own(id + ".let-through"));
        if (current.isEmpty()
                || !protector.current().isKnown()
                || !protector.level().isKnown()) {
            return draft.missing("the rating of the protector is not known", key + "current");
        }
        double rating = protector.current().at(Bound.LOW);
        if (!(current.get().value() <= rating)) {
            return draft.in(current.get().circumstances(), current.get().at())
                    .worked(use("protector", "I", current.get().value(), rating, "A"))
                    .advice("a protector of higher discharge current, or a screen bonded at both ends")
                    .atMost(current.get().value(), rating, "A", "protector: its current against its rating");
        }
        Optional<Result> charge = worst(design.own(id + (solved ? ".protector-charge" : ".charge")));
        Measure ratedCharge = protector.charge();
        if (charge.isPresent() && ratedCharge != null && ratedCharge.isKnown()) {
            double most = ratedCharge.at(Bound.LOW);
            if (!(charge.get().value() <= most)) {
                return draft.in(charge.get().circumstances(), charge.get().at())
                        .worked(use("protector", "Q", charge.get().value(), most, "C"))
                        .advice("a protector of higher charge rating")
                        .atMost(charge.get().value(), most, "C", "protector: its charge against its rating");
            }
        }
        Measure behind = behind(core, protector);
        if (behind == null) {
            return draft.in(current.get().circumstances(), current.get().at())
                    .missing(
                            "protector: it carries "
                                    + Numbers.brief(current.get().value() / 1000) + " kA of its "
                                    + Numbers.brief(rating / 1000)
                                    + " kA; the withstand of the port behind it is not given",
                            key + "port-withstand");
        }
        if (letThrough.isEmpty()) {
            return draft.gap(design.gapsOf(id), id + ".let-through");
        }
        Result through = letThrough.get();
        double most = behind.at(Bound.LOW);
        return draft.in(through.circumstances(), through.at())
                .worked(use("protector", "U", through.value(), most, "V"))
                .advice("a protector with a lower protection level")
                .atMost(
                        through.value(),
                        most,
                        "V",
                        "protector: it conducts " + Numbers.brief(current.get().value() / 1000) + " kA of its "
                                + Numbers.brief(rating / 1000)
                                + " kA; what it lets through against the withstand behind it");
    }

    /** The declared withstand of what the protector protects: the port's, else the core's. */
    private static @org.jspecify.annotations.Nullable Measure behind(Core core, Protector protector) {
        Measure port = protector.portWithstand();
        if (port != null && port.isKnown()) {
            return port;
        }
        Measure own = core.withstand();
        return port == null && own != null && own.isKnown() && core.withstandWave() != null ? own : null;
    }

    /** How much of a limit is used; the symbol names the branch of the verdict. */
    private static Worked use(String branch, String symbol, double value, double most, String unit) {
        return Worked.of("use_" + branch, symbol + " / " + symbol + "_limit")
                .with(symbol, value, unit)
                .with(symbol + "_limit", most, unit)
                .gives(value / most, "");
    }

    private static Optional<Finding> testedArrangement(Design design, Draft draft, String id, List<Result> open) {
        List<Result> testedOpen = design.results().of("surge.tested-arrangement.open-voltage");
        List<Result> testedShort = design.results().of("surge.tested-arrangement.short-circuit-current");
        if (testedOpen.isEmpty() || testedShort.isEmpty()) {
            return Optional.empty();
        }
        String wave = testedOpen.get(0).circumstances().keys().getOrDefault("wave", "");
        List<Result> onWave = onWave(open, wave);
        Optional<Result> voltage = worst(onWave);
        Optional<Result> current = worst(onWave(design.own(id + ".short-circuit-current"), wave));
        if (voltage.isEmpty() || onWave.size() < open.size() || current.isEmpty()) {
            // A test on one wave says nothing about the others.
            return Optional.empty();
        }
        double testedVoltage = max(testedOpen);
        double testedCurrent = max(testedShort);
        boolean byCurrent =
                current.get().value() / testedCurrent > voltage.get().value() / testedVoltage;
        Result governing = byCurrent ? current.get() : voltage.get();
        double most = byCurrent ? testedCurrent : testedVoltage;
        String unit = byCurrent ? "A" : "V";
        return Optional.of(draft.in(governing.circumstances(), governing.at())
                .worked(use("tested_arrangement", byCurrent ? "I" : "U", governing.value(), most, unit))
                .advice("bring length and separation to those of the tested arrangement, or declare a protector")
                .atMost(
                        governing.value(),
                        most,
                        unit,
                        (byCurrent ? "short-circuit current" : "open voltage") + " against the tested arrangement"));
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
                double most = withstand.at(Bound.LOW);
                return draft.worked(use("withstand", "U", max(open), most, "V"))
                        .advice("a protector, a screen bonded at both ends, or a shared earth")
                        .atMost(max(open), most, "V", "open voltage against the declared " + wave + " withstand");
            }
            return draft.missing(
                    "the declared " + wave + " withstand does not speak for the wave "
                            + steeper.get(0).circumstances().keys().get("wave"),
                    "control-cable.cores." + end + "-protector",
                    "tested-arrangement");
        }
        return draft.missing(
                "it ends on " + words(termination) + " and no protector, tested arrangement or withstand is declared",
                "control-cable.cores." + end + "-protector",
                "tested-arrangement",
                "control-cable.cores.withstand");
    }

    private static String words(Termination termination) {
        return switch (termination) {
            case TANK -> "the tank";
            case COIL -> "a coil";
            case INSTRUMENT_TRANSFORMER -> "an instrument transformer";
            case CONTACT -> "a contact";
            case PROTECTOR -> "a protector";
            case OPEN -> "nothing";
            case UNKNOWN -> "something that is not known";
        };
    }

    private static boolean comparable(String withstandWave, String wave) {
        return withstandWave.equals(wave) || (withstandWave.equals("1.2/50") && SLOW_FRONTS.contains(wave));
    }

    private static List<Result> onWave(List<Result> results, String wave) {
        return results.stream()
                .filter(r -> r.circumstances().keys().getOrDefault("wave", "").equals(wave))
                .toList();
    }

    private static Optional<Result> worst(List<Result> results) {
        return results.stream().max(Comparator.comparingDouble(Result::value));
    }

    private static double max(List<Result> results) {
        return results.stream().mapToDouble(Result::value).max().orElse(Double.NaN);
    }
}
