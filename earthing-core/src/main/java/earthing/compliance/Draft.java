package earthing.compliance;

import earthing.quantity.Measure;
import earthing.quantity.Source;
import earthing.quantity.Worked;
import earthing.study.Case;
import earthing.study.Gap;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/** A finding under construction. */
final class Draft {

    /** Part of a limit [1] that two ways of computing one number may differ by; far below what any input is known to. */
    static final double ROUNDING = 1e-9;

    private final String id;
    private final Finding.Group group;
    private final String subject;
    private final Source basis;
    private OptionalDouble value = OptionalDouble.empty();
    private OptionalDouble limit = OptionalDouble.empty();
    private OptionalDouble margin = OptionalDouble.empty();
    private String unit = "";
    private Case circumstances = Case.NONE;
    private String bound = "";
    private Optional<Worked> worked = Optional.empty();
    private String advice = "";

    Draft(String id, Finding.Group group, String subject, Source basis) {
        this.id = id;
        this.group = group;
        this.subject = subject;
        this.basis = basis;
    }

    Draft in(Case governing, String at) {
        circumstances = governing;
        bound = at;
        return this;
    }

    /** For a rule that looks at a declared input itself: which of its values was taken. */
    Draft at(Measure.Bound taken) {
        bound = taken.name().toLowerCase(Locale.ROOT);
        return this;
    }

    Draft value(double number, String siUnit) {
        value = OptionalDouble.of(number);
        unit = siUnit;
        return this;
    }

    Draft advice(String text) {
        advice = text;
        return this;
    }

    Draft worked(Worked line) {
        worked = Optional.of(line);
        return this;
    }

    /** Met if the value is not above the limit, but for rounding. */
    Finding atMost(double number, double most, String siUnit, String reason) {
        return compared(number, most, siUnit, most - number, reason);
    }

    /** Met if the value is not below the limit, but for rounding. */
    Finding atLeast(double number, double least, String siUnit, String reason) {
        return compared(number, least, siUnit, number - least, reason);
    }

    /** A site that is its own tested arrangement reaches the limit by another way of computing the same number. */
    private Finding compared(double number, double bounding, String siUnit, double left, String reason) {
        boolean equal =
                number == bounding || (Double.isFinite(bounding) && Math.abs(left) <= ROUNDING * Math.abs(bounding));
        limits(number, bounding, siUnit, bounding == 0 ? Double.NaN : equal ? 0 : left / Math.abs(bounding));
        return ends(equal || left >= 0 ? Status.MET : Status.NOT_MET, reason);
    }

    private void limits(double number, double bounding, String siUnit, double relative) {
        value = OptionalDouble.of(number);
        limit = OptionalDouble.of(bounding);
        unit = siUnit;
        margin = Double.isFinite(relative) ? OptionalDouble.of(relative) : OptionalDouble.empty();
    }

    Finding met(String reason) {
        advice = "";
        return ends(Status.MET, reason);
    }

    Finding notMet(String reason) {
        return ends(Status.NOT_MET, reason);
    }

    Finding notApplicable(String reason) {
        advice = "";
        return ends(Status.NOT_APPLICABLE, reason);
    }

    Finding dueLater(String reason) {
        return ends(Status.DUE_LATER, reason);
    }

    Finding notAssessed(String reason) {
        return ends(Status.NOT_ASSESSED, reason);
    }

    Finding missing(String reason, String... keys) {
        advice = Finding.FILL_IN + String.join(", ", keys);
        return ends(Status.INSUFFICIENT_DATA, reason);
    }

    /** What a check answers where the study left a gap instead of a number. */
    Finding gap(List<Gap> gaps, String what) {
        for (Gap gap : gaps) {
            if (!gap.missingKeys().isEmpty()) {
                in(gap.circumstances(), "");
                return missing(gap.reason(), gap.missingKeys().toArray(String[]::new));
            }
        }
        if (!gaps.isEmpty()) {
            in(gaps.get(0).circumstances(), "");
            return notAssessed(gaps.get(0).reason());
        }
        return notAssessed("no study gave " + what);
    }

    /** A requirement is met only if no case was left without a number; one that fails stays failed. */
    Finding unless(List<Gap> gaps, Finding found) {
        if (gaps.isEmpty() || found.status() != Status.MET) {
            return found;
        }
        value = OptionalDouble.empty();
        limit = OptionalDouble.empty();
        margin = OptionalDouble.empty();
        unit = "";
        worked = Optional.empty();
        return gap(gaps, id);
    }

    Finding ends(Status status, String reason) {
        return new Finding(
                id,
                group,
                subject,
                status,
                value,
                limit,
                unit,
                margin,
                circumstances,
                bound,
                basis,
                worked,
                reason,
                status == Status.MET ? "" : advice);
    }
}
