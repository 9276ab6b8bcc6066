package earthing.study;

import earthing.site.ScreenBond;
import earthing.site.Site;
import earthing.site.file.ReadOutcome;
import earthing.site.file.SiteFile;
import earthing.surge.ConcaveFront;
import earthing.surge.RampResponse;
import earthing.surge.StrokeSampler;
import earthing.surge.StrokeStatistics;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;

/**
 * 10,000 first strokes into the tank of a linear pole, shared earth, screen open: one response in the time domain and as
 * many currents drawn and superposed. Its median is compared with the closed form before it is timed.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
public class StrokesBenchmark {

    private static final int STROKES = 10_000;
    /** Four standard errors of a median of so many lognormal strokes of sigma 0.6, and the resistive part. */
    private static final double TOLERANCE = 0.05;

    private final Site site = read();

    private static Site read() {
        Path folder = Path.of(System.getProperty("sites.folder", "../earthing-cli/sites"));
        if (SiteFile.read(folder.resolve("ternhook-wood-shared.yaml")) instanceof ReadOutcome.Valid valid) {
            return valid.site();
        }
        throw new IllegalStateException("cannot read the site");
    }

    /** M·S is lognormal with the median of the steepness; the sample has to agree. */
    @Setup
    public void compare() throws MissingInput {
        RampResponse response = response();
        double[] sorted = peaks(response);
        double median = FlashSample.exceededBy(sorted, 0.5);
        double closed = Math.abs(response.instant()) * StrokeStatistics.FIRST_STEEPNESS.exceededWith(0.5);
        if (!(Math.abs(median / closed - 1) < TOLERANCE)) {
            throw new IllegalStateException("median " + median + " V, closed form " + closed + " V");
        }
    }

    private RampResponse response() throws MissingInput {
        Inputs in = new Inputs();
        Site open = SiteVariant.screened(site, ScreenBond.NONE, in);
        OwnPole own = OwnPole.of(open, new EarthCache(), in);
        return StrokeResponses.of(own.arranged(), own.earth(), Optional.empty(), in)
                .tank()
                .open();
    }

    private static double[] peaks(RampResponse response) {
        StrokeSampler sampler = new StrokeSampler(20261125);
        ConcaveFront[] strokes = new ConcaveFront[STROKES];
        for (int k = 0; k < STROKES; k++) {
            strokes[k] = sampler.first();
        }
        return FlashSample.sorted(strokes, response);
    }

    /** Electrode, response and strokes. */
    @Benchmark
    public double[] strokes() throws MissingInput {
        return peaks(response());
    }
}
