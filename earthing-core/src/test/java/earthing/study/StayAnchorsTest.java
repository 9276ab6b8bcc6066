package earthing.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import earthing.electrode.formula.RodDwight;
import earthing.electrode.formula.RoundPlateDwight;
import earthing.electrode.wire.Bar;
import earthing.electrode.wire.EarthElectrodes;
import earthing.site.Site;
import earthing.soil.Layer;
import earthing.soil.SoilModel;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Anchors of stays as electrodes, and what a stay takes of a fault current. */
class StayAnchorsTest {

    private static final Case LARGEST = Case.NONE.with("fault", "maximum");
    private static final SoilModel SOIL = SoilModel.of(List.of(Layer.below(100)));

    private static final String SITE = """
            file-version: 1
            site: {name: stay study, stage: design}
            system:
              voltage: 22 kV
              frequency: 50 Hz
              three-phase-fault-current: 4 kA
              earth-fault-current: 1 kA
              neutral: {method: solid, station-earth-resistance: 1 ohm}
            protection: {clearing-time: 0.3 s}
            soil: {resistivity: 100 ohm.m}
            tank: {height: 9 m}
            pole: {material: wood, height: 10.5 m, diameter: 0.26 m}
            main-earth: {conductor: {material: copper, area: 70 mm2}, offset: 0.15 m, electrode: main}
            electrodes:
              - {name: main, %s}
            cubicle: {height: 3 m, earth: shared, tee-length: 0.3 m}
            stays:
              - {name: stay east, top-height: 8.5 m, anchor-distance: %s, insulated: %s, bonded-to-main-earth: yes%s}
            """;

    private static Site site(String electrode, String distance, String insulated, String anchor) {
        return DemoSite.parse(SITE.formatted(electrode, distance, insulated, anchor));
    }

    private static StudyResults faults(Site site) {
        return FaultStudy.of(site, new EarthCache()).results();
    }

    private static double value(StudyResults results, String id) {
        return results.one(id, LARGEST, "nominal").orElseThrow().value();
    }

    private static double resistance(List<Bar> bars) {
        return EarthElectrodes.of(SOIL, bars).resistances().mutual("stay east anchor", "stay east anchor");
    }

    /**
     * Dwight 1936, buried round plate (from memory). The stay is almost upright so that the plate lies flat.
     */
    @ParameterizedTest
    @ValueSource(doubles = {0.3, 0.4, 0.6})
    void plateIsThatOfDwight(double diameter) throws MissingInput {
        Site site = site(
                "resistance: 20 ohm",
                "1 mm",
                "no",
                ", anchor: {rod-length: 1.8 m, rod-diameter: 20 mm, plate-diameter: " + diameter + " m}");
        List<Bar> bars = StayAnchors.bars(site.stays().get(0), new Inputs());
        double plate = RoundPlateDwight.resistance(RoundPlateDwight.Lie.HORIZONTAL, 100, diameter / 2, 1.8)
                .get();
        assertThat(resistance(bars.subList(1, bars.size())) / plate).isBetween(0.99, 1.005);
        double rod = RodDwight.resistance(100, 1.8, 0.01).get();
        assertThat(resistance(bars.subList(0, 1)) / rod).isCloseTo(1, within(0.02));
        // Together they are better than either, and worse than both without sight of each other.
        assertThat(resistance(bars)).isLessThan(Math.min(plate, rod)).isGreaterThan(plate * rod / (plate + rod));
    }

