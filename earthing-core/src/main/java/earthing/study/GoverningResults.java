package earthing.study;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;

/**
 * Of results at points between and beside the bounds those that govern: worse than every result at a bound. The others
 * say nothing that the reader needs and are left out.
 */
final class GoverningResults {

    private static final double NOTICEABLE = 1e-9;

    /** Ends of the ids of a value and of the limit that it is held against, or both ids in full. */
    private static final List<List<String>> PAIRS = List.of(
            List.of(".voltage", ".permissible"),
            List.of(".voltage", ".limit"),
            List.of(".final-temperature", ".temperature-limit"),
            List.of(ArresterDuty.TEMPORARY, ArresterDuty.TEMPORARY + ".rating"));

    private static final List<String> LARGEST = List.of(
            "epr.", "cable.power-frequency.", "transfer.", "aux-supply.isolation.voltage", "step.worst.voltage");

    /** How far a result is from being bad; less is worse. */
    private record Candidate(String subject, String limit, double margin) {}

    /** What is compared: a value with its limit, over all currents and soils; the back-up's cases among themselves. */
    private record Group(String protection, String subject, String limit) {}

    private record Worst(double margin, Results place) {}

    /** The results of one case at one bound or point. */
    private static final class Results {
        final boolean beside;
        final Map<String, Result> byId = new LinkedHashMap<>();
        /** What governs here; with it everything of its name and the fault itself are kept. */
        final Set<String> kept = new LinkedHashSet<>();

        Results(boolean beside) {
            this.beside = beside;
        }

        boolean keeps(String id) {
            for (String subject : kept) {
                if (id.startsWith("fault.") || id.equals(subject) || id.startsWith(subject + ".")) {
                    return true;
                }
            }
            return false;
        }
    }

    private GoverningResults() {}

    /** Whether a point lies between or beside the bounds. */
    static boolean beside(String at) {
        return at.startsWith("soil=") || SweptFaults.swept(at);
    }

    /**
     * Drops what does not govern.
     *
     * @param found all results of the power-frequency studies
     * @param own whether a case belongs to the site as it is
     */
    static StudyResults of(StudyResults found, Predicate<Case> own) {
        if (found.results().stream().noneMatch(r -> beside(r.at()))) {
            return found;
        }
        // Cases and points hash slowly and a fault's results share them: each is looked up once.
        Map<Case, Map<String, Results>> places = new LinkedHashMap<>();
        IdentityHashMap<Case, Map<String, Results>> met = new IdentityHashMap<>();
        List<Results> ofEach = new ArrayList<>(found.results().size());
        for (Result result : found.results()) {
            Results place = met.computeIfAbsent(
                            result.circumstances(), c -> places.computeIfAbsent(c, d -> new LinkedHashMap<>()))
                    .computeIfAbsent(result.at(), at -> new Results(beside(at)));
            place.byId.putIfAbsent(result.id(), result);
            ofEach.add(place);
        }
        Map<Group, Double> named = new HashMap<>();
        Map<Group, Worst> worst = new LinkedHashMap<>();
        places.forEach((circumstances, points) -> {
            if (own.test(circumstances)) {
                String protection = circumstances.keys().getOrDefault(Case.PROTECTION, "");
                points.values().forEach(place -> compare(protection, place, named, worst));
            }
        });
        worst.forEach((group, candidate) -> {
            Double bound = named.get(group);
            if (bound == null || candidate.margin() < bound - NOTICEABLE * (1 + Math.abs(bound))) {
                candidate.place().kept.add(group.subject());
            }
        });
        List<Result> results = new ArrayList<>();
        for (int i = 0; i < ofEach.size(); i++) {
            Result result = found.results().get(i);
            if (!ofEach.get(i).beside || ofEach.get(i).keeps(result.id())) {
                results.add(result);
            }
        }
        return new StudyResults(results, found.curves(), found.gaps(), found.assumptions(), found.notes());
    }

    private static void compare(String protection, Results place, Map<Group, Double> named, Map<Group, Worst> worst) {
        for (Result result : place.byId.values()) {
            for (Candidate candidate : candidates(result, place.byId)) {
                Group group = new Group(protection, candidate.subject(), candidate.limit());
                if (!place.beside) {
                    named.merge(group, candidate.margin(), Math::min);
                } else {
                    worst.merge(group, new Worst(candidate.margin(), place), (a, b) -> b.margin() < a.margin() ? b : a);
                }
            }
        }
    }

    private static List<Candidate> candidates(Result result, Map<String, Result> beside) {
        String id = result.id();
        List<Candidate> candidates = new ArrayList<>();
        for (List<String> pair : PAIRS) {
            if (id.endsWith(pair.get(0))) {
                boolean whole = id.equals(pair.get(0));
                String subject =
                        whole ? id : id.substring(0, id.length() - pair.get(0).length());
                Result limit = beside.get(whole ? pair.get(1) : subject + pair.get(1));
                if (limit != null) {
                    candidates.add(new Candidate(
                            subject, pair.get(1), (limit.value() - result.value()) / Math.abs(limit.value())));
                }
            }
        }
        for (String largest : LARGEST) {
            if (id.startsWith(largest)) {
                candidates.add(new Candidate(id, "", -result.value()));
                break;
            }
        }
        if (id.endsWith(".detection-ratio")) {
            candidates.add(new Candidate(id, "", result.value()));
        }
        return candidates;
    }
}
