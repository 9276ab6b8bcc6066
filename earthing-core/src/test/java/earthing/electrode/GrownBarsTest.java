package earthing.electrode;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import earthing.electrode.wire.Bar;
import earthing.electrode.wire.BarShapes;
import earthing.electrode.wire.EarthElectrodes;
import earthing.electrode.wire.ElementLeakage;
import earthing.soil.Layer;
import earthing.soil.SoilModel;
import java.util.List;
import java.util.Map;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class GrownBarsTest {

    private static final List<Bar> ROD = BarShapes.rod("e", 0, 0, 0, 3, 0.008);

    private static double low(SoilModel soil) {
        return EarthElectrodes.of(soil, ROD).resistances().alone("e");
    }

    /** By hand: r = ρI/(2πLE₀), R = ρ/(2πL)(ln(4L/r) − 1), Dwight's rod with the grown radius, up to 2 % high. */
    @Test
    void aRodInUniformGroundIsDwightsRodOfTheGrownRadius() {
        for (double current : new double[] {3e3, 10e3, 20e3}) {
            double r = 100 * current / (2 * Math.PI * 3 * 400e3);
            double byHand = 100 / (2 * Math.PI * 3) * (Math.log(4 * 3 / r) - 1);
            assertThat(GrownBars.resistance(SoilModel.uniform(100), ROD, current, 400e3) / byHand)
                    .as("%s A", current)
                    .isBetween(0.97, 1.0);
        }
    }

    /** The law of a concentrated electrode (Weck, CIGRE TB 63, from memory) is another likeness; both within 15 %. */
    @Test
    void theLawOfAConcentratedElectrodeIsNotFar() {
        SoilModel soil = SoilModel.uniform(100);
        for (double current : new double[] {3e3, 10e3, 20e3}) {
            double weck =
                    SoilIonisation.resistance(low(soil), current, SoilIonisation.limitCurrent(low(soil), 100, 400e3));
            assertThat(GrownBars.resistance(soil, ROD, current, 400e3)).isCloseTo(weck, Percentage.withPercentage(15));
        }
    }

    @Test
    void layersOfOneResistivityAreUniformGround() {
        SoilModel same = SoilModel.of(List.of(new Layer(100, 1), Layer.below(100.0001)));
        assertThat(GrownBars.resistance(same, ROD, 10e3, 400e3))
                .isCloseTo(
                        GrownBars.resistance(SoilModel.uniform(100), ROD, 10e3, 400e3), Percentage.withPercentage(2));
    }

    /** Balance of field and current, r = ρ·i/(2π·E₀), asked of each layer with its own resistivity, by depth. */
    @ParameterizedTest
    @CsvSource({"300, 60", "60, 300"})
    void eachLayerGrowsByItsOwnResistivity(double upper, double lower) {
        SoilModel soil = SoilModel.twoLayer(upper, 1, lower);
        double above = 0.008;
        double below = 0.008;
        double resistance = 0;
        for (int step = 0; step < 60; step++) {
            EarthElectrodes grown = EarthElectrodes.of(
                    soil, List.of(new Bar("e", 0, 0, 0, 0, 0, 1, above), new Bar("e", 0, 0, 1, 0, 0, 3, below)));
            resistance = grown.resistances().alone("e");
            double shallow = 0;
            double deep = 0;
            for (ElementLeakage element : grown.carrying(Map.of("e", 10e3)).leakage()) {
                double depth = element.depth();
                shallow += depth < 1 ? element.current() : 0;
                deep += depth > 1 ? element.current() : 0;
            }
            assertThat(shallow + deep).isCloseTo(10e3, Percentage.withPercentage(1e-6));
            above = Math.sqrt(above * upper * shallow / 1 / (2 * Math.PI * 400e3));
            below = Math.sqrt(below * lower * deep / 2 / (2 * Math.PI * 400e3));
        }
        assertThat(GrownBars.resistance(soil, ROD, 10e3, 400e3)).isCloseTo(resistance, Percentage.withPercentage(0.1));
    }

    @Test
    void withoutBreakdownItIsTheResistance() {
        for (SoilModel soil : List.of(SoilModel.twoLayer(300, 1, 60), SoilModel.twoLayer(60, 1, 300))) {
            assertThat(GrownBars.resistance(soil, ROD, 1, 400e3)).isCloseTo(low(soil), Percentage.withPercentage(0.5));
        }
    }

    @Property(seed = "20261125", tries = 30)
    void moreCurrentNeverHasMoreAndAHigherFieldNeverLess(
            @ForAll @DoubleRange(min = 100, max = 10e3) double current,
            @ForAll @DoubleRange(min = 300e3, max = 1000e3) double field) {
        SoilModel soil = SoilModel.twoLayer(200, 1, 80);
        double here = GrownBars.resistance(soil, ROD, current, field);
        assertThat(GrownBars.resistance(soil, ROD, 1.3 * current, field)).isLessThanOrEqualTo(here * 1.0003);
        assertThat(GrownBars.resistance(soil, ROD, current, 1.3 * field)).isGreaterThanOrEqualTo(here * 0.9997);
    }

    @Test
    void whatIsNoBarAnyMoreIsRefused() {
        assertThatThrownBy(() -> GrownBars.resistance(SoilModel.uniform(2000), ROD, 100e3, 300e3))
                .hasMessageContaining("no bar any more");
        assertThatThrownBy(() -> GrownBars.resistance(SoilModel.uniform(100), ROD, 10, 0))
                .hasMessageContaining("field > 0");
    }
}
