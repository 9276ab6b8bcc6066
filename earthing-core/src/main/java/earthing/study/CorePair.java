package earthing.study;

import earthing.network.TimeGrid;
import earthing.network.TransientSolution;
import earthing.quantity.Source;
import earthing.site.Site;
import java.util.ArrayList;
import java.util.List;

/**
 * The Thévenin pair between two cores of the control cable, lying side by side: one conducts to chassis at both ends – its
 * protectors have answered – the other is still open at one of them. Two cores that are both open rise together.
 */
final class CorePair {

    private static final Source MODEL =
            Source.tool("circuit of the pole with two cores in the time domain, docs/theory/surge-path.md");
    private static final double TOLERANCE = 1e-4;

    private CorePair() {}

    static List<Result> of(
            Site site,
            EarthPaths paths,
            SiteEarth earth,
            SurgeWave wave,
            double peak,
            Case circumstances,
            String at,
            Inputs in)
            throws MissingInput {
        TimeGrid grid = new TimeGrid(wave.end(), wave.firstStep(), TOLERANCE);
        TransientSolution open = TransientSolution.solve(
                PoleCircuit.of(site, paths, earth, wave.current(peak), PoleCircuit.Cores.NEIGHBOUR_OPEN, in)
                        .circuit(),
                grid);
        TransientSolution bonded = TransientSolution.solve(
                PoleCircuit.of(site, paths, earth, wave.current(peak), PoleCircuit.Cores.NEIGHBOUR_BONDED, in)
                        .circuit(),
                grid);
        double voltage = Math.abs(
                open.voltage(PoleCircuit.CORE_END, EarthPaths.CUBICLE).peak().value());
        double current = Math.abs(bonded.current(PoleCircuit.SECOND_CORE).peak().value());
        List<Result> results = new ArrayList<>();
        for (String end : List.of("tank", "cubicle")) {
            String id = "surge.cable-end.core-to-core." + end + ".";
            results.add(number(id + "open-voltage", circumstances, at, voltage, "V"));
            results.add(number(id + "short-circuit-current", circumstances, at, current, "A"));
        }
        return results;
    }

    private static Result number(String id, Case circumstances, String at, double value, String unit) {
        return Result.of(
                id, circumstances, at, value, unit, "two cores side by side, one of them bonded at both ends", MODEL);
    }
}
