package earthing.soil;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

class SoilModelTest {

    @Test
    void seasonSplitsTheLayerThatReachesDeeper() {
        SoilModel soil = SoilModel.of(List.of(new Layer(100, 0.5), new Layer(40, 2), Layer.below(300)));
        assertThat(soil.seasonal(0.8, 10).layers().get(0)).isEqualTo(new Layer(1000, 0.5));
        assertThat(soil.seasonal(0.8, 10).layerCount()).isEqualTo(4);
        assertThat(soil.seasonal(0.8, 10).resistivityAt(0.79)).isEqualTo(400);
        assertThat(soil.seasonal(0.8, 10).resistivityAt(0.81)).isEqualTo(40);
        assertThat(soil.seasonal(0.8, 10).top(3)).isCloseTo(2.5, within(1e-12));
        assertThat(soil.seasonal(10, 2).layers())
                .containsExactly(new Layer(200, 0.5), new Layer(80, 2), new Layer(600, 7.5), Layer.below(300));
    }

    @Test
    void seasonWithoutChangeLeavesUniformGroundUniform() {
        assertThat(SoilModel.uniform(100).seasonal(0.8, 1)).isEqualTo(SoilModel.uniform(100));
    }

    @Test
    void boundaryBelongsToTheLayerAbove() {
        SoilModel soil = SoilModel.twoLayer(100, 2, 50);
        assertThat(soil.layerAt(2)).isZero();
        assertThat(soil.layerAt(2.0000001)).isEqualTo(1);
        assertThat(soil.scaled(3).resistivity(1)).isEqualTo(150);
    }

    @Test
    void refusesGroundThatCannotBe() {
        assertThatThrownBy(() -> SoilModel.uniform(0)).hasMessageContaining("> 0");
        assertThatThrownBy(() -> SoilModel.uniform(Double.NaN)).hasMessageContaining("> 0");
        assertThatThrownBy(() -> SoilModel.twoLayer(100, Double.NaN, 5)).hasMessageContaining("thickness");
        assertThatThrownBy(() -> SoilModel.of(List.of(new Layer(100, 2)))).hasMessageContaining("2 to");
        assertThatThrownBy(() -> SoilModel.of(List.of(new Layer(100, 2), new Layer(50, 3))))
                .hasMessageContaining("lowest");
        assertThatThrownBy(() -> SoilModel.of(List.of(Layer.below(100), Layer.below(50))))
                .hasMessageContaining("end somewhere");
        assertThatThrownBy(() -> SoilModel.of(List.of(new Layer(Double.POSITIVE_INFINITY, 1), Layer.below(50))))
                .hasMessageContaining("infinite");
        assertThatThrownBy(() -> SoilModel.uniform(100).seasonal(Double.NaN, 2)).hasMessageContaining("season");
        assertThatThrownBy(() -> SoilModel.uniform(100).seasonal(1, 0)).hasMessageContaining("factor");
        assertThatThrownBy(() -> SoilModel.uniform(100).layerAt(-1)).hasMessageContaining("depth");
        assertThatThrownBy(() -> PointSource.of(SoilModel.twoLayer(100, 2, Double.POSITIVE_INFINITY)))
                .hasMessageContaining("cannot be computed");
    }

    @Property(seed = "20261125", tries = 50)
    void apparentResistivityLiesBetweenThoseOfTheLayersAndScales(
            @ForAll @DoubleRange(min = 5, max = 5000) double upper,
            @ForAll @DoubleRange(min = 5, max = 5000) double lower,
            @ForAll @DoubleRange(min = 0.2, max = 20) double h,
            @ForAll @DoubleRange(min = 0.2, max = 100) double a) {
        SoilModel soil = SoilModel.twoLayer(upper, h, lower);
        double rho = Wenner.of(a).apparentResistivity(soil);
        assertThat(rho).isBetween(Math.min(upper, lower) * (1 - 1e-9), Math.max(upper, lower) * (1 + 1e-9));
        assertThat(Wenner.of(a).apparentResistivity(soil.scaled(3))).isCloseTo(3 * rho, within(1e-9 * rho));
        assertThat(Wenner.of(2 * a).apparentResistivity(SoilModel.twoLayer(upper, 2 * h, lower)))
                .isCloseTo(rho, within(1e-7 * rho));
    }

    @Property(seed = "20261125", tries = 30)
    void soundingsAtBothEndsSeeTheOuterLayers(@ForAll @DoubleRange(min = 0.02, max = 50) double ratio) {
        SoilModel soil = SoilModel.of(List.of(new Layer(100, 1), new Layer(700, 2), Layer.below(100 * ratio)));
        assertThat(Wenner.of(0.01).apparentResistivity(soil)).isCloseTo(100, within(0.01));
        assertThat(Wenner.of(20000).apparentResistivity(soil)).isCloseTo(100 * ratio, within(ratio + 0.5));
    }
}
