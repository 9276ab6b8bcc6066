package earthing.site.file;

import earthing.quantity.Measure;
import earthing.site.ScreenBond;
import earthing.site.Termination;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Rules about what hangs on the pole: heights, pieces of the main earth, arresters, screens. */
final class PoleRules {

    private PoleRules() {}

    static void check(SiteRules rules) {
        heights(rules);
        mainEarth(rules);
        arresters(rules);
        screen(rules);
        for (String core : rules.items("control-cable.cores")) {
            rules.belongs(core + ".withstand-wave", rules.facts().has(core + ".withstand"), "the withstand beside it");
            for (String end : List.of("tank", "cubicle")) {
                coreEnd(rules, core + "." + end);
            }
        }
        rules.belongs(
                "tank.handle-bonded", rules.facts().has("tank.handle-height"), "the height of the handle beside it");
    }

    private static void coreEnd(SiteRules rules, String end) {
        boolean device = !rules.facts().is(end + "-end", Termination.TANK);
        for (String part : List.of("resistance", "inductance", "capacitance")) {
            rules.belongs(end + "-impedance." + part, device, "a device; the core is bonded to chassis at this end");
        }
        rules.belongs(
                end + "-protector.lead-spacing",
                rules.facts().has(end + "-protector.lead-length"),
                "the length of the leads beside it");
    }

    private static void heights(SiteRules rules) {
        rules.below("cubicle.height", "tank.height", false);
        rules.below("tank.height", "pole.height", true);
        rules.below("tank.handle-height", "tank.height", false);
        rules.below("main-earth.guard-height", "tank.height", true);
        rules.below("system.neutral.conductor.bond-height", "pole.height", true);
        rules.below("system.shield-wire.bond-height", "pole.height", true);
        for (String stay : rules.items("stays")) {
            rules.below(stay + ".top-height", "pole.height", true);
            rules.notBoth(stay + ".anchor", stay + ".anchor-resistance");
            rules.below(stay + ".anchor.rod-diameter", stay + ".anchor.plate-diameter", false);
        }
        // Without the tank or the pole the order still has to hold.
        if (!rules.facts().has("tank.height")) {
            rules.below("cubicle.height", "pole.height", false);
        }
    }

    /** The pieces follow each other from the tank to the ground without a gap. */
    private static void mainEarth(SiteRules rules) {
        List<String> segments = rules.items("main-earth.segments");
        String above = "tank.height";
        for (String segment : segments) {
            String from = segment + ".from-height";
            String to = segment + ".to-height";
            rules.below(to, from, false);
            OptionalDouble start = nominal(rules, from);
            OptionalDouble end = nominal(rules, above);
            if (start.isPresent() && end.isPresent() && start.getAsDouble() != end.getAsDouble()) {
                rules.wrong(
                        from,
                        Problem.quote(rules.shown(from)) + " is not where " + above + " ends",
                        rules.shown(above));
            }
            above = to;
        }
        OptionalDouble last = nominal(rules, above);
        if (!segments.isEmpty() && last.isPresent() && last.getAsDouble() != 0) {
            rules.wrong(above, "the lowest segment ends at " + Problem.quote(rules.shown(above)), "0 m, the ground");
        }
    }

    private static OptionalDouble nominal(SiteRules rules, String path) {
        Optional<Measure> measure = rules.facts().measure(path);
        return measure.isPresent() ? OptionalDouble.of(measure.get().nominal()) : OptionalDouble.empty();
    }

    private static void arresters(SiteRules rules) {
        rules.below("arresters.continuous-voltage", "arresters.rated-voltage", false);
        rules.below("arresters.rated-voltage", "arresters.residual-voltage", false);
        rules.below("arresters.residual-voltage", "arresters.steep-residual-voltage", true);
        List<String> points = rules.items("arresters.residual-curve");
        for (int i = 1; i < points.size(); i++) {
            rules.below(points.get(i - 1) + ".current", points.get(i) + ".current", false);
            rules.below(points.get(i - 1) + ".voltage", points.get(i) + ".voltage", true);
        }
        boolean tov = rules.facts().has("arresters.temporary-overvoltage");
        rules.belongs("arresters.temporary-overvoltage-time", tov, "the temporary overvoltage beside it");
    }

    private static void screen(SiteRules rules) {
        boolean present = !rules.facts().is("control-cable.screen.bond", ScreenBond.ABSENT);
        for (String key : List.of("area", "material", "tank-bond-lead", "cubicle-bond-lead")) {
            rules.belongs("control-cable.screen." + key, present, "a screen; bond says that it is absent");
        }
    }
}
