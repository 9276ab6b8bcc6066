package earthing.electrode.wire;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import earthing.soil.FixedSoil;
import earthing.soil.Layer;
import earthing.soil.PowerLawSoil;
import earthing.soil.SoilDispersion;
import earthing.soil.SoilModel;
import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;

class HarmonicElectrodeTest {

    private static final List<Bar> ROD = BarShapes.rod("rod", 0, 0, 0, 3, 0.008);

    private static HarmonicElectrode rod(SoilModel soil, SoilDispersion law) {
        return HarmonicElectrode.of(soil, law, ROD, 0, 0);
    }

    /** At 10 Hz in ground that does not disperse only the resistance is left, in layers and for every shape. */
    @Test
    void lowFrequencyIsTheResistance() {
        List<SoilModel> soils = List.of(
                SoilModel.uniform(100),
                SoilModel.twoLayer(1000, 1.5, 100),
                SoilModel.of(List.of(new Layer(400, 0.7), new Layer(100, 2), Layer.below(1000))));
        List<Bar> line = new ArrayList<>(BarShapes.rodsInLine("line", 0, 0, 3, 3, 0.5, 2, 0.008));
        for (SoilModel soil : soils) {
            for (List<Bar> bars : List.of(ROD, BarShapes.star("star", 0, 0, 3, 5, 0.6, 0.004), line)) {
                double resistance = EarthElectrodes.of(soil, bars).resistances().get(0, 0);
                Complex z = HarmonicElectrode.of(soil, new FixedSoil(10), bars, 0, 0)
                        .impedance(10);
                assertThat(z.getReal()).isCloseTo(resistance, within(4e-3 * resistance));
            }
        }
    }

    /** Hybrid thin-wire solution computed apart from the library, 30 elements: 3 m × 16 mm, 100 ohm.m, permittivity 10. */
    @Test
    void harmonicImpedanceOfARodAgainstAnotherProgram() {
        HarmonicElectrode rod = rod(SoilModel.uniform(100), new FixedSoil(10));
        assertThat(rod.impedance(1e4).abs()).isCloseTo(32.94, within(0.1));
        assertThat(rod.impedance(1e5).abs()).isCloseTo(32.27, within(0.1));
        assertThat(rod.impedance(1e6).abs()).isCloseTo(30.94, within(0.1));
    }

    /**
     * A sleeve of the same stuff as the ground is no sleeve: up to 4 MHz the impedance is that of the bare rod, with its
     * inductance that of the metal and not of the sleeve. Permittivity 1 keeps the displacement current out, which the
     * sleeve does not have.
     */
    @Test
    void aSleeveLikeTheGroundAroundItChangesNothing() {
        Bar bare = ROD.get(0);
        for (double outer : new double[] {0.02, 0.05, 0.1}) {
            HarmonicElectrode sleeved =
                    HarmonicElectrode.of(SoilModel.uniform(100), new FixedSoil(1), List.of(bare.in(outer, 100)), 0, 0);
            for (double f : new double[] {1e2, 1e5, 1e6, 4e6}) {
                Complex z = rod(SoilModel.uniform(100), new FixedSoil(1)).impedance(f);
                assertThat(sleeved.impedance(f).subtract(z).abs())
                        .as("%s m, %s Hz", outer, f)
                        .isLessThan(0.03 * z.abs());
            }
        }
    }

    /** Current that is in metal of 16 mm and one in metal of 200 mm differ in inductance by more than a sleeve may hide. */
    @Test
    void theInductanceOfAnEncasedRodIsThatOfItsMetal() {
        Bar bare = ROD.get(0);
        double own = HarmonicElectrode.of(SoilModel.uniform(100), new FixedSoil(1), ROD, 0, 0)
                .inductances()[0][0];
        double encased = HarmonicElectrode.of(
                        SoilModel.uniform(100), new FixedSoil(1), List.of(bare.in(0.1, 100)), 0, 0)
                .inductances()[0][0];
        double thick = HarmonicElectrode.of(
                        SoilModel.uniform(100), new FixedSoil(1), BarShapes.rod("rod", 0, 0, 0, 3, 0.1), 0, 0)
                .inductances()[0][0];
        assertThat(encased).isCloseTo(own, within(0.08 * own));
        assertThat(thick).isLessThan(0.7 * own);
    }

