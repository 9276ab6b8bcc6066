package earthing.study;

import static org.assertj.core.api.Assertions.assertThat;

import earthing.electrode.wire.Bar;
import earthing.quantity.Measure.Bound;
import earthing.site.Electrode;
import earthing.site.Site;
import earthing.site.file.SiteEdit;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Parts that are bonded to an electrode find a place of their own, or none: geometry, no outside source. */
class JoinedElectrodeTest {

    private static final Map<String, Object> RODS = Map.of(
            "name",
            "part",
            "at",
            Map.of("x", "3 m", "y", "0 m"),
            "rods-in-line",
            Map.of(
                    "count", "2",
                    "spacing", "3 m",
                    "length", "3 m",
                    "diameter", "16 mm",
                    "top-depth", "0.5 m",
                    "wire-diameter", "10 mm"));

    private static Electrode part(Site site, Map<String, Object> described) {
        return SiteEdit.set(site, "electrodes", List.of(described)).electrodes().get(0);
    }

    private static Map<String, Object> ring(String radius) {
        return Map.of("name", "part", "ring", Map.of("radius", radius, "diameter", "10 mm", "depth", "0.7 m"));
    }

    private static List<Bar> bars(Site site) throws MissingInput {
        return SiteEarth.ground(site, Bound.NOMINAL).bars();
    }

    /** Three rods 3 m apart stand along the line already: two more at 3 m and 6 m go across it. */
    @Test
    void rodsInOnePlaceWithOthersAreTurnedAboutThePole() throws MissingInput {
        Site site = DemoSite.read("fellmark-single-wire.yaml");
        Site changed = JoinedElectrode.of(site, "main", part(site, RODS)).orElseThrow();
        List<Bar> before = bars(site);
        List<Bar> after = bars(changed);
        assertThat(after.stream().filter(bar -> Math.abs(bar.y2()) > 2.9 && bar.depth2() > 3))
                .hasSize(2)
                .allSatisfy(bar -> assertThat(Math.abs(bar.x2())).isLessThan(1e-9));
        assertThat(after.size()).isEqualTo(before.size() + 3);
        SiteEarth solved = SiteEarth.of(changed, Bound.NOMINAL, new Inputs(), new EarthCache());
        SiteEarth unchanged = SiteEarth.of(site, Bound.NOMINAL, new Inputs(), new EarthCache());
        assertThat(solved.resistance("main", "main")).isLessThan(0.9 * unchanged.resistance("main", "main"));
    }

    /** The rod of the cubicle's own earth stands 2 m from the pole: on a ring of 2 m, clear of one of 1 m. */
    @Test
    void aRingThroughAnotherElectrodeIsNotLaid() throws MissingInput {
        Site site = DemoSite.read("brackenmire-mistakes.yaml");
        assertThat(JoinedElectrode.of(site, "main", part(site, ring("2 m")))).isEmpty();
        assertThat(JoinedElectrode.of(site, "main", part(site, ring("1.95 m")))).isEmpty();
        Site changed = JoinedElectrode.of(site, "main", part(site, ring("1 m"))).orElseThrow();
        assertThat(bars(changed).size()).isGreaterThan(bars(site).size());
    }

    @Test
    void whereNothingIsInTheWayAPartStaysWhereItWasAsked() throws MissingInput {
        Site site = DemoSite.read("brackenmire-mistakes.yaml");
        Site changed = JoinedElectrode.of(site, "main", part(site, RODS)).orElseThrow();
        assertThat(bars(changed)).anySatisfy(bar -> {
            assertThat(bar.x2()).isEqualTo(6);
            assertThat(bar.y2()).isZero();
        });
    }
}
