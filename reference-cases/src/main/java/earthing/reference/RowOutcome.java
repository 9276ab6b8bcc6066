package earthing.reference;

import java.util.List;
import java.util.Optional;

/**
 * What became of one row.
 *
 * @param of its case
 * @param number place of the row in the case, from 1
 * @param line line of the row in its file
 * @param executed whether a model ran it
 * @param deviations the compared values; empty if the model did not run or failed
 * @param failure why the row fails, empty if it passes or was not run
 */
public record RowOutcome(
        ReferenceCase of,
        int number,
        int line,
        boolean executed,
        List<Deviation> deviations,
        Optional<String> failure) {

    /**
     * Keeps a copy.
     *
     * @param of its case
     * @param number place of the row in the case, from 1
     * @param line line of the row in its file
     * @param executed whether a model ran it
     * @param deviations the compared values; empty if the model did not run or failed
     * @param failure why the row fails, empty if it passes or was not run
     */
    public RowOutcome {
        deviations = List.copyOf(deviations);
    }

    /**
     * One computed value beside the printed one.
     *
     * @param expected the printed value
     * @param computed the computed value in the printed unit
     */
    public record Deviation(ReferenceCase.Expected expected, double computed) {

        /**
         * Distance of the computed from the printed value.
         *
         * @return signed distance in the printed unit; 0 where both are infinite
         */
        public double difference() {
            return computed == expected.printed().value()
                    ? 0
                    : computed - expected.printed().value();
        }

        /**
         * Distance as a share of the tolerance.
         *
         * @return 0 for equal values, 1 on the edge of the tolerance
         */
        public double ofTolerance() {
            double distance = Math.abs(difference());
            return distance == 0 ? 0 : distance / expected.tolerance().allowed(expected.printed());
        }

        /**
         * Distance as a part of the printed value.
         *
         * @return 0 for equal values; 0 as well where the print is zero, of which there are no parts
         */
        public double ofValue() {
            double distance = Math.abs(difference());
            double printed = Math.abs(expected.printed().value());
            return distance == 0 || printed == 0 ? 0 : distance / printed;
        }

        /**
         * Distance in units of the last printed digit.
         *
         * @return 0 for equal values, up to 0.5 where rounding gives the print
         */
        public double lastDigits() {
            double distance = Math.abs(difference());
            return distance == 0 ? 0 : distance / expected.printed().lastDigit();
        }
    }

    /**
     * A name for messages.
     *
     * @return file, line, case and row
     */
    public String place() {
        return of.file() + ":" + line + ": " + of.id() + (of.rows().size() > 1 ? " row " + number : "");
    }
}
