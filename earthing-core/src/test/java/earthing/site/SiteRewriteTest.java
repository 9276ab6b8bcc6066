package earthing.site;

import static org.assertj.core.api.Assertions.assertThat;

import earthing.quantity.Measure;
import earthing.study.DemoSite;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class SiteRewriteTest {

    static List<String> demoSites() {
        return DemoSite.names();
    }

    @ParameterizedTest
    @MethodSource("demoSites")
    void nothingChangedIsTheSameSiteAndEveryKeyIsPassed(String name) {
        Site site = DemoSite.read(name);
        List<String> paths = new ArrayList<>();
        assertThat(SiteRewrite.of(site, (path, measure) -> {
                    paths.add(path);
                    return measure;
                }))
                .isSameAs(site);
        assertThat(paths).contains("system.voltage", "tank.height", "cubicle.height");
    }

    @ParameterizedTest
    @MethodSource("demoSites")
    void oneMeasureIsReplacedAndTheRestStays(String name) {
        Site site = DemoSite.read(name);
        Site lower = SiteRewrite.of(
                site, (path, measure) -> path.equals("tank.height") ? Measure.of(measure.dimension(), 7.5) : measure);
        assertThat(Objects.requireNonNull(lower.tank()).height().nominal()).isEqualTo(7.5);
        assertThat(lower.electrodes()).isEqualTo(site.electrodes());
        assertThat(lower.system()).isEqualTo(site.system());
    }
}
