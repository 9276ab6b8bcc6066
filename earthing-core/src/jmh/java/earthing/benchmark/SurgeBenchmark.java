package earthing.benchmark;

import earthing.network.Circuit;
import earthing.network.TimeGrid;
import earthing.network.TransientSolution;
import earthing.network.Waveform;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;

/** Coupled sections with an arrester, both with their own steps and held to 50,000 equal steps of 1 ns. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
public class SurgeBenchmark {

    /** Keeps every judged peak and its time within 0.1 %; {@link #settle} looks. */
    private static final TimeGrid OWN_STEPS = new TimeGrid(SectionedPole.END, 20e-9, 5e-4);

    private static final double ADMITTED = 1e-3;

    /** Number of coupled sections. */
    @Param({"60", "200"})
    int sections = 60;

    private Circuit circuit = SectionedPole.circuit(2);
    private CircuitSimulator automatic = CircuitSimulator.empty();
    private CircuitSimulator held = CircuitSimulator.empty();

    /** Builds the circuit and the decks, and compares the own steps with equal steps of 5 ns. */
    @Setup
    public void settle() {
        circuit = SectionedPole.circuit(sections);
        automatic = CircuitSimulator.automatic(circuit, SectionedPole.END);
        held = CircuitSimulator.held(circuit, SectionedPole.END, 1e-9);
        List<Waveform> own = SectionedPole.judged(TransientSolution.solve(circuit, OWN_STEPS), sections);
        List<Waveform> fine = SectionedPole.judged(
                TransientSolution.solve(circuit, TimeGrid.equal(SectionedPole.END, 5e-9)), sections);
        for (int k = 0; k < own.size(); k++) {
            Waveform.Extreme a = own.get(k).peak();
            Waveform.Extreme b = fine.get(k).peak();
            if (!(Math.abs(a.value() / b.value() - 1) < ADMITTED) || !(Math.abs(a.time() / b.time() - 1) < ADMITTED)) {
                throw new IllegalStateException("own steps miss the converged peak: " + a + " against " + b);
            }
        }
    }

    /** This library, own steps. */
    @Benchmark
    public TransientSolution ownSteps() {
        return TransientSolution.solve(circuit, OWN_STEPS);
    }

    /** This library, 50,000 equal steps. */
    @Benchmark
    public TransientSolution equalSteps() {
        return TransientSolution.solve(circuit, TimeGrid.equal(SectionedPole.END, 1e-9));
    }

    /** The simulator, own steps, whole process. */
    @Benchmark
    public int simulatorOwnSteps() {
        return automatic.run();
    }

    /** The simulator held to 1 ns, whole process. */
    @Benchmark
    public int simulatorEqualSteps() {
        return held.run();
    }

    /** Start and end of the simulator's process alone. */
    @Benchmark
    public int simulatorStart() {
        return CircuitSimulator.empty().run();
    }
}
