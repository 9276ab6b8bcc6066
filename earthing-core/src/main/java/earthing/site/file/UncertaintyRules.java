package earthing.site.file;

import earthing.quantity.Measure;
import earthing.quantity.Measure.Bound;
import earthing.site.DistributionShape;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Rules about how bounded inputs are spread. */
final class UncertaintyRules {

    private UncertaintyRules() {}

    static void check(SiteRules rules) {
        Set<String> described = new HashSet<>();
        for (String item : rules.items("uncertainty.distributions")) {
            boolean normal = rules.facts().is(item + ".shape", DistributionShape.NORMAL)
                    || rules.facts().is(item + ".shape", DistributionShape.LOGNORMAL);
            boolean shapeKnown = rules.facts().word(item + ".shape") != null;
            for (String key : List.of(".share", ".limits")) {
                rules.belongs(item + key, normal || !shapeKnown, "it with shape: normal or lognormal");
            }
            rules.facts().measure(item + ".share").ifPresent(share -> {
                if (!(share.at(Bound.HIGH) < 1)) {
                    rules.wrong(item + ".share", "no part is as large as the whole", "less than 100 %");
                }
            });
            spread(rules, item + ".key").ifPresent(path -> {
                if (!described.add(path)) {
                    rules.wrong(item + ".key", "this input has a distribution already", "one for each input");
                }
            });
        }
        Map<String, String> pairs = new HashMap<>();
        for (String item : rules.items("uncertainty.correlations")) {
            Optional<String> one = spread(rules, item + ".one");
            Optional<String> other = spread(rules, item + ".other");
            rules.facts().measure(item + ".rank").ifPresent(rank -> {
                if (!(Math.abs(rank.nominal()) < 1) || rank.hasSpread()) {
                    rules.wrong(item + ".rank", "this is no rank correlation", "one number between -1 and 1");
                }
            });
            if (one.isPresent() && other.isPresent()) {
                List<String> both = new ArrayList<>(List.of(one.get(), other.get()));
                both.sort(null);
                if (one.get().equals(other.get())) {
                    rules.wrong(item + ".other", "an input goes together with itself", "another key");
                } else if (pairs.putIfAbsent(String.join(" ", both), item) != null) {
                    rules.wrong(item + ".other", "this pair has a correlation already", "one for each pair");
                }
            }
        }
    }

    /** The bounded input that a text names, by the path of its facts. */
    private static Optional<String> spread(SiteRules rules, String path) {
        Optional<String> written = rules.facts().text(path);
        if (written.isEmpty()) {
            return Optional.empty();
        }
        String key = numbered(rules.facts(), written.get());
        Optional<Measure> measure = rules.facts().measure(key);
        if (measure.filter(Measure::hasSpread).isPresent()) {
            return Optional.of(key);
        }
        if (!rules.problems().mentions(key)) {
            rules.wrong(
                    path,
                    rules.facts().has(key)
                            ? Problem.quote(written.get()) + " has no low and high"
                            : "there is no key " + Problem.quote(written.get()) + " in this file",
                    "the path of a value with low and high, such as soil.resistivity or soil.layers[1].resistivity");
        }
        return Optional.empty();
    }

    /** Items of lists that are named by their name get their number. */
    private static String numbered(Facts facts, String key) {
        StringBuilder path = new StringBuilder();
        int from = 0;
        for (int open = key.indexOf('['); open >= 0; open = key.indexOf('[', from)) {
            int close = key.indexOf(']', open);
            path.append(key, from, open);
            int number = close < 0 ? 0 : number(facts, path.toString(), key.substring(open + 1, close));
            if (number == 0) {
                return key;
            }
            path.append('[').append(number).append(']');
            from = close + 1;
        }
        return path.append(key, from, key.length()).toString();
    }

    /** Number of an item from 1; 0 if there is none of this name or number. */
    private static int number(Facts facts, String list, String which) {
        for (int i = 1; i <= facts.count(list); i++) {
            if (facts.text(list + '[' + i + "].name").filter(which::equals).isPresent()
                    || which.equals(Integer.toString(i))) {
                return i;
            }
        }
        return 0;
    }
}
