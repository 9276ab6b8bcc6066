package earthing.network;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;

/** Extremes between samples: a parabola is exact through a parabola, however the samples lie. */
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

    @Property(tries = 100)
    void vertexOfAParabolaIsFoundFromUnevenSamples(@ForAll long seed) {
        Random random = new Random(seed);
        double vertex = random.nextDouble() - 0.5;
        double[] times = new double[12];
        double[] values = new double[12];
        double time = -2;
        for (int k = 0; k < times.length; k++) {
            time += 0.02 + random.nextDouble() * 0.6;
            times[k] = time;
            values[k] = 3 - (time - vertex) * (time - vertex);
        }
        if (times[11] < 1) {
            return;
        }
        Waveform.Extreme top = Waveform.of(times, values).maximum();
        assertThat(top.value()).isCloseTo(3, within(1e-12));
        assertThat(top.time()).isCloseTo(vertex, within(1e-9));
    }
}
