package earthing.report.document;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.OptionalDouble;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

final class AmountTest {

    private static String text(double si, String unit) {
        return Amount.text(si, unit).replace(Amount.NO_BREAK, " ");
    }

    /** Prefixes of ISO 80000-1:2022, table 3 (from memory). */
    @Test
    void prefixesOfTheInternationalSystem() {
        assertThat(text(6450, "V")).isEqualTo("6.45 kV");
        assertThat(text(1.06e-6, "H")).isEqualTo("1.06 µH");
        assertThat(text(120e-12, "F")).isEqualTo("120 pF");
        assertThat(text(0.0009, "ohm")).isEqualTo("0.900 mΩ");
        assertThat(text(7.6e-6, "s")).isEqualTo("7.60 µs");
        assertThat(text(90, "s")).isEqualTo("90.0 s");
        assertThat(text(70e-6, "m2")).isEqualTo("70.0 mm²");
        assertThat(text(2e-6, "/m2/a")).isEqualTo("2.00 /km²/a");
        assertThat(text(0.33e-3, "ohm/m")).isEqualTo("0.330 Ω/km");
        assertThat(text(0.016, "m")).isEqualTo("0.0160 m");
        assertThat(text(0.35, "")).isEqualTo("0.350");
        assertThat(text(0, "V")).isEqualTo("0 V");
    }

    @Test
    void roundingDoesNotLeaveAThousandOfASmallerUnit() {
        assertThat(text(999.4, "V")).isEqualTo("999 V");
        assertThat(text(999.6, "V")).isEqualTo("1.00 kV");
        assertThat(text(0.99951, "V")).isEqualTo("1.00 V");
    }

    @Test
    void marginsCarryTheirSign() {
        assertThat(Amount.margin(OptionalDouble.of(0.123)).replace(Amount.NO_BREAK, " "))
                .isEqualTo("+12 %");
        assertThat(Amount.margin(OptionalDouble.of(-14.45)).replace(Amount.NO_BREAK, " "))
                .isEqualTo("-1445 %");
        assertThat(Amount.margin(OptionalDouble.empty())).isEqualTo("–");
    }

    @Property(seed = "20261125", tries = 200)
    void printedVoltageIsTheValueToThreeDigits(@ForAll @DoubleRange(min = 1, max = 9e8) double volts) {
        String[] parts = text(volts, "V").split(" ", -1);
        double factor = switch (parts[1]) {
            case "V" -> 1;
            case "kV" -> 1e3;
            case "MV" -> 1e6;
            default -> Double.NaN;
        };
        double printed = new BigDecimal(parts[0]).doubleValue() * factor;
        assertThat(Math.abs(printed - volts)).isLessThanOrEqualTo(0.0051 * volts);
        assertThat(new BigDecimal(parts[0]).precision()).isLessThanOrEqualTo(4);
    }
}