    /** The rod lies in the line of the stay, the plate at right angles to it. */
    @Property(seed = "20261125", tries = 50)
    void anchorContinuesTheStay(@ForAll @DoubleRange(min = 2, max = 9) double distance, @ForAll boolean otherSide)
            throws MissingInput {
        double x = otherSide ? -distance : distance;
        Site site = site(
                "resistance: 20 ohm",
                x + " m",
                "no",
                ", anchor: {rod-length: 2 m, rod-diameter: 20 mm, plate-diameter: 0.4 m}");
        List<Bar> bars = StayAnchors.bars(site.stays().get(0), new Inputs());
        Bar rod = bars.get(0);
        double cross = (rod.x2() - rod.x1()) * 8.5 - rod.depth2() * x;
        assertThat(cross).isCloseTo(0, within(1e-9));
        assertThat(rod.length()).isCloseTo(2, within(1e-9));
        double area = 0;
        for (Bar strip : bars.subList(1, bars.size())) {
            for (double[] end : new double[][] {{strip.x1(), strip.depth1()}, {strip.x2(), strip.depth2()}}) {
                double dot = (end[0] - rod.x2()) * (rod.x2() - rod.x1())
                        + (end[1] - rod.depth2()) * (rod.depth2() - rod.depth1());
                assertThat(dot).isCloseTo(0, within(1e-9));
            }
            area += strip.length() * 0.4 / (bars.size() - 1);
        }
        assertThat(area).isCloseTo(Math.PI * 0.2 * 0.2, within(1e-9));
        // A stay on the other side is the mirror of this one.
        assertThat(resistance(bars))
                .isCloseTo(
                        resistance(StayAnchors.bars(
                                site(
                                                "resistance: 20 ohm",
                                                -x + " m",
                                                "no",
                                                ", anchor: {rod-length: 2 m, rod-diameter: 20 mm, plate-diameter: 0.4 m}")
                                        .stays()
                                        .get(0),
                                new Inputs())),
                        within(1e-9 * 50));
    }

    /** Two resistances side by side: 80 ohm beside 20 ohm take a fifth; the leads' milliohms are nothing. */
    @Test
    void statedAnchorTakesItsShareByOhmsLaw() {
        Site bonded = site("resistance: 20 ohm", "5 m", "no", ", anchor-resistance: 80 ohm");
        StudyResults results = faults(bonded);
        double total = value(results, "fault.maximum.current");
        assertThat(value(results, "fault.maximum.stay-east-current")).isCloseTo(total / 5, within(total * 1e-3));
        assertThat(value(results, "epr.tank")).isCloseTo(total * 16, within(total * 16 * 1e-3));
        StudyResults insulated = faults(site("resistance: 20 ohm", "5 m", "yes", ", anchor-resistance: 80 ohm"));
        assertThat(insulated.of("fault.maximum.stay-east-current")).isEmpty();
        assertThat(value(insulated, "epr.tank")).isGreaterThan(value(results, "epr.tank"));
    }

    @Test
    void anchorOfGivenShapeSharesThroughTheSoilAndHeatsItsStay() {
        String rod = "rod: {length: 3 m, diameter: 16 mm, top-depth: 0.5 m}";
        String anchor = ", anchor: {rod-length: 2 m, rod-diameter: 19 mm},"
                + " conductor: {material: galvanised-steel, area: 50 mm2}";
        StudyResults with = faults(site(rod, "5 m", "no", anchor));
        StudyResults without = faults(site(rod, "5 m", "no", ""));
        assertThat(with.notes()).noneMatch(n -> n.contains("stay east"));
        assertThat(without.notes()).anyMatch(n -> n.contains("stay east") && n.contains("left out"));
        assertThat(value(with, "epr.tank")).isLessThan(value(without, "epr.tank"));
        // U = R_a·I_a + R_m·I_main at the anchor, from the matrix that the report shows.
        StudyResults study = SiteStudy.of(site(rod, "5 m", "no", anchor));
        double own = study.one("electrode.stay east anchor.resistance", Case.NONE, "nominal")
                .orElseThrow()
                .value();
        double mutual = study.one("electrode.mutual.main.stay east anchor", Case.NONE, "nominal")
                .orElseThrow()
                .value();
        double stay = value(with, "fault.maximum.stay-east-current");
        double main = value(with, "fault.maximum.electrode-current");
        assertThat(own * stay + mutual * main)
                .isCloseTo(value(with, "epr.tank"), within(0.01 * value(with, "epr.tank")));
        assertThat(study.of("conductor.stay-east.final-temperature")).isNotEmpty();
    }
}