    /** Two ways to complex layers: interpolation over the contrast of two layers, and five grounds along the phases. */
    @Test
    void twoWaysToComplexLayersAgree() {
        for (double lower : new double[] {10, 300, 1000}) {
            HarmonicElectrode two = rod(SoilModel.twoLayer(100, 1.5, lower), PowerLawSoil.MEAN);
            HarmonicElectrode three = rod(
                    SoilModel.of(List.of(new Layer(100, 1.5), new Layer(lower, 500), Layer.below(lower * 1.0001))),
                    PowerLawSoil.MEAN);
            for (double f : new double[] {1e3, 1e5, 1e6, 3e6}) {
                Complex z = two.impedance(f);
                assertThat(three.impedance(f).subtract(z).abs()).isLessThan(4e-3 * z.abs());
            }
        }
    }

    /** The paper of HC-36 bounds it: layers of 1000 and 100 ohm.m lie between the uniform soils of both. */
    @Test
    void layersLieBetweenTheirUniformSoils() {
        for (double f : new double[] {1e4, 1e6}) {
            double layered = rod(SoilModel.twoLayer(1000, 1.5, 100), PowerLawSoil.MEAN)
                            .impedance(f)
                            .abs()
                    / rod(SoilModel.twoLayer(1000, 1.5, 100), new FixedSoil(10))
                            .impedance(f)
                            .abs();
            double poor =
                    rod(SoilModel.uniform(1000), PowerLawSoil.MEAN).impedance(f).abs()
                            / rod(SoilModel.uniform(1000), new FixedSoil(10))
                                    .impedance(f)
                                    .abs();
            double good =
                    rod(SoilModel.uniform(100), PowerLawSoil.MEAN).impedance(f).abs()
                            / rod(SoilModel.uniform(100), new FixedSoil(10))
                                    .impedance(f)
                                    .abs();
            assertThat(layered).isBetween(poor, good);
        }
    }

    @Property(seed = "20261125", tries = 10)
    void dissipatesAtEveryFrequencyAndConverges(
            @ForAll @DoubleRange(min = 30, max = 3000) double resistivity,
            @ForAll @DoubleRange(min = 2, max = 6.6) double decade) {
        double f = Math.pow(10, decade);
        Complex coarse = rod(SoilModel.uniform(resistivity), PowerLawSoil.MEAN).impedance(f);
        Complex fine = HarmonicElectrode.of(SoilModel.uniform(resistivity), PowerLawSoil.MEAN, ROD, 0, 0, 0.25)
                .impedance(f);
        assertThat(coarse.getReal()).isPositive();
        assertThat(coarse.subtract(fine).abs()).isLessThan(0.02 * fine.abs());
    }

    @Test
    void refusesFrequenciesAndElectrodesBeyondItsRange() {
        HarmonicElectrode rod = rod(SoilModel.uniform(100), PowerLawSoil.MEAN);
        assertThatThrownBy(() -> rod.impedance(5e6)).hasMessageContaining("4 MHz");
        assertThatThrownBy(() -> rod.impedance(Double.NaN)).hasMessageContaining("4 MHz");
        assertThatThrownBy(() -> HarmonicElectrode.of(SoilModel.uniform(100), PowerLawSoil.MEAN, List.of(), 0, 0))
                .hasMessageContaining("bar");
        assertThatThrownBy(() -> HarmonicElectrode.of(
                        SoilModel.uniform(100),
                        PowerLawSoil.MEAN,
                        BarShapes.mat("mat", 0, 0, 50, 50, 20, 20, 0.6, 0.004),
                        0,
                        0))
                .hasMessageContaining("at most 400");
        assertThat(rod.elementCount()).isEqualTo(6);
    }
}
