package earthing.soil;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The least and the most that is taken, the next value beyond it, and the ends of each law. */
class SoilEdgesTest {

    private static final SoilModel THREE = SoilModel.of(List.of(new Layer(100, 1), new Layer(30, 2), Layer.below(300)));

    @ParameterizedTest
    @ValueSource(doubles = {0, -1, Double.NaN, Double.POSITIVE_INFINITY})
    void resistivitiesSpacingsAndFactorsArePositiveAndFinite(double bad) {
        assertThatIllegalArgumentException().isThrownBy(() -> SoilModel.uniform(bad));
        assertThatIllegalArgumentException().isThrownBy(() -> Wenner.of(bad));
        assertThatIllegalArgumentException().isThrownBy(() -> new Reading(Wenner.of(1), bad));
        assertThatIllegalArgumentException().isThrownBy(() -> THREE.scaled(bad));
        assertThatIllegalArgumentException().isThrownBy(() -> THREE.seasonal(bad, 2));
        assertThatIllegalArgumentException().isThrownBy(() -> THREE.seasonal(1, bad));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> SurfacePotential.of(THREE).at(bad));
        assertThatIllegalArgumentException().isThrownBy(() -> new MessierSoil().admittivity(bad, 50));
        assertThatIllegalArgumentException().isThrownBy(() -> new MessierSoil().admittivity(0.01, bad));
        assertThatIllegalArgumentException().isThrownBy(() -> new Schlumberger(bad, 1));
        assertThatIllegalArgumentException().isThrownBy(() -> new Schlumberger(10, bad));
    }

    @Test
    void arraysAtTheirLimits() {
        assertThatIllegalArgumentException().isThrownBy(() -> new Schlumberger(1, 1));
        assertThatIllegalArgumentException().isThrownBy(() -> new Wenner(2, -1e-9));
        assertThatIllegalArgumentException().isThrownBy(() -> new Wenner(2, Math.nextUp(2.0)));
        assertThat(new Wenner(2, 2).spread()).isEqualTo(6);
        assertThat(new Schlumberger(10, 1).spread()).isEqualTo(20);
        assertThat(Wenner.driven(3, 0.6).probeDepth()).isCloseTo(0.4, within(1e-15));
        // ASTM G57 and IEEE Std 81, from memory: 2πa on the surface, 4πa for probes far deeper than their spacing.
        assertThat(Wenner.of(3).geometricFactor()).isCloseTo(6 * Math.PI, within(1e-12));
        // Telford 1990: π(L² − l²)/(2l); by hand for 10 m and 1 m.
        assertThat(new Schlumberger(10, 1).geometricFactor()).isCloseTo(49.5 * Math.PI, within(1e-12));
        // Uniform ground reads as itself, also with driven probes.
        assertThat(new Wenner(2, 0.3).apparentResistivity(SoilModel.uniform(75)))
                .isCloseTo(75, within(1e-9));
        assertThat(Reading.ofResistance(Wenner.of(3), 10).apparentResistivity()).isCloseTo(60 * Math.PI, within(1e-12));
        assertThat(new Reading(Wenner.of(3), 10).spacing()).isEqualTo(3);
        assertThat(new ReadingFit(new Reading(Wenner.of(3), 11), 10, false).residual())
                .isCloseTo(0.1, within(1e-15));
    }

    @Test
    void layersAtTheirLimits() {
        assertThat(SoilModel.of(List.of(new Layer(100, 1), new Layer(100, 2), Layer.below(50)))
                        .layers())
                .containsExactly(new Layer(100, 3), Layer.below(50));
        assertThat(SoilModel.of(List.of(new Layer(100, 1), Layer.below(100)))).isEqualTo(SoilModel.uniform(100));
        List<Layer> eight = List.of(
                new Layer(1, 1),
                new Layer(2, 1),
                new Layer(1, 1),
                new Layer(2, 1),
                new Layer(1, 1),
                new Layer(2, 1),
                new Layer(1, 1),
                Layer.below(2));
        assertThat(SoilModel.of(eight).layerCount()).isEqualTo(8);
        List<Layer> nine = new ArrayList<>(eight);
        nine.add(0, new Layer(2, 1));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> SoilModel.of(nine))
                .withMessageContaining("2 to 8 layers; have 9");
        assertThat(THREE.top(0)).isZero();
        assertThat(THREE.top(2)).isEqualTo(3);
        assertThat(THREE.layerAt(0)).isZero();
        assertThat(THREE.layerAt(1)).isZero();
        assertThat(THREE.layerAt(3)).isEqualTo(1);
        assertThat(THREE.layerAt(3.001)).isEqualTo(2);
        assertThat(THREE.resistivityAt(10)).isEqualTo(300);
        assertThatIllegalArgumentException().isThrownBy(() -> new Layer(0, 1));
        assertThatIllegalArgumentException().isThrownBy(() -> new Layer(1, 0));
        // A season that ends on a boundary splits nothing.
        assertThat(THREE.seasonal(1, 2).layers())
                .containsExactly(new Layer(200, 1), new Layer(30, 2), Layer.below(300));
        // A lowest layer that does not conduct may be sounded.
        SoilModel rock = SoilModel.twoLayer(100, 2, Double.POSITIVE_INFINITY);
        assertThat(Wenner.of(1000).apparentResistivity(rock))
                .as("a sheet of 2 m: ρ/h·ln 2/π between the probes, by the logarithm of a line source")
                .isCloseTo(2 * 1000 * 100 / 2.0 * Math.log(2), within(2e-3 * 1000 * 100));
    }

    @Test
    void sourcesAndPotentialsAreSymmetric() {
        PointSource source = PointSource.of(THREE);
        assertThat(source.soil()).isEqualTo(THREE);
        for (double[] depths : new double[][] {{0.5, 0.2}, {0.5, 2}, {0.5, 4}, {2, 5}, {4, 6}}) {
            assertThat(source.potential(3, depths[0], depths[1]))
                    .isCloseTo(source.potential(3, depths[1], depths[0]), within(1e-12));
        }
        assertThatIllegalArgumentException()
                .isThrownBy(() -> source.images(1, 0))
                .withMessageContaining("upper layer must be named first");
        // Far away only the lowest layer is felt: ρ/(2πr).
        assertThat(source.potential(1e5, 0.5, 0.5) * 2 * Math.PI * 1e5 / 300).isCloseTo(1, within(1e-3));
        // Potential and current are continuous at a boundary.
        assertThat(source.potential(3, 0.5, 1 + 1e-9)).isCloseTo(source.potential(3, 0.5, 1 - 1e-9), within(1e-6));
        assertThat(source.potential(3, 0.5, 3 + 1e-9)).isCloseTo(source.potential(3, 0.5, 3 - 1e-9), within(1e-6));
        assertThat(SurfacePotential.of(SoilModel.uniform(100)).at(2)).isCloseTo(100 / (4 * Math.PI), within(1e-12));
    }

    @Test
    void soundingsTellTheirEndsAndTheirContrast() {
        Sounding a = new Sounding("a", List.of(new Reading(Wenner.of(1), 100), new Reading(Wenner.of(4), 50)));
        Sounding b = new Sounding("b", List.of(new Reading(Wenner.of(4), 150), new Reading(Wenner.of(9), 10)));
        assertThat(a.shortest()).isEqualTo(1);
        assertThat(a.longest()).isEqualTo(4);
        assertThat(a.greatestRatio(b)).isCloseTo(3, within(1e-12));
        assertThat(b.greatestRatio(a)).isCloseTo(3, within(1e-12));
        assertThat(a.greatestRatio(new Sounding("c", List.of(new Reading(Wenner.of(20), 1)))))
                .isNaN();
        Sounding all = Sounding.pooled("all", List.of(a, b));
        assertThat(all.readings()).hasSize(4);
        assertThat(all.traverse()).isEqualTo("all");
        assertThatIllegalArgumentException().isThrownBy(() -> new Sounding("none", List.of()));
    }

    @Test
    void lawsOfDispersionAtTheirLimits() {
        assertThat(new FixedSoil(1).conductivity(0.01, 1e6)).isEqualTo(0.01);
        assertThat(new FixedSoil(9).relativePermittivity(0.01, 1e6)).isCloseTo(9, within(1e-12));
        assertThat(new FixedSoil(9).lowest()).isZero();
        assertThat(new FixedSoil(9).highest()).isInfinite();
        assertThat(new FixedSoil(9).title()).isEqualTo("no dispersion");
        assertThatIllegalArgumentException().isThrownBy(() -> new FixedSoil(Math.nextDown(1.0)));
        assertThatIllegalArgumentException().isThrownBy(() -> new FixedSoil(Double.POSITIVE_INFINITY));
        assertThat(new PowerLawSoil("x", 1, 0.5, 1).highPermittivity()).isEqualTo(1);
        assertThatIllegalArgumentException().isThrownBy(() -> new PowerLawSoil("x", 0, 0.5, 1));
        assertThatIllegalArgumentException().isThrownBy(() -> new PowerLawSoil("x", 1, 0, 1));
        assertThatIllegalArgumentException().isThrownBy(() -> new PowerLawSoil("x", 1, 1, 1));
        assertThatIllegalArgumentException().isThrownBy(() -> new PowerLawSoil("x", 1, 0.5, Math.nextDown(1.0)));
        // Visacro and Alipio 2012 count from 100 Hz on, and keep the permittivity of 10 kHz below it.
        VisacroAlipioSoil measured = new VisacroAlipioSoil();
        assertThat(measured.conductivity(0.01, 100)).isEqualTo(0.01);
        assertThat(measured.conductivity(0.01, 50)).isEqualTo(0.01);
        // By hand at 100 ohm.m and 1 MHz: 1 + 1.2e-6·100^0.73·(999,900)^0.65.
        assertThat(measured.conductivity(0.01, 1e6) / 0.01)
                .isCloseTo(1 + 1.2e-6 * Math.pow(100, 0.73) * Math.pow(999_900, 0.65), within(1e-12));
        assertThat(measured.relativePermittivity(0.01, 1e3))
                .isCloseTo(measured.relativePermittivity(0.01, 10e3), within(1e-9));
        assertThat(measured.relativePermittivity(0.01, 1e6)).isCloseTo(7.6e3 * Math.pow(1e6, -0.4) + 1.3, within(1e-9));
        // Messier 1985: what is added to the conductivity is added to the susceptance too.
        MessierSoil messier = new MessierSoil();
        double omega = 2 * Math.PI * 1e5;
        double added = messier.conductivity(0.01, 1e5) - 0.01;
        assertThat(added).isCloseTo(Math.sqrt(2 * omega * 0.01 * 8 * SoilDispersion.EPSILON0), within(1e-15));
        assertThat(messier.admittivity(0.01, 1e5).getImaginary() - omega * 8 * SoilDispersion.EPSILON0)
                .isCloseTo(added, within(1e-12));
        assertThat(messier.title()).isEqualTo("Messier 1985");
        assertThat(measured.title()).isEqualTo("Visacro-Alipio 2012");
        assertThat(new LongmireSmithSoil().title()).isEqualTo("Longmire-Smith 1975");
        assertThat(messier.lowest()).isEqualTo(100);
        assertThat(messier.highest()).isEqualTo(4e6);
        assertThat(new LongmireSmithSoil().highest()).isEqualTo(2e8);
    }
}
