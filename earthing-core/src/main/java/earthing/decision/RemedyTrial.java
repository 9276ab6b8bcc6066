package earthing.decision;

import earthing.compliance.Finding;
import earthing.compliance.Status;
import earthing.site.Site;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * One changed site, studied and checked from end to end.
 *
 * @param changes what was changed, in the order of the catalogue
 * @param site the changed site
 * @param findings what the checks found on it
 * @param effects every finding that differs from that of the site as it was, the worsened ones first
 */
public record RemedyTrial(List<Change> changes, Site site, List<Finding> findings, List<Effect> effects) {

    /** Two margins or values differ where they are further apart than this part of the larger one, or of 1. */
    private static final double RELATIVE = 1e-3;

    /**
     * One change of the catalogue at one step of its range.
     *
     * @param remedy the change
     * @param step number of the step, from 0
     */
    public record Change(Remedy remedy, int step) {
        /**
         * The step in words.
         *
         * @return for example {@code 6 m}
         */
        public String text() {
            return remedy.steps().get(step).text();
        }
    }

    /** What a change does to a finding. */
    public enum Direction {
        /** It has a heavier status, or a smaller margin. */
        WORSE,
        /** It has another value, and cannot be called better or worse. */
        OTHER,
        /** It has a lighter status, or a larger margin. */
        BETTER
    }

    /**
     * A finding before and after.
     *
     * @param before what was found, empty if the site as it was has no such finding
     * @param after what is found, empty if it no longer arises
     * @param direction whether that is better
     */
    public record Effect(Optional<Finding> before, Optional<Finding> after, Direction direction) {
        /**
         * The finding that tells id and subject.
         *
         * @return the one after, else the one before
         */
        public Finding finding() {
            return after.or(() -> before).orElseThrow();
        }

        /**
         * Whether the status differs.
         *
         * @return true also where only one side has the finding
         */
        public boolean ofStatus() {
            return !before.map(Finding::status).equals(after.map(Finding::status));
        }
    }

    /**
     * Copies the lists.
     *
     * @param changes what was changed
     * @param site the changed site
     * @param findings what the checks found on it
     * @param effects every finding that differs
     */
    public RemedyTrial {
        changes = List.copyOf(changes);
        findings = List.copyOf(findings);
        effects = List.copyOf(effects);
    }

    static RemedyTrial of(List<Change> changes, Site site, List<Finding> before, List<Finding> after) {
        return new RemedyTrial(changes, site, after, effects(before, after));
    }

    /** How many of some findings of a changed site stand against it; see {@link #standsAgainst}. */
    static int countAgainst(List<Finding> before, List<Finding> after) {
        // Only what is not met or open can stand against a site, and most findings are neither.
        boolean nothing = after.stream()
                .noneMatch(f -> !RemedySearch.isReading(f) && (f.status() == Status.NOT_MET || open(f.status())));
        return nothing ? 0 : (int) against(before, after).count();
    }

    /** Those of some findings of a changed site that stand against it. */
    static Stream<Finding> against(List<Finding> before, List<Finding> after) {
        List<Effect> effects = effects(before, after);
        return after.stream().filter(finding -> standsAgainst(finding, effects));
    }

    /**
     * Whether every finding is met: none is not met, and none is open that was not open before.
     *
     * @return true if so
     */
    public boolean meetsAll() {
        return left() == 0;
    }

    /**
     * How many findings stand against the change.
     *
     * @return see {@link #standsAgainst}
     */
    public int left() {
        return (int) findings.stream().filter(this::standsAgainst).count();
    }

    /**
     * Whether a finding of the changed site stands against the change: it is not met, or it could be judged before and
     * cannot any longer, for a check that no longer answers is no remedy. Findings on readings do not count; a changed
     * pole is measured anew.
     *
     * @param finding a finding of the changed site
     * @return true if so
     */
    public boolean standsAgainst(Finding finding) {
        return standsAgainst(finding, effects);
    }

    private static boolean standsAgainst(Finding finding, List<Effect> effects) {
        if (RemedySearch.isReading(finding)) {
            return false;
        }
        return finding.status() == Status.NOT_MET
                || effects.stream()
                        .filter(effect ->
                                effect.after().map(f -> f.equals(finding)).orElse(false))
                        .anyMatch(RemedyTrial::newlyOpen);
    }

    private static boolean newlyOpen(Effect effect) {
        return effect.after().map(f -> open(f.status())).orElse(false)
                && !effect.before().map(f -> open(f.status())).orElse(false);
    }

