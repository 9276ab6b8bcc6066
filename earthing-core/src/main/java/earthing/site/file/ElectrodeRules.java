package earthing.site.file;

import earthing.site.MeasurementKind;
import earthing.site.SoilLaw;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Rules about what is in the ground: shapes, layers, readings. */
final class ElectrodeRules {

    private static final List<String> SHAPES = List.of(
            "rod", "rods-in-line", "rods-in-ring", "wire", "star", "ring", "mat", "plate", "bars", "resistance");

    /** Bonds that a continuity reading can name beside the segments of the main earth. */
    private static final List<String> BONDS = List.of("main-earth", "tee", "own-lead");

    private static final int MOST_LAYERS = 5;

    private ElectrodeRules() {}

    static void check(SiteRules rules, boolean complete) {
        for (String electrode : rules.items("electrodes")) {
            if (complete) {
                oneShape(rules, electrode);
            }
            slender(rules, electrode);
        }
        if (complete) {
            layers(rules);
            mainElectrode(rules);
            readings(rules);
        }
        rules.below("pole.diameter", "pole.foundation.diameter", false);
        rules.notBoth("soil.resistivity", "soil.layers");
        if (complete) {
            SoundingRules.check(rules);
        }
        rules.belongs(
                "soil.frequency-dependence.relative-permittivity",
                rules.facts().is("soil.frequency-dependence.law", SoilLaw.NONE),
                "every other law gives its own permittivity");
        rules.facts()
                .measure("soil.frequency-dependence.relative-permittivity")
                .filter(permittivity -> permittivity.nominal() < 1)
                .ifPresent(permittivity -> rules.wrong(
                        "soil.frequency-dependence.relative-permittivity",
                        "no matter has a permittivity below 1",
                        "1 or more"));
    }

    private static void oneShape(SiteRules rules, String electrode) {
        List<String> given = new ArrayList<>();
        for (String shape : SHAPES) {
            if (rules.facts().has(electrode + '.' + shape)) {
                given.add(shape);
            }
        }
        if (given.isEmpty()) {
            rules.wrong(electrode, "this electrode has no shape", "one of " + String.join(", ", SHAPES));
        } else if (given.size() > 1) {
            rules.wrong(
                    electrode,
                    "this electrode has " + given.size() + " shapes: " + String.join(", ", given),
                    "one shape; give each part an electrode of its own or use bars");
        }
        if (rules.facts().has(electrode + ".bars") && rules.facts().count(electrode + ".bars") == 0) {
            rules.wrong(electrode + ".bars", "there are no bars in this list", "at least one");
        }
    }

    /** The thin-wire model needs bars that are longer than thick; anything else is a slip of the unit. */
    private static void slender(SiteRules rules, String electrode) {
        for (String shape : List.of("rod", "rods-in-line", "rods-in-ring", "wire", "star")) {
            rules.below(electrode + '.' + shape + ".diameter", electrode + '.' + shape + ".length", false);
        }
        for (String shape : List.of("rod", "rods-in-line", "rods-in-ring", "wire", "star", "ring", "mat")) {
            rules.below(electrode + '.' + shape + ".diameter", electrode + ".concrete.diameter", false);
        }
        rules.below(electrode + ".concrete.diameter", electrode + ".rod.length", false);
        rules.belongs(
                electrode + ".concrete",
                rules.absent(electrode + ".plate") && rules.absent(electrode + ".resistance"),
                "concrete is described around bars and wires; a resistance holds it already");
        rules.below(electrode + ".ring.diameter", electrode + ".ring.radius", false);
        rules.below(electrode + ".mat.diameter", electrode + ".mat.mesh", false);
        rules.below(electrode + ".mat.mesh", electrode + ".mat.width", true);
        rules.below(electrode + ".mat.mesh", electrode + ".mat.length", true);
        rules.below(electrode + ".rods-in-line.diameter", electrode + ".rods-in-line.spacing", false);
        rules.below(electrode + ".rods-in-ring.diameter", electrode + ".rods-in-ring.radius", false);
    }

    private static void layers(SiteRules rules) {
        if (!rules.facts().has("soil.layers")) {
            return;
        }
        List<String> layers = rules.items("soil.layers");
        if (layers.size() < 2 || layers.size() > MOST_LAYERS) {
            rules.wrong(
                    "soil.layers",
                    "there are " + layers.size() + " layers",
                    "2 to " + MOST_LAYERS + "; uniform soil is written as soil.resistivity");
        }
        for (int i = 0; i < layers.size(); i++) {
            String thickness = layers.get(i) + ".thickness";
            boolean lowest = i == layers.size() - 1;
            if (lowest) {
                rules.belongs(thickness, false, "no thickness, the lowest layer has no end");
            } else if (rules.absent(thickness)) {
                rules.wrong(layers.get(i), "this layer has no thickness", "one for every layer but the lowest");
            }
        }
    }

    private static void mainElectrode(SiteRules rules) {
        if (rules.facts().has("main-earth")
                && !rules.facts().has("main-earth.electrode")
                && rules.facts().count("electrodes") > 1) {
            rules.wrong(
                    "main-earth", "there are several electrodes and the main earth names none", "the key electrode");
        }
    }

    private static void readings(SiteRules rules) {
        Set<String> electrodes = names(rules, "electrodes");
        Set<String> bonds = names(rules, "main-earth.segments");
        bonds.addAll(BONDS);
        for (String reading : rules.items("measurements")) {
            rules.below(reading + ".potential-probe-distance", reading + ".current-probe-distance", false);
            Set<String> known =
                    rules.facts().is(reading + ".kind", MeasurementKind.BOND_CONTINUITY) ? bonds : electrodes;
            rules.facts()
                    .text(reading + ".of")
                    .filter(of -> !known.contains(of))
                    .ifPresent(of -> {
                        rules.wrong(
                                reading + ".of",
                                Problem.quote(of) + " is not on this site",
                                known.isEmpty()
                                        ? "electrodes in the file"
                                        : "one of "
                                                + String.join(
                                                        ", ",
                                                        known.stream().sorted().toList()));
                    });
        }
    }

    private static Set<String> names(SiteRules rules, String list) {
        Set<String> names = new HashSet<>();
        for (String item : rules.items(list)) {
            Optional<String> name = rules.facts().text(item + ".name");
            if (name.isPresent()) {
                names.add(name.get());
            }
        }
        return names;
    }
}
