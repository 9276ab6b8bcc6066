package earthing.conductor.inductance;

/**
 * A straight round conductor; a tape stands in by its equivalent radius.
 *
 * @param axis its axis, directed as positive current
 * @param radius outer radius [m], above 0 and below the length
 */
public record RoundConductor(Filament axis, double radius) {

    /**
     * Refuses a radius not above 0 or not below the length.
     *
     * @param axis its axis, directed as positive current
     * @param radius outer radius [m], above 0 and below the length
     */
    public RoundConductor {
        if (!(radius > 0) || !(radius < axis.length())) {
            throw new IllegalArgumentException(
                    "radius must be > 0 m and below the length " + axis.length() + " m; have " + radius);
        }
    }

    /**
     * A conductor between two points.
     *
     * @param start where positive current enters
     * @param end where it leaves
     * @param radius outer radius [m]
     * @return the conductor
     */
    public static RoundConductor between(Point start, Point end, double radius) {
        return new RoundConductor(new Filament(start, end), radius);
    }
}
