package earthing.site.file;

import earthing.quantity.Measure;
import earthing.site.TouchCriterion;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What the keys of a file have to do with each other. A rule speaks only where the values it compares are there: what is
 * missing is for the checks to say.
 */
final class SiteRules {

    private final Facts facts;
    private final ProblemList problems;

    private SiteRules(Facts facts, ProblemList problems) {
        this.facts = facts;
        this.problems = problems;
    }

    /**
     * Applies every rule.
     *
     * @param facts what the file says
     * @param problems where problems go
     * @param complete whether a key that is not in the facts is not in the file
     */
    static void check(Facts facts, ProblemList problems, boolean complete) {
        SiteRules rules = new SiteRules(facts, problems);
        place(rules, "site.latitude", 90);
        place(rules, "site.longitude", 180);
        PoleRules.check(rules);
        NetworkRules.check(rules);
        ElectrodeRules.check(rules, complete);
        criteria(rules);
        ExpectationRules.check(rules);
        UncertaintyRules.check(rules);
    }

    /** A coordinate of the pole; degrees of a map grid are far beyond. */
    private static void place(SiteRules rules, String key, int most) {
        Optional<Measure> angle = rules.facts.measure(key);
        if (angle.isPresent() && !(Math.abs(angle.get().nominal()) <= most)) {
            rules.wrong(
                    key,
                    Problem.quote(rules.shown(key)) + " is no place on earth",
                    "an angle from -" + most + " deg to " + most + " deg");
        }
        String other = key.equals("site.latitude") ? "site.longitude" : "site.latitude";
        rules.belongs(key, !rules.absent(other), other + " beside it");
    }

    private static void criteria(SiteRules rules) {
        Enum<?> touch = rules.facts.word("criteria.touch");
        rules.belongs("criteria.owner", touch == null || touch == TouchCriterion.OWNER, "it with touch: owner");
        rules.belongs(
                "criteria.body",
                touch == null || touch == TouchCriterion.IEC_60479_1 || rules.facts.has("criteria.exposure"),
                "it with touch: iec-60479-1, or beside exposure");
    }

    Facts facts() {
        return facts;
    }

    /** Whether a key is not there at all; one whose value was refused is there. */
    boolean absent(String path) {
        return !facts.has(path) && !problems.mentions(path);
    }

    ProblemList problems() {
        return problems;
    }

    /** A value that contradicts another. */
    void wrong(String path, String found, String expected) {
        problems.add(facts.place(path), path, shown(path), found, expected);
    }

    /** A value must be below another, or not above it. */
    void below(String lower, String upper, boolean mayBeEqual) {
        Optional<Measure> a = facts.measure(lower);
        Optional<Measure> b = facts.measure(upper);
        if (a.isEmpty() || b.isEmpty()) {
            return;
        }
        double low = a.get().nominal();
        double high = b.get().nominal();
        if (mayBeEqual ? !(low <= high) : !(low < high)) {
            wrong(
                    lower,
                    Problem.quote(shown(lower))
                            + (mayBeEqual ? " is above " : " is not below ")
                            + upper
                            + ' '
                            + Problem.quote(shown(upper)),
                    "");
        }
    }

    /** A key that has a meaning only beside another value. */
    void belongs(String path, boolean allowed, String why) {
        if (facts.has(path) && !allowed) {
            wrong(path, "this key does not belong here", why);
        }
    }

    /** Keys that say the same thing in two ways. */
    void notBoth(String one, String other) {
        if (facts.has(one) && facts.has(other)) {
            wrong(other, "this says again what " + one + " says", "one of the two");
        }
    }

    /** The paths of the items of a list. */
    List<String> items(String list) {
        List<String> paths = new ArrayList<>();
        for (int i = 1; i <= facts.count(list); i++) {
            paths.add(list + '[' + i + ']');
        }
        return paths;
    }

    /** The value as its author wrote it. */
    String shown(String path) {
        return facts.measure(path)
                .flatMap(Measure::bounds)
                .map(bounds -> bounds.nominal().text())
                .or(() -> facts.text(path))
                .or(() -> facts.number(path).map(String::valueOf))
                .orElse("");
    }
}
