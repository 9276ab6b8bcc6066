package earthing.reference;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.math.RoundingMode;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.BigRange;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Scale;

class ToleranceTest {

    private static final int TRIES = 200;

    @Example
    void lastDigitIsReadFromThePrint() {
        assertThat(PrintedNumber.parse("32 ohm").lastDigit()).isEqualTo(1);
        assertThat(PrintedNumber.parse("0.120").lastDigit()).isEqualTo(0.001);
        assertThat(PrintedNumber.parse("1.2e3 A").lastDigit()).isEqualTo(100);
        assertThat(PrintedNumber.parse("1200 A").lastDigit()).isEqualTo(1);
        assertThat(PrintedNumber.parse("-.5").lastDigit()).isEqualTo(0.1);
        assertThat(PrintedNumber.parse("7.").lastDigit()).isEqualTo(1);
    }

    /** A value rounded to any number of decimals gives a print that accepts the value. */
    @Property(seed = "20261125", tries = TRIES)
    void roundedValueAcceptsItsOrigin(
            @ForAll @BigRange(min = "-1e6", max = "1e6") @Scale(9) BigDecimal value,
            @ForAll @IntRange(min = 0, max = 6) int decimals) {
        String print = value.setScale(decimals, RoundingMode.HALF_UP).toPlainString();
        assertThat(Tolerance.lastDigit().accepts(PrintedNumber.parse(print), value.doubleValue()))
                .isTrue();
    }

    /** What lies clearly beyond half a digit, on either side, is refused. */
    @Property(seed = "20261125", tries = TRIES)
    void valueBeyondHalfADigitIsRefused(
            @ForAll @BigRange(min = "-1e6", max = "1e6") @Scale(3) BigDecimal print,
            @ForAll @DoubleRange(min = 0.51, max = 1e3) double digits,
            @ForAll boolean above) {
        PrintedNumber printed = PrintedNumber.parse(print.toPlainString());
        double value = printed.value() + (above ? 1 : -1) * digits * printed.lastDigit();
        assertThat(Tolerance.lastDigit().accepts(printed, value)).isFalse();
    }

    /** Another printed digit can only narrow the tolerance. */
    @Property(seed = "20261125", tries = TRIES)
    void furtherPrintedZeroTightensTenfold(@ForAll @BigRange(min = "0.001", max = "1e6") @Scale(3) BigDecimal print) {
        PrintedNumber coarse = PrintedNumber.parse(print.toPlainString());
        PrintedNumber fine =
                PrintedNumber.parse(print.setScale(print.scale() + 1).toPlainString());
        assertThat(fine.value()).isEqualTo(coarse.value());
        assertThat(Tolerance.lastDigit().allowed(fine))
                .isCloseTo(Tolerance.lastDigit().allowed(coarse) / 10, within(1e-15));
    }

    /** The unit of the print does not decide whether a value passes. */
    @Property(seed = "20261125", tries = TRIES)
    void shareToleranceDoesNotDependOnTheUnit(
            @ForAll @DoubleRange(min = 0.1, max = 100) double kiloampere,
            @ForAll @DoubleRange(min = 0.01, max = 50) double percent,
            @ForAll @DoubleRange(min = -2, max = 2) double edges) {
        if (Math.abs(Math.abs(edges) - 1) < 1e-6) {
            return;
        }
        Tolerance share = Tolerance.parse(BigDecimal.valueOf(percent).toPlainString() + " %");
        String text = BigDecimal.valueOf(kiloampere).toPlainString();
        PrintedNumber inKiloampere = PrintedNumber.parse(text + " kA");
        PrintedNumber inAmpere = PrintedNumber.parse(
                BigDecimal.valueOf(kiloampere).movePointRight(3).toPlainString() + " A");
        double si = kiloampere * 1e3 * (1 + edges * percent / 100);
        assertThat(share.accepts(inKiloampere, si)).isEqualTo(Math.abs(edges) < 1);
        assertThat(share.accepts(inAmpere, si)).isEqualTo(Math.abs(edges) < 1);
    }

    /** An absolute width works across the units of one dimension. */
    @Property(seed = "20261125", tries = TRIES)
    void absoluteToleranceConvertsItsUnit(@ForAll @DoubleRange(min = -3, max = 3) double millimetres) {
        Tolerance width = Tolerance.parse("2 mm");
        boolean accepted = width.accepts(PrintedNumber.parse("1.0 m"), 1 + millimetres * 1e-3);
        if (Math.abs(Math.abs(millimetres) - 2) > 1e-9) {
            assertThat(accepted).isEqualTo(Math.abs(millimetres) < 2);
        }
    }

    @Example
    void notANumberAndInfiniteAreNeverNearAnything() {
        for (String text : new String[] {"last-digit", "50 %", "1000 m"}) {
            Tolerance tolerance = Tolerance.parse(text);
            assertThat(tolerance.accepts(PrintedNumber.parse("5 m"), Double.NaN))
                    .isFalse();
            assertThat(tolerance.accepts(PrintedNumber.parse("5 m"), Double.POSITIVE_INFINITY))
                    .isFalse();
            assertThat(tolerance.accepts(PrintedNumber.parse("infinite"), 1e300))
                    .isFalse();
            assertThat(tolerance.accepts(PrintedNumber.parse("infinite s"), Double.POSITIVE_INFINITY))
                    .isTrue();
        }
    }

    @Example
    void tolerancesThatNothingOrAnythingMeetsAreRefused() {
        for (String text : new String[] {"0 %", "101 %", "0 m", "-1 m", "wide", "infinite", "1 parsec"}) {
            assertThatThrownBy(() -> Tolerance.parse(text)).isInstanceOf(IllegalArgumentException.class);
        }
        assertThatThrownBy(() -> Tolerance.parse("1 %").allowed(PrintedNumber.parse("0.0")))
                .hasMessageContaining("share of zero");
    }

    @Example
    void composedUnitsHaveTheProductOfTheirFactors() {
        assertThat(CaseUnit.parse("kA/us").factor()).isCloseTo(1e9, within(1e-3));
        assertThat(CaseUnit.parse("kA2.s").factor()).isCloseTo(1e6, within(1e-9));
        assertThat(CaseUnit.parse("A.s^0.5/mm2").factor()).isCloseTo(1e6, within(1e-6));
        assertThat(CaseUnit.parse("J/K/mm3").factor()).isCloseTo(1e9, within(1e-3));
        assertThat(CaseUnit.parse("ohm/m").dimension()).isPresent();
        for (String text : new String[] {"parsec", "ohm.parsec", "/m//", "m..m", "ohm/"}) {
            assertThatThrownBy(() -> CaseUnit.parse(text))
                    .isInstanceOf(IllegalArgumentException.class)
                    .hasMessageContaining("is no unit");
        }
    }

    /** A unit text means one thing only, so a value's unit can tell its dimension. */
    @Example
    void noUnitTextStandsForTwoDimensions() {
        java.util.Map<String, earthing.quantity.Dimension> seen = new java.util.HashMap<>();
        for (earthing.quantity.Dimension dimension : earthing.quantity.Dimension.values()) {
            for (String text : dimension.factors().keySet()) {
                assertThat(seen.put(text, dimension)).as(text).isNull();
            }
        }
    }
}
