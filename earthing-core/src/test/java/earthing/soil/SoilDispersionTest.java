package earthing.soil;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;

class SoilDispersionTest {

    private static final List<SoilDispersion> LAWS = List.of(
            PowerLawSoil.MEAN,
            PowerLawSoil.CAUTIOUS,
            PowerLawSoil.CONSERVATIVE,
            new VisacroAlipioSoil(),
            new LongmireSmithSoil(),
            new MessierSoil());

    /** Alipio, Visacro 2014 (from memory), evaluated apart from the library: 1000 ohm.m at 1 MHz. */
    @Test
    void alipioVisacro2014Mean() {
        assertThat(1 / PowerLawSoil.MEAN.conductivity(1e-3, 1e6)).isCloseTo(442.478, within(0.0005));
        assertThat(PowerLawSoil.MEAN.relativePermittivity(1e-3, 1e6)).isCloseTo(37.6898, within(0.00005));
    }

    /** Longmire, Smith 1975 against Scott 1967, fits of the same samples: within 10 % from 1 kHz to 1 MHz. */
    @Test
    void longmireSmithAgreesWithScott() {
        double[][] scott = {{1e3, 104.232, 2992.26}, {1e5, 90.7821, 133.66}, {1e6, 74.817, 44.8745}};
        for (double[] row : scott) {
            SoilDispersion law = new LongmireSmithSoil();
            assertThat(1 / law.conductivity(0.01, row[0])).isCloseTo(row[1], within(0.105 * row[1]));
            assertThat(law.relativePermittivity(0.01, row[0])).isCloseTo(row[2], within(0.05 * row[2]));
        }
    }

    @Property(seed = "20261125", tries = 100)
    void conductivityRisesAndPermittivityFallsWithFrequency(
            @ForAll @DoubleRange(min = 10, max = 10000) double resistivity,
            @ForAll @DoubleRange(min = 3, max = 6.5) double decade) {
        double f = Math.pow(10, decade);
        double sigma = 1 / resistivity;
        for (SoilDispersion law : LAWS) {
            assertThat(law.conductivity(sigma, 1.1 * f)).isGreaterThanOrEqualTo(law.conductivity(sigma, f));
            assertThat(law.relativePermittivity(sigma, 1.1 * f))
                    .isLessThanOrEqualTo(law.relativePermittivity(sigma, f) * (1 + 1e-12));
            assertThat(law.conductivity(sigma, f)).isGreaterThanOrEqualTo(sigma);
        }
    }

    /** Kramers-Kronig: the dispersive part of a power of the frequency has one phase, γπ/2. */
    @Property(seed = "20261125", tries = 100)
    void powerLawIsOneAnalyticFunction(
            @ForAll @DoubleRange(min = 10, max = 10000) double resistivity,
            @ForAll @DoubleRange(min = 2, max = 6.6) double decade) {
        double f = Math.pow(10, decade);
        double sigma = 1 / resistivity;
        Complex grown = PowerLawSoil.MEAN
                .admittivity(sigma, f)
                .subtract(new Complex(sigma, 2 * Math.PI * f * SoilDispersion.EPSILON0 * 12));
        assertThat(grown.getArgument()).isCloseTo(0.54 * Math.PI / 2, within(1e-9));
    }

    @Test
    void refusesWhatIsNoSoil() {
        assertThatThrownBy(() -> PowerLawSoil.MEAN.admittivity(0, 100)).hasMessageContaining("conductivity");
        assertThatThrownBy(() -> new MessierSoil().admittivity(0.01, Double.NaN))
                .hasMessageContaining("frequency");
        assertThatThrownBy(() -> new FixedSoil(0.5)).hasMessageContaining("permittivity");
        assertThatThrownBy(() -> new PowerLawSoil("x", 1, 1.5, 5)).hasMessageContaining("exponent");
        LAWS.forEach(law -> assertThat(law.lowest()).isLessThan(law.highest()));
        LAWS.forEach(law -> assertThat(law.source().text()).contains("from memory"));
    }
}
