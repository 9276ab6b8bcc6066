package earthing.study;

import earthing.electrode.ElectrodePorts;
import earthing.electrode.wire.Bar;
import earthing.electrode.wire.EarthElectrodes;
import earthing.electrode.wire.HarmonicElectrode;
import earthing.electrode.wire.SeriesElectrodes;
import earthing.site.Soil;
import earthing.soil.SoilDispersion;
import earthing.soil.SoilModel;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Queue;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.function.ToLongFunction;

/**
 * Solved electrodes, for any number of threads and sites, so that equal ground and bars are solved once. What is taken
 * from it is the same as what would be solved anew; a site's results do not depend on what was in it before.
 */
public final class EarthCache {

    /** Solutions of one kind that are kept by default, a few hundred kilobytes each at most on a usual pole. */
    public static final int MOST = 600;

    private record Problem(SoilModel soil, List<Bar> bars) {}

    /** Where an earth lead arrives. */
    private record Terminal(String electrode, double x, double y) {}

    /** Electrodes with the places where their leads arrive, in their order. */
    private record Fed(Problem problem, List<Terminal> terminals) {}

    /** Electrodes over frequency by the title of the law of their ground, which tells its constants too. */
    private record Harmonic(Fed fed, String law) {}

    private record Series(Fed fed, Map<String, SeriesElectrodes.Conductor> conductors, double frequency) {}

    private record Joined(Harmonic harmonic, List<String> names) {}

    /** Electrodes with the currents into them. */
    private record Carrying(EarthElectrodes electrodes, Map<String, Double> currents) {}

    /** Pairs of elements in all electrodes that are kept: 2e6 take some hundred megabytes with matrix and factor. */
    private static final long MOST_PAIRS = 2_000_000;

    /**
     * The same for many sites: fifty electrodes of ten rods and wires in every state of a layered ground, in
     * half of a heap of 1 GiB. Where they do not fit, a row at random finds its own forgotten.
     */
    private static final long MOST_PAIRS_OF_MANY = 5_000_000;

    /**
     * A map that forgets its oldest entry when it is full, by number or by size. Nobody holds a lock while an entry is
     * being solved, because that is done in parallel: a worker that waits for a lock would keep the parts that it was to do. Waiting on a
     * future lets another worker take its place.
     */
    private static final class Kept<K, V> {

        private final Map<K, CompletableFuture<V>> values = new ConcurrentHashMap<>();
        private final Queue<K> oldestFirst = new ConcurrentLinkedQueue<>();
        private final AtomicInteger count = new AtomicInteger();
        private final AtomicLong pairs = new AtomicLong();
        private final int most;
        private final long mostPairs;
        private final ToLongFunction<V> size;

        Kept(int most, long mostPairs, ToLongFunction<V> size) {
            this.most = most;
            this.mostPairs = mostPairs;
            this.size = size;
        }

        V get(K key, Function<K, V> solution) {
            CompletableFuture<V> known = values.get(key);
            if (known != null) {
                return solved(known);
            }
            CompletableFuture<V> mine = new CompletableFuture<>();
            CompletableFuture<V> first = values.putIfAbsent(key, mine);
            if (first != null) {
                return solved(first);
            }
            try {
                V made = solution.apply(key);
                mine.complete(made);
                pairs.addAndGet(size.applyAsLong(made));
                oldestFirst.add(key);
                count.incrementAndGet();
                forget();
            } catch (RuntimeException | Error failed) {
                values.remove(key, mine);
                mine.completeExceptionally(failed);
            }
            return solved(mine);
        }

        private void forget() {
            while (count.get() > most || pairs.get() > mostPairs) {
                K oldest = oldestFirst.poll();
                CompletableFuture<V> gone = oldest == null ? null : values.remove(oldest);
                if (gone == null) {
                    return;
                }
                count.decrementAndGet();
                pairs.addAndGet(-size.applyAsLong(gone.join()));
            }
        }

        private static <V> V solved(CompletableFuture<V> future) {
            try {
                return future.join();
            } catch (CompletionException failed) {
                if (failed.getCause() instanceof RuntimeException reason) {
                    throw reason;
                }
                throw failed;
            }
        }
    }

    private final Kept<Problem, EarthElectrodes> solved;
    private final Kept<Harmonic, HarmonicElectrode> harmonic;
    private final Kept<Joined, ElectrodePorts> ports;
    private final Kept<Fed, double[][]> inductances;
    private final Kept<Series, SeriesElectrodes> series;
    private final Kept<Carrying, UnitFields.Unit> fields;
    private final Kept<Soil, SurveyedSoil.Fitted> surveys;
    private final TabulatedGround table;

