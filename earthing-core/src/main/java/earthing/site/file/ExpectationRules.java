package earthing.site.file;

import earthing.quantity.Written;
import earthing.site.Expectation;
import java.util.Optional;

/** Rules about the results that the author expects. */
final class ExpectationRules {

    private static final String NUMBER = "a number with its unit, such as 31.9 ohm";

    private ExpectationRules() {}

    static void check(SiteRules rules) {
        for (String item : rules.items("expect")) {
            boolean status = value(rules, item + ".value");
            String within = item + ".within";
            rules.belongs(within, !status, "it beside a value with a unit");
            rules.belongs(item + ".at", !status, "it beside a value of a result");
            rules.belongs(item + ".in-case", !status, "it beside a value of a result");
            rules.belongs(
                    item + ".subject",
                    !rules.facts().has(item + ".at") && !rules.facts().has(item + ".in-case"),
                    "it beside a finding; a result has a case");
            rules.facts().text(within).ifPresent(text -> {
                Optional<Written> tolerance = Written.of(text);
                if (tolerance.isEmpty() || tolerance.get().number().startsWith("-")) {
                    rules.wrong(within, Problem.quote(text) + " is no tolerance", "2 %, or " + NUMBER);
                }
            });
            rules.facts().text(item + ".in-case").ifPresent(text -> {
                if (Expectation.words(text).isEmpty()) {
                    rules.wrong(
                            item + ".in-case",
                            Problem.quote(text) + " is no case",
                            "keys and words, such as fault=maximum, arrangement=shared");
                }
            });
        }
    }

    /** Whether a status is expected. */
    private static boolean value(SiteRules rules, String path) {
        Optional<String> text = rules.facts().text(path);
        if (text.isEmpty() || Written.of(text.get()).isPresent()) {
            return false;
        }
        if (!Expectation.STATUSES.contains(text.get())) {
            rules.problems()
                    .add(
                            rules.facts().place(path),
                            path,
                            text.get(),
                            Problem.quote(text.get()) + " is neither a number nor a status",
                            NUMBER + ", or one of " + String.join(", ", Expectation.STATUSES),
                            Nearest.of(text.get(), Expectation.STATUSES));
        }
        return true;
    }
}
