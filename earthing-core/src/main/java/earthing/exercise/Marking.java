package earthing.exercise;

import earthing.quantity.Numbers;
import earthing.quantity.UnitException;

/**
 * What there is to say about one answer.
 *
 * @param right whether it lies within the tolerance
 * @param distance what lies between it and the right answer, in words
 * @param comment for a wrong answer the mistake that it shows, else the one that is made most easily; for a right one
 *     the working and where the right answer comes from
 */
public record Marking(boolean right, String distance, String comment) {

    /** How near a wrong answer must lie to what a mistake gives, so that the mistake is named: three digits of working. */
    private static final double NEAR = 0.005;

    /** How near a ratio must lie to a power of ten, so that the unit is suspected. */
    private static final double NEAR_POWER = 0.03;

    private static final double ROUNDING = 1e-9;

    /**
     * Judges an answer.
     *
     * @param exercise the exercise
     * @param text the answer as written
     * @return the judgement
     * @throws UnitException if the answer is no number with a unit that fits
     */
    public static Marking of(Exercise exercise, String text) throws UnitException {
        Answer answer = exercise.answer();
        double value = answer.read(text);
        boolean right = Math.abs(value - answer.value()) <= answer.within() + ROUNDING * Math.abs(answer.value());
        String distance = distance(value, answer.value());
        if (right) {
            return new Marking(
                    true,
                    distance,
                    (exercise.worked().isEmpty() ? "" : "Worked: " + exercise.worked() + ". ")
                            + (answer.printed() ? "Printed: " : "Computed: ") + answer.text() + ". "
                            + exercise.source() + ".");
        }
        return new Marking(false, distance, mistake(exercise, value));
    }

    private static String distance(double value, double answer) {
        double share = (value - answer) / Math.abs(answer);
        if (Math.abs(share) < ROUNDING) {
            return "exactly so";
        }
        if (value * answer < 0) {
            return "of the other sign";
        }
        double ratio = value / answer;
        if (value != 0 && (ratio > 2 || ratio < 0.5)) {
            return ratio > 1
                    ? Numbers.significant(ratio, 3) + " times the right value"
                    : "the right value over " + Numbers.significant(1 / ratio, 3);
        }
        String percent = Numbers.significant(100 * Math.abs(share), 2) + " %";
        return percent + (value > answer ? " above" : " below");
    }

    private static String mistake(Exercise exercise, double value) {
        double answer = exercise.answer().value();
        for (Exercise.Slip slip : exercise.slips()) {
            if (Math.abs(value - slip.value()) <= NEAR * Math.abs(slip.value())) {
                return "This is what comes out if " + slip.because() + ".";
            }
        }
        if (value * answer < 0) {
            return "Look at the sign.";
        }
        double decades = value == 0 ? 0 : Math.log10(value / answer);
        long whole = Math.round(decades);
        if (whole != 0 && Math.abs(Math.pow(10, decades - whole) - 1) <= NEAR_POWER) {
            return "A power of ten is off: look at the units, given and written.";
        }
        return "A common mistake here: " + exercise.hint() + ".";
    }
}
