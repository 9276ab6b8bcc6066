package earthing.study;

import earthing.network.Circuit;
import earthing.network.LosslessLine;
import earthing.network.TimeGrid;
import earthing.network.TransientSolution;
import earthing.network.Wave;
import earthing.network.Waveform;
import earthing.site.Site;
import earthing.surge.RampResponse;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What the control cable answers to a current that rises by 1 A/s, into the tank or into the struck conductor of the line.
 * The pole is linear; of the arresters those of the struck phase are taken as conducting without residual voltage and
 * those of the healthy phases as not conducting, so what enters the lead errs high.
 *
 * @param tank current into the tank
 * @param line stroke to the conductor here, then one span away and so on; one entry where the neighbours have no
 *     arresters, because a stroke further away then brings the same later; empty where the line is not described
 */
record StrokeResponses(Pair tank, List<Pair> line) {

    private static final double END = 120e-6;
    private static final double FIRST_STEP = 1e-9;
    private static final double STEP = 25e-9;
    private static final double TOLERANCE = 1e-4;
    /** An arrester that conducts, or an arc in its place [Ω]. */
    private static final double CONDUCTING = 1e-3;

    private static final String CONDUCTOR = "struck conductor";

    /** Open voltage of a core at the cubicle and current of a core that is bonded at both ends. */
    record Pair(RampResponse open, RampResponse shorted) {}

    StrokeResponses {
        line = List.copyOf(line);
    }

    static StrokeResponses of(Site arranged, SiteEarth earth, Optional<EntryInputs> line, Inputs in)
            throws MissingInput {
        EarthPaths paths = EarthPaths.of(arranged);
        Wave ramp = time -> Math.max(0, time);
        Circuit open = PoleCircuit.of(arranged, paths, earth, ramp, false, in).circuit();
        Circuit shorted = PoleCircuit.of(arranged, paths, earth, ramp, true, in).circuit();
        Pair tank = pair(open, shorted);
        List<Pair> struck = new ArrayList<>();
        if (line.isPresent()) {
            int farthest = line.get().neighboursHaveArresters() ? LineEntry.FOLLOWED : 0;
            for (int away = 0; away <= farthest; away++) {
                struck.add(pair(struck(open, line.get(), away, ramp), struck(shorted, line.get(), away, ramp)));
            }
        }
        return new StrokeResponses(tank, struck);
    }

    private static Pair pair(Circuit open, Circuit shorted) {
        TimeGrid grid = new TimeGrid(END, FIRST_STEP, TOLERANCE);
        Waveform voltage = TransientSolution.solve(open, grid).voltage(PoleCircuit.CORE_END, EarthPaths.CUBICLE);
        Waveform current = TransientSolution.solve(shorted, grid).current(PoleCircuit.CORE);
        return new Pair(
                new RampResponse(voltage, voltage.at(FIRST_STEP), STEP),
                new RampResponse(current, current.at(FIRST_STEP), STEP));
    }

    /** The pole with the struck phase of the line; a stroke some spans away, where the neighbours' arresters share it. */
    private static Circuit struck(Circuit pole, EntryInputs line, int away, Wave wave) {
        Circuit.Builder circuit = pole.toBuilder().remove(PoleCircuit.SOURCE);
        circuit.resistor("arrester of the struck phase", CONDUCTOR, EarthPaths.TANK, CONDUCTING);
        String strike = CONDUCTOR;
        int others = line.directions();
        if (away > 0) {
            strike = direction(circuit, line, "struck direction", 1, away);
            others--;
        }
        if (others > 0) {
            direction(circuit, line, "line", others, 0);
        }
        return circuit.currentSource(PoleCircuit.SOURCE, Circuit.REFERENCE, strike, wave)
                .build();
    }

    /** So many equal directions in parallel; gives the node so many spans away. */
    private static String direction(Circuit.Builder circuit, EntryInputs line, String name, int parallel, int asked) {
        double impedance = line.impedance(parallel)[0][0];
        String at = CONDUCTOR;
        String found = CONDUCTOR;
        int followed = line.neighboursHaveArresters() ? LineEntry.FOLLOWED : 0;
        for (int k = 1; k <= followed; k++) {
            String next = name + " pole " + k;
            circuit.line(name + " span " + k, at, next, LosslessLine.single(impedance, line.delay()));
            circuit.inductor(
                    next + " earth",
                    next,
                    Circuit.REFERENCE,
                    line.neighbourResistance() / parallel,
                    line.neighbourInductance() / parallel);
            at = next;
            if (k == asked) {
                found = next;
            }
        }
        circuit.resistor(name + " onward", at, Circuit.REFERENCE, impedance);
        return found;
    }
}