    /** A cache for one site, or for sites that have much in common. */
    public EarthCache() {
        this(MOST, MOST_PAIRS, TabulatedGround.NONE);
    }

    /**
     * A cache for many sites.
     *
     * @return an empty cache that keeps more than that of one site
     */
    public static EarthCache ofManySites() {
        return new EarthCache(4 * MOST, MOST_PAIRS_OF_MANY, TabulatedGround.NONE);
    }

    /**
     * A cache of a stated size.
     *
     * @param most solutions of one kind that are kept, at least 1; the oldest is forgotten first
     */
    public EarthCache(int most) {
        this(most, MOST_PAIRS, TabulatedGround.NONE);
    }

    /** A cache for samples of one site, most of whose grounds stand in a table. */
    EarthCache(TabulatedGround table) {
        this(MOST, MOST_PAIRS, table);
    }

    private EarthCache(int most, long pairs, TabulatedGround table) {
        this.table = table;
        if (most < 1) {
            throw new IllegalArgumentException("a cache keeps at least one solution; asked for " + most);
        }
        solved = new Kept<>(most, pairs, electrodes -> (long) electrodes.elements() * electrodes.elements());
        harmonic = new Kept<>(most, pairs, solution -> 0);
        ports = new Kept<>(most, pairs, solution -> 0);
        inductances = new Kept<>(most, pairs, solution -> 0);
        series = new Kept<>(most, pairs, solution -> 0);
        // A field holds on to its electrodes after they have been forgotten.
        fields = new Kept<>(most, pairs, unit -> unit.pairs());
        surveys = new Kept<>(most, pairs, fitted -> 0);
    }

    /** Solved once for all grounds that differ by a factor, since every resistance follows it; sleeves do not. */
    EarthElectrodes solve(SoilModel soil, List<Bar> bars) {
        boolean follows = bars.stream().allMatch(bar -> bar.sleeve() == 0);
        Problem problem = new Problem(follows ? soil.relative() : soil, List.copyOf(bars));
        EarthElectrodes electrodes = solved.get(problem, p -> EarthElectrodes.of(p.soil(), p.bars()));
        return follows ? electrodes.in(soil, soil.resistivity(0)) : electrodes;
    }

    /** The numbers of a ground that need no solution; empty where there is no table. */
    Optional<TabulatedGround.Point> tabulated(SoilModel soil, List<Bar> bars) {
        return table.at(soil, bars);
    }

    /** Electrodes with the impedance along their conductors. */
    SeriesElectrodes series(
            SoilModel soil,
            List<Bar> bars,
            Map<String, double[]> terminals,
            Map<String, SeriesElectrodes.Conductor> conductors,
            double frequency) {
        return series.get(
                new Series(fed(soil, bars, terminals), Map.copyOf(conductors), frequency),
                k -> SeriesElectrodes.of(soil, bars, terminals, conductors, frequency));
    }

    /** Electrodes over frequency at their terminals. */
    HarmonicElectrode harmonic(SiteEarth earth, SoilDispersion law, String lawKey) {
        return harmonic.get(
                key(earth, lawKey), k -> HarmonicElectrode.of(earth.soil(), law, earth.bars(), earth.terminals()));
    }

    /** The ports of the electrodes that something is joined to. */
    ElectrodePorts ports(SiteEarth earth, String lawKey, List<String> names, Supplier<ElectrodePorts> solution) {
        return ports.get(new Joined(key(earth, lawKey), List.copyOf(names)), k -> solution.get());
    }

    /** Inductances of the tapering currents. */
    double[][] inductances(SiteEarth earth, Supplier<double[][]> solution) {
        return inductances.get(fed(earth), k -> solution.get());
    }

    /** The field of electrodes that carry these currents. */
    UnitFields.Unit field(EarthElectrodes electrodes, Map<String, Double> currents) {
        return fields.get(new Carrying(electrodes, currents), c -> UnitFields.Unit.of(electrodes, currents));
    }

    /** The layers that fit the readings of a survey. */
    SurveyedSoil.Fitted surveyed(Soil soil) {
        return surveys.get(soil, SurveyedSoil::fitted);
    }

    private static Harmonic key(SiteEarth earth, String law) {
        return new Harmonic(fed(earth), law);
    }

    private static Fed fed(SiteEarth earth) {
        return fed(earth.soil(), earth.bars(), earth.terminals());
    }

    private static Fed fed(SoilModel soil, List<Bar> bars, Map<String, double[]> terminals) {
        return new Fed(
                new Problem(soil, List.copyOf(bars)),
                terminals.entrySet().stream()
                        .map(lead -> new Terminal(lead.getKey(), lead.getValue()[0], lead.getValue()[1]))
                        .toList());
    }
}
