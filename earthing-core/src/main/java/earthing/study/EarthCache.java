package earthing.study;

import earthing.electrode.ElectrodePorts;
import earthing.electrode.wire.Bar;
import earthing.electrode.wire.EarthElectrodes;
import earthing.electrode.wire.HarmonicElectrode;
import earthing.soil.SoilDispersion;
import earthing.soil.SoilModel;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Supplier;

/** Solved electrodes of one run, for any number of threads, so that equal ground and bars are solved once. */
final class EarthCache {

    private record Problem(SoilModel soil, List<Bar> bars) {}

    /** Electrodes over frequency by the title of the law of their ground, which tells its constants too. */
    private record Harmonic(Problem problem, String law) {}

    private record Joined(Harmonic harmonic, List<String> names) {}

    private final Map<Problem, EarthElectrodes> solved = new ConcurrentHashMap<>();
    private final Map<Harmonic, HarmonicElectrode> harmonic = new ConcurrentHashMap<>();
    private final Map<Joined, ElectrodePorts> ports = new ConcurrentHashMap<>();
    private final Map<Problem, double[][]> inductances = new ConcurrentHashMap<>();

    EarthElectrodes solve(SoilModel soil, List<Bar> bars) {
        return solved.computeIfAbsent(
                new Problem(soil, List.copyOf(bars)), p -> EarthElectrodes.of(p.soil(), p.bars()));
    }

    /** Electrodes over frequency at their terminals. */
    HarmonicElectrode harmonic(SiteEarth earth, SoilDispersion law, String lawKey) {
        return harmonic.computeIfAbsent(
                key(earth, lawKey), k -> HarmonicElectrode.of(earth.soil(), law, earth.bars(), earth.terminals()));
    }

    /** The ports of the electrodes that something is joined to. */
    ElectrodePorts ports(SiteEarth earth, String lawKey, List<String> names, Supplier<ElectrodePorts> solution) {
        return ports.computeIfAbsent(new Joined(key(earth, lawKey), List.copyOf(names)), k -> solution.get());
    }

    /** Inductances of the tapering currents. */
    double[][] inductances(SiteEarth earth, Supplier<double[][]> solution) {
        return inductances.computeIfAbsent(new Problem(earth.soil(), earth.bars()), k -> solution.get());
    }

    private static Harmonic key(SiteEarth earth, String law) {
        return new Harmonic(new Problem(earth.soil(), earth.bars()), law);
    }
}
