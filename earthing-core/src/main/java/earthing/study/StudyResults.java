package earthing.study;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** Everything the studies of one site found. */
public final class StudyResults {

    /** Nothing found. */
    public static final StudyResults EMPTY = new StudyResults(List.of(), List.of(), List.of(), List.of(), List.of());

    private final List<Result> results;
    private final List<Curve> curves;
    private final List<Gap> gaps;
    private final List<Assumption> assumptions;
    private final List<String> notes;

    /** Results by id, made when first asked for: a verdict asks a few hundred times over some thousand results. */
    private volatile @Nullable Map<String, List<Result>> byId;

    /**
     * Copies the lists; the same assumption or note of two studies is kept once.
     *
     * @param results the numbers
     * @param curves data of the figures
     * @param gaps what could not be computed
     * @param assumptions effective inputs that the file did not give
     * @param notes limits of applicability that were met, as sentences
     */
    public StudyResults(
            List<Result> results,
            List<Curve> curves,
            List<Gap> gaps,
            List<Assumption> assumptions,
            List<String> notes) {
        this.results = List.copyOf(results);
        this.curves = List.copyOf(curves);
        this.gaps = List.copyOf(gaps);
        this.assumptions = List.copyOf(new LinkedHashSet<>(assumptions));
        this.notes = List.copyOf(new LinkedHashSet<>(notes));
    }

    /**
     * The numbers.
     *
     * @return all results in order
     */
    public List<Result> results() {
        return results;
    }

    /**
     * Data of the figures.
     *
     * @return the curves
     */
    public List<Curve> curves() {
        return curves;
    }

    /**
     * What could not be computed.
     *
     * @return the gaps
     */
    public List<Gap> gaps() {
        return gaps;
    }

    /**
     * Effective inputs that the file did not give.
     *
     * @return the assumptions, each once
     */
    public List<Assumption> assumptions() {
        return assumptions;
    }

    /**
     * Limits of applicability that were met.
     *
     * @return sentences, each once
     */
    public List<String> notes() {
        return notes;
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
        Map<String, List<Result>> known = byId;
        if (known == null) {
            known = new HashMap<>();
            for (Result result : results) {
                known.computeIfAbsent(result.id(), key -> new ArrayList<>()).add(result);
            }
            known.replaceAll((key, list) -> List.copyOf(list));
            byId = known;
        }
        return known.getOrDefault(id, List.of());
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
        return of(id).stream()
                .filter(r -> r.at().equals(at) && r.circumstances().within(wider))
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

    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof StudyResults that
                && results.equals(that.results)
                && curves.equals(that.curves)
                && gaps.equals(that.gaps)
                && assumptions.equals(that.assumptions)
                && notes.equals(that.notes);
    }

    @Override
    public int hashCode() {
        return Objects.hash(results, curves, gaps, assumptions, notes);
    }
}
