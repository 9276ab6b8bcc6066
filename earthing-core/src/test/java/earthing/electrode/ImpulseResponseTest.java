package earthing.electrode;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import earthing.electrode.formula.EffectiveLengthGrcev;
import earthing.electrode.formula.EffectiveLengthGupta;
import earthing.electrode.wire.Bar;
import earthing.electrode.wire.BarShapes;
import earthing.electrode.wire.HarmonicElectrode;
import earthing.network.Wave;
import earthing.soil.FixedSoil;
import earthing.soil.PowerLawSoil;
import earthing.soil.SoilDispersion;
import earthing.soil.SoilModel;
import earthing.soil.VisacroAlipioSoil;
import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;

class ImpulseResponseTest {

    private static final List<Bar> ROD = BarShapes.rod("rod", 0, 0, 0, 3, 0.0125);

    private static ImpulseResponse rod(double resistivity, SoilDispersion law) {
        return ImpulseResponse.of(HarmonicElectrode.of(SoilModel.uniform(resistivity), law, ROD, 0, 0));
    }

    /** First stroke of table 1 in de Araujo et al., Electric Power Systems Research, 2021. */
    private static double first(double time) {
        double x = time / 1.8e-6;
        return 28e3 / 0.8231 * x * x / (1 + x * x) * Math.exp(-time / 95e-6);
    }

    /** The same paper, table 2: reduction of the rise of a 3 m rod in 1000 ohm.m by dispersion, first stroke. */
    @Test
    void dispersionLowersTheRiseAsPublished() {
        double fixed = rod(1000, new FixedSoil(10))
                .voltage(ImpulseResponseTest::first, 60e-6, 5e-9)
                .peak()
                .value();
        double dispersive = rod(1000, new VisacroAlipioSoil())
                .voltage(ImpulseResponseTest::first, 60e-6, 5e-9)
                .peak()
                .value();
        assertThat(dispersive / fixed).isCloseTo(0.9101, within(0.025 * 0.9101));
    }

    /** A chain of known members comes back from its own impedance, and its step answer is that of one R and C. */
    @Test
    void fitsAChainItCouldHaveMade() {
        List<Double> frequencies = new ArrayList<>();
        List<Complex> impedances = new ArrayList<>();
        for (int i = 0; i < 40; i++) {
            double f = 100 * Math.pow(4e4, i / 39.0);
            frequencies.add(f);
            // 20 ohm with 5 ohm beside 100 nF and 1 uH.
            impedances.add(new Complex(0, 2 * Math.PI * f * 1e-6)
                    .add(20)
                    .add(new Complex(1.0 / 5, 2 * Math.PI * f * 100e-9).reciprocal()));
        }
        ElectrodeNetwork chain = ElectrodeNetwork.fit(frequencies, impedances);
        assertThat(chain.error()).isLessThan(0.003);
        assertThat(chain.impedance(0).getReal()).isCloseTo(25, within(0.05));
        ImpulseResponse response = new ImpulseResponse(chain, frequencies, impedances);
        Wave ramp = time -> Math.min(time / 1e-6, 1);
        assertThat(response.voltage(ramp, 20e-6, 1e-8).at(19e-6)).isCloseTo(25, within(0.08));
        assertThatThrownBy(() -> ElectrodeNetwork.fit(List.of(1.0, 2.0), List.of(Complex.ONE, Complex.ONE)))
                .hasMessageContaining("three frequencies");
    }

    /** Passive: the real part of the chain is positive everywhere, far outside the fit too. */
    @Property(seed = "20261125", tries = 10)
    void chainIsPassive(
            @ForAll @DoubleRange(min = 30, max = 3000) double resistivity,
            @ForAll @DoubleRange(min = -1, max = 10) double decade) {
        ElectrodeNetwork chain = rod(resistivity, PowerLawSoil.MEAN).network();
        assertThat(chain.error()).isLessThan(0.02);
        assertThat(chain.impedance(Math.pow(10, decade)).getReal()).isGreaterThanOrEqualTo(0);
    }

    /** CIGRE TB 63 (Weck), from memory: 50 ohm in 500 ohm.m, 400 kV/m, 31 kA; asymptote of the ionised hemisphere. */
    @Test
    void ionisationByWeck() {
        double limit = SoilIonisation.limitCurrent(50, 500, 400e3);
        assertThat(limit).isCloseTo(12732.4, within(0.05));
        assertThat(SoilIonisation.resistance(50, 31e3, limit)).isCloseTo(26.9788, within(0.00005));
        double far = SoilIonisation.resistance(50, 1e9, limit);
        assertThat(far).isCloseTo(Math.sqrt(500 * 400e3 / (2 * Math.PI * 1e9)), within(1e-5 * far));
        assertThatThrownBy(() -> SoilIonisation.limitCurrent(50, 500, 0)).hasMessageContaining("field");
        assertThatThrownBy(() -> SoilIonisation.resistance(50, -1, limit)).hasMessageContaining("current");
    }

    /** Grcev 2009 (from memory): effective length grows with resistivity and front time; the coefficient starts at 1. */
    @Property(seed = "20261125", tries = 50)
    void effectiveLengthGrows(
            @ForAll @DoubleRange(min = 10, max = 2500) double rho,
            @ForAll @DoubleRange(min = 0.25, max = 8) double microseconds) {
        double front = 1e-6 * microseconds;
        double length = EffectiveLengthGrcev.length(rho, front).get();
        assertThat(EffectiveLengthGrcev.length(1.1 * rho, front).get()).isGreaterThan(length);
        assertThat(EffectiveLengthGrcev.coefficient(rho, front, 0.99 * length).get())
                .isEqualTo(1);
        assertThat(EffectiveLengthGrcev.coefficient(rho, front, 2 * length).get())
                .isGreaterThan(1);
        assertThat(EffectiveLengthGupta.fedInMiddle(rho, front))
                .isGreaterThan(EffectiveLengthGupta.fedAtEnd(rho, front));
        assertThat(EffectiveLengthGrcev.length(5000, front).holds()).isFalse();
    }
}
