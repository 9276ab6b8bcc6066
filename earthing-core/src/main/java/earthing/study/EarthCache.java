package earthing.study;

import earthing.electrode.wire.Bar;
import earthing.electrode.wire.EarthElectrodes;
import earthing.soil.SoilModel;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/** Solved electrodes of one run, for any number of threads, so that equal ground and bars are solved once. */
final class EarthCache {

    private record Problem(SoilModel soil, List<Bar> bars) {}

    private final Map<Problem, EarthElectrodes> solved = new ConcurrentHashMap<>();

    EarthElectrodes solve(SoilModel soil, List<Bar> bars) {
        return solved.computeIfAbsent(
                new Problem(soil, List.copyOf(bars)), p -> EarthElectrodes.of(p.soil(), p.bars()));
    }
}
