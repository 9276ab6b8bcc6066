package earthing.study;

import earthing.quantity.Measure;
import earthing.quantity.Measure.Bound;
import earthing.site.ElectrodeModel;
import earthing.site.Site;
import earthing.site.SiteRewrite;
import earthing.site.Surges;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * What a surge into the tank gives, over the resistance of the ground, for samples of one site. With the electrodes as
 * resistances the circuit of the pole knows the ground by these alone. Where all of them go by one factor, the numbers are
 * interpolated over its logarithm.
 */
final class TabulatedSurge {

    /** Greatest relative difference [1]; the peaks themselves hold to 0.1 %. */
    static final double BOUND = 1e-3;

    private static final List<String> RESISTIVITIES = List.of("soil.resistivity", "soil.layers.resistivity");

    private final Map<Bound, SiteEarth> base;
    private final List<Result> template;
    private final List<Gap> gaps;
    private final ChebyshevTable curve;

    private TabulatedSurge(Map<Bound, SiteEarth> base, StudyResults template, ChebyshevTable curve) {
        this.base = base;
        this.template = template.results();
        this.gaps = template.gaps();
        this.curve = curve;
    }

    /**
     * Tabulates; empty where the circuit knows more of the ground, where its resistances do not go by one factor, or where
     * the surge takes another course at some of them.
     *
     * @param ends the site at the ends of what varies of its ground, without bounds
     * @param scope what is studied of each
     * @param cache solved or tabulated electrodes
     */
    static Optional<TabulatedSurge> of(List<Site> ends, StudyScope scope, EarthCache cache) {
        Site first = ends.get(0);
        if (Surges.circuitModel(first.surges()) != ElectrodeModel.RESISTANCE
                || !first.stays().isEmpty()) {
            return Optional.empty();
        }
        try {
            Map<Bound, SiteEarth> base = new EnumMap<>(Bound.class);
            for (Bound bound : SiteEarth.bounds(first, scope)) {
                base.put(bound, SiteEarth.of(first, bound, new Inputs(), cache));
            }
            double low = Double.POSITIVE_INFINITY;
            double high = Double.NEGATIVE_INFINITY;
            for (Site end : ends) {
                for (Map.Entry<Bound, SiteEarth> own : base.entrySet()) {
                    Optional<Double> factor =
                            factor(own.getValue(), SiteEarth.of(end, own.getKey(), new Inputs(), cache));
                    if (factor.isEmpty()) {
                        return Optional.empty();
                    }
                    low = Math.min(low, Math.log(factor.get()));
                    high = Math.max(high, Math.log(factor.get()));
                }
            }
            StudyResults template = SurgeStudy.of(first, cache, scope);
            boolean[] same = {true};
            boolean fixed = !(high > low);
            ChebyshevTable curve = ChebyshevTable.of(
                    low,
                    high,
                    BOUND,
                    x -> {
                        // A scaled ground has no bounds, which one that is fitted to readings keeps.
                        StudyResults there = fixed ? template : SurgeStudy.of(scaled(first, Math.exp(x)), cache, scope);
                        same[0] &= alike(template, there);
                        return same[0]
                                ? there.results().stream()
                                        .mapToDouble(Result::value)
                                        .toArray()
                                : new double[template.results().size()];
                    },
                    (n, exact) -> judged(template.results().get(n).id()) ? Math.abs(exact[n]) : 0);
            return same[0] && curve.error() <= BOUND
                    ? Optional.of(new TabulatedSurge(base, template, curve))
                    : Optional.empty();
        } catch (MissingInput missing) {
            return Optional.empty();
        }
    }

    /** Greatest relative difference that was seen between table and exact solutions [1]. */
    double bound() {
        return curve.error();
    }

    /** Of the numbers that verdicts rest on the error is asked; times and residuals are carried along. */
    private static boolean judged(String id) {
        return SurgeStudy.isBorne(id) || id.startsWith("surge.gap.") || id.startsWith("surge.screen.");
    }

    private static boolean alike(StudyResults one, StudyResults other) {
        boolean alike =
                one.results().size() == other.results().size() && one.gaps().equals(other.gaps());
        for (int i = 0; alike && i < one.results().size(); i++) {
            Result a = one.results().get(i);
            Result b = other.results().get(i);
            alike = a.id().equals(b.id())
                    && a.at().equals(b.at())
                    && a.circumstances().equals(b.circumstances());
        }
        return alike;
    }

    private static Site scaled(Site site, double factor) {
        return SiteRewrite.of(
                site,
                (path, measure) -> RESISTIVITIES.contains(path) && measure.isKnown()
                        ? Measure.of(measure.dimension(), measure.nominal() * factor)
                        : measure);
    }

    /** By how much all resistances of a ground are greater than those of the base; empty where that is not one factor. */
    private static Optional<Double> factor(SiteEarth base, SiteEarth earth) {
        List<String> names = base.names();
        if (!names.equals(earth.names()) || !names.stream().allMatch(earth::hasShape)) {
            return Optional.empty();
        }
        double factor = earth.resistance(names.get(0), names.get(0)) / base.resistance(names.get(0), names.get(0));
        for (String one : names) {
            for (String other : names) {
                if (Math.abs(earth.resistance(one, other) / base.resistance(one, other) / factor - 1)
                        > TabulatedGround.BOUND) {
                    return Optional.empty();
                }
            }
        }
        return Optional.of(factor);
    }

    /** The results at a point; empty where its ground is not covered. */
    Optional<StudyResults> at(Site point, EarthCache cache) throws MissingInput {
        Map<Bound, double[]> values = new EnumMap<>(Bound.class);
        for (Bound bound : base.keySet()) {
            SiteEarth own = base.get(bound);
            Optional<Double> factor = factor(own, SiteEarth.of(point, bound, new Inputs(), cache));
            if (factor.isEmpty() || !curve.covers(Math.log(factor.get()))) {
                return Optional.empty();
            }
            values.put(bound, curve.at(Math.log(factor.get())));
        }
        List<Result> results = new ArrayList<>(template.size());
        for (int i = 0; i < template.size(); i++) {
            Result like = template.get(i);
            double[] there = values.get(Bound.valueOf(like.at().toUpperCase(Locale.ROOT)));
            if (there == null) {
                return Optional.empty();
            }
            results.add(Result.of(
                    like.id(), like.circumstances(), like.at(), there[i], like.unit(), like.model(), like.source()));
        }
        return Optional.of(new StudyResults(results, List.of(), gaps, List.of(), List.of()));
    }
}
