package earthing.site.file;

import earthing.quantity.Measure;
import earthing.site.NeutralMethod;
import earthing.site.RelayCurve;
import earthing.site.WireUse;
import earthing.site.YesNo;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Rules about the network: neutral, protection, reclosing. */
final class NetworkRules {

    private static final String NEUTRAL_WIRE = "system.neutral.conductor";
    private static final String SHIELD_WIRE = "system.shield-wire";

    private NetworkRules() {}

    static void check(SiteRules rules) {
        rules.below("system.voltage", "system.highest-voltage", true);
        neutral(rules);
        rules.notBoth("protection.clearing-time", "protection.relay");
        rules.notBoth("protection.clearing-time", "protection.fuse");
        rules.belongs(
                "protection.reclose",
                !rules.facts().has("protection.fuse") || rules.facts().has("protection.relay"),
                "protection.relay beside the fuse: a fuse clears once, and only a recloser before it closes again");
        rules.belongs(
                "protection.back-up-for", rules.facts().has("protection.back-up"), "the back-up protection beside it");
        fuse(rules);
        relay(rules, "protection.relay");
        relay(rules, "protection.sensitive");
        relay(rules, "protection.back-up");
        reclose(rules);
    }

    /** A quantity of one neutral method beside another method is a contradiction, not an unused value. */
    private static void neutral(SiteRules rules) {
        Enum<?> method = rules.facts().word("system.neutral.method");
        only(rules, "resistance", method, List.of(NeutralMethod.RESISTOR));
        only(rules, "reactance", method, List.of(NeutralMethod.REACTOR));
        only(rules, "residual-current", method, List.of(NeutralMethod.RESONANT));
        only(rules, "conductor", method, List.of(NeutralMethod.MULTI_EARTHED));
        only(rules, "earth-return-load", method, List.of(NeutralMethod.SINGLE_WIRE_EARTH_RETURN));
        pair(rules);
        boolean single = method == NeutralMethod.SINGLE_WIRE_EARTH_RETURN;
        for (String key : List.of("three-phase-fault-current", "shield-wire")) {
            rules.belongs("system." + key, !single, "no such value of a single-wire line");
        }
        for (String key : List.of("zero-sequence-resistance", "zero-sequence-reactance")) {
            rules.belongs("system.source-line." + key, !single, "resistance and reactance of the single wire");
        }
        line(rules, single);
        rules.below("system.neutral.residual-current", "system.neutral.capacitive-current", false);
    }

    private static boolean both(SiteRules rules) {
        return rules.facts().has(NEUTRAL_WIRE) && rules.facts().has(SHIELD_WIRE);
    }

    private static boolean isReturn(SiteRules rules, String wire) {
        return rules.facts().has(wire + ".use") && !rules.facts().is(wire + ".use", WireUse.PHASE);
    }

    /** Neutral and shield wire hang on the same poles. */
    private static void pair(SiteRules rules) {
        rules.belongs("system.return-wires", both(rules), "a neutral conductor and a shield wire beside it");
        if (!both(rules)) {
            return;
        }
        Optional<Integer> here = rules.facts().number(NEUTRAL_WIRE + ".spans-to-source");
        rules.facts()
                .number(SHIELD_WIRE + ".spans-to-source")
                .filter(n -> here.isPresent() && !here.get().equals(n))
                .ifPresent(n -> rules.wrong(
                        SHIELD_WIRE + ".spans-to-source",
                        '"' + String.valueOf(n) + "\" is not the neutral's " + here.orElse(0),
                        "the same number: both hang on the same poles"));
        Optional<Measure> span = rules.facts().measure(NEUTRAL_WIRE + ".span");
        rules.facts()
                .measure(SHIELD_WIRE + ".span")
                .filter(m -> span.isPresent() && span.get().nominal() != m.nominal())
                .ifPresent(m -> rules.wrong(
                        SHIELD_WIRE + ".span",
                        '"' + rules.shown(SHIELD_WIRE + ".span") + "\" is not the neutral's span",
                        "the same length: both hang on the same poles"));
        if (rules.facts().is("system.return-wires.bonded", YesNo.YES)) {
            for (String key : List.of("pole-earth-resistance", "earthed-every")) {
                rules.belongs(SHIELD_WIRE + "." + key, false, "the neutral's earths serve both wires");
            }
        }
    }

