package earthing.study;

import earthing.quantity.Dimension;
import earthing.quantity.Measure;
import earthing.quantity.Measure.Bound;
import earthing.quantity.Numbers;
import earthing.quantity.Source;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Reads values off the records of a site; what it had to assume is kept for the report. */
final class Inputs {

    /** Characters of the longest number that is printed as it stands. */
    private static final int ROUND = 7;

    private final Set<Assumption> assumptions = new LinkedHashSet<>();

    /** A value that has to be there. */
    double need(@Nullable Measure measure, String key, Bound bound) throws MissingInput {
        if (measure == null) {
            throw new MissingInput(key + " is not given", key);
        }
        if (!measure.isKnown()) {
            throw new MissingInput(key + " is declared unknown", key);
        }
        return measure.at(bound);
    }

    double need(@Nullable Measure measure, String key) throws MissingInput {
        return need(measure, key, Bound.NOMINAL);
    }

    /** A value that may be absent: the stated default is then used and echoed. Declared unknown, it stays missing. */
    double orElse(@Nullable Measure measure, String key, double otherwise, Dimension dimension, Source why)
            throws MissingInput {
        if (measure != null) {
            return need(measure, key);
        }
        String digits = Numbers.full(otherwise);
        // A default is a round number; what was computed in its place is not told to its last bit.
        assumptions.add(new Assumption(
                key,
                (digits.length() > ROUND ? Numbers.significant(otherwise, 4) : digits) + " " + dimension.siUnit(),
                why));
        return otherwise;
    }

    void choice(String key, String text, Source why) {
        assumptions.add(new Assumption(key, text, why));
    }

    List<Assumption> assumptions() {
        return List.copyOf(assumptions);
    }
}
