package earthing.electrode.wire;

import earthing.soil.SoilModel;
import java.util.ArrayList;
import java.util.List;

/** Electrodes carrying current: their potentials, the potential of the ground, touch and step voltages. */
public final class EnergisedElectrodes {

    private static final int GRID = 44;
    private static final int STARTS = 6;

    private final SoilModel soil;
    private final List<Bar> bars;
    private final List<String> names;
    private final PairIntegral integral;
    private final double[] potentials;
    private final double[] currents;
    private final double[] elementCurrents;
    private final List<ElementLeakage> leakage;

    EnergisedElectrodes(
            SoilModel soil,
            List<Bar> bars,
            List<String> names,
            PairIntegral integral,
            double[] potentials,
            double[] currents,
            double[] elementCurrents,
            List<ElementLeakage> leakage) {
        this.soil = soil;
        this.bars = bars;
        this.names = names;
        this.integral = integral;
        this.potentials = potentials;
        this.currents = currents;
        this.elementCurrents = elementCurrents;
        this.leakage = List.copyOf(leakage);
    }

    /**
     * Potential of an electrode, the earth potential rise.
     *
     * @param name electrode
     * @return potential to remote earth [V]
     */
    public double potentialOf(String name) {
        return potentials[index(name)];
    }

    /**
     * Current into an electrode.
     *
     * @param name electrode
     * @return current [A]
     */
    public double currentOf(String name) {
        return currents[index(name)];
    }

    private int index(String name) {
        int index = names.indexOf(name);
        if (index < 0) {
            throw new IllegalArgumentException("no electrode \"" + name + "\"; have " + names);
        }
        return index;
    }

    /**
     * Current that each element gives to the soil.
     *
     * @return one entry an element
     */
    public List<ElementLeakage> leakage() {
        return leakage;
    }

    /**
     * Potential of the ground.
     *
     * @param x east [m]
     * @param y north [m]
     * @param depth depth [m], ≥ 0; a point within a bar counts as one on its surface
     * @return potential to remote earth [V]
     */
    public double potential(double x, double y, double depth) {
        if (!Double.isFinite(x) || !Double.isFinite(y)) {
            throw new IllegalArgumentException("a point needs finite coordinates; have " + x + ", " + y);
        }
        int layer = soil.layerAt(depth);
        double sum = 0;
        for (int e = 0; e < elementCurrents.length; e++) {
            if (elementCurrents[e] != 0) {
                sum += elementCurrents[e] * integral.at(e, x, y, depth, layer);
            }
        }
        return sum;
    }

    /**
     * Potential along a straight line on the surface.
     *
     * @param x1 east of the first point [m]
     * @param y1 north of the first point [m]
     * @param x2 east of the last point [m]
     * @param y2 north of the last point [m]
     * @param points number of points, ≥ 2
     * @return potentials at equal steps [V]
     */
    public List<Double> profile(double x1, double y1, double x2, double y2, int points) {
        if (points < 2) {
            throw new IllegalArgumentException("a profile needs at least two points; have " + points);
        }
        List<Double> values = new ArrayList<>();
        for (int i = 0; i < points; i++) {
            double t = (double) i / (points - 1);
            values.add(potential(x1 + t * (x2 - x1), y1 + t * (y2 - y1), 0));
        }
        return List.copyOf(values);
    }

    /**
     * Greatest prospective touch voltage at a metal part: between it and the feet anywhere within reach.
     *
     * @param x east of the part [m]
     * @param y north of the part [m]
     * @param reach horizontal reach of a person [m], &gt; 0; 1 m in EN 50522 and IEEE Std 80
     * @param metalPotential potential of the part [V]
     * @return the voltage with its place
     */
    public SurfaceVoltage worstTouch(double x, double y, double reach, double metalPotential) {
        if (!(reach > 0)) {
            throw new IllegalArgumentException("reach must be > 0 m; have " + reach);
        }
        double bestX = x;
        double bestY = y;
        double best = Math.abs(metalPotential - potential(x, y, 0));
        int rings = 4;
        int angles = 24;
        for (int ring = 1; ring <= rings; ring++) {
            for (int a = 0; a < angles; a++) {
                double px = x + reach * ring / rings * Math.cos(2 * Math.PI * a / angles);
                double py = y + reach * ring / rings * Math.sin(2 * Math.PI * a / angles);
                double voltage = Math.abs(metalPotential - potential(px, py, 0));
                if (voltage > best) {
                    best = voltage;
                    bestX = px;
                    bestY = py;
                }
            }
        }
        for (double step = reach / rings; step > 1e-4 * reach; ) {
            boolean moved = false;
            for (int a = 0; a < 8; a++) {
                double px = bestX + step * Math.cos(Math.PI / 4 * a) - x;
                double py = bestY + step * Math.sin(Math.PI / 4 * a) - y;
                double beyond = Math.max(1, Math.hypot(px, py) / reach);
                double voltage = Math.abs(metalPotential - potential(x + px / beyond, y + py / beyond, 0));
                if (voltage > best * (1 + 1e-12)) {
                    best = voltage;
                    bestX = x + px / beyond;
                    bestY = y + py / beyond;
                    moved = true;
                }
            }
            step = moved ? step : step / 2;
        }
        return new SurfaceVoltage(best, bestX, bestY, x, y);
    }

