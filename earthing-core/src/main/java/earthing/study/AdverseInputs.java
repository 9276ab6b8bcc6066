package earthing.study;

import earthing.quantity.Dimension;
import earthing.quantity.Measure;
import earthing.quantity.Measure.Bound;
import earthing.quantity.Quantity;
import earthing.quantity.Source;
import earthing.site.Site;
import earthing.site.SiteRewrite;
import earthing.study.FaultNetwork.State;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Inputs with a fixed adverse end, set to it: whatever the fault, a longer time, a thinner conductor or less footwear is
 * never better. What has no fixed adverse end, soil and source, is swept instead.
 */
final class AdverseInputs {

    private static final Source ENDS =
            Source.tool("a longer time, a thinner conductor, a hotter start, less footwear is never better");

    private static final List<String> UNSTEADY = List.of(
            "system.three-phase-fault-current",
            "system.x-over-r",
            "system.neutral.capacitive-current",
            "system.source-line.length");

    private AdverseInputs() {}

    /** The site with the adverse ends of protection, criteria, conductors and reach. */
    static Site of(Site site, Inputs in) {
        boolean[] changed = {false};
        Site adverse = SiteRewrite.of(site, (path, measure) -> {
            Optional<Bound> end = measure.hasSpread() ? end(path) : Optional.empty();
            changed[0] |= end.isPresent();
            return end.map(bound -> at(measure, bound)).orElse(measure);
        });
        if (changed[0]) {
            in.choice(
                    "",
                    "bounded inputs of protection, criteria, conductors and reach: their adverse end for earth faults",
                    ENDS);
        }
        return adverse;
    }

    /** Blocks whose lengths, heights and positions the studies take at their nominal value. */
    private static final List<String> PLACES = List.of(
            "pole.",
            "tank.",
            "main-earth.",
            "electrodes.",
            "cubicle.",
            "control-cable.",
            "stays.",
            "hv-cable.",
            "antenna.",
            "neighbours.",
            "soil.layers.thickness",
            "system.source-line.conductors.");

    /** What the studies hold at its nominal value although the file gives bounds; empty if there is nothing of the kind. */
    static Optional<String> heldNominal(Site site) {
        List<String> held = heldKeys(site);
        return held.isEmpty()
                ? Optional.empty()
                : Optional.of(
                        "lengths, heights and positions are taken at their nominal value, whatever bounds the file"
                                + " gives them: " + String.join(", ", held)
                                + "; run the file again with a bound in place of the nominal value to see what it moves");
    }

    /** The keys of these. */
    static List<String> heldKeys(Site site) {
        Set<String> held = new LinkedHashSet<>();
        SiteRewrite.of(site, (path, measure) -> {
            if (measure.hasSpread()
                    && measure.dimension() == Dimension.LENGTH
                    && end(path).isEmpty()
                    && PLACES.stream().anyMatch(path::startsWith)) {
                held.add(path);
            }
            return measure;
        });
        return List.copyOf(held);
    }

    private static Optional<Bound> end(String path) {
        if (path.startsWith("protection.")) {
            boolean shorterIsWorse = path.endsWith(".dead-times") || path.endsWith(".breaking-current");
            return Optional.of(shorterIsWorse ? Bound.LOW : Bound.HIGH);
        }
        return switch (path) {
            case "criteria.footwear-resistance",
                    "criteria.covering.resistivity",
                    "criteria.covering.thickness",
                    "criteria.final-temperature",
                    "main-earth.conductor.area",
                    "main-earth.segments.conductor.area",
                    "cubicle.tee.area",
                    "cubicle.own-lead.area",
                    "stays.conductor.area",
                    "control-cable.screen.area" -> Optional.of(Bound.LOW);
            case "criteria.shock-merging-time", "criteria.initial-temperature", "cubicle.reach", "soil.season.factor" ->
                Optional.of(Bound.HIGH);
            default -> Optional.empty();
        };
    }

