package earthing.fault;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DecrementFactorTest {

    /** IEEE Std 80-2013 table 10 at 60 Hz (from memory), tolerance half the last printed digit. */
    @ParameterizedTest
    @CsvSource({
        "0.00833, 1.576, 1.648, 1.675, 1.688",
        "0.05, 1.232, 1.378, 1.462, 1.515",
        "0.1, 1.125, 1.232, 1.316, 1.378",
        "0.2, 1.064, 1.125, 1.181, 1.232",
        "0.3, 1.043, 1.085, 1.125, 1.163",
        "0.4, 1.033, 1.064, 1.095, 1.125",
        "0.5, 1.026, 1.052, 1.077, 1.101",
        "0.75, 1.018, 1.035, 1.052, 1.068",
        "1.0, 1.013, 1.026, 1.039, 1.052"
    })
    void ieee80Table10(double time, double at10, double at20, double at30, double at40) {
        assertThat(DecrementFactor.of(10, 60, time)).isCloseTo(at10, within(0.0005));
        assertThat(DecrementFactor.of(20, 60, time)).isCloseTo(at20, within(0.0005));
        assertThat(DecrementFactor.of(30, 60, time)).isCloseTo(at30, within(0.0005));
        assertThat(DecrementFactor.of(40, 60, time)).isCloseTo(at40, within(0.0005));
    }

    @Test
    void limits() {
        assertThat(DecrementFactor.of(0, 50, 0.1)).isEqualTo(1);
        assertThat(DecrementFactor.of(1e12, 50, 0.1)).isCloseTo(Math.sqrt(3), within(1e-6));
        assertThat(DecrementFactor.of(Double.POSITIVE_INFINITY, 50, 0.1)).isEqualTo(Math.sqrt(3));
        // 10 ohm of electrode beside 5 ohm of reactance leave nothing of the offset
        assertThat(DecrementFactor.of(0.5, 50, 0.5)).isCloseTo(1.00, within(0.005));
        assertThatThrownBy(() -> DecrementFactor.of(Double.NaN, 50, 1)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> DecrementFactor.of(-1, 50, 1)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> DecrementFactor.of(1, 50, 0)).isInstanceOf(IllegalArgumentException.class);
    }

    @Property(seed = "20261125", tries = 100)
    void risesWithRatioAndFallsWithTime(
            @ForAll @DoubleRange(min = 0.1, max = 60) double ratio,
            @ForAll @DoubleRange(min = 0.01, max = 3) double time) {
        double factor = DecrementFactor.of(ratio, 50, time);
        assertThat(factor).isBetween(1.0, Math.sqrt(3));
        assertThat(DecrementFactor.of(1.1 * ratio, 50, time)).isGreaterThan(factor);
        assertThat(DecrementFactor.of(ratio, 50, 1.1 * time)).isLessThan(factor);
        assertThat(DecrementFactor.of(2 * ratio, 50, 2 * time)).isCloseTo(factor, within(1e-12));
    }
}
