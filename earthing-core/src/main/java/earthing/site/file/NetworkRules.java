package earthing.site.file;

import earthing.site.NeutralMethod;
import earthing.site.RelayCurve;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Rules about the network: neutral, protection, reclosing. */
final class NetworkRules {

    private NetworkRules() {}

    static void check(SiteRules rules) {
        rules.below("system.voltage", "system.highest-voltage", true);
        neutral(rules);
        rules.notBoth("protection.clearing-time", "protection.relay");
        relay(rules, "protection.relay");
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
        rules.below("system.neutral.residual-current", "system.neutral.capacitive-current", false);
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
