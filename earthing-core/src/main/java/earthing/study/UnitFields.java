package earthing.study;

import earthing.electrode.wire.EarthElectrodes;
import earthing.electrode.wire.EnergisedElectrodes;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Supplier;

/**
 * Fields of electrodes for a largest current of one ampere: potentials are proportional to the currents, so that one search
 * serves every fault with the same pattern of currents.
 */
final class UnitFields {

    private record Pattern(EarthElectrodes electrodes, Map<String, Double> unit) {}

    private final EarthCache cache;

    UnitFields(EarthCache cache) {
        this.cache = cache;
    }

    /**
     * One field, its scale [A], and what has been found in it.
     *
     * @param solved the field
     * @param pairs number of pairs of elements
     * @param carrier the one electrode that carries current, where its numbers are tabulated
     */
    record Unit(
            Supplier<EnergisedElectrodes> solved,
            double scale,
            Map<String, Double> found,
            long pairs,
            Optional<TabulatedGround.Carrier> carrier) {

        /** Many sites may share one electrode; beyond that, what was found is found again. */
        private static final int MOST_FOUND = 20_000;

        static Unit of(EarthElectrodes electrodes, Map<String, Double> currents) {
            long elements = electrodes.elements();
            EnergisedElectrodes field = electrodes.carrying(currents);
            return new Unit(() -> field, 1, new ConcurrentHashMap<>(), elements * elements, Optional.empty());
        }

        private Unit times(double factor) {
            return new Unit(solved, factor * scale, found, pairs, carrier);
        }

        EnergisedElectrodes field() {
            return solved.get();
        }

        /**
         * Greatest voltage between metal at a potential and feet within reach: the lowest or the highest potential of the
         * ground there decides, whatever that of the metal.
         */
        double worstTouch(double x, double reach, double potential) {
            double unit = potential / scale;
            if (carrier.isPresent() && carrier.get().covers(x, reach)) {
                return scale * carrier.get().worstTouch(x, reach, unit);
            }
            if (found.size() > MOST_FOUND) {
                found.clear();
            }
            double beyond = field().greatestPotential();
            double least = found.computeIfAbsent(
                    "least " + x + " " + reach,
                    key -> 2 * beyond
                            - field().worstTouch(x, 0, reach, 2 * beyond).voltage());
            if (unit - least >= beyond - unit) {
                return scale * (unit - least); // no ground is at a higher potential than every electrode
            }
            double most = found.computeIfAbsent(
                    "most " + x + " " + reach,
                    key -> field().worstTouch(x, 0, reach, -2 * beyond).voltage() - 2 * beyond);
            return scale * Math.max(Math.abs(unit - least), Math.abs(unit - most));
        }

        double worstStep() {
            return carrier.isPresent()
                    ? scale * carrier.get().worstStep()
                    : scale
                            * found.computeIfAbsent(
                                    "step", key -> field().worstStep(1).voltage());
        }

        List<Double> profile(double x, double length, int points) {
            return field().profile(x, 0, x + length, 0, points).stream()
                    .map(v -> scale * v)
                    .toList();
        }
    }

    /** The field of these currents. */
    Unit of(EarthElectrodes electrodes, Map<String, Double> currents) {
        double largest = largest(currents);
        return largest == 0
                ? Unit.of(electrodes, currents)
                : cache.field(electrodes.reference(), unit(currents)).times(electrodes.scale() * largest);
    }

    /** The field of these currents into the electrodes of a site, from a table where there is one. */
    Unit of(SiteEarth earth, Map<String, Double> currents) {
        Optional<TabulatedGround.Point> point = earth.tabulated();
        double largest = largest(currents);
        if (point.isPresent() && largest > 0) {
            Optional<EarthElectrodes> reference = point.get().reference();
            if (reference.isPresent()) {
                return of(reference.get(), currents).times(point.get().scale());
            }
            List<Map.Entry<String, Double>> carrying = currents.entrySet().stream()
                    .filter(electrode -> Math.abs(electrode.getValue()) > ALONE * largest)
                    .toList();
            if (carrying.size() == 1) {
                String name = carrying.get(0).getKey();
                double current = carrying.get(0).getValue();
                Supplier<EnergisedElectrodes> solved =
                        () -> earth.fields().orElseThrow().carrying(Map.of(name, 1.0));
                return new Unit(
                        solved,
                        current,
                        new ConcurrentHashMap<>(),
                        0,
                        Optional.of(point.get().carrying(name)));
            }
        }
        return of(earth.fields().orElseThrow(), currents);
    }

    /** Below this part of the largest an electrode carries nothing. */
    private static final double ALONE = 1e-9;

    /** Of each pattern of currents the first fault. */
    Collection<PowerCase> patterns(List<PowerCase> cases) {
        Map<Pattern, PowerCase> patterns = new LinkedHashMap<>();
        for (PowerCase fault : cases) {
            if (fault.earth().tabulated().isPresent()) {
                continue; // nothing to search
            }
            fault.earth()
                    .fields()
                    .filter(f -> largest(fault.electrodeCurrents()) > 0)
                    .ifPresent(f ->
                            patterns.putIfAbsent(new Pattern(f.reference(), unit(fault.electrodeCurrents())), fault));
        }
        return patterns.values();
    }

    private static double largest(Map<String, Double> currents) {
        return currents.values().stream().mapToDouble(Math::abs).max().orElse(0);
    }

    /** The currents with the largest as one ampere. */
    private static Map<String, Double> unit(Map<String, Double> currents) {
        double largest = largest(currents);
        Map<String, Double> unit = new LinkedHashMap<>();
        currents.forEach((name, current) -> unit.put(name, rounded(current / largest)));
        return unit;
    }

    /** So that equal patterns of current are recognised; 1e-9 is far below any other error. */
    private static double rounded(double ratio) {
        return Math.rint(ratio * 1e9) / 1e9;
    }
}
