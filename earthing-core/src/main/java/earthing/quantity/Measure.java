package earthing.quantity;

import java.util.Objects;
import java.util.Optional;

/**
 * A value of the site with its bounds and its origin. It may be declared unknown; it is then never replaced by a
 * default.
 *
 * @param dimension what is measured
 * @param bounds low, nominal and high value; empty when the author wrote {@code unknown}
 * @param origin where the value comes from
 * @param date ISO date of the reading or of the document, empty if not given
 * @param by who took it (a role), empty if not given
 */
public record Measure(Dimension dimension, Optional<Bounds> bounds, Origin origin, String date, String by) {

    /** Where a value of the site comes from. */
    public enum Origin {
        /** Measured on site. */
        MEASURED,
        /** From a drawing. */
        DRAWING,
        /** From a protection setting sheet. */
        SETTING_SHEET,
        /** From a manufacturer's data sheet. */
        DATA_SHEET,
        /** From a standard. */
        STANDARD,
        /** Assumed by the author; marked in the report. */
        ASSUMED,
        /** The author did not say. */
        UNSTATED
    }

    /** Which of the three values. */
    public enum Bound {
        /** The lowest value that has to be reckoned with. */
        LOW,
        /** The best estimate. */
        NOMINAL,
        /** The highest value that has to be reckoned with. */
        HIGH
    }

    /**
     * The three values of a bounded quantity, low ≤ nominal ≤ high.
     *
     * @param low lowest value
     * @param nominal best estimate
     * @param high highest value
     */
    public record Bounds(Quantity low, Quantity nominal, Quantity high) {

        /**
         * Refuses bounds out of order.
         *
         * @param low lowest value
         * @param nominal best estimate
         * @param high highest value
         */
        public Bounds {
            if (!(low.si() <= nominal.si() && nominal.si() <= high.si())) {
                throw new IllegalArgumentException("bounds must be in order low <= nominal <= high; have " + low.text()
                        + ", " + nominal.text() + ", " + high.text());
            }
        }
    }

    /**
     * Checks that no part is missing.
     *
     * @param dimension what is measured
     * @param bounds low, nominal and high value; empty when the author wrote {@code unknown}
     * @param origin where the value comes from
     * @param date ISO date of the reading or of the document, empty if not given
     * @param by who took it (a role), empty if not given
     */
    public Measure {
        Objects.requireNonNull(dimension);
        Objects.requireNonNull(bounds);
        Objects.requireNonNull(origin);
        Objects.requireNonNull(date);
        Objects.requireNonNull(by);
    }

    /**
     * A value without spread.
     *
     * @param quantity the value
     * @return the measure, origin unstated
     */
    public static Measure exactly(Quantity quantity) {
        return new Measure(
                quantity.dimension(), Optional.of(new Bounds(quantity, quantity, quantity)), Origin.UNSTATED, "", "");
    }

    /**
     * A value without spread, in SI.
     *
     * @param dimension what is measured
     * @param si value in SI
     * @return the measure, origin unstated
     */
    public static Measure of(Dimension dimension, double si) {
        return exactly(Quantity.of(dimension, si));
    }

    /**
     * A value declared unknown.
     *
     * @param dimension what is measured
     * @return the measure
     */
    public static Measure unknown(Dimension dimension) {
        return new Measure(dimension, Optional.empty(), Origin.UNSTATED, "", "");
    }

    /**
     * Whether there is a value.
     *
     * @return false if the author wrote {@code unknown}
     */
    public boolean isKnown() {
        return bounds.isPresent();
    }

    /**
     * Whether low and high differ.
     *
     * @return true for a known value with a spread
     */
    public boolean hasSpread() {
        return bounds.filter(b -> b.low().si() < b.high().si()).isPresent();
    }

    /**
     * The best estimate in SI.
     *
     * @return the nominal value
     * @throws IllegalStateException if the value is unknown; callers ask {@link #isKnown()} first
     */
    public double nominal() {
        return at(Bound.NOMINAL);
    }

    /**
     * One of the three values in SI.
     *
     * @param bound which one
     * @return the value
     * @throws IllegalStateException if the value is unknown; callers ask {@link #isKnown()} first
     */
    public double at(Bound bound) {
        Bounds b = bounds.orElseThrow(() -> new IllegalStateException("the value is unknown"));
        return switch (bound) {
            case LOW -> b.low().si();
            case NOMINAL -> b.nominal().si();
            case HIGH -> b.high().si();
        };
    }
}
