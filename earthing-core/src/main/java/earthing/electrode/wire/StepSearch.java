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
    /** Moves that gain less than this part are followed by finer ones. */
    private static final double ROUGH_GAIN = 1e-3;

    private static final double FINE_GAIN = 1e-7;

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
            found.addAll(steepestFrom(place));
        }
        found.sort(Comparator.comparingDouble(SurfaceVoltage::voltage).reversed());
        List<SurfaceVoltage> starts = new ArrayList<>();
        for (SurfaceVoltage next : found) {
            if (starts.size() < STARTS && starts.stream().noneMatch(s -> near(s, next))) {
                starts.add(next);
            }
        }
        List<SurfaceVoltage> tops = new ArrayList<>();
        for (SurfaceVoltage start : starts) {
            tops.add(climb(start, 1.0 / 4, ROUGH, ROUGH_GAIN));
        }
        tops.sort(Comparator.comparingDouble(SurfaceVoltage::voltage).reversed());
        SurfaceVoltage best = climb(tops.get(0), ROUGH, FINE, FINE_GAIN);
        for (SurfaceVoltage top : tops.subList(1, tops.size())) {
            // What is nearly as high may be higher when it is climbed to the end.
            if (top.voltage() * (1 + 2 * ROUGH_GAIN) > best.voltage() && !near(top, tops.get(0))) {
                return higher(climb(top, ROUGH, FINE, FINE_GAIN), best);
            }
        }
        return best;
    }

    /** The directions from a place that are no worse than their neighbours; others lead to the same tops. */
    private List<SurfaceVoltage> steepestFrom(Place place) {
        double here = potential.applyAsDouble(place.x(), place.y());
        SurfaceVoltage[] around = new SurfaceVoltage[DIRECTIONS];
        for (int a = 0; a < DIRECTIONS; a++) {
            around[a] = step(here, place.x(), place.y(), 2 * Math.PI / DIRECTIONS * a);
        }
        List<SurfaceVoltage> steepest = new ArrayList<>();
        for (int a = 0; a < DIRECTIONS; a++) {
            double beside = Math.max(
                    around[(a + 1) % DIRECTIONS].voltage(), around[(a + DIRECTIONS - 1) % DIRECTIONS].voltage());
            if (around[a].voltage() >= beside) {
                steepest.add(around[a]);
            }
        }
        return steepest;
    }

    /** Whether both feet are near those of the other step, either way round. */
    private boolean near(SurfaceVoltage one, SurfaceVoltage other) {
        boolean alike = near(one.x1() - other.x1(), one.y1() - other.y1())
                && near(one.x2() - other.x2(), one.y2() - other.y2());
        boolean turned = near(one.x1() - other.x2(), one.y1() - other.y2())
                && near(one.x2() - other.x1(), one.y2() - other.y1());
        return alike || turned;
    }

    private boolean near(double east, double north) {
        return Math.hypot(east, north) < pace / 4;
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

    /**
     * Moves of both feet and turns about either, from one part of a pace down to another; and the place where parabolas
     * through these moves have their tops. A foot on the sharp top over a rod stays there while the other one turns about it.
     */
    private SurfaceVoltage climb(SurfaceVoltage start, double from, double to, double gain) {
        SurfaceVoltage best = start;
        for (double part = from; part > to; ) {
            SurfaceVoltage here = best;
            double move = part * pace;
            double turn = part * Math.PI / 2;
            double direction = Math.atan2(here.y2() - here.y1(), here.x2() - here.x1());
            double back = direction + Math.PI;
            double first = potential.applyAsDouble(here.x1(), here.y1());
            double second = potential.applyAsDouble(here.x2(), here.y2());
            SurfaceVoltage[] trials = {
                step(here.x1() - move, here.y1(), direction),
                step(here.x1() + move, here.y1(), direction),
                step(here.x1(), here.y1() - move, direction),
                step(here.x1(), here.y1() + move, direction),
                step(first, here.x1(), here.y1(), direction - turn),
                step(first, here.x1(), here.y1(), direction + turn),
                step(second, here.x2(), here.y2(), back - turn),
                step(second, here.x2(), here.y2(), back + turn)
            };
            double[] top = new double[trials.length / 2];
            for (int c = 0; c < top.length; c++) {
                top[c] = top(trials[2 * c].voltage(), here.voltage(), trials[2 * c + 1].voltage());
            }
            SurfaceVoltage[] tops = {
                step(here.x1() + move * top[0], here.y1() + move * top[1], direction + turn * top[2]),
                step(here.x2() + move * top[0], here.y2() + move * top[1], back + turn * top[3])
            };
            for (SurfaceVoltage trial : trials) {
                best = higher(trial, best);
            }
            for (SurfaceVoltage trial : tops) {
                best = higher(trial, best);
            }
            if (best.equals(here)) {
                // Along a ridge that lies aslant no single move leads up.
                best = higher(aslant(here, direction, move, turn, trials), here);
            }
            part = best.voltage() > here.voltage() * (1 + gain) ? part : part / 4;
        }
        return best;
    }

    /** The top of the paraboloid through moves of both feet and turns about the first, singly and in pairs. */
    private SurfaceVoltage aslant(
            SurfaceVoltage here, double direction, double move, double turn, SurfaceVoltage[] single) {
        double[] slope = new double[3];
        double[][] bend = new double[3][3];
        for (int c = 0; c < 3; c++) {
            slope[c] = (single[2 * c + 1].voltage() - single[2 * c].voltage()) / 2;
            bend[c][c] = single[2 * c].voltage() - 2 * here.voltage() + single[2 * c + 1].voltage();
        }
        SurfaceVoltage[] both = {
            step(here.x1() + move, here.y1() + move, direction),
            step(here.x1() + move, here.y1(), direction + turn),
            step(here.x1(), here.y1() + move, direction + turn)
        };
        for (int i = 0, pair = 0; i < 2; i++) {
            for (int j = i + 1; j < 3; j++, pair++) {
                bend[i][j] = both[pair].voltage()
                        - single[2 * i + 1].voltage()
                        - single[2 * j + 1].voltage()
                        + here.voltage();
                bend[j][i] = bend[i][j];
            }
        }
        double whole = determinant(bend);
        boolean top = bend[0][0] < 0 && bend[0][0] * bend[1][1] > bend[0][1] * bend[1][0] && whole < 0;
        if (!top) {
            return here;
        }
        double[] way = new double[3];
        double farthest = 1;
        for (int c = 0; c < 3; c++) {
            double[][] column = {bend[0].clone(), bend[1].clone(), bend[2].clone()};
            for (int row = 0; row < 3; row++) {
                column[row][c] = -slope[row];
            }
            way[c] = determinant(column) / whole;
            farthest = Math.max(farthest, Math.abs(way[c]) / 2);
        }
        return step(
                here.x1() + move * way[0] / farthest,
                here.y1() + move * way[1] / farthest,
                direction + turn * way[2] / farthest);
    }

    private static double determinant(double[][] m) {
        return m[0][0] * (m[1][1] * m[2][2] - m[1][2] * m[2][1])
                - m[0][1] * (m[1][0] * m[2][2] - m[1][2] * m[2][0])
                + m[0][2] * (m[1][0] * m[2][1] - m[1][1] * m[2][0]);
    }

    private static SurfaceVoltage higher(SurfaceVoltage next, SurfaceVoltage best) {
        return next.voltage() > best.voltage() * (1 + 1e-12) ? next : best;
    }

    /** Place −1 … 1 of the top of the parabola through the values at −1, 0 and 1, or of the higher end. */
    private static double top(double before, double here, double after) {
        double bend = before - 2 * here + after;
        double place = bend < 0 ? (before - after) / (2 * bend) : after - before;
        return bend < 0 ? Math.max(-1, Math.min(1, place)) : Math.signum(place);
    }
}
