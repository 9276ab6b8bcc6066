package earthing.compliance;

import earthing.quantity.Numbers;
import earthing.quantity.Written;
import earthing.site.Expectation;
import earthing.site.Site;
import earthing.study.Case;
import earthing.study.Result;
import earthing.study.StudyResults;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;

/** Holds a site to the results that its author expects. */
public final class Expectations {

    /** Bound of a result for which an expectation that names none is meant. */
    private static final String NOMINAL = "nominal";

    private static final int MOST_CASES_TOLD = 4;

    /** Rounding of the arithmetic, as a part of the value: a number on the edge of its last digit is not off. */
    private static final double ROUNDING = 1e-9;

    /**
     * One expectation and what there is.
     *
     * @param number its number in the file, from 1
     * @param expectation what was expected
     * @param holds whether it is kept
     * @param found what there is, as a phrase
     */
    public record Held(int number, Expectation expectation, boolean holds, String found) {

        /**
         * The path of the expectation in the site file.
         *
         * @return for example {@code expect[2]}
         */
        public String path() {
            return "expect[" + number + "]";
        }

        /**
         * What was expected, as a phrase.
         *
         * @return for example {@code 31.9 ohm within 2 %}
         */
        public String expected() {
            String within = expectation.within();
            return within == null ? expectation.value() : expectation.value() + " within " + within;
        }
    }

    private record Judged(boolean holds, String found) {}

    private Expectations() {}

    /**
     * Whether an expectation speaks of a case that the site as it is built does not have.
     *
     * @param site the site
     * @return true if all arrangements have to be studied
     */
    public static boolean needArrangements(Site site) {
        return site.expect().stream().anyMatch(e -> e.inCase() != null);
    }

    /**
     * Compares each expectation with what was found.
     *
     * @param site the site
     * @param results what the studies found
     * @param findings what the checks found
     * @return one entry for each expectation, in the order of the file
     */
    public static List<Held> of(Site site, StudyResults results, List<Finding> findings) {
        if (site.expect().isEmpty()) {
            return List.of();
        }
        Design design = Design.of(site, results);
        List<Held> held = new ArrayList<>();
        for (Expectation expectation : site.expect()) {
            Judged judged = judged(expectation, design, findings);
            held.add(new Held(held.size() + 1, expectation, judged.holds(), judged.found()));
        }
        return List.copyOf(held);
    }

    private static Judged judged(Expectation expectation, Design design, List<Finding> findings) {
        String id = expectation.result();
        List<Finding> named = findings.stream().filter(f -> f.id().equals(id)).toList();
        List<Finding> meant = named.stream()
                .filter(f -> expectation.subject() == null || f.subject().equals(expectation.subject()))
                .toList();
        Optional<Written> number = Written.of(expectation.value());
        if (number.isEmpty()) {
            return meant.isEmpty() ? absent("finding", id, named) : status(expectation.value(), meant);
        }
        boolean ofResult = expectation.at() != null || expectation.inCase() != null;
        if (!ofResult && !meant.isEmpty()) {
            return ofFinding(expectation, number.get(), meant);
        }
        if (expectation.subject() != null) {
            return absent("finding", id, named);
        }
        return ofResult(expectation, number.get(), design);
    }

    private static Judged absent(String what, String id, List<Finding> named) {
        return new Judged(
                false,
                named.isEmpty()
                        ? "there is no " + what + " " + id
                        : "no " + what + " " + id + " has this subject; there are "
                                + named.stream()
                                        .map(f -> '"' + f.subject() + '"')
                                        .limit(MOST_CASES_TOLD)
                                        .collect(Collectors.joining(", ")));
    }

    private static Judged status(String word, List<Finding> meant) {
        Status worst = meant.stream()
                .map(Finding::status)
                .max(Comparator.comparingInt(Status::weight))
                .orElseThrow();
        return new Judged(worst.id().equals(word), worst.id());
    }

