package earthing.study;

import earthing.electrode.wire.Bar;
import earthing.electrode.wire.EarthElectrodes;
import earthing.electrode.wire.EnergisedElectrodes;
import earthing.quantity.Measure.Bound;
import earthing.site.Site;
import earthing.soil.Layer;
import earthing.soil.SoilModel;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Resistances, touch and step voltages of the same electrodes in many grounds, for samples of one site.
 *
 * <p>If every resistivity is multiplied by a factor, so is every resistance and every potential for a given current:
 * <i>R(kρ₁, kρ₂ … h) = k·R(ρ₁, ρ₂ … h)</i>, exactly, since the equation of the potential is linear in the resistivity. What is
 * left is the ratio of the layers. Where one ratio varies between samples, the numbers per ohm-metre of the first layer are
 * interpolated over its logarithm by a polynomial through Chebyshev points, which are doubled until exact solutions at
 * the points of the next doubling agree within {@link #BOUND}. Where more than one varies, or thicknesses do, there is no
 * table and every ground is solved.
 */
final class TabulatedGround {

    /** Greatest relative difference from exact solutions between the points [1]. */
    static final double BOUND = 1e-4;

    /** Two logarithms of ratios that differ by less are one. */
    private static final double SAME = 1e-9;

    private static final double FIRST_LAYER = 100;

    /**
     * Where a person may stand at a part.
     *
     * @param x east of the part [m]
     * @param reach reach [m]
     */
    record Place(double x, double reach) {}

    private record Key(List<Bar> bars, List<Double> thicknesses) {}

    private final Map<Key, Table> tables;
    private final double bound;

    private TabulatedGround(Map<Key, Table> tables) {
        this.tables = tables;
        this.bound = tables.values().stream().mapToDouble(t -> t.error).max().orElse(0);
    }

    /** Nothing tabulated: every ground is solved. */
    static final TabulatedGround NONE = new TabulatedGround(Map.of());

    /**
     * Tabulates.
     *
     * @param ends the site at the ends of what varies of its ground, in every combination, without bounds
     * @param cache solves the exact grounds
     */
    static TabulatedGround of(List<Site> ends, EarthCache cache) {
        Map<Key, List<SoilModel>> grounds = new LinkedHashMap<>();
        Map<Key, Set<Place>> places = new LinkedHashMap<>();
        for (Site site : ends) {
            for (Bound bound : SiteEarth.bounds(site, StudyScope.POINT)) {
                SiteEarth.Ground ground;
                Set<Place> around;
                try {
                    ground = SiteEarth.ground(site, bound);
                    around = TouchStudy.places(AdverseInputs.of(site, new Inputs()));
                } catch (MissingInput missing) {
                    return NONE;
                }
                if (!ground.bars().isEmpty()) {
                    Key key = new Key(ground.bars(), thicknesses(ground.soil()));
                    grounds.computeIfAbsent(key, k -> new ArrayList<>()).add(ground.soil());
                    places.computeIfAbsent(key, k -> new java.util.LinkedHashSet<>())
                            .addAll(around);
                }
            }
        }
        Map<Key, Table> tables = new LinkedHashMap<>();
        grounds.forEach((key, soils) -> Table.of(key, soils, List.copyOf(places.getOrDefault(key, Set.of())), cache)
                .ifPresent(table -> tables.put(key, table)));
        return new TabulatedGround(tables);
    }

    /** Greatest relative difference that was seen between table and exact solutions [1]; zero without a table. */
    double bound() {
        return bound;
    }

    /** The numbers in one ground; empty where it is not covered. */
    Optional<Point> at(SoilModel soil, List<Bar> bars) {
        Table table = tables.isEmpty() ? null : tables.get(new Key(bars, thicknesses(soil)));
        return table == null ? Optional.empty() : table.at(soil);
    }

    private static List<Double> thicknesses(SoilModel soil) {
        List<Double> thicknesses = new ArrayList<>();
        for (int i = 0; i < soil.layerCount() - 1; i++) {
            thicknesses.add(soil.thickness(i));
        }
        return thicknesses;
    }

    private static double[] ratios(SoilModel soil) {
        double[] ratios = new double[soil.layerCount()];
        for (int i = 0; i < ratios.length; i++) {
            ratios[i] = Math.log(soil.resistivity(i) / soil.resistivity(0));
        }
        return ratios;
    }

    /** The numbers of one ground. */
    static final class Point {

        private final Table table;
        private final double scale;
        private final double[] values;

        private Point(Table table, double scale, double[] values) {
            this.table = table;
            this.scale = scale;
            this.values = values;
        }

        List<String> names() {
            return table.names;
        }

        /** Self or mutual resistance [Ω]. */
        double resistance(String one, String other) {
            return scale * values[table.pair(table.names.indexOf(one), table.names.indexOf(other))];
        }

        /** Resistance by even leakage [Ω]. */
        double evenLeakage(String name) {
            return scale * values[table.even(table.names.indexOf(name))];
        }

        /** Resistance with the other electrodes taken out of the ground [Ω]. */
        double withoutOthers(String name) {
            return scale * values[table.withoutOthers(table.names.indexOf(name))];
        }

        /** Where all grounds are one ground times a factor: that ground and the factor. */
        Optional<EarthElectrodes> reference() {
            return table.coordinate < 0 ? Optional.of(table.reference) : Optional.empty();
        }

        /** Factor of the reference [1]. */
        double scale() {
            return scale;
        }

        /** One electrode with one ampere, the others floating. */
        Carrier carrying(String name) {
            return new Carrier(this, table.names.indexOf(name));
        }
    }

    /** One electrode with one ampere. */
    record Carrier(Point point, int electrode) {

        /** Whether a part is tabulated. */
        boolean covers(double x, double reach) {
            return point.table.places.contains(new Place(x, reach));
        }

        /** Greatest voltage between metal at a potential [V/A] and feet within reach [V/A]. */
        double worstTouch(double x, double reach, double potential) {
            Table table = point.table;
            int at = table.touch(electrode, table.places.indexOf(new Place(x, reach)));
            double own = point.values[table.pair(electrode, electrode)];
            double least = point.scale * (own - point.values[at]);
            double most = point.scale * point.values[at + 1];
            return Math.max(Math.abs(potential - least), Math.abs(potential - most));
        }

        /** Greatest voltage of a pace of 1 m [V/A]. */
        double worstStep() {
            return point.scale * point.values[point.table.step(electrode)];
        }
    }

    private static final class Table {

        private final List<Bar> bars;
        private final List<Double> thicknesses;
        private final List<Place> places;
        private final EarthElectrodes reference;
        private final List<String> names;
        private final double[] fixed;
        private final int coordinate;
        private final ChebyshevTable curve;
        private final double error;

        private Table(
                Key key,
                List<Place> places,
                double[] fixed,
                int coordinate,
                double low,
                double high,
                EarthCache cache) {
            this.bars = key.bars();
            this.thicknesses = key.thicknesses();
            this.places = places;
            this.fixed = fixed;
            this.coordinate = coordinate;
            reference = cache.solve(soil(low), bars);
            names = reference.names();
            curve = ChebyshevTable.of(low, high, BOUND, ratio -> numbers(cache.solve(soil(ratio), bars)), this::scale);
            error = curve.error();
        }

        /** Empty where more than one ratio varies, or the table does not come within the bound. */
        static Optional<Table> of(Key key, List<SoilModel> soils, List<Place> places, EarthCache cache) {
            double[] fixed = ratios(soils.get(0));
            int coordinate = -1;
            double low = 0;
            double high = 0;
            for (int i = 0; i < fixed.length; i++) {
                double least = Double.POSITIVE_INFINITY;
                double most = Double.NEGATIVE_INFINITY;
                for (SoilModel soil : soils) {
                    double ratio = ratios(soil)[i];
                    least = Math.min(least, ratio);
                    most = Math.max(most, ratio);
                }
                if (most - least > SAME) {
                    if (coordinate >= 0) {
                        return Optional.empty();
                    }
                    coordinate = i;
                    low = least;
                    high = most;
                }
            }
            try {
                Table table = new Table(key, places, fixed, coordinate, low, high, cache);
                return table.error <= BOUND ? Optional.of(table) : Optional.empty();
            } catch (IllegalArgumentException impossible) {
                return Optional.empty(); // told where the electrodes themselves are asked for
            }
        }

        private SoilModel soil(double ratio) {
            List<Layer> layers = new ArrayList<>();
            for (int i = 0; i < fixed.length; i++) {
                double resistivity = FIRST_LAYER * Math.exp(i == coordinate ? ratio : fixed[i]);
                layers.add(
                        i == fixed.length - 1 ? Layer.below(resistivity) : new Layer(resistivity, thicknesses.get(i)));
            }
            return SoilModel.of(layers);
        }

        Optional<Point> at(SoilModel soil) {
            double[] ratios = ratios(soil);
            if (ratios.length != fixed.length) {
                return Optional.empty();
            }
            for (int i = 0; i < ratios.length; i++) {
                if (i != coordinate && Math.abs(ratios[i] - fixed[i]) > SAME) {
                    return Optional.empty();
                }
            }
            double ratio = coordinate < 0 ? curve.low() : ratios[coordinate];
            return curve.covers(ratio)
                    ? Optional.of(new Point(this, soil.resistivity(0) / FIRST_LAYER, curve.at(ratio)))
                    : Optional.empty();
        }

        int pair(int one, int other) {
            int first = Math.max(one, other);
            return first * (first + 1) / 2 + Math.min(one, other);
        }

        private int pairs() {
            return names.size() * (names.size() + 1) / 2;
        }

        int even(int electrode) {
            return pairs() + electrode;
        }

        int withoutOthers(int electrode) {
            return pairs() + names.size() + electrode;
        }

        private int ofCarrier(int electrode) {
            return pairs() + 2 * names.size() + electrode * (1 + 2 * places.size());
        }

        int step(int electrode) {
            return ofCarrier(electrode);
        }

        int touch(int electrode, int place) {
            return ofCarrier(electrode) + 1 + 2 * place;
        }

        private double[] numbers(EarthElectrodes solved) {
            double[] numbers = new double[ofCarrier(names.size())];
            for (int i = 0; i < names.size(); i++) {
                for (int j = 0; j <= i; j++) {
                    numbers[pair(i, j)] = solved.resistances().get(i, j);
                }
                numbers[even(i)] = solved.evenLeakage(names.get(i));
                numbers[withoutOthers(i)] = solved.resistanceWithoutOthers(names.get(i));
            }
            if (coordinate >= 0) { // a fixed shape of the ground keeps its own field
                for (int i = 0; i < names.size(); i++) {
                    EnergisedElectrodes field = solved.carrying(Map.of(names.get(i), 1.0));
                    double own = solved.resistances().get(i, i);
                    numbers[step(i)] = field.worstStep(1).voltage();
                    for (int p = 0; p < places.size(); p++) {
                        Place place = places.get(p);
                        numbers[touch(i, p)] = field.worstTouch(place.x(), 0, place.reach(), own)
                                .voltage();
                        numbers[touch(i, p) + 1] =
                                field.worstTouch(place.x(), 0, place.reach(), 0).voltage();
                    }
                }
            }
            return numbers;
        }

        /** What the error of a number is measured by: itself. */
        private double scale(int index, double[] exact) {
            return Math.abs(exact[index]);
        }
    }
}