    /**
     * The site with the network at the end that gives the smallest or the largest current: sources and ratios low and
     * impedances high, or the reverse. The earths of the neutral along the line follow the soil.
     */
    static Site network(Site site, State state) {
        Bound source = state == State.MINIMUM ? Bound.LOW : Bound.HIGH;
        Bound impedance = state == State.MINIMUM ? Bound.HIGH : Bound.LOW;
        return SiteRewrite.of(site, SYSTEM, (path, measure) -> {
            if (!isOfNetwork(path, measure)) {
                return measure;
            }
            return at(
                    measure,
                    switch (measure.dimension()) {
                        case CURRENT, VOLTAGE, RATIO -> source;
                        default -> impedance;
                    });
        });
    }

    private static final List<String> OTHER_EARTHS =
            List.of("lv-transformer.neutral-earth-resistance", "stays.anchor-resistance");

    /** Whether earths that are tied to the pole and lie in other ground are uncertain: they need not be low with the soil. */
    static boolean otherEarthsVary(Site site) {
        boolean[] vary = {false};
        SiteRewrite.of(site, (path, measure) -> {
            vary[0] |= OTHER_EARTHS.contains(path) && measure.hasSpread();
            return measure;
        });
        return vary[0];
    }

    /** The site with these earths at one end of their bounds. */
    static Site otherEarths(Site site, Bound bound) {
        return SiteRewrite.of(
                site,
                (path, measure) -> OTHER_EARTHS.contains(path) && measure.hasSpread() ? at(measure, bound) : measure);
    }

    /** The block of the network. */
    private static final String SYSTEM = "system";

    /** Beginning of the keys of the network. */
    static final String NETWORK = SYSTEM + ".";

    private static boolean isOfNetwork(String path, Measure measure) {
        return path.startsWith(NETWORK)
                && measure.hasSpread()
                && !path.endsWith("pole-earth-resistance")
                && !path.contains(".conductors.")
                && !path.endsWith("highest-voltage");
    }

    /** The bounded inputs of the network by their keys. */
    static Map<String, Measure> ofNetwork(Site site) {
        Map<String, Measure> inputs = new LinkedHashMap<>();
        SiteRewrite.of(site, SYSTEM, (path, measure) -> {
            if (isOfNetwork(path, measure)) {
                inputs.put(path, measure);
            }
            return measure;
        });
        return inputs;
    }

    /** The site with bounded inputs of the network at exact values in SI, by their keys. */
    static Site exactly(Site site, Map<String, Double> values) {
        return SiteRewrite.of(site, SYSTEM, (path, measure) -> {
            Double value = values.get(path);
            return value == null || !measure.hasSpread() ? measure : Measure.of(measure.dimension(), value);
        });
    }

    /** The site with every combination of the ends of those inputs whose adverse end depends on the rest of the loop. */
    static List<Site> corners(Site site, Site ends) {
        Map<String, Measure> spread = new LinkedHashMap<>();
        SiteRewrite.of(site, SYSTEM, (path, measure) -> {
            if (UNSTEADY.contains(path) && measure.hasSpread()) {
                spread.put(path, measure);
            }
            return measure;
        });
        List<String> free = List.copyOf(spread.keySet());
        List<Site> corners = new ArrayList<>();
        for (int corner = 0; corner < (1 << free.size()); corner++) {
            int bits = corner;
            corners.add(SiteRewrite.of(ends, SYSTEM, (path, measure) -> {
                int i = free.indexOf(path);
                Measure given = spread.get(path);
                return i < 0 || given == null ? measure : at(given, (bits >> i & 1) == 1 ? Bound.HIGH : Bound.LOW);
            }));
        }
        return corners;
    }

    private static Measure at(Measure measure, Bound bound) {
        Quantity value = measure.bounds()
                .map(b -> switch (bound) {
                    case LOW -> b.low();
                    case NOMINAL -> b.nominal();
                    case HIGH -> b.high();
                })
                .orElseThrow();
        return new Measure(
                measure.dimension(),
                Optional.of(new Measure.Bounds(value, value, value)),
                measure.origin(),
                measure.date(),
                measure.by());
    }
}
