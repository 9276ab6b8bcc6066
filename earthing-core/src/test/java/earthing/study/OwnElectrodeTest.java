package earthing.study;

import static java.util.Objects.requireNonNull;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import earthing.electrode.wire.Bar;
import earthing.quantity.Measure.Bound;
import earthing.site.Electrode;
import earthing.site.Site;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The electrode of the cubicle where the file describes none: of the kind of the main one, or between its wires. */
class OwnElectrodeTest {

    private static Electrode assumed(Site site, Inputs in) throws MissingInput {
        return OwnElectrode.assumed(site, site.electrodes().get(0), in);
    }

    @Test
    void anElectrodeOfTheSameKindFiveMetresToTheSideWhereThereIsRoom() throws MissingInput {
        for (String name :
                List.of("ternhook-wood-shared.yaml", "cobblers-mere-neutral.yaml", "fellmark-single-wire.yaml")) {
            Site site = DemoSite.read(name);
            Electrode main = site.electrodes().get(0);
            Electrode own = assumed(site, new Inputs());
            assertThat(own.bars()).as(name).isEqualTo(main.bars());
            assertThat(own.rodsInLine()).as(name).isEqualTo(main.rodsInLine());
            assertThat(requireNonNull(own.at()).y().nominal()).as(name).isCloseTo(5, within(1e-12));
        }
    }

    @Test
    void aRodBetweenTheWiresWhereACopyWouldRunIntoThem() throws MissingInput {
        Site site = DemoSite.read("harrowfell-steel-rock.yaml");
        Inputs in = new Inputs();
        Electrode own = assumed(site, in);
        assertThat(own.star()).isNull();
        assertThat(requireNonNull(own.rod()).length().nominal()).isEqualTo(3);
        double x = requireNonNull(own.at()).x().nominal();
        double y = requireNonNull(own.at()).y().nominal();
        assertThat(Math.hypot(x, y)).isCloseTo(5, within(1e-9));
        // Midway between two of four wires at right angles.
        assertThat(Math.min(Math.abs(x), Math.abs(y))).isCloseTo(5 * Math.sin(Math.PI / 4), within(1e-9));
        assertThat(in.assumptions()).anyMatch(a -> a.toString().contains("a rod of 3 m, 5 m away"));
        List<Bar> rod = ElectrodeBars.of(own, site.pole(), new Inputs());
        for (Bar wire : ElectrodeBars.of(site.electrodes().get(0), site.pole(), new Inputs())) {
            assertThat(rod.get(0).distance(wire)).isGreaterThan(3);
        }
    }

    @Test
    void everyDemoSiteCanBeComputedWithSeparateEarths() throws MissingInput {
        for (String name : DemoSite.names()) {
            if (name.startsWith("lowgarth")) { // The resistivity of its soil is not known.
                continue;
            }
            Site site = SiteGround.of(DemoSite.read(name), new EarthCache()).site();
            Site separate = SiteVariant.arranged(site, Arrangement.SEPARATE, new Inputs());
            SiteEarth earth = SiteEarth.of(separate, Bound.NOMINAL, new Inputs(), new EarthCache());
            assertThat(earth.names()).as(name).hasSizeGreaterThan(1);
        }
    }
}
