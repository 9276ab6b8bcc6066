package earthing.network;

/**
 * How a solution proceeds in time.
 *
 * @param end last time [s], above 0
 * @param step step [s]; the first step where the grid adapts itself; at most {@code end}
 * @param tolerance 0 for equal steps; otherwise the admitted departure of every branch voltage and current from its own
 *     prediction, as a part of its largest value so far; 1e-4 keeps peaks to about 0.1 %
 */
public record TimeGrid(double end, double step, double tolerance) {

    /**
     * Refuses values outside the stated ranges.
     *
     * @param end last time [s], above 0
     * @param step step [s]; the first step where the grid adapts itself; at most {@code end}
     * @param tolerance 0 for equal steps; otherwise the admitted departure of every branch voltage and current from its own prediction, as a part of its largest value so far; 1e-4 keeps peaks to about 0.1 %
     */
    public TimeGrid {
        if (!(end > 0) || !Double.isFinite(end)) {
            throw new IllegalArgumentException("end of the solution must be > 0 s; have " + end);
        }
        if (!(step > 0) || !(step <= end)) {
            throw new IllegalArgumentException("step must be > 0 s and not beyond the end; have " + step);
        }
        if (!(end / step < 1e8)) {
            throw new IllegalArgumentException("more than 1e8 steps; have " + end / step);
        }
        if (!(tolerance >= 0 && tolerance <= 0.1)) {
            throw new IllegalArgumentException("tolerance must be in [0, 0.1]; have " + tolerance);
        }
    }

    /**
     * Equal steps.
     *
     * @param end last time [s]
     * @param step step [s]
     * @return the grid
     */
    public static TimeGrid equal(double end, double step) {
        return new TimeGrid(end, step, 0);
    }

    /**
     * Steps halved and doubled by the solver so that it follows its waves.
     *
     * @param end last time [s]
     * @param firstStep first step [s], well below the front of the wave
     * @return the grid, tolerance 1e-4
     */
    public static TimeGrid adaptive(double end, double firstStep) {
        return new TimeGrid(end, firstStep, 1e-4);
    }
}
