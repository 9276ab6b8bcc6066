package earthing.compliance;

import earthing.study.Result;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** Values with the limit that belongs to the same case and bound; finds the one with the least margin. */
final class Pairs {

    /** A value with its limit. */
    record Pair(Result value, Result limit) {

        double margin() {
            return (limit.value() - value.value()) / Math.abs(limit.value());
        }
    }

    private Pairs() {}

    /** The pairs of the site as it is. */
    static List<Pair> of(Design design, String valueId, String limitId) {
        List<Pair> pairs = new ArrayList<>();
        for (Result value : design.own(valueId)) {
            design.own(limitId).stream()
                    .filter(l ->
                            l.at().equals(value.at()) && value.circumstances().within(l.circumstances()))
                    .max(Comparator.comparingInt(l -> l.circumstances().keys().size()))
                    .ifPresent(limit -> pairs.add(new Pair(value, limit)));
        }
        return pairs;
    }

    /** The pair with the least margin; a margin that is not a number counts as the worst. */
    static Optional<Pair> governing(List<Pair> pairs) {
        Optional<Pair> worst = Optional.empty();
        for (Pair pair : pairs) {
            if (worst.isEmpty() || !(pair.margin() >= worst.get().margin())) {
                worst = Optional.of(pair);
            }
        }
        return worst;
    }
}
