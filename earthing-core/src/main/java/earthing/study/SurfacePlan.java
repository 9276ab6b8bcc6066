package earthing.study;

import earthing.electrode.wire.Bar;
import earthing.quantity.Numbers;
import earthing.site.Site;
import earthing.study.ContourLines.Point;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleBinaryOperator;

/**
 * The ground around the pole in plan: lines of equal potential, the line beyond which the touch voltage would exceed
 * its permissible value, the metal in the ground, the reach of a hand, neighbours at their distance.
 */
final class SurfacePlan {

    /** Id of the curve. */
    static final String ID = "touch.plan";

    private static final int POINTS = 61;
    private static final double LEAST_HALF = 4;
    private static final double MOST_HALF = 80;
    private static final int ARC = 72;

    /** Levels as parts of the potential rise. */
    private static final double[] LEVELS = {0.9, 0.8, 0.7, 0.6, 0.5, 0.4, 0.3, 0.2, 0.1};

    private final List<Curve.Trace> traces = new ArrayList<>();

    private SurfacePlan() {}

    /**
     * A thing nearby whose direction nobody stated.
     *
     * @param name what it is
     * @param distance distance from the pole [m]
     */
    record Nearby(String name, double distance) {}

    /** The neighbours whose distance is known. */
    static List<Nearby> nearby(Site site) {
        return site.neighbours().stream()
                .filter(neighbour -> neighbour.distance().isKnown())
                .map(neighbour ->
                        new Nearby(neighbour.name(), neighbour.distance().nominal()))
                .toList();
    }

    /**
     * Draws up the plan.
     *
     * @param ground potential of the surface at a place [V]
     * @param bars metal in the ground
     * @param rise potential of the part that is touched [V]
     * @param permissible permissible touch voltage [V], if there is one
     * @param part the part that is touched and its place east of the pole [m]
     * @param reach reach of a person [m]
     * @param nearby neighbours
     * @return the data of the figure
     */
    static Curve of(
            DoubleBinaryOperator ground,
            List<Bar> bars,
            double rise,
            Optional<Double> permissible,
            Nearby part,
            double reach,
            List<Nearby> nearby) {
        SurfacePlan plan = new SurfacePlan();
        double west = -reach;
        double east = part.distance() + reach;
        double south = -reach;
        double north = reach;
        for (Bar bar : bars) {
            west = Math.min(west, Math.min(bar.x1(), bar.x2()));
            east = Math.max(east, Math.max(bar.x1(), bar.x2()));
            south = Math.min(south, Math.min(bar.y1(), bar.y2()));
            north = Math.max(north, Math.max(bar.y1(), bar.y2()));
        }
        double near = nearby.stream().mapToDouble(Nearby::distance).min().orElse(0);
        double span = Math.max(east - west, north - south) / 2;
        double half = Math.min(MOST_HALF, Math.max(LEAST_HALF, 1.6 * span));
        half = near + 1 > half && near + 1 <= MOST_HALF / 8 ? near + 1 : half;
        double x0 = (east + west) / 2;
        double y0 = (north + south) / 2;
        double[] xs = new double[POINTS];
        double[] ys = new double[POINTS];
        double[][] values = new double[POINTS][POINTS];
        double greatest = Double.NEGATIVE_INFINITY;
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i < POINTS; i++) {
            xs[i] = x0 - half + 2 * half * i / (POINTS - 1);
            for (int j = 0; j < POINTS; j++) {
                ys[j] = y0 - half + 2 * half * j / (POINTS - 1);
                values[i][j] = Math.abs(ground.applyAsDouble(xs[i], ys[j]));
                greatest = Math.max(greatest, values[i][j]);
                least = Math.min(least, values[i][j]);
            }
        }
        double size = Math.abs(rise);
        for (double fraction : LEVELS) {
            String name = "ground at " + Numbers.brief(fraction * size) + " V";
            ContourLines.of(xs, ys, values, fraction * size).forEach(line -> plan.line(name, line));
        }
        String verdict = plan.limit(xs, ys, values, size, permissible, least, greatest, part.name());
        for (Bar bar : bars) {
            plan.line(
                    "electrode " + bar.electrode(),
                    List.of(new Point(bar.x1(), bar.y1()), new Point(bar.x2(), bar.y2())));
        }
        plan.line("reach at the " + part.name(), circle(part.distance(), reach));
        for (Nearby thing : nearby) {
            String name = thing.name() + ", " + Numbers.brief(thing.distance()) + " m, direction not stated";
            plan.line("neighbour " + name, circle(0, thing.distance()));
        }
        return new Curve(
                ID,
                "The ground around the pole in plan, nominal inputs, maximum fault. " + verdict,
                "east of the pole",
                "m",
                "north of the pole",
                "m",
                plan.traces);
    }

    private String limit(
            double[] xs,
            double[] ys,
            double[][] values,
            double rise,
            Optional<Double> permissible,
            double least,
            double greatest,
            String part) {
        if (permissible.isEmpty()) {
            return "There is no permissible touch voltage to draw.";
        }
        double limit = permissible.get();
        String words =
                "the touch voltage at the " + part + " would be above the permissible " + Numbers.brief(limit) + " V";
        double level = rise - limit;
        if (level <= least) {
            return "Nowhere in this view " + words + ".";
        }
        if (level > greatest) {
            return "Everywhere in this view " + words + ".";
        }
        String name = "limit of touch, " + Numbers.brief(limit) + " V";
        ContourLines.of(xs, ys, values, level).forEach(line -> line(name, line));
        return "Outside the thick line " + words + " if the part could be touched from there.";
    }

    private void line(String name, List<Point> points) {
        if (points.size() > 1) {
            traces.add(new Curve.Trace(
                    name,
                    points.stream().mapToDouble(Point::x).toArray(),
                    points.stream().mapToDouble(Point::y).toArray()));
        }
    }

    private static List<Point> circle(double x, double radius) {
        List<Point> points = new ArrayList<>();
        for (int i = 0; i <= ARC; i++) {
            double angle = 2 * Math.PI * i / ARC;
            points.add(new Point(x + radius * Math.cos(angle), radius * Math.sin(angle)));
        }
        return points;
    }
}