    /** Impedances and conductors say the same thing in two ways. */
    private static void line(SiteRules rules, boolean single) {
        String line = "system.source-line.";
        List<String> wires = rules.items(line + "conductors");
        for (String key : List.of("earth-resistivity", "earth-return")) {
            rules.belongs(line + key, !wires.isEmpty(), "the conductors of the line beside it");
        }
        if (wires.isEmpty()) {
            return;
        }
        for (String key : List.of("resistance", "reactance", "zero-sequence-resistance", "zero-sequence-reactance")) {
            rules.belongs(line + key, false, "either impedances or conductors of the line");
        }
        long phases = wires.stream()
                .filter(wire -> rules.facts().is(wire + ".use", WireUse.PHASE))
                .count();
        int expected = single ? 1 : 3;
        if (phases != expected) {
            rules.wrong(
                    line + "conductors", "there are " + phases + " phases among them", expected + " with use: phase");
        }
        boolean returns = wires.stream().anyMatch(wire -> isReturn(rules, wire));
        for (String wire : wires) {
            boolean named = rules.facts().is(wire + ".use", WireUse.NEUTRAL)
                    || rules.facts().is(wire + ".use", WireUse.SHIELD_WIRE);
            if (both(rules) ? rules.facts().is(wire + ".use", WireUse.RETURN) : named) {
                rules.wrong(
                        wire + ".use",
                        both(rules) ? "the line has a neutral and a shield wire" : "the line has not both return wires",
                        both(rules) ? "use: neutral or use: shield-wire" : "use: return");
            }
        }
        for (String key : List.of("mutual-resistance", "mutual-reactance")) {
            rules.belongs("system.return-wires." + key, !returns, "either impedances or conductors of the line for it");
        }
        for (String wire : List.of(NEUTRAL_WIRE, SHIELD_WIRE)) {
            for (String key : List.of("impedance", "reactance", "mutual-resistance", "mutual-reactance")) {
                rules.belongs(wire + '.' + key, !returns, "either impedances or a conductor with use: return");
            }
        }
        for (String wire : wires) {
            rules.below(wire + ".geometric-mean-radius", wire + ".diameter", false);
            rules.below(wire + ".diameter", wire + ".height", false);
        }
    }

    private static void only(SiteRules rules, String key, @Nullable Enum<?> method, List<NeutralMethod> methods) {
        rules.belongs(
                "system.neutral." + key,
                method == null || method == NeutralMethod.UNKNOWN || methods.contains(method),
                "it with the method " + Entry.word(methods.get(0)));
    }

    private static void relay(SiteRules rules, String relay) {
        Enum<?> curve = rules.facts().word(relay + ".curve");
        boolean definite = curve == RelayCurve.DEFINITE_TIME;
        rules.belongs(relay + ".time-multiplier", curve == null || !definite, "a delay with the curve definite-time");
        rules.belongs(relay + ".delay", curve == null || definite, "a time multiplier with an inverse curve");
    }

    private static void fuse(SiteRules rules) {
        List<String> points = rules.items("protection.fuse.points");
        if (rules.facts().has("protection.fuse") && points.size() < 2) {
            rules.wrong("protection.fuse", "a curve has two or more points", "points, each with current and time");
        }
        for (int i = 1; i < points.size(); i++) {
            rules.below(points.get(i - 1) + ".current", points.get(i) + ".current", false);
            rules.below(points.get(i) + ".time", points.get(i - 1) + ".time", true);
        }
        if (!points.isEmpty()) {
            rules.below(points.get(points.size() - 1) + ".current", "protection.fuse.breaking-current", true);
        }
    }

    private static void reclose(SiteRules rules) {
        String fast = "protection.reclose.fast-shots";
        int shots = rules.facts().count("protection.reclose.dead-times") + 1;
        rules.facts().number(fast).filter(n -> n > shots).ifPresent(n -> {
            rules.wrong(
                    fast,
                    '"' + String.valueOf(n) + "\" is more than the number of shots",
                    "at most " + shots + ", one more than there are dead times");
        });
        rules.belongs("protection.reclose.fast-time", rules.facts().has(fast), "the number of fast shots beside it");
    }
}
