package earthing.electrode.wire;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.function.DoubleBinaryOperator;
import java.util.function.Function;

/**
 * Search for the greatest step voltage: all directions about the ends and middles of the bars, and the steepest places
 * of a coarse grid; from the best few that lie apart uphill, roughly, and from the best of those to the end.
 */
final class StepSearch {

    private static final int GRID = 16;
    private static final int STEEPEST = 24;
    private static final int DIRECTIONS = 8;
    private static final int STARTS = 6;
    private static final double ROUGH = 1.0 / 40;
    private static final double FINE = 1e-3;

    private final DoubleBinaryOperator potential;
    private final Function<SurfaceField.Places, double[]> potentials;
    private final List<Bar> bars;
    private final double pace;

    private record Place(double x, double y) {}

    /** A place of the grid with its slope and the direction of it. */
    private record Slope(double x, double y, double steepness, double direction) {}

    /** A grid of places, column by column. */
    private record Grid(double west, double south, double dx, double dy, int columns, int rows)
            implements SurfaceField.Places {

        @Override
        public int size() {
            return columns * rows;
        }

        @Override
        public double x(int place) {
            int column = place / rows;
            return west + column * dx;
        }

        @Override
        public double y(int place) {
            return south + place % rows * dy;
        }
    }

    StepSearch(
            DoubleBinaryOperator potential,
            Function<SurfaceField.Places, double[]> potentials,
            List<Bar> bars,
            double pace) {
        this.potential = potential;
        this.potentials = potentials;
        this.bars = bars;
        this.pace = pace;
    }

    SurfaceVoltage worst() {
        List<SurfaceVoltage> found = new ArrayList<>();
        for (Slope slope : steepest()) {
            double dx = pace / 2 * Math.cos(slope.direction());
            double dy = pace / 2 * Math.sin(slope.direction());
            found.add(step(slope.x() - dx, slope.y() - dy, slope.direction()));
        }
        Set<Place> places = new LinkedHashSet<>();
        for (Bar bar : bars) {
            places.add(new Place(bar.x1(), bar.y1()));
            places.add(new Place((bar.x1() + bar.x2()) / 2, (bar.y1() + bar.y2()) / 2));
            places.add(new Place(bar.x2(), bar.y2()));
        }
        for (Place place : places) {
            double here = potential.applyAsDouble(place.x(), place.y());
            for (int a = 0; a < DIRECTIONS; a++) {
                found.add(step(here, place.x(), place.y(), 2 * Math.PI / DIRECTIONS * a));
            }
        }
        found.sort(Comparator.comparingDouble(SurfaceVoltage::voltage).reversed());
        List<SurfaceVoltage> starts = new ArrayList<>();
        for (SurfaceVoltage next : found) {
            if (starts.size() < STARTS && starts.stream().noneMatch(s -> near(s, next))) {
                starts.add(next);
            }
        }
        SurfaceVoltage best = starts.get(0);
        for (SurfaceVoltage start : starts) {
            SurfaceVoltage top = climb(start, 1.0 / 4, ROUGH);
            best = top.voltage() > best.voltage() ? top : best;
        }
        return climb(best, ROUGH, FINE);
    }

    private boolean near(SurfaceVoltage one, SurfaceVoltage other) {
        return Math.hypot(one.x1() - other.x1(), one.y1() - other.y1()) < pace / 4
                && Math.hypot(one.x2() - other.x2(), one.y2() - other.y2()) < pace / 4;
    }

    private List<Slope> steepest() {
        double west = Double.POSITIVE_INFINITY;
        double east = Double.NEGATIVE_INFINITY;
        double south = Double.POSITIVE_INFINITY;
        double north = Double.NEGATIVE_INFINITY;
        double shallow = Double.POSITIVE_INFINITY;
        for (Bar bar : bars) {
            west = Math.min(west, Math.min(bar.x1(), bar.x2()));
            east = Math.max(east, Math.max(bar.x1(), bar.x2()));
            south = Math.min(south, Math.min(bar.y1(), bar.y2()));
            north = Math.max(north, Math.max(bar.y1(), bar.y2()));
            shallow = Math.min(shallow, Math.min(bar.depth1(), bar.depth2()));
        }
        double margin = 2 * pace + shallow;
        int columns = cells(east - west + 2 * margin);
        int rows = cells(north - south + 2 * margin);
        double dx = (east - west + 2 * margin) / columns;
        double dy = (north - south + 2 * margin) / rows;
        Grid grid = new Grid(west - margin, south - margin, dx, dy, columns + 1, rows + 1);
        double[] value = potentials.apply(grid);
        int column = rows + 1;
        List<Slope> slopes = new ArrayList<>();
        for (int i = 1; i < columns; i++) {
            for (int j = 1; j < rows; j++) {
                double eastward = (value[(i + 1) * column + j] - value[(i - 1) * column + j]) / (2 * dx);
                double northward = (value[i * column + j + 1] - value[i * column + j - 1]) / (2 * dy);
                int place = i * column + j;
                slopes.add(new Slope(
                        grid.x(place),
                        grid.y(place),
                        Math.hypot(eastward, northward),
                        Math.atan2(northward, eastward)));
            }
        }
        slopes.sort(Comparator.comparingDouble(Slope::steepness).reversed());
        return slopes.subList(0, Math.min(STEEPEST, slopes.size()));
    }

    private int cells(double extent) {
        return (int) Math.max(4, Math.min(GRID, Math.ceil(extent / (1.5 * pace))));
    }

    private SurfaceVoltage step(double x, double y, double direction) {
        return step(potential.applyAsDouble(x, y), x, y, direction);
    }

    private SurfaceVoltage step(double here, double x, double y, double direction) {
        double x2 = x + pace * Math.cos(direction);
        double y2 = y + pace * Math.sin(direction);
        return new SurfaceVoltage(Math.abs(here - potential.applyAsDouble(x2, y2)), x, y, x2, y2);
    }

    /** Moves of both feet and turns about the first, from one part of a pace down to another. */
    private SurfaceVoltage climb(SurfaceVoltage start, double from, double to) {
        SurfaceVoltage best = start;
        for (double part = from; part > to; ) {
            SurfaceVoltage before = best;
            double move = part * pace;
            double turn = part * Math.PI / 2;
            double direction = Math.atan2(best.y2() - best.y1(), best.x2() - best.x1());
            double[][] trials = {{move, 0, 0}, {-move, 0, 0}, {0, move, 0}, {0, -move, 0}, {0, 0, turn}, {0, 0, -turn}};
            for (double[] trial : trials) {
                SurfaceVoltage next = step(before.x1() + trial[0], before.y1() + trial[1], direction + trial[2]);
                if (next.voltage() > best.voltage() * (1 + 1e-12)) {
                    best = next;
                }
            }
            part = best.equals(before) ? part / 2 : part;
        }
        return best;
    }
}
