package earthing.surge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import earthing.network.Circuit;
import earthing.network.TimeGrid;
import earthing.network.TransientSolution;
import earthing.network.Waveform;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.LongRange;
import org.junit.jupiter.api.Test;

class RampResponseTest {

    private static final double MUTUAL = 4.476e-6;
    private static final double RESISTANCE = 3.1;

    /** M and R in series: w = M + R t. */
    private static RampResponse series(double resistance) {
        double end = 200e-6;
        return new RampResponse(
                Waveform.of(new double[] {0, end}, new double[] {MUTUAL, MUTUAL + resistance * end}), MUTUAL, 5e-8);
    }

    @Test
    void aMutualInductanceAnswersWithTheLargestSteepness() {
        assertThat(series(0).peak(ConcaveFront.medianFirst())).isCloseTo(MUTUAL * 24.3e9, withinPercentage(1e-6));
        assertThat(series(0).peak(ConcaveFront.medianSubsequent())).isCloseTo(MUTUAL * 39.9e9, withinPercentage(1e-6));
    }

    @Property(seed = "20261125", tries = 50)
    void inductanceAndResistanceAnswerWithTheirSum(@ForAll @LongRange(min = 0, max = 1_000_000) long seed) {
        StrokeSampler sampler = new StrokeSampler(seed);
        for (ConcaveFront stroke : new ConcaveFront[] {sampler.first(), sampler.subsequent()}) {
            if (stroke.joinTime() > 100e-6) {
                continue;
            }
            double greatest = 0;
            for (int k = 1; k <= 8000; k++) {
                double t = k * 2.5 * stroke.joinTime() / 8000;
                greatest = Math.max(greatest, MUTUAL * stroke.rate(t) + RESISTANCE * stroke.at(t));
            }
            assertThat(series(RESISTANCE).peak(stroke)).isCloseTo(greatest, withinPercentage(0.5));
        }
    }

    /** A core that is shorted beside a lead, against the transient solution of the same circuit. */
    @Property(seed = "20261125", tries = 10)
    void aCoupledLoopAnswersAsItsTransientSolution(@ForAll @LongRange(min = 0, max = 1_000_000) long seed) {
        ConcaveFront stroke = new StrokeSampler(seed).first();
        RampResponse response = new RampResponse(
                TransientSolution.solve(loop(t -> Math.max(0, t)), new TimeGrid(300e-6, 1e-8, 1e-5))
                        .current("core"),
                0,
                5e-8);
        double peak =
                Math.abs(TransientSolution.solve(loop(stroke), new TimeGrid(300e-6, stroke.frontScale() / 300, 1e-4))
                        .current("core")
                        .peak()
                        .value());
        assertThat(response.peak(stroke)).isCloseTo(peak, withinPercentage(0.5));
    }

    private static Circuit loop(earthing.network.Wave wave) {
        return new Circuit.Builder()
                .inductor("lead", "tank", "tee", 1.5e-3, 8.2e-6)
                .inductor("core", "tank", "tee", 41e-3, 10.2e-6)
                .mutual("lead", "core", 3.7e-6)
                .resistor("earth", "tee", Circuit.REFERENCE, 4)
                .currentSource("source", Circuit.REFERENCE, "tank", wave)
                .build();
    }

    @Test
    void aSampledCurrentIsAnsweredExactlyWhereItIsStraight() {
        double[] times = {0, 1e-6, 3e-6, 10e-6};
        double[] values = {0, 2e3, 3e3, 0};
        // M·2 kA/µs + R·2 kA at the end of the first piece; by hand 4.476·2 + 3.1·2 = 15.152 kV.
        assertThat(series(RESISTANCE).peak(times, values)).isCloseTo(15.152e3, within(0.5));
    }

    @Test
    void refusesWhatHasNoBeginning() {
        assertThatThrownBy(() -> series(0).peak(new double[] {0, 1}, new double[] {1, 1}))
                .hasMessageContaining("begin with 0");
        assertThatThrownBy(() -> new RampResponse(Waveform.of(new double[] {0, 1}, new double[] {0, 1}), Double.NaN, 1))
                .hasMessageContaining("finite");
    }
}
