package earthing.study;

import earthing.network.TransientSolution;
import earthing.network.Waveform;
import java.util.Map;

/** What passes between line and tank: over the arresters and over the bushings that strike. */
final class EntryCurrents {

    /** Least current into the tank that is told of an arrester no stroke hits [A]; below 1 mA it leaks as in service. */
    private static final double NOTHING = 1e-3;

    private EntryCurrents() {}

    /** Takes one result. */
    interface Sink {
        void accept(String id, double value, String unit);
    }

    /** All that enters the tank from the line; negative where the line takes it away [A]. */
    static Waveform intoTank(LineEntry.Joined joined, TransientSolution solution) {
        Waveform total = solution.potential(EarthPaths.TANK).times(0);
        for (LineEntry.Fitted fitted : joined.arresters().values()) {
            for (String branch : fitted.branches()) {
                total = total.plus(solution.current(branch));
            }
        }
        for (TransientSolution.Flashover arc : solution.flashovers()) {
            if (arc.gap().startsWith(LineEntry.BUSHING)) {
                total = total.plus(solution.current(arc.gap()));
            }
        }
        return total;
    }

    /** Currents, energy and charge of each arrester. */
    static void arresters(LineEntry.Joined joined, TransientSolution solution, Sink sink) {
        for (Map.Entry<String, LineEntry.Fitted> entry : joined.arresters().entrySet()) {
            LineEntry.Fitted fitted = entry.getValue();
            String id = "surge.arrester." + entry.getKey() + ".";
            Waveform current = solution.current(fitted.branches().get(0)).times(1.0 / fitted.parallel());
            Waveform voltage = solution.voltage(fitted.top(), EarthPaths.TANK);
            double forward = Math.max(0, current.maximum().value());
            if (forward > NOTHING || !joined.struck().isEmpty()) {
                sink.accept(id + "current.peak", forward, "A");
            }
            sink.accept(
                    id + "reverse-current.peak", Math.max(0, -current.minimum().value()), "A");
            sink.accept(id + "energy", voltage.combine(current, (a, b) -> a * b).integral(), "J");
            sink.accept(id + "charge", Math.abs(current.integral()), "C");
        }
    }
}
