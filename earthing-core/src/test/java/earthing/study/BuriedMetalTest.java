package earthing.study;

import static org.assertj.core.api.Assertions.assertThat;

import earthing.electrode.wire.Bar;
import earthing.quantity.Measure.Bound;
import earthing.site.Site;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

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

    @Test
    void anElectrodeInConcreteHasImpulseValuesButNoIonisation() {
        String shell = "rod: {length: 3 m, diameter: 16 mm}, concrete: {diameter: 0.3 m, resistivity: 60 ohm.m}";
        String law = "{law: alipio-visacro-2014, ionisation-field: 400 kV/m}";
        StudyResults results = SiteStudy.of(DemoSite.parse(SITE.formatted(shell)
                .replace(
                        "soil: {resistivity: 100 ohm.m}",
                        "soil: {resistivity: 100 ohm.m, frequency-dependence: " + law + "}")));
        Case fast = Case.NONE.with("wave", "0.25/100");
        double resistance = value(results, "electrode.main.resistance", "nominal");
        double impedance = results.one("electrode.main.impulse.impedance", fast, "nominal")
                .orElseThrow()
                .value();
        assertThat(impedance / resistance).isBetween(0.8, 1.6);
        assertThat(results.one("electrode.main.impulse.ionised-resistance", Case.NONE, "nominal"))
                .isEmpty();
        assertThat(results.gapsOf("electrode.main.impulse.ionised-resistance"))
                .anySatisfy(gap -> assertThat(gap.reason()).contains("concrete breaks down"));
        assertThat(results.notes()).anyMatch(note -> note.contains("concrete around metal is a resistance"));
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

    private static Site steel(String electrode) {
        return DemoSite.parse(SITE.formatted(electrode) + STEEL.formatted("butt-contact: bare"));
    }

    /** However many arms, none comes nearer to the butt than its own clearance at the foot. */
    @ParameterizedTest
    @ValueSource(ints = {2, 3, 4, 6, 8})
    void armsOfAStarAtTheFootPassTheButt(int arms) throws MissingInput {
        Site site = steel("star: {arms: " + arms + ", length: 10 m, diameter: 10 mm, depth: 0.5 m}");
        for (Bar arm : ElectrodeBars.of(site.electrodes().get(0), site.pole(), Bound.NOMINAL, new Inputs())) {
            double length = Math.hypot(arm.x2() - arm.x1(), arm.y2() - arm.y1());
            double along = -(arm.x1() * (arm.x2() - arm.x1()) + arm.y1() * (arm.y2() - arm.y1())) / length;
            double aside = Math.abs(arm.x1() * (arm.y2() - arm.y1()) - arm.y1() * (arm.x2() - arm.x1())) / length;
            double nearest = along < 0 ? Math.hypot(arm.x1(), arm.y1()) : aside;
            assertThat(nearest).isGreaterThan(0.45 - 1e-9);
        }
    }

    @Test
    void barsOfTwoElectrodesThatRunIntoEachOtherAreRefused() {
        StudyResults results = SiteStudy.of(
                steel("at: {x: 1 m, y: 0.1 m}, star: {arms: 4, length: 10 m, diameter: 10 mm, depth: 0.5 m}"));
        assertThat(results.of("electrode.main.resistance")).isEmpty();
        assertThat(results.gapsOf("electrode.main")).anySatisfy(gap -> {
            assertThat(gap.reason()).contains("bars of main and of pole butt run into each other");
            assertThat(gap.missingKeys()).containsExactly("electrodes.at");
        });
    }

    /** Halved elements hold the leakage of the longer ones too, so by Thomson's theorem the resistance falls. */
    @Test
    void shorterElementsStandBesideTheStandardOnesInAReportOnly() {
        Site site =
                DemoSite.parse(SITE.formatted("rods-in-line: {count: 3, spacing: 3 m, length: 3 m, diameter: 16 mm}"));
        StudyResults results = SiteStudy.of(site);
        String id = "electrode.main.convergence.";
        double standard = value(results, id + "standard.resistance", "nominal");
        assertThat(standard).isEqualTo(value(results, "electrode.main.resistance", "nominal"));
        double half = value(results, id + "half.resistance", "nominal");
        double quarter = value(results, id + "quarter.resistance", "nominal");
        double refined = value(results, id + "refined.resistance", "nominal");
        assertThat(half).isLessThan(standard).isGreaterThan(quarter);
        assertThat(refined / quarter).isBetween(0.999, 1.001);
        assertThat(value(results, id + "refined.standard-apart", "nominal")).isBetween(1e-5, 5e-3);
        assertThat(value(results, id + "half.elements", "nominal"))
                .isEqualTo(2 * value(results, id + "standard.elements", "nominal"));
        assertThat(SiteStudy.of(site, StudyScope.AS_BUILT).under(id)).isEmpty();
    }

    private static final String FAULT = """
            tank: {height: 9 m}
            main-earth: {conductor: {material: copper, area: 70 mm2}, offset: 0.15 m, electrode: main}
            protection: {clearing-time: 0.3 s}
            """;

    private static StudyResults longWire(String more) {
        return SiteStudy.of(DemoSite.parse(SITE.formatted("wire: {length: 250 m, diameter: 10 mm, depth: 0.6 m}" + more)
                        .replace("resistivity: 100 ohm.m", "resistivity: 10 ohm.m")
                        .replace("method: resistor", "station-earth-resistance: 0.5 ohm, method: resistor")
                        .replace("frequency: 50 Hz,", "frequency: 50 Hz, earth-fault-current: 150 A,")
                + FAULT));
    }

    /** Steel wire of 250 m in 10 ohm.m, Sunde's endless line (from memory): the lead sees almost three times the resistance. */
    @Test
    void theImpedanceAlongALongWireStandsInTheFaultWhereItIsAskedFor() {
        StudyResults with = longWire(", material: galvanised-steel, series-impedance: yes");
        StudyResults without = longWire(", material: galvanised-steel");
        double resistance = value(without, "electrode.main.resistance", "nominal");
        double impedance = value(with, "electrode.main.impedance", "nominal");
        assertThat(value(with, "electrode.main.resistance", "nominal")).isEqualTo(resistance);
        assertThat(impedance / value(with, "electrode.main.impedance.as-a-line", "nominal"))
                .isBetween(0.98, 1.0);
        assertThat(value(with, "electrode.main.impedance.over-resistance", "nominal"))
                .isBetween(2.7, 3.0);
        Case largest = Case.NONE.with("fault", "maximum");
        double rise = with.one("epr.main", largest, "nominal").orElseThrow().value();
        double current = with.one("fault.maximum.electrode-current", largest, "nominal")
                .orElseThrow()
                .value();
        assertThat(rise / current).isBetween(0.99 * impedance, 1.01 * impedance);
        assertThat(without.one("epr.main", largest, "nominal").orElseThrow().value())
                .isLessThan(rise / 2);
        assertThat(with.notes()).anyMatch(note -> note.contains("touch errs high"));
        assertThat(without.notes())
                .anyMatch(note -> note.contains("reaches 250 m") && note.contains("series-impedance"));
        assertThat(longWire(", series-impedance: yes").gapsOf("electrode.main"))
                .anySatisfy(gap -> assertThat(gap.missingKeys()).containsExactly("electrodes.material"));
    }
}
