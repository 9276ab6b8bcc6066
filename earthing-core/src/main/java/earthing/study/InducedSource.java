package earthing.study;

import earthing.surge.ConcaveFront;
import earthing.surge.InducedVoltage;
import earthing.surge.InducedWave;
import earthing.surge.RampResponse;
import java.util.Optional;

/**
 * The line beside a stroke as a source: the induced voltage stands on all phases alike, behind the surge impedance that
 * all phases together show both ways, and enters the tank once it exceeds the residual voltage of the arresters.
 *
 * @param height effective height of the line [m]
 * @param impedance common surge impedance of all phases both ways, with the electrode behind the tank [Ω]
 * @param threshold residual voltage of the arresters, or the impulse level of the bushings where there are none [V]
 */
record InducedSource(double height, double impedance, double threshold) {

    /** The true peak in time lies up to 1 % above that of the simplified formula, and that up to 0.1 % below the full one. */
    private static final double EXCESS = 1.02;

    /** Current that enters the tank, straight between its times. */
    static final class Entering {
        private final double[] times;
        private final double[] current;

        private Entering(double[] times, double[] current) {
            this.times = times;
            this.current = current;
        }

        double peak(RampResponse response) {
            return response.peak(times, current);
        }
    }

    static InducedSource of(OwnPole own, EntryInputs line, double height) {
        double ground = own.earth().soil().layers().get(0).resistivity();
        return new InducedSource(
                InducedVoltage.effectiveHeight(height, ground),
                line.common() + own.resistance(),
                line.sides() > 0 ? line.residual() : line.impulseLevel().orElse(0.0));
    }

    /** Distance beyond which a stroke of a peak sends nothing into the tank [m]; no limit where nothing holds it back. */
    double reach(double peak) {
        return threshold > 0
                ? InducedVoltage.simplifiedPeak(EXCESS * peak, 1, 2) * 2 * height / threshold
                : Double.POSITIVE_INFINITY;
    }

    /** What a stroke at a distance sends into the tank; nothing where the voltage stays below the threshold. */
    Optional<Entering> into(ConcaveFront stroke, double distance, double end) {
        if (!(distance > height)
                || InducedVoltage.simplifiedPeak(EXCESS * stroke.peak(), height, distance) <= threshold) {
            return Optional.empty();
        }
        double[] times = RampResponse.knots(stroke, end);
        double[] current = new double[times.length];
        for (int k = 0; k < times.length; k++) {
            current[k] = stroke.at(times[k]);
        }
        double[] entering = new InducedWave(height, distance).voltages(times, current);
        boolean any = false;
        for (int k = 0; k < times.length; k++) {
            entering[k] = Math.max(0, entering[k] - threshold) / impedance;
            any |= entering[k] > 0;
        }
        return any ? Optional.of(new Entering(times, entering)) : Optional.empty();
    }
}
