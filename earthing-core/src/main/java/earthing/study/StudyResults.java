package earthing.study;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Everything the studies of one site found.
 *
 * @param results the numbers
 * @param curves data of the figures
 * @param gaps what could not be computed
 * @param assumptions effective inputs that the file did not give
 * @param notes limits of applicability that were met, as sentences
 */
public record StudyResults(
        List<Result> results, List<Curve> curves, List<Gap> gaps, List<Assumption> assumptions, List<String> notes) {

    /** Nothing found. */
    public static final StudyResults EMPTY = new StudyResults(List.of(), List.of(), List.of(), List.of(), List.of());

    /**
     * Copies the lists; the same assumption or note of two studies is kept once.
     *
     * @param results the numbers
     * @param curves data of the figures
     * @param gaps what could not be computed
     * @param assumptions effective inputs that the file did not give
     * @param notes limits of applicability that were met, as sentences
     */
    public StudyResults {
        results = List.copyOf(results);
        curves = List.copyOf(curves);
        gaps = List.copyOf(gaps);
        assumptions = List.copyOf(new LinkedHashSet<>(assumptions));
        notes = List.copyOf(new LinkedHashSet<>(notes));
    }

    /**
     * The results of several studies as one.
     *
     * @param parts the studies
     * @return all of them, in order
     */
    public static StudyResults join(List<StudyResults> parts) {
        return new StudyResults(
                all(parts, StudyResults::results),
                all(parts, StudyResults::curves),
                all(parts, StudyResults::gaps),
                all(parts, StudyResults::assumptions),
                all(parts, StudyResults::notes));
    }

    private static <T> List<T> all(
            List<StudyResults> parts, java.util.function.Function<StudyResults, List<T>> component) {
        List<T> all = new ArrayList<>();
        parts.forEach(part -> all.addAll(component.apply(part)));
        return all;
    }

    /**
     * All results of an id, over all cases and bounds.
     *
     * @param id the id
     * @return the results in order
     */
    public List<Result> of(String id) {
        // Asked a few hundred times a run over some thousand results: a plain loop.
        List<Result> found = new ArrayList<>();
        for (Result result : results) {
            if (result.id().equals(id)) {
                found.add(result);
            }
        }
        return List.copyOf(found);
    }

    /**
     * All results whose id begins so.
     *
     * @param prefix beginning of the id
     * @return the results in order
     */
    public Stream<Result> under(String prefix) {
        return results.stream().filter(r -> r.id().startsWith(prefix));
    }

    /**
     * One result.
     *
     * @param id the id
     * @param wider the case it has to lie within
     * @param at bound
     * @return the first such result
     */
    public Optional<Result> one(String id, Case wider, String at) {
        return results.stream()
                .filter(r -> r.id().equals(id)
                        && r.at().equals(at)
                        && r.circumstances().within(wider))
                .findFirst();
    }

    /**
     * The gaps that concern an id.
     *
     * @param id the id of a result
     * @return the gaps whose id is this one or a beginning of it, or that lie under it
     */
    public List<Gap> gapsOf(String id) {
        return gaps.stream()
                .filter(g -> id.startsWith(g.id()) || g.id().startsWith(id))
                .toList();
    }
}
