package earthing.network;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** Extremes between samples. */
class WaveformTest {

    /** A cut step moves a sample by a few 1e-5 of the peak right beside its neighbour; exact solution 1. */
    @Test
    void crowdedSamplesDoNotMagnifyTheErrorOfAStep() {
        double[] times = {-0.18, -0.08, -0.001, 0, 0.001, 0.003, 0.007, 0.015, 0.031, 0.063, 0.13};
        double[] values = new double[times.length];
        for (int k = 0; k < times.length; k++) {
            values[k] = 1 - times[k] * times[k] - (times[k] >= 0 ? 4e-5 : 0);
        }
        assertThat(Waveform.of(times, values).peak().value()).isCloseTo(1, within(1e-4));
    }

    /** A jump from 0 to 2 and a slow fall: the peak is 2, not the 2.25 of a parabola through 0, 2, 2. */
    @Test
    void aJumpIsNotRefined() {
        Waveform jump = Waveform.of(new double[] {0, 1, 2, 3, 4}, new double[] {0, 0, 2, 1.999, 1.998});
        assertThat(jump.maximum().value()).isEqualTo(2);
        assertThat(jump.times(-1).minimum().value()).isEqualTo(-2);
        Waveform drop = Waveform.of(new double[] {0, 1, 2, 3, 4}, new double[] {1.998, 1.999, 2, 0, 0});
        assertThat(drop.maximum().value()).isEqualTo(2);
        Waveform smooth = Waveform.of(new double[] {0, 1, 2, 3, 4}, new double[] {-6.25, -2.25, -0.25, -0.25, -2.25});
        assertThat(smooth.maximum().value()).isCloseTo(0, within(1e-12));
    }
}
