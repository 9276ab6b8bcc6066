package earthing.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class NumbersTest {

    /** ISO 80000-1:2009 annex B, rounding to the nearest, a half to the even digit (rule A, from memory; 12.25 and 12.75 are exact in binary). */
    @ParameterizedTest
    @CsvSource({
        "33.5, 3, 33.5",
        "0.0012, 3, 0.00120",
        "0.0001, 3, 0.000100",
        "0.00009999, 4, 9.999e-5",
        "1.2e-7, 3, 1.20e-7",
        "999999, 6, 999999",
        "999999, 3, 1.00e6",
        "123456, 3, 123000",
        "1000000, 3, 1.00e6",
        "-1234567, 3, -1.23e6",
        "12.25, 3, 12.2",
        "12.75, 3, 12.8",
        "9.996, 3, 10.0",
        "7, 1, 7",
        "0, 3, 0",
        "-0.0, 3, 0"
    })
    void roundingOfIso80000Part1AnnexB(double value, int digits, String text) {
        assertThat(Numbers.significant(value, digits)).isEqualTo(text);
    }

    @Test
    void whatIsNoNumberIsSaid() {
        assertThat(Numbers.significant(Double.NaN, 3)).isEqualTo("not a number");
        assertThat(Numbers.significant(Double.POSITIVE_INFINITY, 3)).isEqualTo("infinite");
        assertThat(Numbers.significant(Double.NEGATIVE_INFINITY, 3)).isEqualTo("-infinite");
        assertThat(Numbers.brief(Math.PI)).isEqualTo("3.14");
    }

    @Test
    void wholeNumbersHaveNoPoint() {
        assertThat(Numbers.full(25)).isEqualTo("25");
        assertThat(Numbers.full(0.1)).isEqualTo("0.1");
        assertThat(Numbers.full(-1)).isEqualTo("-1");
    }

    @Property(seed = "20261127", tries = 500)
    void roundingStaysWithinHalfADigit(
            @ForAll @DoubleRange(min = -12, max = 12) double decade, @ForAll @IntRange(min = 1, max = 15) int digits) {
        double value = Math.pow(10, decade);
        double read = Double.parseDouble(Numbers.significant(value, digits));
        double halfDigit = 0.5 * Math.pow(10, Math.floor(decade) - digits + 1);
        assertThat(read).isCloseTo(value, within(halfDigit * (1 + 1e-6) + value * 1e-15));
        assertThat(Numbers.significant(-value, digits)).isEqualTo("-" + Numbers.significant(value, digits));
    }
}