    private static Judged ofFinding(Expectation expectation, Written number, List<Finding> meant) {
        return meant.stream()
                .filter(f -> f.value().isPresent())
                .min(Comparator.comparingDouble(f -> f.margin().orElse(Double.POSITIVE_INFINITY)))
                .map(f -> value(expectation, number, f.value().getAsDouble(), f.unit()))
                .orElseGet(() -> new Judged(
                        false,
                        "the finding has no value; it is "
                                + meant.get(0).status().id()));
    }

    private static Judged ofResult(Expectation expectation, Written number, Design design) {
        String at = expectation.at() == null ? NOMINAL : expectation.at();
        String inCase = expectation.inCase();
        List<Result> ofId = design.results().of(expectation.result());
        if (ofId.isEmpty()) {
            return new Judged(false, "there is no result and no finding " + expectation.result());
        }
        List<Result> candidates;
        if (inCase == null) {
            candidates = ofId.stream().filter(design::asBuilt).toList();
        } else {
            Map<String, String> words = Expectation.words(inCase);
            Optional<String> strange =
                    words.keySet().stream().filter(k -> !Case.ORDER.contains(k)).findFirst();
            if (strange.isPresent()) {
                return new Judged(
                        false, "a case has no key " + strange.get() + "; it has " + String.join(", ", Case.ORDER));
            }
            Case wider = new Case(words);
            List<Result> within =
                    ofId.stream().filter(r -> r.circumstances().within(wider)).toList();
            // What the words leave open is the site as it is built, unless they speak of another.
            List<Result> own = within.stream().filter(design::asBuilt).toList();
            candidates = own.isEmpty() ? within : own;
        }
        List<Result> meant = candidates.stream().filter(r -> r.at().equals(at)).toList();
        if (meant.isEmpty()) {
            return new Judged(false, "there is no such result at " + at + ofCase(inCase) + told(candidates, ofId));
        }
        Set<Double> values = new LinkedHashSet<>();
        meant.forEach(r -> values.add(r.value()));
        if (values.size() > 1) {
            return new Judged(
                    false,
                    "there are " + meant.size() + " such results; name the one that is meant by in-case: "
                            + meant.stream()
                                    .map(r -> words(r.circumstances()))
                                    .distinct()
                                    .limit(MOST_CASES_TOLD)
                                    .collect(Collectors.joining("; ")));
        }
        return value(expectation, number, meant.get(0).value(), meant.get(0).unit());
    }

    private static String ofCase(@org.jspecify.annotations.Nullable String inCase) {
        return inCase == null ? "" : " in the case " + inCase;
    }

    private static String told(List<Result> candidates, List<Result> all) {
        boolean none = candidates.isEmpty();
        return "; there are "
                + (none ? all : candidates)
                        .stream()
                                .map(r -> none ? words(r.circumstances()) : r.at())
                                .distinct()
                                .limit(MOST_CASES_TOLD)
                                .collect(Collectors.joining(none ? "; " : ", "));
    }

    private static String words(Case circumstances) {
        return circumstances.keys().entrySet().stream()
                .map(e -> e.getKey() + "=" + e.getValue())
                .collect(Collectors.joining(", "));
    }

    private static Judged value(Expectation expectation, Written number, double found, String unit) {
        String shown = Numbers.significant(found, 6) + (unit.isEmpty() || unit.equals("1") ? "" : " " + unit);
        OptionalDouble expected = number.si(unit);
        OptionalDouble tolerance = tolerance(expectation, number, expected, unit);
        if (expected.isEmpty() || tolerance.isEmpty()) {
            return new Judged(false, shown + ", which is given in another unit");
        }
        double off = Math.abs(found - expected.getAsDouble());
        return new Judged(off <= tolerance.getAsDouble() + ROUNDING * Math.abs(found), shown);
    }

    private static OptionalDouble tolerance(
            Expectation expectation, Written number, OptionalDouble expected, String unit) {
        String within = expectation.within();
        if (within == null) {
            return number.halfDigit(unit);
        }
        Written tolerance = Written.of(within).orElseThrow();
        return tolerance.isPart() && expected.isPresent()
                ? OptionalDouble.of(Double.parseDouble(tolerance.number()) / 100 * Math.abs(expected.getAsDouble()))
                : tolerance.size(unit);
    }
}
