package earthing.network;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.withinPercentage;

import org.junit.jupiter.api.Test;

/**
 * Peaks of the pole circuits against ngspice 39 (trapezoidal, 5 ns or 0.5 ns): 0.1 %. An independent nodal code agreed
 * with ngspice within 1e-5.
 */
class PoleDecksTest {

    private static final double PERCENT = 0.1;

    private static void peak(Waveform waveform, double value, double time) {
        Waveform.Extreme found = waveform.maximum();
        assertThat(found.value()).isCloseTo(value, withinPercentage(PERCENT));
        assertThat(found.time()).isCloseTo(time, withinPercentage(4.0));
    }

    @Test
    void sharedEarthAt820() {
        for (TimeGrid grid : new TimeGrid[] {TimeGrid.equal(40e-6, 20e-9), TimeGrid.adaptive(40e-6, 20e-9)}) {
            TransientSolution s = TransientSolution.solve(PoleDecks.ng1(PoleDecks.impulse820()), grid);
            peak(s.potential("tank"), 335611.1, 11.33722e-6);
            peak(s.potential("cub"), 334931.8, 11.60722e-6);
            peak(s.voltage("tank", "cub"), 12937.71, 4.977216e-6);
            peak(s.voltage("corend", "cub"), 6522.408, 4.997216e-6);
            assertThat(s.voltage("tank", "cub").minimum().value()).isCloseTo(-5482.356, withinPercentage(PERCENT));
            assertThat(s.voltage("corend", "cub").minimum().value()).isCloseTo(-2685.819, withinPercentage(PERCENT));
        }
    }

    @Test
    void sharedEarthAtFastFront() {
        for (TimeGrid grid : new TimeGrid[] {TimeGrid.equal(10e-6, 1e-9), TimeGrid.adaptive(10e-6, 1e-9)}) {
            TransientSolution s = TransientSolution.solve(PoleDecks.ng1(PoleDecks.impulseFast()), grid);
            peak(s.potential("tank"), 876643.3, 0.45548e-6);
            peak(s.potential("cub"), 416345.9, 0.48148e-6);
            peak(s.voltage("tank", "cub"), 481813.3, 0.44498e-6);
            peak(s.voltage("corend", "cub"), 241500.1, 0.44498e-6);
        }
    }

    @Test
    void separateEarthsAt820() {
        for (TimeGrid grid : new TimeGrid[] {TimeGrid.equal(40e-6, 20e-9), TimeGrid.adaptive(40e-6, 20e-9)}) {
            TransientSolution s = TransientSolution.solve(PoleDecks.ng2(PoleDecks.impulse820()), grid);
            peak(s.potential("tank"), 335601.7, 11.33718e-6);
            peak(s.potential("cub"), 29177.94, 11.08218e-6);
            peak(s.voltage("tank", "cub"), 306446.2, 11.36218e-6);
            peak(s.voltage("corend", "cub"), 306160.8, 11.51218e-6);
        }
    }

    @Test
    void separateEarthsAtFastFront() {
        TransientSolution s =
                TransientSolution.solve(PoleDecks.ng2(PoleDecks.impulseFast()), TimeGrid.adaptive(10e-6, 1e-9));
        peak(s.potential("tank"), 876619.6, 0.45548e-6);
        peak(s.potential("cub"), 114096.8, 0.45148e-6);
        peak(s.voltage("tank", "cub"), 762770.7, 0.45648e-6);
        peak(s.voltage("corend", "cub"), 528825.7, 0.46448e-6);
    }

    @Test
    void sharedEarthWithArresterAndScreen() {
        for (TimeGrid grid : new TimeGrid[] {TimeGrid.equal(40e-6, 5e-9), TimeGrid.adaptive(40e-6, 5e-9)}) {
            TransientSolution s = TransientSolution.solve(PoleDecks.ng3(), grid);
            peak(s.potential("tank"), 335584.9, 11.31207e-6);
            peak(s.potential("cub"), 335054.9, 11.50707e-6);
            peak(s.voltage("tank", "cub"), 9462.383, 4.972074e-6);
            peak(s.voltage("corend", "cub"), 59.04707, 11.76207e-6);
            peak(s.voltage("line", "tanka"), 64449.59, 8.402074e-6);
            peak(s.potential("line"), 399654.6, 11.26207e-6);
            peak(s.voltage("line", "tank"), 64926.40, 7.957074e-6);
            peak(s.current("screen"), 5099.057, 11.76207e-6);
            assertThat(s.beyondData()).isEmpty();
        }
    }

    @Test
    void separateEarthsWithArrester() {
        for (TimeGrid grid : new TimeGrid[] {TimeGrid.equal(40e-6, 5e-9), TimeGrid.adaptive(40e-6, 5e-9)}) {
            TransientSolution s = TransientSolution.solve(PoleDecks.ng4(), grid);
            peak(s.potential("tank"), 335908.8, 11.24115e-6);
            peak(s.potential("cub"), 29170.24, 11.10115e-6);
            peak(s.voltage("tank", "cub"), 306745.2, 11.25615e-6);
            peak(s.voltage("corend", "cub"), 306353.0, 11.40115e-6);
            peak(s.voltage("line", "tanka"), 64449.59, 8.396147e-6);
            peak(s.voltage("line", "tank"), 64926.42, 7.956147e-6);
            peak(s.potential("line"), 400004.6, 11.19115e-6);
        }
    }
}
