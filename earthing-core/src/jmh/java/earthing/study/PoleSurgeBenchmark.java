package earthing.study;

import earthing.site.ElectrodeModel;
import earthing.site.Site;
import earthing.site.file.ReadOutcome;
import earthing.site.file.SiteFile;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;

/**
 * The surge study of a pole whose site names three waves: every arrangement of earths, the screen as it is and the other
 * way, the core open and bonded; 66 solutions in time, electrodes included.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
public class PoleSurgeBenchmark {

    private final Site site = read();

    private static Site read() {
        Path folder = Path.of(System.getProperty("sites.folder", "../earthing-cli/sites"));
        if (SiteFile.read(folder.resolve("ollinford-concrete-lv.yaml")) instanceof ReadOutcome.Valid valid) {
            return valid.site();
        }
        throw new IllegalStateException("cannot read the site");
    }

    /** The study. */
    @Benchmark
    public StudyResults study() {
        return SurgeStudy.of(site, new EarthCache());
    }

    /** The same with the electrodes over frequency, solved and fitted anew. */
    @Benchmark
    public StudyResults studyOverFrequency() {
        return SurgeStudy.of(SiteVariant.modelled(site, ElectrodeModel.FREQUENCY), new EarthCache());
    }
}
