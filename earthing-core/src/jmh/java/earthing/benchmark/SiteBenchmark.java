package earthing.benchmark;

import earthing.compliance.ComplianceRun;
import earthing.compliance.Finding;
import earthing.site.Site;
import earthing.site.file.ReadOutcome;
import earthing.site.file.SiteFile;
import earthing.study.SiteStudy;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;

/** Every study and check of the demonstration sites, from the read site to the findings. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
public class SiteBenchmark {

    /** Name of the site. */
    @Param({
        "ternhook-wood-shared",
        "ternhook-wood-separate",
        "cobblers-mere-neutral",
        "quernholm-resonant",
        "skarrowen-antenna",
        "harrowfell-steel-rock",
        "ollinford-concrete-lv"
    })
    String name = "ternhook-wood-shared";

    /** The site, read once. */
    @State(Scope.Benchmark)
    public static class Read {

        private final java.util.Map<String, Site> sites = new java.util.concurrent.ConcurrentHashMap<>();

        private Site of(String name) {
            return sites.computeIfAbsent(name, key -> {
                Path folder = Path.of(System.getProperty("sites.folder", "../earthing-cli/sites"));
                if (SiteFile.read(folder.resolve(key + ".yaml")) instanceof ReadOutcome.Valid valid) {
                    return valid.site();
                }
                throw new IllegalStateException("cannot read " + key);
            });
        }
    }

    /** All studies and checks. */
    @Benchmark
    public List<Finding> studiesAndChecks(Read read) {
        Site site = read.of(name);
        return ComplianceRun.of(site, SiteStudy.of(site));
    }
}
