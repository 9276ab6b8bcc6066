package earthing.decision;

import earthing.compliance.Finding;
import earthing.quantity.Measure;
import earthing.site.Site;
import earthing.site.file.SiteTree;
import earthing.study.Case;
import earthing.study.Result;
import earthing.study.StudyResults;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/**
 * What differs between two sites, or two revisions of one: inputs, results, findings. Results are matched by id, case
 * and bound, findings by id and, where an id
 * stands more than once, by subject.
 *
 * @param inputs keys that differ, in the order of the site file
 * @param results results that differ, in the order of the studies
 * @param findings findings of another status, value or limit, in the order of the report
 * @param sameResults number of results that both have and that do not differ
 */
public record SiteDifference(
        List<InputChange> inputs, List<ResultChange> results, List<FindingChange> findings, int sameResults) {

    /** Two values differ where they are further apart than this part of the larger one. */
    public static final double RELATIVE = 1e-3;

    /** What is smaller than this part of the largest value of its id is rounding. */
    private static final double NOISE = 1e-6;

    /**
     * Copies the lists.
     *
     * @param inputs keys that differ, in the order of the site file
     * @param results results that differ, in the order of the studies
     * @param findings findings of another status, value or limit, in the order of the report
     * @param sameResults number of results that both have and that do not differ
     */
    public SiteDifference {
        inputs = List.copyOf(inputs);
        results = List.copyOf(results);
        findings = List.copyOf(findings);
    }

    /**
     * One side of a comparison.
     *
     * @param site the site
     * @param results what the studies found
     * @param findings what the checks found
     */
    public record Side(Site site, StudyResults results, List<Finding> findings) {
        /**
         * Copies the findings.
         *
         * @param site the site
         * @param results what the studies found
         * @param findings what the checks found
         */
        public Side {
            findings = List.copyOf(findings);
        }
    }

    /**
     * A key that is given otherwise.
     *
     * @param key dotted path in the site file
     * @param before value of the first site as written, empty if not given
     * @param after value of the second site as written, empty if not given
     */
    public record InputChange(String key, String before, String after) {}

    /**
     * A result that differs.
     *
     * @param id id of the result
     * @param circumstances its case
     * @param at its bound
     * @param unit SI unit
     * @param before value of the first site in SI, if it has the result
     * @param after value of the second site in SI, if it has the result
     */
    public record ResultChange(
            String id, Case circumstances, String at, String unit, OptionalDouble before, OptionalDouble after) {
        /**
         * The second value over the first.
         *
         * @return the ratio; none where one is missing, the first is zero or the signs differ
         */
        public OptionalDouble ratio() {
            if (before.isEmpty() || after.isEmpty()) {
                return OptionalDouble.empty();
            }
            double ratio = after.getAsDouble() / before.getAsDouble();
            return ratio > 0 && Double.isFinite(ratio) ? OptionalDouble.of(ratio) : OptionalDouble.empty();
        }
    }

    /**
     * A finding that differs.
     *
     * @param id id of the finding
     * @param subject what was looked at
     * @param before the finding on the first site, if there is one
     * @param after the finding on the second site, if there is one
     */
    public record FindingChange(String id, String subject, Optional<Finding> before, Optional<Finding> after) {
        /**
         * Whether the status is another one.
         *
         * @return true also where only one site has the finding
         */
        public boolean ofStatus() {
            return !before.map(Finding::status).equals(after.map(Finding::status));
        }
    }

    private record ResultKey(String id, Case circumstances, String at) {}

    private record FindingKey(String id, String subject, int number) {}

    /**
     * Compares two sites.
     *
     * @param before the first site
     * @param after the second site
     * @return what differs
     */
    public static SiteDifference between(Side before, Side after) {
        List<ResultChange> results = new ArrayList<>();
        int same = results(before.results(), after.results(), results);
        return new SiteDifference(
                inputs(before.site(), after.site()), results, findings(before.findings(), after.findings()), same);
    }

    private static List<InputChange> inputs(Site before, Site after) {
        Map<String, Object> first = new LinkedHashMap<>();
        Map<String, Object> second = new LinkedHashMap<>();
        SiteTree.entries(before).forEach(entry -> first.put(entry.path(), entry.value()));
        SiteTree.entries(after).forEach(entry -> second.put(entry.path(), entry.value()));
        List<InputChange> changes = new ArrayList<>();
        first.forEach((key, value) -> {
            Object other = second.get(key);
            if (other == null) {
                changes.add(new InputChange(key, written(value), ""));
            } else if (!written(value).equals(written(other))) {
                changes.add(new InputChange(key, written(value), written(other)));
            }
        });
        second.forEach((key, value) -> {
            if (!first.containsKey(key)) {
                changes.add(new InputChange(key, "", written(value)));
            }
        });
        return changes;
    }

    /** A value as the file says it; the origin belongs to it, date and person do not change a number. */
    private static String written(Object value) {
        if (!(value instanceof Measure measure)) {
            return value instanceof Enum<?> word ? SiteTree.word(word) : value.toString();
        }
        if (measure.bounds().isEmpty()) {
            return "unknown";
        }
        Measure.Bounds bounds = measure.bounds().get();
        String text = measure.hasSpread()
                ? bounds.low().text() + " / " + bounds.nominal().text() + " / "
                        + bounds.high().text()
                : bounds.nominal().text();
        return measure.origin() == Measure.Origin.UNSTATED
                ? text
                : text + " (" + SiteTree.word(measure.origin()).replace('-', ' ') + ")";
    }

    private static int results(StudyResults before, StudyResults after, List<ResultChange> changes) {
        Map<ResultKey, Result> first = keyed(before);
        Map<ResultKey, Result> second = keyed(after);
        Map<String, Double> largest = new HashMap<>();
        for (Map<ResultKey, Result> side : List.of(first, second)) {
            side.values().forEach(r -> largest.merge(r.id(), Math.abs(r.value()), Math::max));
        }
        int same = 0;
        for (Map.Entry<ResultKey, Result> entry : first.entrySet()) {
            Result a = entry.getValue();
            Result b = second.get(entry.getKey());
            if (b != null && alike(a.value(), b.value(), largest.getOrDefault(a.id(), 0.0))) {
                same++;
            } else {
                changes.add(change(a, OptionalDouble.of(a.value()), optional(b)));
            }
        }
        second.forEach((key, b) -> {
            if (!first.containsKey(key)) {
                changes.add(change(b, OptionalDouble.empty(), OptionalDouble.of(b.value())));
            }
        });
        return same;
    }

    private static OptionalDouble optional(@Nullable Result result) {
        return result == null ? OptionalDouble.empty() : OptionalDouble.of(result.value());
    }

    private static ResultChange change(Result like, OptionalDouble before, OptionalDouble after) {
        return new ResultChange(like.id(), like.circumstances(), like.at(), like.unit(), before, after);
    }

    /** Residuals tell how well a system of equations was solved, not what the site does. */
    private static Map<ResultKey, Result> keyed(StudyResults results) {
        Map<ResultKey, Result> keyed = new LinkedHashMap<>();
        for (Result result : results.results()) {
            boolean pure = result.unit().isEmpty() || result.unit().equals("1");
            if (!(pure && result.id().endsWith(".residual"))) {
                keyed.putIfAbsent(new ResultKey(result.id(), result.circumstances(), result.at()), result);
            }
        }
        return keyed;
    }

    private static boolean alike(double a, double b, double largest) {
        double apart = Math.abs(a - b);
        return a == b || apart <= RELATIVE * Math.max(Math.abs(a), Math.abs(b)) || apart <= NOISE * largest;
    }

    private static List<FindingChange> findings(List<Finding> before, List<Finding> after) {
        Map<FindingKey, Finding> first = numbered(before, after);
        Map<FindingKey, Finding> second = numbered(after, before);
        List<FindingChange> changes = new ArrayList<>();
        first.forEach((key, a) -> {
            Finding b = second.get(key);
            if (b == null || differs(a, b)) {
                changes.add(new FindingChange(a.id(), a.subject(), Optional.of(a), Optional.ofNullable(b)));
            }
        });
        second.forEach((key, b) -> {
            if (!first.containsKey(key)) {
                changes.add(new FindingChange(b.id(), b.subject(), Optional.empty(), Optional.of(b)));
            }
        });
        return changes;
    }

    /** Where an id stands once on either side, the words of its subject do not matter. */
    private static Map<FindingKey, Finding> numbered(List<Finding> findings, List<Finding> others) {
        Map<FindingKey, Finding> numbered = new LinkedHashMap<>();
        for (Finding finding : findings) {
            boolean once = once(findings, finding.id()) && once(others, finding.id());
            String subject = once ? "" : finding.subject();
            int number = 0;
            while (numbered.containsKey(new FindingKey(finding.id(), subject, number))) {
                number++;
            }
            numbered.put(new FindingKey(finding.id(), subject, number), finding);
        }
        return numbered;
    }

    private static boolean once(List<Finding> findings, String id) {
        return findings.stream().filter(finding -> finding.id().equals(id)).count() == 1;
    }

    private static boolean differs(Finding a, Finding b) {
        return a.status() != b.status() || differs(a.value(), b.value()) || differs(a.limit(), b.limit());
    }

    private static boolean differs(OptionalDouble a, OptionalDouble b) {
        if (a.isPresent() && b.isPresent()) {
            return !alike(a.getAsDouble(), b.getAsDouble(), 0);
        }
        return a.isPresent() != b.isPresent();
    }
}
