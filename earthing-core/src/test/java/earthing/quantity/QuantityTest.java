package earthing.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.HashSet;
import java.util.OptionalDouble;
import java.util.Set;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class QuantityTest {

    private static Quantity read(String text, Dimension dimension) throws UnitException {
        return Quantity.parse(text, dimension, OptionalDouble.empty());
    }

    private static void refuses(String text, Dimension dimension, String... words) {
        assertThatThrownBy(() -> read(text, dimension))
                .isInstanceOf(UnitException.class)
                .hasMessageContainingAll(words);
    }

    /** NIST SP 811 (2008) appendix B.8, from memory: units outside the SI and what they are in it, exact unless a tolerance is given. */
    @ParameterizedTest
    @CsvSource({
        "1 ft, LENGTH, 0.3048, 0",
        "1 in, LENGTH, 0.0254, 0",
        "1000 kcmil, AREA, 5.067075e-4, 5e-11",
        "1 ohm.ft, RESISTIVITY, 0.3048, 0",
        "1 ohm/mi, RESISTANCE_PER_LENGTH, 6.213712e-4, 5e-11",
        "1 A.h, CHARGE, 3600, 0",
        "1 h, TIME, 3600, 0",
        "180 deg, ANGLE, 180, 0",
        "3.141592653589793 rad, ANGLE, 180, 1e-12",
        "32 degF, TEMPERATURE, 0, 0",
        "212 degF, TEMPERATURE, 100, 1e-13",
        "-40 °F, TEMPERATURE, -40, 1e-13",
        "12000 ohm.cm, RESISTIVITY, 120, 0",
        "100 %, RATIO, 1, 0",
        "4 /km2/a, FLASH_DENSITY, 4e-6, 0",
        "8760 /h, RATE, 76737600, 0",
        "30 kV/cm, FIELD, 3e6, 0"
    })
    void unitsOfSp811AppendixB8(String text, Dimension dimension, double si, double digit) throws UnitException {
        Quantity quantity = read(text, dimension);
        assertThat(quantity.si()).isCloseTo(si, within(digit));
        assertThat(quantity.text()).isEqualTo(text);
        assertThat(quantity.dimension()).isEqualTo(dimension);
    }

    /** ASTM B258 table 1, from memory: diameters of the American gauge [in]; half a unit of the last printed digit. */
    @ParameterizedTest
    @CsvSource({
        "4/0 AWG, 0.4600, 0.00005",
        "3/0 AWG, 0.4096, 0.00005",
        "2/0 AWG, 0.3648, 0.00005",
        "1/0 AWG, 0.3249, 0.00005",
        "0 AWG, 0.3249, 0.00005",
        "1 AWG, 0.2893, 0.00005",
        "10AWG, 0.1019, 0.00005",
        "36 AWG, 0.0050, 0.00005",
        "40 AWG, 0.0031, 0.00005"
    })
    void diametersOfAstmB258Table1(String text, double inches, double halfDigit) throws UnitException {
        double diameter = 2 * Math.sqrt(read(text, Dimension.AREA).si() / Math.PI);
        assertThat(diameter / 0.0254).isCloseTo(inches, within(halfDigit));
    }

    @Test
    void gaugesEndAtFourZerosAndAtForty() {
        refuses("5/0 AWG", Dimension.AREA, "4/0 to 40", "5/0 AWG");
        refuses("41 AWG", Dimension.AREA, "4/0 to 40");
        refuses("AWG", Dimension.AREA, "4/0 to 40");
        refuses("-2 AWG", Dimension.AREA, "4/0 to 40");
        refuses("2 AWG", Dimension.LENGTH, "unit \"AWG\" is not one of");
    }

    @Test
    void cyclesNeedAFrequency() throws UnitException {
        assertThat(Quantity.parse("10 cycles", Dimension.TIME, OptionalDouble.of(50))
                        .si())
                .isEqualTo(0.2);
        assertThat(Quantity.parse("1 cycle", Dimension.TIME, OptionalDouble.of(60))
                        .si())
                .isEqualTo(1.0 / 60);
        refuses("10 cycles", Dimension.TIME, "system.frequency");
        refuses("10 cycles", Dimension.LENGTH, "unit \"cycles\" is not one of");
        refuses("50 degF", Dimension.LENGTH, "unit \"degF\" is not one of");
    }

    @Test
    void whatIsNoNumberWithItsUnitIsRefusedWithAnExample() {
        refuses("long", Dimension.LENGTH, "is no number with a unit", "2.4 m");
        refuses("2,4 m", Dimension.LENGTH, "decimal comma", "2.4 m");
        refuses("2.4", Dimension.LENGTH, "has no unit", "2.4 m");
        refuses("2.4 V", Dimension.LENGTH, "unit \"V\" is not one of m, mm", "2.4 m");
        refuses("90 V", Dimension.RATIO, "unit \"V\" is not one of %, pu");
        refuses("1e999 km", Dimension.LENGTH, "too large", "2.4 m");
        assertThatIllegalArgumentException().isThrownBy(() -> new Quantity(Dimension.LENGTH, Double.NaN, "x"));
        assertThatIllegalArgumentException().isThrownBy(() -> Quantity.of(Dimension.LENGTH, Double.POSITIVE_INFINITY));
    }

    /** The example that a refusal gives must itself be read. */
    @ParameterizedTest
    @EnumSource(Dimension.class)
    void everyExampleIsRead(Dimension dimension) throws UnitException {
        String expected = Quantity.expected(dimension);
        if (dimension == Dimension.RATIO) {
            assertThat(expected).isEqualTo("a number without unit, or with %");
            return;
        }
        for (String example :
                expected.substring(expected.indexOf("such as ") + 8).split(", ", -1)) {
            assertThat(Quantity.parse(example, dimension, OptionalDouble.of(50)).si())
                    .isPositive();
        }
    }

    @ParameterizedTest
    @EnumSource(Dimension.class)
    void theFirstUnitIsTheOneThatIsComputedIn(Dimension dimension) {
        assertThat(dimension.factors()).containsEntry(dimension.siUnit(), 1.0);
        assertThat(dimension.factors().keySet()).first().isEqualTo(dimension.siUnit());
        assertThat(dimension.factors().values()).allMatch(factor -> factor > 0);
    }

    @Test
    void noTwoDimensionsShareTheirUnit() {
        Set<String> units = new HashSet<>();
        for (Dimension dimension : Dimension.values()) {
            assertThat(units.add(dimension.siUnit())).as(dimension.name()).isTrue();
        }
    }

    @Property(seed = "20261127", tries = 200)
    void whatIsPrintedIsReadBack(@ForAll @DoubleRange(min = -1e9, max = 1e9) double si) throws UnitException {
        for (Dimension dimension : Dimension.values()) {
            Quantity written = Quantity.of(dimension, si);
            assertThat(read(written.text(), dimension)).isEqualTo(written);
        }
    }
}
