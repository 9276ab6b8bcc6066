package earthing.compliance;

import earthing.quantity.Source;
import earthing.quantity.Worked;
import earthing.study.Case;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What one check found on one subject.
 *
 * @param id stable id, for example {@code touch.cubicle}
 * @param group the group it counts in
 * @param subject what was looked at, in words
 * @param status what the check says
 * @param value value in SI, where there is one
 * @param limit limit in SI, where there is one
 * @param unit SI unit of value and limit, empty for a pure number
 * @param margin relative margin to the limit, positive if met, where there is one
 * @param circumstances the governing case
 * @param bound where in the range of the inputs it governs
 * @param basis clause or practice it rests on
 * @param worked line of working, where there is a number
 * @param reason what was found, as a sentence
 * @param advice what to do or which key to fill in; empty if nothing
 */
public record Finding(
        String id,
        Group group,
        String subject,
        Status status,
        OptionalDouble value,
        OptionalDouble limit,
        String unit,
        OptionalDouble margin,
        Case circumstances,
        String bound,
        Source basis,
        Optional<Worked> worked,
        String reason,
        String advice) {

    /** How the advice begins that names the keys to fill in. */
    static final String FILL_IN = "fill in ";

    /** Groups of findings; the headline of the report is the worst of the first four. */
    public enum Group {
        /** Touch, step, transfer, detection. */
        PERSONAL_SAFETY,
        /** Conductors and joints. */
        CONDUCTOR_HEATING,
        /** Surge stress, arresters, gaps. */
        SURGE,
        /** Earth paths broken in turn. */
        CONTINGENCY,
        /** Rules of the trade about earth paths. */
        EARTH_PATHS,
        /** Soil, electrode, measurements. */
        ELECTRODE,
        /** Other. */
        OTHER
    }

    /**
     * The keys of the site file that would let the check answer.
     *
     * @return dotted keys, empty unless the finding is one of insufficient data
     */
    public List<String> missingKeys() {
        return status == Status.INSUFFICIENT_DATA && advice.startsWith(FILL_IN)
                ? List.of(advice.substring(FILL_IN.length()).split(", "))
                : List.of();
    }
}
