package earthing.compliance;

import earthing.quantity.Source;
import earthing.quantity.Worked;
import earthing.study.Case;
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
}