    /**
     * Greatest prospective step voltage on the surface above and around the electrodes.
     *
     * @param pace distance of the feet [m], &gt; 0; 1 m in EN 50522 and IEEE Std 80
     * @return the voltage with the places of both feet
     */
    public SurfaceVoltage worstStep(double pace) {
        if (!(pace > 0)) {
            throw new IllegalArgumentException("pace must be > 0 m; have " + pace);
        }
        List<SurfaceVoltage> starts = new ArrayList<>(overGrid(pace));
        for (Bar bar : bars) {
            starts.addAll(around(bar.x1(), bar.y1(), pace));
            starts.addAll(around((bar.x1() + bar.x2()) / 2, (bar.y1() + bar.y2()) / 2, pace));
            starts.addAll(around(bar.x2(), bar.y2(), pace));
        }
        starts.sort((a, b) -> Double.compare(b.voltage(), a.voltage()));
        SurfaceVoltage best = starts.get(0);
        for (SurfaceVoltage start : starts.subList(0, Math.min(STARTS, starts.size()))) {
            SurfaceVoltage found = climb(start, pace);
            best = found.voltage() > best.voltage() ? found : best;
        }
        return best;
    }

    private List<SurfaceVoltage> overGrid(double pace) {
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
        int columns = cells(east - west + 2 * margin, pace);
        int rows = cells(north - south + 2 * margin, pace);
        double dx = (east - west + 2 * margin) / columns;
        double dy = (north - south + 2 * margin) / rows;
        List<SurfaceVoltage> found = new ArrayList<>();
        for (int i = 0; i <= columns; i++) {
            for (int j = 0; j <= rows; j++) {
                double x = west - margin + i * dx;
                double y = south - margin + j * dy;
                double e = 0.02 * pace;
                double v = potential(x, y, 0);
                double direction = Math.atan2(potential(x, y + e, 0) - v, potential(x + e, y, 0) - v);
                found.add(
                        step(x - pace / 2 * Math.cos(direction), y - pace / 2 * Math.sin(direction), direction, pace));
            }
        }
        return found;
    }

    private static int cells(double extent, double pace) {
        return (int) Math.max(4, Math.min(GRID, Math.ceil(extent / (pace / 2))));
    }

    private List<SurfaceVoltage> around(double x, double y, double pace) {
        List<SurfaceVoltage> found = new ArrayList<>();
        for (int a = 0; a < 12; a++) {
            found.add(step(x, y, Math.PI / 6 * a, pace));
        }
        return found;
    }

    private SurfaceVoltage step(double x, double y, double direction, double pace) {
        double x2 = x + pace * Math.cos(direction);
        double y2 = y + pace * Math.sin(direction);
        return new SurfaceVoltage(Math.abs(potential(x, y, 0) - potential(x2, y2, 0)), x, y, x2, y2);
    }

    private SurfaceVoltage climb(SurfaceVoltage start, double pace) {
        SurfaceVoltage best = start;
        double move = pace / 4;
        double turn = Math.PI / 8;
        while (move > 1e-3 * pace) {
            SurfaceVoltage before = best;
            double direction = Math.atan2(best.y2() - best.y1(), best.x2() - best.x1());
            double[][] trials = {{move, 0, 0}, {-move, 0, 0}, {0, move, 0}, {0, -move, 0}, {0, 0, turn}, {0, 0, -turn}};
            for (double[] trial : trials) {
                SurfaceVoltage next = step(before.x1() + trial[0], before.y1() + trial[1], direction + trial[2], pace);
                if (next.voltage() > best.voltage() * (1 + 1e-12)) {
                    best = next;
                }
            }
            if (best.equals(before)) {
                move /= 2;
                turn /= 2;
            }
        }
        return best;
    }
}
