package earthing.electrode.wire;

import earthing.soil.SoilModel;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Supplier;

/** Electrodes carrying current: their potentials, the potential of the ground, touch and step voltages. */
public final class EnergisedElectrodes {

    private final SoilModel soil;
    private final List<Bar> bars;
    private final List<String> names;
    private final PairIntegral integral;
    private final Supplier<SurfaceField> surface;
    private final double[] potentials;
    private final double[] currents;
    /** Currents of the elements that give these potentials in the ground for which the integrals stand. */
    private final double[] elementCurrents;

    private final List<ElementLeakage> leakage;

    EnergisedElectrodes(
            SoilModel soil,
            List<Bar> bars,
            List<String> names,
            PairIntegral integral,
            Supplier<SurfaceField> surface,
            double[] potentials,
            double[] currents,
            double[] elementCurrents,
            List<ElementLeakage> leakage) {
        this.soil = soil;
        this.bars = bars;
        this.names = names;
        this.integral = integral;
        this.surface = surface;
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
     * Greatest magnitude of the potential of any electrode; none of the ground is greater.
     *
     * @return potential to remote earth [V], ≥ 0
     */
    public double greatestPotential() {
        double greatest = 0;
        for (double potential : potentials) {
            greatest = Math.max(greatest, Math.abs(potential));
        }
        return greatest;
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
     * Potential of the ground. On the surface it comes from tables of the Green's function, within 1e-6 of the greatest
     * electrode potential from the sum of all images; below it is that sum.
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
        return depth == 0 ? surface.get().potential(x, y, potentials, elementCurrents) : summed(x, y, depth, layer);
    }

    /** The sum over all images of all elements. */
    double summed(double x, double y, double depth, int layer) {
        double sum = 0;
        ImageTerms room = new ImageTerms();
        for (int e = 0; e < elementCurrents.length; e++) {
            if (elementCurrents[e] != 0) {
                sum += elementCurrents[e] * integral.at(e, x, y, depth, layer, room);
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

    /** A place on the surface. */
    private record Place(double x, double y) {}

    /**
     * Places on rings about a part, up to the reach of a person, and above the shallow ends of bars there: over a rod
     * that ends at the surface the potential stands up more narrowly than the rings are apart.
     */
    private record Rings(double centreX, double centreY, double reach, List<Place> ends)
            implements SurfaceField.Places {

        static final int RINGS = 4;
        private static final int ANGLES = 24;

        static Rings about(double centreX, double centreY, double reach, List<Bar> bars) {
            Set<Place> ends = new LinkedHashSet<>();
            for (Bar bar : bars) {
                if (bar.depth1() < reach / RINGS) {
                    ends.add(new Place(bar.x1(), bar.y1()));
                }
                if (bar.depth2() < reach / RINGS) {
                    ends.add(new Place(bar.x2(), bar.y2()));
                }
            }
            ends.removeIf(end -> Math.hypot(end.x - centreX, end.y - centreY) > reach);
            return new Rings(centreX, centreY, reach, List.copyOf(ends));
        }

        @Override
        public int size() {
            return RINGS * ANGLES + ends.size();
        }

        private double radius(int place) {
            int ring = 1 + place / ANGLES;
            return reach * ring / RINGS;
        }

        private static double angle(int place) {
            return 2 * Math.PI * (place % ANGLES) / ANGLES;
        }

        @Override
        public double x(int place) {
            int end = place - RINGS * ANGLES;
            return end < 0 ? centreX + radius(place) * Math.cos(angle(place)) : ends.get(end).x;
        }

        @Override
        public double y(int place) {
            int end = place - RINGS * ANGLES;
            return end < 0 ? centreY + radius(place) * Math.sin(angle(place)) : ends.get(end).y;
        }
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
        Rings around = Rings.about(x, y, reach, bars);
        double[] ground = surface.get().potentials(around, potentials);
        for (int i = 0; i < ground.length; i++) {
            double voltage = Math.abs(metalPotential - ground[i]);
            if (voltage > best) {
                best = voltage;
                bestX = around.x(i);
                bestY = around.y(i);
            }
        }
        for (double step = reach / Rings.RINGS; step > 1e-3 * reach; ) {
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

    /** Places of a rectangle on the surface, its sides included. */
    private record Raster(double centreX, double centreY, double width, double length, int places)
            implements SurfaceField.Places {

        @Override
        public int size() {
            return places * places;
        }

        @Override
        public double x(int place) {
            int column = place / places;
            return centreX + width * ((double) column / (places - 1) - 0.5);
        }

        @Override
        public double y(int place) {
            return centreY + length * ((double) (place % places) / (places - 1) - 0.5);
        }
    }

    /**
     * Greatest prospective voltage between a metal part and feet anywhere on a rectangle of the surface.
     *
     * @param x east of its middle [m]
     * @param y north of its middle [m]
     * @param width extent from west to east [m]
     * @param length extent from south to north [m]
     * @param places number of places along each side, ≥ 2
     * @param metalPotential potential of the part [V]
     * @return the voltage [V]
     */
    public double worstTouchOn(double x, double y, double width, double length, int places, double metalPotential) {
        if (places < 2) {
            throw new IllegalArgumentException("a rectangle needs at least two places along a side; have " + places);
        }
        double worst = 0;
        for (double ground : surface.get().potentials(new Raster(x, y, width, length, places), potentials)) {
            worst = Math.max(worst, Math.abs(metalPotential - ground));
        }
        return worst;
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
        return new StepSearch(
                        (x, y) -> potential(x, y, 0),
                        places -> surface.get().potentials(places, potentials),
                        bars,
                        pace)
                .worst();
    }
}
