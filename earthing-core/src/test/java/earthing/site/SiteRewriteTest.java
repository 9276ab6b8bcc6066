package earthing.site;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

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

    @ParameterizedTest
    @MethodSource("demoSites")
    void ofOneBlockIsThatOfTheWholeSiteThere(String name) {
        Site site = DemoSite.read(name);
        List<String> paths = new ArrayList<>();
        Site doubled = SiteRewrite.of(site, "system", (path, measure) -> {
            paths.add(path);
            return measure.isKnown() ? Measure.of(measure.dimension(), 2 * measure.nominal()) : measure;
        });
        assertThat(paths).isNotEmpty().allMatch(path -> path.startsWith("system."));
        assertThat(doubled)
                .isEqualTo(SiteRewrite.of(
                        site,
                        (path, measure) -> path.startsWith("system.") && measure.isKnown()
                                ? Measure.of(measure.dimension(), 2 * measure.nominal())
                                : measure));
        assertThat(SiteRewrite.of(site, "system", (path, measure) -> measure)).isSameAs(site);
        assertThatThrownBy(() -> SiteRewrite.of(site, "sistem", (path, measure) -> measure))
                .hasMessageContaining("no block sistem");
    }
}