    private static boolean open(Status status) {
        return status == Status.NOT_ASSESSED || status == Status.INSUFFICIENT_DATA;
    }

    /**
     * Whether a finding that was not met is met, or no longer arises; one that is gone because something can no longer
     * be judged is not met.
     *
     * @param finding a finding of the site as it was
     * @return true if so
     */
    public boolean meets(Finding finding) {
        return now(finding)
                .map(f -> f.status() == Status.MET
                        || f.status() == Status.NOT_APPLICABLE
                        || f.status() == Status.ACCEPTED_DEPARTURE)
                .orElseGet(() -> effects.stream().noneMatch(RemedyTrial::newlyOpen));
    }

    /**
     * The finding of the changed site that answers to one of the site as it was.
     *
     * @param finding a finding of the site as it was
     * @return the finding, empty if it no longer arises
     */
    public Optional<Finding> now(Finding finding) {
        return findings.stream()
                .filter(f -> f.id().equals(finding.id()) && f.subject().equals(finding.subject()))
                .findFirst();
    }

    /**
     * The worsened findings.
     *
     * @return those whose status is heavier or whose margin is smaller
     */
    public List<Effect> worsened() {
        return effects.stream().filter(e -> e.direction() == Direction.WORSE).toList();
    }

    private static List<Effect> effects(List<Finding> before, List<Finding> after) {
        Map<String, Finding> old = keyed(before);
        Map<String, Finding> now = keyed(after);
        List<Effect> effects = new ArrayList<>();
        old.forEach((key, finding) -> effect(Optional.of(finding), Optional.ofNullable(now.get(key)), effects));
        now.forEach((key, finding) -> {
            if (!old.containsKey(key)) {
                effect(Optional.empty(), Optional.of(finding), effects);
            }
        });
        effects.sort(Comparator.comparing(Effect::direction)
                .thenComparing(e -> !e.ofStatus())
                .thenComparingInt(e -> -heavier(e))
                .thenComparingDouble(e -> e.finding().margin().orElse(Double.POSITIVE_INFINITY)));
        return effects;
    }

    private static int heavier(Effect effect) {
        return weight(effect.after()) - weight(effect.before());
    }

    private static int weight(Optional<Finding> finding) {
        return finding.map(f -> rank(f.status())).orElse(0);
    }

    /** What cannot be judged weighs less than what is not met and more than what is. */
    private static int rank(Status status) {
        return switch (status) {
            case NOT_MET -> 4;
            case INSUFFICIENT_DATA, NOT_ASSESSED -> 3;
            case ACCEPTED_DEPARTURE -> 2;
            case DUE_LATER -> 1;
            case MET, NOT_APPLICABLE -> 0;
        };
    }

    private static void effect(Optional<Finding> before, Optional<Finding> after, List<Effect> effects) {
        int heavier = weight(after) - weight(before);
        if (heavier != 0) {
            effects.add(new Effect(before, after, heavier > 0 ? Direction.WORSE : Direction.BETTER));
            return;
        }
        if (before.isEmpty() || after.isEmpty()) {
            boolean told = before.or(() -> after).orElseThrow().status() != Status.NOT_APPLICABLE;
            if (told) {
                effects.add(new Effect(before, after, Direction.OTHER));
            }
            return;
        }
        Finding old = before.get();
        Finding now = after.get();
        if (old.margin().isPresent() && now.margin().isPresent()) {
            double a = old.margin().getAsDouble();
            double b = now.margin().getAsDouble();
            if (Math.abs(a - b) > RELATIVE * Math.max(1, Math.max(Math.abs(a), Math.abs(b)))) {
                effects.add(new Effect(before, after, b < a ? Direction.WORSE : Direction.BETTER));
            }
        } else if (old.value().isPresent() && now.value().isPresent()) {
            double a = old.value().getAsDouble();
            double b = now.value().getAsDouble();
            if (Math.abs(a - b) > RELATIVE * Math.max(Math.abs(a), Math.abs(b))) {
                effects.add(new Effect(before, after, Direction.OTHER));
            }
        }
    }

    /** By id and subject; a pair that stands more than once is numbered. */
    private static Map<String, Finding> keyed(List<Finding> findings) {
        Map<String, Finding> keyed = new LinkedHashMap<>();
        Map<String, Integer> times = new HashMap<>();
        for (Finding finding : findings) {
            if (RemedySearch.isReading(finding)) {
                continue;
            }
            String key = finding.id() + '\n' + finding.subject();
            keyed.put(key + '\n' + times.merge(key, 1, Integer::sum), finding);
        }
        return keyed;
    }
}
