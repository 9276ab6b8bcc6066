package earthing.benchmark;

import earthing.electrode.wire.Bar;
import earthing.electrode.wire.Discretisation;
import earthing.electrode.wire.EarthElectrodes;
import earthing.soil.Layer;
import earthing.soil.LayeredSoil;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Level;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;

/** Crossed buried wires in ground of two layers, 100 over 1,000 ohm-metres, thickness 2 m: assembly and solution. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
public class ElectrodeBenchmark {

    private static final int PIECES = 10;
    private static final double RADIUS = 0.005;
    /** Greatest number of elements at which results are compared before they are timed. */
    private static final int COMPARED = 500;

    private static final Discretisation RULE =
            new Discretisation(PIECES, Double.POSITIVE_INFINITY, 1, Double.POSITIVE_INFINITY);
    private static final LayeredSoil SOIL =
            new LayeredSoil(List.of(new Layer(100, 2), new Layer(1000, Double.POSITIVE_INFINITY)));

    /** Number of elements, a multiple of 20. */
    @Param({"40", "500", "2000"})
    int elements = 40;

    private List<Bar> bars = wires(2);

    private static List<Bar> wires(int half) {
        List<Bar> bars = new ArrayList<>();
        for (int k = 0; k < half; k++) {
            bars.add(new Bar("grid", 0, k + 0.5, 0.6, half, k + 0.5, 0.6, RADIUS));
        }
        for (int k = 0; k < half; k++) {
            bars.add(new Bar("grid", k + 0.5, 0, 0.7, k + 0.5, half, 0.7, RADIUS));
        }
        return bars;
    }

    /** Lays the wires. */
    @Setup
    public void lay() {
        bars = wires(elements / (2 * PIECES));
        // Not at sizes that are called once: the processor time of a single call holds what was done before it.
        if (elements <= COMPARED && EarthElectrodes.of(SOIL, bars, RULE).elementCount() != elements) {
            throw new IllegalStateException("not " + elements + " elements");
        }
    }

    /** Assembly and solution by this library. */
    @Benchmark
    public double resistance() {
        return EarthElectrodes.of(SOIL, bars, RULE).resistances().get(0, 0);
    }

    /** A surface of 100 by 100 points, tables included, on an electrode that is solved anew. */
    @Benchmark
    public double surface() {
        var field = EarthElectrodes.of(SOIL, bars, RULE).carrying(java.util.Map.of("grid", 1.0));
        double sum = 0;
        for (int i = 0; i < 100; i++) {
            for (int j = 0; j < 100; j++) {
                sum += field.potential(0.1 * i - 3, 0.1 * j - 3, 0);
            }
        }
        return sum;
    }

    /** The peers, in processes of their own. */
    @State(Scope.Benchmark)
    public static class Peer {

        /** Whether all pairs are taken at once. */
        @Param({"tuned", "plain"})
        String way = "tuned";

        private NumpyPeer peer = new NumpyPeer("electrode 1 1 tuned");

        /** Starts it and compares its resistance with ours, to 0.5 %. */
        @Setup(Level.Trial)
        public void start(ElectrodeBenchmark own) {
            peer.close();
            peer = new NumpyPeer("electrode " + own.elements / (2 * PIECES) + " " + PIECES + " " + way);
            if (own.elements <= (way.equals("plain") ? 40 : COMPARED)) {
                double theirs = peer.run();
                double ours = own.resistance();
                if (!(Math.abs(theirs / ours - 1) < 0.005)) {
                    throw new IllegalStateException("resistances differ: " + ours + " and " + theirs);
                }
            }
        }

        /** Ends it. */
        @TearDown(Level.Trial)
        public void end() {
            peer.close();
        }
    }

    /** Assembly and solution by numpy. */
    @Benchmark
    public double numpy(Peer peer) {
        return peer.peer.run();
    }
}
