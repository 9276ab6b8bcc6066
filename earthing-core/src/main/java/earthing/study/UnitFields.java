package earthing.study;

import earthing.electrode.wire.EarthElectrodes;
import earthing.electrode.wire.EnergisedElectrodes;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

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
     * @param pairs number of pairs of elements
     */
    record Unit(EnergisedElectrodes field, double scale, Map<String, Double> found, long pairs) {

        /** Many sites may share one electrode; beyond that, what was found is found again. */
        private static final int MOST_FOUND = 20_000;

        static Unit of(EarthElectrodes electrodes, Map<String, Double> currents) {
            long elements = electrodes.elements();
            return new Unit(electrodes.carrying(currents), 1, new ConcurrentHashMap<>(), elements * elements);
        }

        double worstTouch(double x, double reach, double potential) {
            double unit = rounded(potential / scale);
            if (found.size() > MOST_FOUND) {
                found.clear();
            }
            return scale
                    * found.computeIfAbsent(
                            "touch " + x + " " + reach + " " + unit,
                            key -> field.worstTouch(x, 0, reach, unit).voltage());
        }

        double worstStep() {
            return scale
                    * found.computeIfAbsent("step", key -> field.worstStep(1).voltage());
        }

        List<Double> profile(double x, double length, int points) {
            return field.profile(x, 0, x + length, 0, points).stream()
                    .map(v -> scale * v)
                    .toList();
        }
    }

    /** The field of these currents. */
    Unit of(EarthElectrodes electrodes, Map<String, Double> currents) {
        double largest = largest(currents);
        if (largest == 0) {
            return Unit.of(electrodes, currents);
        }
        Unit known = cache.field(electrodes, unit(currents));
        return new Unit(known.field(), largest, known.found(), known.pairs());
    }

    /** Of each pattern of currents the first fault. */
    Collection<PowerCase> patterns(List<PowerCase> cases) {
        Map<Pattern, PowerCase> patterns = new LinkedHashMap<>();
        for (PowerCase fault : cases) {
            fault.earth()
                    .fields()
                    .filter(f -> largest(fault.electrodeCurrents()) > 0)
                    .ifPresent(f -> patterns.putIfAbsent(new Pattern(f, unit(fault.electrodeCurrents())), fault));
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
