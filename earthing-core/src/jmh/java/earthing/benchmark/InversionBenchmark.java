package earthing.benchmark;

import earthing.soil.Layer;
import earthing.soil.LayeredSoil;
import earthing.soil.Reading;
import earthing.soil.Sounding;
import earthing.soil.SoundingInversion;
import earthing.soil.Wenner;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;

/** A sounding of 12 readings with errors of some percent: 1 to 4 layers, all starts, intervals. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
public class InversionBenchmark {

    private static final double[] SPACING = {0.5, 0.75, 1, 1.5, 2, 3, 4, 6, 8, 12, 16, 24};
    private static final double[] ERROR = {2, -1, 1, -2, 3, 0, -1, 2, -3, 1, -1, 2};

    private final Sounding sounding = sounding();

    private static Sounding sounding() {
        LayeredSoil soil = new LayeredSoil(
                List.of(new Layer(300, 1.2), new Layer(60, 5), new Layer(500, Double.POSITIVE_INFINITY)));
        List<Reading> readings = new ArrayList<>();
        for (int k = 0; k < SPACING.length; k++) {
            Wenner array = Wenner.of(SPACING[k]);
            double apparent = array.resistance(soil) * array.geometricFactor();
            readings.add(new Reading(array, apparent * (1 + ERROR[k] / 100)));
        }
        return new Sounding("made up", readings);
    }

    /** The inversion. */
    @Benchmark
    public SoundingInversion inversion() {
        return SoundingInversion.of(sounding);
    }
}
