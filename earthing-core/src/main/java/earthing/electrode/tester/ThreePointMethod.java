package earthing.electrode.tester;

import earthing.quantity.Source;

/**
 * Three electrodes measured in pairs: R₁ = A + B, R₂ = B + C, R₃ = C + A. Mutual resistances are neglected, so they must
 * stand at least five times their largest dimension apart.
 *
 * @param first resistance of A [Ω]
 * @param second resistance of B [Ω]
 * @param third resistance of C [Ω]
 */
public record ThreePointMethod(double first, double second, double third) {

    /** Source of the method. */
    public static final Source SOURCE = Source.standard("IEEE Std 81", "three-point method", Source.Status.FROM_MEMORY);

    /**
     * Refuses what pairs of resistances cannot give.
     *
     * @param first resistance of A [Ω]
     * @param second resistance of B [Ω]
     * @param third resistance of C [Ω]
     */
    public ThreePointMethod {
        if (!(first > 0) || !(second > 0) || !(third > 0)) {
            throw new IllegalArgumentException("the pairs contradict each other: an electrode would have " + first
                    + ", " + second + " or " + third + " ohm");
        }
    }

    /**
     * Evaluates three pair readings.
     *
     * @param firstSecond A and B in series [Ω]
     * @param secondThird B and C in series [Ω]
     * @param thirdFirst C and A in series [Ω]
     * @return the three resistances
     */
    public static ThreePointMethod of(double firstSecond, double secondThird, double thirdFirst) {
        double a = (firstSecond + thirdFirst - secondThird) / 2;
        return new ThreePointMethod(a, firstSecond - a, thirdFirst - a);
    }
}
