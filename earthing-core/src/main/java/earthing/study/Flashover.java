package earthing.study;

import earthing.network.Breakdown;
import earthing.network.Circuit;
import earthing.network.KirchhoffCheck;
import earthing.network.TimeGrid;
import earthing.network.TransientSolution;
import earthing.network.Waveform;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What happens where a prospective voltage exceeds the strength of a gap: what strikes first and what follows, in order,
 * and the voltages and currents that then remain. The core is followed open and bonded, as for the prospective pair.
 *
 * @param arcs the gaps that strike with the core open, in order of time
 * @param openVoltage highest voltage at the open end of the core, before and after the arcs [V]
 * @param shortCurrent highest current of the bonded core [A]
 * @param shortCharge charge through the bonded core [C]
 * @param tank highest potential of the tank [V]
 * @param cubicle highest potential of the cubicle [V]
 * @param members highest current by member, arcs included [A]
 * @param recheck laws checked on the solution with the open core
 */
record Flashover(
        List<Arc> arcs,
        double openVoltage,
        double shortCurrent,
        double shortCharge,
        double tank,
        double cubicle,
        Map<String, Double> members,
        KirchhoffCheck recheck) {

    /**
     * One gap that strikes.
     *
     * @param gap the gap
     * @param time time of the breakdown [s]
     * @param voltage voltage just before [V]
     * @param timeLag time of the breakdown by the volt–time curve [s]; empty if the gap then holds
     * @param lagValid whether that time lies within the range of the curve
     */
    record Arc(PoleGap gap, double time, double voltage, OptionalDouble timeLag, boolean lagValid) {}

    /**
     * Solves the case again with its gaps.
     *
     * @param prospective the solution with the core open and nothing flashing over
     * @param pole the pole's own circuit, whose members are told
     * @param current peak of the surge [A]
     */
    static Flashover of(
            List<PoleGap> gaps,
            TransientSolution prospective,
            PoleCircuit.Built open,
            PoleCircuit.Built bonded,
            Circuit pole,
            TimeGrid grid,
            double current) {
        TransientSolution solution = solve(gaps, open.circuit(), grid, false);
        // Only air has a curve; and while no voltage reaches it nothing strikes by it, as the solution without arcs
        // tells.
        boolean air = solution.flashovers().stream()
                .anyMatch(found ->
                        gaps.stream().anyMatch(gap -> gap.air() && gap.branch().equals(found.gap())));
        List<TransientSolution.Flashover> lagging =
                air && gaps.stream().anyMatch(gap -> gap.reachesWithTimeLag(prospective))
                        ? solve(gaps, open.circuit(), grid, true).flashovers()
                        : List.of();
        TransientSolution shorted = solve(gaps, bonded.circuit(), grid, false);
        List<Arc> arcs = new ArrayList<>();
        for (TransientSolution.Flashover found : solution.flashovers()) {
            Optional<PoleGap> ofPole =
                    gaps.stream().filter(g -> g.branch().equals(found.gap())).findFirst();
            if (ofPole.isEmpty()) {
                // A bushing, which is the line's.
                continue;
            }
            PoleGap gap = ofPole.get();
            OptionalDouble lag = lagging.stream()
                    .filter(f -> f.gap().equals(found.gap()))
                    .mapToDouble(TransientSolution.Flashover::time)
                    .findFirst();
            Breakdown curve = new Breakdown.VoltTime(gap.distance());
            boolean valid = gap.air()
                    && lag.isPresent()
                    && lag.getAsDouble() >= curve.shortestTime()
                    && lag.getAsDouble() <= curve.longestTime();
            arcs.add(new Arc(gap, found.time(), Math.abs(found.voltage()), lag, valid));
        }
        Waveform core = shorted.current(PoleCircuit.CORE);
        return new Flashover(
                List.copyOf(arcs),
                peak(solution.voltage(PoleCircuit.CORE_END, EarthPaths.CUBICLE)),
                peak(core),
                Math.abs(core.integral()),
                peak(solution.potential(EarthPaths.TANK)),
                peak(solution.potential(EarthPaths.CUBICLE)),
                members(pole, solution, current),
                KirchhoffCheck.of(solution));
    }

    private static TransientSolution solve(List<PoleGap> gaps, Circuit circuit, TimeGrid grid, boolean timeLag) {
        Circuit.Builder builder = circuit.toBuilder();
        for (PoleGap gap : gaps) {
            // With the core bonded its end is the cubicle, and that gap is there already.
            boolean there = circuit.nodes().contains(gap.from())
                    && (circuit.nodes().contains(gap.to()) || gap.to().equals(Circuit.REFERENCE));
            if (there) {
                if (timeLag) {
                    gap.addWithTimeLag(builder);
                } else {
                    gap.addTo(builder);
                }
            }
        }
        return TransientSolution.solve(builder.build(), grid);
    }

    private static Map<String, Double> members(Circuit pole, TransientSolution solution, double current) {
        Map<String, Double> peaks = MemberCurrents.peaks(pole, solution, current);
        for (TransientSolution.Flashover arc : solution.flashovers()) {
            peaks.put(arc.gap(), SurgeCase.settled(peak(solution.current(arc.gap())), current));
        }
        return peaks;
    }

    private static double peak(Waveform waveform) {
        return Math.abs(waveform.peak().value());
    }
}
