package earthing.surge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.withinPercentage;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

class InducedWaveTest {

    /** A ramp of 1 A/s induces the integral of the step response; by plain midpoint quadrature. */
    @Property(seed = "20261125", tries = 50)
    void aRampInducesTheIntegralOfTheStepResponse(
            @ForAll @DoubleRange(min = 40, max = 500) double distance,
            @ForAll @DoubleRange(min = 1, max = 20) double microseconds) {
        InducedVoltage step = new InducedVoltage(10, distance, InducedVoltage.USUAL_SPEED_RATIO);
        double end = microseconds * 1e-6 + distance / 3e8;
        int n = 20_000;
        double sum = 0;
        for (int k = 0; k < n; k++) {
            sum += step.stepResponse((k + 0.5) * end / n) * end / n;
        }
        double[] found = new InducedWave(10, distance).voltages(new double[] {0, end}, new double[] {0, end});
        assertThat(found[1]).isCloseTo(sum, withinPercentage(0.5));
    }

    /** A front of 0.01 µs is a jump: the peak is that of the formula, 120.3 kV for 31 kA, 10 m, 100 m (IEEE 1410, from memory). */
    @Test
    void ieee1410PeakForASteepFront() {
        int n = 400;
        double[] times = new double[n];
        double[] current = new double[n];
        for (int k = 0; k < n; k++) {
            times[k] = k * 1e-8;
            current[k] = k == 0 ? 0 : 31e3;
        }
        double peak = 0;
        for (double value : new InducedWave(10, 100).voltages(times, current)) {
            peak = Math.max(peak, value);
        }
        assertThat(peak).isBetween(120.3e3, 1.01 * 120.3e3);
    }

    @Property(seed = "20261125", tries = 50)
    void aSlowerFrontInducesLess(@ForAll @DoubleRange(min = 1e-1, max = 10) double front) {
        assertThat(ofFront(1.5 * front * 1e-6)).isLessThan(ofFront(front * 1e-6));
    }

    private static double ofFront(double front) {
        int n = 300;
        double[] times = new double[n];
        double[] current = new double[n];
        for (int k = 0; k < n; k++) {
            times[k] = k * 1e-7;
            current[k] = 30e3 * Math.min(1, times[k] / front);
        }
        double peak = 0;
        for (double value : new InducedWave(10, 60).voltages(times, current)) {
            peak = Math.max(peak, value);
        }
        return peak;
    }

    @Test
    void refusesWhatIsNoWave() {
        assertThatThrownBy(() -> new InducedWave(0, 1)).hasMessageContaining("height");
        assertThatThrownBy(() -> new InducedWave(1, 1).voltages(new double[] {0}, new double[] {0}))
                .hasMessageContaining("at least two");
    }
}
