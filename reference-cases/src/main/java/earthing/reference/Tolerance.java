package earthing.reference;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** How far a computed value may lie from the printed one. */
public sealed interface Tolerance {

    /** Half a unit of the last printed digit, the default: a correct value, rounded, gives the printed text. */
    record LastDigit() implements Tolerance {}

    /**
     * A share of the printed value.
     *
     * @param percent share [%], above 0
     */
    record Percent(double percent) implements Tolerance {
        /**
         * Refuses a tolerance that nothing or anything can meet.
         *
         * @param percent share [%], above 0
         */
        public Percent {
            if (!(percent > 0 && percent <= 100)) {
                throw new IllegalArgumentException("a tolerance must be within 0 and 100 %; have " + percent + " %");
            }
        }
    }

    /**
     * A fixed width.
     *
     * @param width the width as written, above 0
     */
    record Absolute(PrintedNumber width) implements Tolerance {
        /**
         * Refuses a tolerance that nothing can meet.
         *
         * @param width the width as written, above 0
         */
        public Absolute {
            if (!(width.value() > 0) || !Double.isFinite(width.value())) {
                throw new IllegalArgumentException("a tolerance must be > 0 and finite; have " + width.text());
            }
        }
    }

    /**
     * The default.
     *
     * @return half a unit of the last printed digit
     */
    static Tolerance lastDigit() {
        return new LastDigit();
    }

    /** Room for the rounding of binary numbers when a value lies exactly on the edge. */
    double ROUNDING = 1e-12;

    /** {@code <number> %}. */
    Pattern PERCENT = Pattern.compile("(?<number>\\d+\\.?\\d*(?:[eE]-?\\d+)?)\\s*%");

    /**
     * Reads a tolerance.
     *
     * @param text {@code last-digit}, {@code 1 %} or {@code 0.5 ohm}
     * @return the tolerance
     * @throws IllegalArgumentException if the text is none of these
     */
    static Tolerance parse(String text) {
        String trimmed = text.strip();
        if (trimmed.equals("last-digit")) {
            return lastDigit();
        }
        Matcher percent = PERCENT.matcher(trimmed);
        if (percent.matches()) {
            return new Percent(Double.parseDouble(percent.group("number")));
        }
        return new Absolute(PrintedNumber.parse(trimmed));
    }

    /**
     * The allowed distance.
     *
     * @param printed the printed value
     * @return distance in the printed unit, above 0
     * @throws IllegalArgumentException if an absolute tolerance has another dimension, or the share is one of zero
     */
    default double allowed(PrintedNumber printed) {
        if (this instanceof Percent share) {
            double allowed = Math.abs(printed.value()) * share.percent() / 100;
            if (!(allowed > 0)) {
                throw new IllegalArgumentException("a share of zero lets nothing pass; give the tolerance in the unit");
            }
            return allowed;
        }
        if (this instanceof Absolute absolute) {
            CaseUnit unit = absolute.width().unit();
            if (!unit.isComparableWith(printed.unit())) {
                throw new IllegalArgumentException("the tolerance "
                        + absolute.width().text() + " cannot be compared with the value " + printed.text());
            }
            return absolute.width().value() * unit.factor() / printed.unit().factor();
        }
        return printed.lastDigit() / 2;
    }

    /**
     * Whether a computed value agrees with the printed one. A value that is not a number never does.
     *
     * @param printed the printed value
     * @param si the computed value in SI
     * @return true if it lies within the tolerance, edges included
     */
    default boolean accepts(PrintedNumber printed, double si) {
        if (Double.isInfinite(printed.value())) {
            return si == printed.value();
        }
        return Math.abs(printed.inPrintedUnit(si) - printed.value())
                <= allowed(printed) + ROUNDING * Math.abs(printed.value());
    }
}
