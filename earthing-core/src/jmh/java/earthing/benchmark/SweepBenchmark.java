package earthing.benchmark;

import earthing.conductor.inductance.InductanceMatrix;
import earthing.conductor.inductance.SkinEffect;
import earthing.network.Branch;
import earthing.network.Circuit;
import earthing.network.FrequencySolution;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Level;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;

/** Sixty coupled segments with skin effect at 200 frequencies from 10 Hz to 10 MHz, beside numpy with LAPACK. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
public class SweepBenchmark {

    private static final int SECTIONS = 60;
    private static final int FREQUENCIES = 200;
    private static final double COPPER = 1.7241e-8;

    private final Circuit circuit = SectionedPole.phasor(
            SECTIONS, radius -> w -> SkinEffect.solid(w, radius, COPPER, 1).multiply(SectionedPole.length(SECTIONS)));
    private final double[] frequencies = frequencies();

    private static double[] frequencies() {
        double[] f = new double[FREQUENCIES];
        for (int k = 0; k < FREQUENCIES; k++) {
            f[k] = Math.pow(10, 1 + 6.0 * k / (FREQUENCIES - 1));
        }
        return f;
    }

    private Path write() {
        StringBuilder text = new StringBuilder();
        List<Branch.Inductor> segments = circuit.branches(Branch.Inductor.class);
        text.append(segments.size()).append(" 0 0\n");
        List<String> nodes = circuit.nodes();
        for (int k = 0; k < segments.size(); k++) {
            Branch.Inductor s = segments.get(k);
            text.append(nodes.indexOf(s.from()) + " " + nodes.indexOf(s.to()) + " " + SectionedPole.radius(k, SECTIONS)
                    + " " + SectionedPole.length(SECTIONS) + "\n");
        }
        InductanceMatrix matrix = SectionedPole.inductances(SECTIONS);
        for (int i = 0; i < segments.size(); i++) {
            for (int j = 0; j < segments.size(); j++) {
                text.append(matrix.get(i, j)).append(' ');
            }
            text.append('\n');
        }
        for (Branch.Resistor r : circuit.branches(Branch.Resistor.class)) {
            text.append(nodes.indexOf(r.from()) + " " + nodes.indexOf(r.to()) + " " + 1 / r.resistance() + "\n");
        }
        try {
            Path file = Files.createTempFile("sweep", ".txt");
            Files.writeString(file, text);
            return file;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The peer, in a process of its own. */
    @State(Scope.Benchmark)
    public static class Peer {

        private NumpyPeer peer = new NumpyPeer("ladder 2");

        /** Gives it the same circuit and compares. */
        @Setup(Level.Trial)
        public void settle(SweepBenchmark own) {
            peer.close();
            peer = new NumpyPeer("sweep " + own.write());
            double theirs = peer.run();
            List<FrequencySolution> solutions = own.sweep();
            double ours = solutions.get(solutions.size() - 1).potential("tank").abs();
            if (!(Math.abs(theirs / ours - 1) < 1e-6)) {
                throw new IllegalStateException("sweeps differ: " + ours + " and " + theirs);
            }
        }

        /** Ends it. */
        @TearDown(Level.Trial)
        public void end() {
            peer.close();
        }
    }

    /** This library. */
    @Benchmark
    public List<FrequencySolution> sweep() {
        return FrequencySolution.sweep(circuit, frequencies);
    }

    /** numpy. */
    @Benchmark
    public double numpy(Peer peer) {
        return peer.peer.run();
    }
}
