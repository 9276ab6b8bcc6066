package earthing.electrode.tester;

import earthing.quantity.Source;

/**
 * Simplified fall-of-potential test: readings with the potential probe at 50, 40 and 60 % of the distance of the current
 * probe, their mean, and an accuracy of 1.2 times the greatest deviation from it.
 *
 * @param resistance mean of the readings [Ω]
 * @param deviation greatest deviation from the mean over the mean [-]
 * @param accuracy 1.2 times that [-]; large values ask for a greater distance of the current probe
 */
public record SimplifiedTest(double resistance, double deviation, double accuracy) {

    /** Source of the method. */
    public static final Source SOURCE = Source.publication(
            "Getting Down to Earth, handbook on earth testing",
            "simplified fall of potential, p. 33",
            Source.Status.READ);

    /**
     * Evaluates the readings.
     *
     * @param atHalf reading at 50 % [Ω], &gt; 0
     * @param nearer reading at 40 % [Ω], &gt; 0
     * @param farther reading at 60 % [Ω], &gt; 0
     * @return mean and deviation
     */
    public static SimplifiedTest of(double atHalf, double nearer, double farther) {
        if (!(atHalf > 0) || !(nearer > 0) || !(farther > 0)) {
            throw new IllegalArgumentException(
                    "readings must be > 0 ohm; have " + atHalf + ", " + nearer + ", " + farther);
        }
        double mean = (atHalf + nearer + farther) / 3;
        double deviation =
                Math.max(Math.abs(atHalf - mean), Math.max(Math.abs(nearer - mean), Math.abs(farther - mean))) / mean;
        return new SimplifiedTest(mean, deviation, 1.2 * deviation);
    }
}
