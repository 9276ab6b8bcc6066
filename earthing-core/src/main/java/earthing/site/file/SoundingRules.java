package earthing.site.file;

import earthing.electrode.wire.DrivenRod;
import earthing.quantity.Measure;
import earthing.soil.ElectrodeArray;
import earthing.soil.Reading;
import earthing.soil.Schlumberger;
import earthing.soil.SoundingInversion;
import earthing.soil.Wenner;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Rules about the readings of a soil survey in the site file: whole, of one array, and none that contradicts all others. */
final class SoundingRules {

    private static final String FILE = "soil.survey-file";
    private static final String LIST = "soil.soundings";

    private SoundingRules() {}

    static void check(SiteRules rules) {
        Facts facts = rules.facts();
        if (facts.has(FILE)) {
            rules.notBoth(FILE, "soil.resistivity");
            rules.notBoth(FILE, "soil.layers");
            rules.notBoth(FILE, LIST);
        }
        if (!facts.has(LIST)) {
            return;
        }
        rules.notBoth(LIST, "soil.resistivity");
        rules.notBoth(LIST, "soil.layers");
        List<String> readings = rules.items(LIST);
        SurveyRows rows = new SurveyRows("soil.soundings", rules.problems());
        boolean whole = true;
        Set<Class<?>> kinds = new HashSet<>();
        for (String path : readings) {
            Optional<Reading> reading = reading(rules, path);
            whole &= reading.isPresent();
            if (reading.isPresent()) {
                kinds.add(reading.get().array().getClass());
                rows.add(
                        facts.place(path).line(), facts.text(path + ".traverse").orElse(""), reading.get());
            }
        }
        if (readings.size() < SoundingInversion.FEWEST_READINGS) {
            rules.wrong(
                    LIST,
                    "there are " + readings.size() + " readings",
                    SoundingInversion.FEWEST_READINGS + " or more; common practice is five spacings or more");
        } else if (kinds.size() > 1) {
            rules.wrong(LIST, "there are readings of " + kinds.size() + " kinds of arrays", "readings of one kind");
        } else if (whole) {
            rows.check();
        }
    }

    private static Optional<Reading> reading(SiteRules rules, String path) {
        Facts facts = rules.facts();
        boolean spacing = facts.has(path + ".spacing");
        boolean halves = facts.has(path + ".half-current-spacing") || facts.has(path + ".half-potential-spacing");
        boolean rod = facts.has(path + ".rod-depth") || facts.has(path + ".rod-diameter");
        int kinds = (spacing ? 1 : 0) + (halves ? 1 : 0) + (rod ? 1 : 0);
        if (kinds != 1) {
            rules.wrong(
                    path,
                    kinds > 1 ? "this reading has the spacings of two arrays" : "this reading has no spacing",
                    "spacing, or half-current-spacing and half-potential-spacing, or rod-depth and rod-diameter");
            return Optional.empty();
        }
        rules.belongs(path + ".probe-depth", spacing, "the depth of the probes is allowed for in Wenner arrays only");
        if (facts.has(path + ".resistance") == facts.has(path + ".resistivity")) {
            rules.wrong(path, "this reading has not one value", "either resistance or resistivity");
            return Optional.empty();
        }
        Optional<Measure> a =
                facts.measure(path + (spacing ? ".spacing" : rod ? ".rod-depth" : ".half-current-spacing"));
        Optional<Measure> b =
                facts.measure(path + (spacing ? ".probe-depth" : rod ? ".rod-diameter" : ".half-potential-spacing"));
        Optional<Measure> value = facts.measure(path + ".resistance").or(() -> facts.measure(path + ".resistivity"));
        if (a.isEmpty() || value.isEmpty() || (!spacing && b.isEmpty())) {
            rules.wrong(path, "a value of this reading is missing or unknown", "numbers with units");
            return Optional.empty();
        }
        try {
            double first = a.get().nominal();
            double second = b.map(Measure::nominal).orElse(0.0);
            ElectrodeArray array = spacing
                    ? Wenner.driven(first, second)
                    : rod ? new DrivenRod(first, second / 2) : new Schlumberger(first, second);
            return Optional.of(
                    facts.has(path + ".resistance")
                            ? Reading.ofResistance(array, value.get().nominal())
                            : new Reading(array, value.get().nominal()));
        } catch (IllegalArgumentException impossible) {
            rules.wrong(path, String.valueOf(impossible.getMessage()), "");
            return Optional.empty();
        }
    }
}
