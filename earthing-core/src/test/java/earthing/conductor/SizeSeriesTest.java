package earthing.conductor;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SizeSeriesTest {

    /** IEEE Std 80-2000 tables 3 and 4, read: sizes in mm². */
    @ParameterizedTest
    @CsvSource({
        "2 AWG, 33.63",
        "1/0 AWG, 53.48",
        "2/0 AWG, 67.42",
        "3/0 AWG, 85.03",
        "4/0 AWG, 107.2",
        "350 kcmil, 177.36"
    })
    void sizesOfIeee80Tables3And4(String name, double printed) {
        StandardSize size = SizeSeries.AWG_KCMIL.sizes().stream()
                .filter(s -> s.name().equals(name))
                .findFirst()
                .orElseThrow();
        assertThat(size.area() * 1e6).isCloseTo(printed, within(0.05));
    }

    /**
     * IEC 60228:2004 table 2, largest resistance at 20 °C of stranded plain copper [Ω/km], from memory: the nominal area
     * of annealed copper lies below it, by less than 17 %.
     */
    @ParameterizedTest
    @CsvSource({"16, 1.15", "25, 0.727", "35, 0.524", "50, 0.387", "70, 0.268", "95, 0.193", "120, 0.153"})
    void resistanceOfNominalAreasKeepsIec60228Table2(double area, double largest) {
        double resistance =
                ThermalTable.require(Metal.COPPER, ThermalEdition.IEC_60949).resistivity(20) / (area * 1e-6) * 1e3;
        assertThat(resistance).isLessThan(largest).isGreaterThan(largest / 1.17);
    }

    @Test
    void takesTheExactSizeAndEndsWithTheSeries() {
        assertThat(SizeSeries.IEC_60228.atLeast(70e-6).orElseThrow().name()).isEqualTo("70 mm2");
        assertThat(SizeSeries.IEC_60228.atLeast(70.1e-6).orElseThrow().name()).isEqualTo("95 mm2");
        assertThat(SizeSeries.IEC_60228.atLeast(1001e-6)).isEmpty();
        assertThatIllegalArgumentException().isThrownBy(() -> SizeSeries.IEC_60228.atLeast(Double.NaN));
        assertThatIllegalArgumentException().isThrownBy(() -> SizeSeries.gaugeArea(-4));
    }

    @Property(seed = "20261125", tries = 100)
    void nextSizeIsLargeEnoughAndTheOneBelowIsNot(@ForAll @DoubleRange(min = 1, max = 500) double squareMillimetres) {
        double area = squareMillimetres * 1e-6;
        for (SizeSeries series : SizeSeries.values()) {
            StandardSize size = series.atLeast(area).orElseThrow();
            assertThat(size.area()).isGreaterThanOrEqualTo(area * (1 - 1e-9));
            int index = series.sizes().indexOf(size);
            if (index > 0) {
                assertThat(series.sizes().get(index - 1).area()).isLessThan(area);
            }
        }
    }

    @Test
    void seriesRise() {
        for (SizeSeries series : SizeSeries.values()) {
            assertThat(series.sizes()).extracting(StandardSize::area).isSorted();
        }
    }
}
