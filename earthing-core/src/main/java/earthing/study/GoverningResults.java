package earthing.study;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;

/**
 * Of results at points between and beside the bounds those that govern: worse than every result at a bound. The others
 * say nothing that the reader needs and are left out.
 */
final class GoverningResults {

    private static final double NOTICEABLE = 1e-9;

    /** Ends of the ids of a value and of the limit that it is held against. */
    private static final List<List<String>> PAIRS = List.of(
            List.of(".voltage", ".permissible"),
            List.of(".voltage", ".limit"),
            List.of(".final-temperature", ".temperature-limit"));

    private static final List<String> LARGEST = List.of(
            "epr.",
            "cable.power-frequency.",
            "transfer.",
            "aux-supply.isolation.voltage",
            "step.worst.voltage",
            "surge.arrester.temporary-overvoltage");

    private record Key(String id, Case circumstances, String at) {}

    /** How far a result is from being bad; less is worse. */
    private record Candidate(String group, double margin, Result result) {}

    private GoverningResults() {}

    /** Whether a result stands between or beside the bounds. */
    static boolean beside(Result result) {
        return SweptFaults.swept(result) || result.at().startsWith("soil=");
    }

    /**
     * Drops what does not govern.
     *
     * @param found all results of the power-frequency studies
     * @param own whether a case belongs to the site as it is
     */
    static StudyResults of(StudyResults found, Predicate<Case> own) {
        if (found.results().stream().noneMatch(GoverningResults::beside)) {
            return found;
        }
        Map<Key, Result> all = new HashMap<>();
        found.results().forEach(r -> all.putIfAbsent(new Key(r.id(), r.circumstances(), r.at()), r));
        Map<String, Double> named = new HashMap<>();
        Map<String, Candidate> worst = new HashMap<>();
        for (Result result : found.results()) {
            if (own.test(result.circumstances())) {
                for (Candidate candidate : candidates(result, all)) {
                    if (!beside(result)) {
                        named.merge(candidate.group(), candidate.margin(), Math::min);
                    } else {
                        worst.merge(candidate.group(), candidate, (a, b) -> b.margin() < a.margin() ? b : a);
                    }
                }
            }
        }
        Set<Key> kept = new LinkedHashSet<>();
        worst.forEach((group, candidate) -> {
            Double bound = named.get(group);
            if (bound == null || candidate.margin() < bound - NOTICEABLE * (1 + Math.abs(bound))) {
                String subject = group.substring(0, group.indexOf('|'));
                kept.add(new Key(
                        subject,
                        candidate.result().circumstances(),
                        candidate.result().at()));
            }
        });
        List<Result> results = new ArrayList<>();
        for (Result result : found.results()) {
            if (!beside(result) || kept.stream().anyMatch(key -> belongs(result, key))) {
                results.add(result);
            }
        }
        return new StudyResults(results, found.curves(), found.gaps(), found.assumptions(), found.notes());
    }

    private static List<Candidate> candidates(Result result, Map<Key, Result> all) {
        List<Candidate> candidates = new ArrayList<>();
        for (List<String> pair : PAIRS) {
            if (result.id().endsWith(pair.get(0))) {
                String subject = result.id()
                        .substring(0, result.id().length() - pair.get(0).length());
                Optional.ofNullable(all.get(new Key(subject + pair.get(1), result.circumstances(), result.at())))
                        .ifPresent(limit -> candidates.add(new Candidate(
                                subject + "|" + pair.get(1),
                                (limit.value() - result.value()) / Math.abs(limit.value()),
                                result)));
            }
        }
        if (LARGEST.stream().anyMatch(result.id()::startsWith)) {
            candidates.add(new Candidate(result.id() + "|", -result.value(), result));
        }
        if (result.id().endsWith(".detection-ratio")) {
            candidates.add(new Candidate(result.id() + "|", result.value(), result));
        }
        return candidates;
    }

    /** What governs is kept with what belongs to it, and with the fault that it comes from. */
    private static boolean belongs(Result result, Key kept) {
        return result.at().equals(kept.at())
                && result.circumstances().equals(kept.circumstances())
                && (result.id().equals(kept.id())
                        || result.id().startsWith(kept.id() + ".")
                        || result.id().startsWith("fault."));
    }
}
