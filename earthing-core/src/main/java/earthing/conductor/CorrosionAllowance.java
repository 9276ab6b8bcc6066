package earthing.conductor;

/** Area added for metal that the soil will take. */
public final class CorrosionAllowance {

    private CorrosionAllowance() {}

    /**
     * Adds a yearly loss over the life of the conductor, then a factor.
     *
     * @param area area needed for heating [m²], ≥ 0
     * @param yearlyLoss share of the area lost each year [1/a], ≥ 0
     * @param years life [a], ≥ 0
     * @param factor the owner's factor on top, ≥ 1
     * @return area · (1 + yearly loss · years) · factor [m²]
     */
    public static double enlarged(double area, double yearlyLoss, double years, double factor) {
        if (!(area >= 0 && yearlyLoss >= 0 && years >= 0 && factor >= 1)) {
            throw new IllegalArgumentException("area, yearly loss and years must be >= 0 and the factor >= 1; have "
                    + area + ", " + yearlyLoss + ", " + years + ", " + factor);
        }
        return area * (1 + yearlyLoss * years) * factor;
    }
}
