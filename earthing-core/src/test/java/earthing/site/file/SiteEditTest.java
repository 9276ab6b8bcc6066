package earthing.site.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import earthing.quantity.Measure;
import earthing.site.Site;
import earthing.study.DemoSite;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class SiteEditTest {

    private static final Site SITE = DemoSite.read("ternhook-wood-separate.yaml");

    private static Measure measure(Site site, String key) {
        return (Measure) SiteEdit.values(site, key).get(0);
    }

    @Test
    void findsByNameNumberAndEveryMember() {
        assertThat(SiteEdit.values(SITE, "electrodes[cubicle].rod.length"))
                .extracting(SiteEdit::text)
                .containsExactly("3 m");
        assertThat(SiteEdit.values(SITE, "electrodes[2].rod.length"))
                .isEqualTo(SiteEdit.values(SITE, "electrodes[cubicle].rod.length"));
        assertThat(SiteEdit.values(SITE, "main-earth.segments[*].joint"))
                .extracting(SiteEdit::text)
                .containsExactly("compression", "exothermic");
        assertThat(SiteEdit.values(SITE, "stays[*].insulated")).isEmpty();
        assertThat(SiteEdit.values(SITE, "stays")).isEmpty();
    }

    @Test
    void setsAWordAQuantityABlockAndLeavesTheRest() {
        Site changed = SiteEdit.set(SITE, "electrodes[cubicle].rod.length", "20 ft");
        assertThat(measure(changed, "electrodes[cubicle].rod.length").nominal()).isEqualTo(6.096);
        assertThat(SiteEdit.set(changed, "electrodes[cubicle].rod.length", "3 m"))
                .isEqualTo(SITE);
        Site matted =
                SiteEdit.set(SITE, "criteria.covering", Map.of("resistivity", "3000 ohm.m", "thickness", "0.1 m"));
        assertThat(measure(matted, "criteria.covering.thickness").nominal()).isEqualTo(0.1);
        assertThat(SiteEdit.unset(matted, "criteria.covering")).isEqualTo(SITE);
        assertThat(SiteEdit.set(SITE, "stays[*].insulated", "yes")).isSameAs(SITE);
    }

    @Test
    void scalesWithBoundsInTheAuthorsUnit() {
        Site changed = SiteEdit.scaled(SITE, "system.earth-fault-current", 0.5);
        Measure current = measure(changed, "system.earth-fault-current");
        assertThat(current.at(Measure.Bound.LOW)).isEqualTo(47.5);
        assertThat(current.nominal()).isEqualTo(49.5);
        assertThat(SiteEdit.text(current)).isEqualTo("49.5 A");
        assertThat(current.origin()).isEqualTo(Measure.Origin.UNSTATED);
        assertThat(SiteEdit.text(
                        SiteEdit.values(SiteEdit.scaled(SITE, "protection.relay.delay", 0.75), "protection.relay.delay")
                                .get(0)))
                .isEqualTo("0.15 s");
    }

    @Test
    void shortensAList() {
        Site fewer = SiteEdit.shortened(SITE, "protection.reclose.dead-times", 1);
        assertThat((List<?>)
                        SiteEdit.values(fewer, "protection.reclose.dead-times").get(0))
                .hasSize(1);
        assertThat(SiteEdit.shortened(SITE, "protection.reclose.dead-times", 5)).isSameAs(SITE);
    }

    @Test
    void refusesWhatIsNoKeyOrNoValue() {
        assertThatThrownBy(() -> SiteEdit.values(SITE, "cubicle.hight")).hasMessageContaining("no key hight");
        assertThatThrownBy(() -> SiteEdit.values(SITE, "cubicle..height")).hasMessageContaining("no path");
        assertThatThrownBy(() -> SiteEdit.values(SITE, "cubicle.height.more"))
                .hasMessageContaining("no keys of its own");
        assertThatThrownBy(() -> SiteEdit.set(SITE, "cubicle.height", "3 kV")).hasMessageContaining("3 kV");
        assertThatThrownBy(() -> SiteEdit.set(SITE, "cubicle.height", "-3 m")).hasMessageContaining("-3 m");
        assertThatThrownBy(() -> SiteEdit.set(SITE, "cubicle.earth", "none")).hasMessageContaining("none");
    }

    @Test
    void tellsWhatTheReaderWouldRefuse() {
        for (String name : DemoSite.names()) {
            assertThat(SiteEdit.problems(DemoSite.read(name))).as(name).isEmpty();
        }
        assertThat(SiteEdit.problems(SiteEdit.set(SITE, "cubicle.height", "30 m")))
                .extracting(Problem::key)
                .contains("cubicle.height");
        assertThat(SiteEdit.problems(
                        SiteEdit.set(SITE, "electrodes", List.of(Map.of("name", "main"), Map.of("name", "x")))))
                .extracting(Problem::key)
                .contains("cubicle.electrode");
    }
}
