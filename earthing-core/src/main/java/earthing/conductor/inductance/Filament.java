package earthing.conductor.inductance;

/**
 * A straight filament, directed from its start to its end; the direction is that of positive current.
 *
 * @param start where the current enters
 * @param end where it leaves
 */
public record Filament(Point start, Point end) {

    /**
     * Refuses a filament without length.
     *
     * @param start where the current enters
     * @param end where it leaves
     */
    public Filament {
        if (!(start.distance(end) > 0)) {
            throw new IllegalArgumentException("a filament needs a length > 0 m; both ends are at " + start);
        }
    }

    /**
     * Length.
     *
     * @return length [m]
     */
    public double length() {
        return start.distance(end);
    }

    /**
     * The filament with its direction turned round.
     *
     * @return from end to start
     */
    public Filament reversed() {
        return new Filament(end, start);
    }

    /**
     * The image in a perfectly conducting plane at height 0, directed as the image current flows: a vertical current
     * and its image have one direction, a horizontal current and its image opposite ones.
     *
     * @return the image
     */
    public Filament image() {
        return new Filament(new Point(end.x(), end.y(), -end.z()), new Point(start.x(), start.y(), -start.z()));
    }
}
