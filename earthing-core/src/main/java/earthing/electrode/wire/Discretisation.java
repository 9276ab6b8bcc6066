package earthing.electrode.wire;

/**
 * How bars are cut into elements of uniform leakage.
 *
 * <p>Along one bar the kernel is that of a tube, which converges however short the elements; between bars it is that of
 * an axis, which has no meaning on elements shorter than the bar is thick. No element is therefore made shorter than a
 * number of radii, unless a boundary between layers leaves a shorter piece.
 *
 * <p>Beside other conductors an element is halved until no other bar changes its potential by more than {@link #steepest}
 * along it: a long element passes a near conductor without seeing that it floats.
 *
 * @param leastPerBar least number of elements of a bar, ≥ 1; fewer only where the floor demands it
 * @param longest greatest length of an element [m], &gt; 0; may be infinite
 * @param floorInRadii least length of an element in radii of its bar [-], ≥ 0.1
 * @param steepest greatest change, along an element, of the potential of another bar that leaks evenly, in units of
 *     ρ/4π times its leakage per metre [-], &gt; 0; may be infinite
 */
public record Discretisation(int leastPerBar, double longest, double floorInRadii, double steepest) {

    /** Change of the potential of another bar along an element by default [-]. */
    private static final double STEEPEST = 0.8;

    /** Elements by default: 8 a bar, none longer than 3 m, none shorter than half a radius. */
    public static final Discretisation STANDARD = new Discretisation(8, 3, 0.5);

    /**
     * Checks the bounds.
     *
     * @param leastPerBar least number of elements of a bar, ≥ 1; fewer only where the floor demands it
     * @param longest greatest length of an element [m], &gt; 0; may be infinite
     * @param floorInRadii least length of an element in radii of its bar [-], ≥ 0.1
     * @param steepest greatest change of the potential of another bar along an element [-], &gt; 0; may be infinite
     */
    public Discretisation {
        if (leastPerBar < 1) {
            throw new IllegalArgumentException("a bar needs at least one element; have " + leastPerBar);
        }
        if (!(longest > 0)) {
            throw new IllegalArgumentException("greatest element length must be > 0 m; have " + longest);
        }
        if (!(floorInRadii >= 0.1)) {
            throw new IllegalArgumentException("the floor must be at least 0.1 radius; have " + floorInRadii);
        }
        if (!(steepest > 0)) {
            throw new IllegalArgumentException(
                    "greatest change of another bar's potential along an element must be > 0; have " + steepest);
        }
    }

    /**
     * Elements beside other conductors as by default.
     *
     * @param leastPerBar least number of elements of a bar, ≥ 1; fewer only where the floor demands it
     * @param longest greatest length of an element [m], &gt; 0; may be infinite
     * @param floorInRadii least length of an element in radii of its bar [-], ≥ 0.1
     */
    public Discretisation(int leastPerBar, double longest, double floorInRadii) {
        this(leastPerBar, longest, floorInRadii, STEEPEST);
    }

    /**
     * The same with another least number of elements a bar.
     *
     * @param count least number of elements of a bar
     * @return the changed discretisation
     */
    public Discretisation withPerBar(int count) {
        return new Discretisation(count, longest, floorInRadii, steepest);
    }

    /**
     * All lengths divided by a number, for a study of convergence.
     *
     * @param by divisor [-], ≥ 1
     * @return elements so many times shorter, also beside other conductors
     */
    public Discretisation shorter(int by) {
        return new Discretisation(by * leastPerBar, longest / by, floorInRadii / by, steepest / by);
    }
}
