package earthing.study;

import static org.assertj.core.api.Assertions.assertThat;

import earthing.quantity.Measure.Bound;
import earthing.site.Site;
import org.junit.jupiter.api.Test;

/** Plates, concrete and the butt of a pole, from the site file to results. */
class BuriedMetalTest {

    private static final String SITE = """
            file-version: 1
            site: {name: Test, stage: design}
            system: {voltage: 22 kV, frequency: 50 Hz, neutral: {method: resistor, resistance: 60 ohm}}
            soil: {resistivity: 100 ohm.m}
            electrodes: [{name: main, %s}]
            """;

    private static final String STEEL = "pole: {material: steel, height: 11 m, burial: 1.5 m, diameter: 0.3 m, %s}\n";

    private static StudyResults results(String electrode, String more) {
        return SiteStudy.of(DemoSite.parse(SITE.formatted(electrode) + more));
    }

    private static double value(StudyResults results, String id, String at) {
        return results.one(id, Case.NONE, at).orElseThrow().value();
    }

    @Test
    void aPlateStandsBesideDwightsFormula() {
        StudyResults results = results("plate: {width: 0.6 m, length: 0.6 m, lie: vertical, depth: 1.5 m}", "");
        double solved = value(results, "electrode.main.resistance", "nominal");
        double formula = value(results, "electrode.main.resistance.formula", "nominal");
        assertThat(solved / formula).isBetween(0.97, 1.0);
        assertThat(results("plate: {width: 0.6 m, length: 0.6 m, lie: vertical, depth: 0.2 m}", "")
                        .gapsOf("electrode.main"))
                .anySatisfy(gap -> assertThat(gap.missingKeys()).containsExactly("electrodes.plate.depth"));
    }

    @Test
    void concreteIsReckonedAtItsBounds() {
        String shell = "concrete: {diameter: 0.3 m, resistivity: {low: 30 ohm.m, nominal: 60 ohm.m, high: 200 ohm.m}}";
        StudyResults results = results("rod: {length: 3 m, diameter: 16 mm}, " + shell, "");
        double low = value(results, "electrode.main.resistance", "low");
        double high = value(results, "electrode.main.resistance", "high");
        // A poorer sleeve evens out the leakage, which costs up to 1 % beyond the resistance of the sleeve itself.
        double sleeve = 170 * Math.log(0.3 / 0.016) / (6 * Math.PI);
        assertThat((high - low) / sleeve).isBetween(1.0, 1.01);
        for (String at : new String[] {"low", "nominal", "high"}) {
            assertThat(value(results, "electrode.main.resistance", at)
                            / value(results, "electrode.main.resistance.formula", at))
                    .isBetween(0.97, 1.005);
        }
    }

    private static boolean butt(String pole, Bound bound) throws MissingInput {
        Site site = DemoSite.parse(
                SITE.formatted("at: {x: 2 m, y: 0 m}, rod: {length: 3 m, diameter: 16 mm}") + STEEL.formatted(pole));
        return SiteEarth.of(site, bound, new Inputs(), new EarthCache()).names().contains(ElectrodeBars.POLE_BUTT);
    }

    @Test
    void aButtOfUncertainContactIsPresentAtTheBoundWhereItMayBe() throws MissingInput {
        assertThat(butt("butt-contact: bare", Bound.HIGH)).isTrue();
        assertThat(butt("butt-contact: unknown", Bound.NOMINAL)).isTrue();
        assertThat(butt("butt-contact: unknown", Bound.HIGH)).isFalse();
        assertThat(butt("butt-contact: coated", Bound.LOW)).isTrue();
        assertThat(butt("butt-contact: coated", Bound.NOMINAL)).isFalse();
        assertThat(butt("butt-contact: insulated", Bound.LOW)).isFalse();
    }

    @Test
    void aFoundationStandsBesideTheHemisphereOfItsVolume() {
        String pole = STEEL.formatted("butt-contact: bare, foundation: {diameter: 1.2 m, resistivity: 60 ohm.m}");
        StudyResults results = results("at: {x: 4 m, y: 0 m}, rod: {length: 3 m, diameter: 16 mm}", pole);
        String id = "electrode." + ElectrodeBars.POLE_BUTT + ".resistance";
        double through = 60 * Math.log(1.2 / 0.3) / (2 * Math.PI * 1.5);
        assertThat((value(results, id, "nominal") - through) / value(results, id + ".formula", "nominal"))
                .isBetween(0.9, 1.0);
    }
}
