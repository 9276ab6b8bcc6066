package earthing.benchmark;

import earthing.network.FiniteLadder;
import java.util.concurrent.TimeUnit;
import org.apache.commons.math3.complex.Complex;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Level;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;

/** A ladder of 10,000 spans beside the sparse solver of scipy. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
public class LadderBenchmark {

    private static final int SPANS = 10_000;

    /** The peer, in a process of its own. */
    @State(Scope.Benchmark)
    public static class Peer {

        private final NumpyPeer peer = new NumpyPeer("ladder " + SPANS);

        /** Compares both. */
        @Setup(Level.Trial)
        public void settle(LadderBenchmark own) {
            double theirs = peer.run();
            if (!(Math.abs(theirs / own.ladder() - 1) < 1e-6)) {
                throw new IllegalStateException("ladders differ: " + own.ladder() + " and " + theirs);
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
    public double ladder() {
        return FiniteLadder.equal(SPANS, new Complex(0.02, 0.03), new Complex(40, 0))
                .inputImpedance()
                .getReal();
    }

    /** scipy: assembly, factors, solution. */
    @Benchmark
    public double scipy(Peer peer) {
        return peer.peer.run();
    }
}
