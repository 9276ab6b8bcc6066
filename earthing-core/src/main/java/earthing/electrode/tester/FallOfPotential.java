package earthing.electrode.tester;

import earthing.electrode.wire.Bar;
import earthing.electrode.wire.BarShapes;
import earthing.electrode.wire.Discretisation;
import earthing.electrode.wire.EarthElectrodes;
import earthing.electrode.wire.EnergisedElectrodes;
import earthing.quantity.Source;
import earthing.soil.PointSource;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.apache.commons.math3.analysis.solvers.BrentSolver;

/**
 * What a fall-of-potential test reads on the electrode as it lies, in layered ground, with the current probe as a second
 * electrode: R(p) = (U_E − U(p))/I, with U_E the potential of the electrode and U(p) that of the surface at the potential
 * probe, while I enters at the electrode and leaves at the current probe. Other buried metal floats.
 *
 * <p>The reading is the resistance to remote earth at one place of the potential probe only. In uniform ground and far
 * from a small electrode that is 61.8 % of the distance; layers and the extent of the electrode move it.
 */
public final class FallOfPotential {

    /** Where the method and the rule of 61.8 % come from. */
    public static final Source SOURCE = Source.publication(
            "Curdts, Some of the fundamental aspects of ground resistance measurements, AIEE Transactions, 1958; Tagg,"
                    + " Earth Resistances, 1964",
            "fall-of-potential method; the potentials are those of the thin-wire solution, docs/theory/electrode.md",
            Source.Status.FROM_MEMORY);

    private static final String PROBE = "current probe";

    /** A driven test probe [m]; its size moves the reading by less than 1e-3 from 5 m on. Common practice. */
    private static final double PROBE_LENGTH = 0.3;

    private static final double PROBE_RADIUS = 0.006;

    private static final int SCAN = 48;

    private final ProbeLine line;
    private final double resistance;
    private final double rise;
    private final EnergisedElectrodes field;

    private FallOfPotential(ProbeLine line, double resistance, double rise, EnergisedElectrodes field) {
        this.line = line;
        this.resistance = resistance;
        this.rise = rise;
        this.field = field;
    }

    /**
     * Prepares a test.
     *
     * @param ground Green's function of the ground
     * @param bars all buried bars; those of other electrodes float
     * @param electrode name of the electrode under test
     * @param line where the probes stand
     * @return the test
     * @throws IllegalArgumentException when no bar has that name, or the current probe stands in a bar
     */
    public static FallOfPotential of(PointSource ground, List<Bar> bars, String electrode, ProbeLine line) {
        List<Bar> all = new ArrayList<>(bars);
        all.addAll(BarShapes.rod(
                PROBE, line.east(line.distance()), line.north(line.distance()), 0, PROBE_LENGTH, PROBE_RADIUS));
        EarthElectrodes solved = EarthElectrodes.of(ground, all, Discretisation.STANDARD);
        EnergisedElectrodes field = solved.carrying(Map.of(electrode, 1.0, PROBE, -1.0));
        return new FallOfPotential(
                line, solved.resistances().mutual(electrode, electrode), field.potentialOf(electrode), field);
    }

    /**
     * Resistance of the electrode to remote earth, which the test is to find.
     *
     * @return resistance [Ω]
     */
    public double resistance() {
        return resistance;
    }

    /**
     * What the instrument shows.
     *
     * @param place distance of the potential probe from the terminal [m], between 0 and that of the current probe
     * @return reading [Ω]
     */
    public double reading(double place) {
        if (!(place > 0 && place < line.distance())) {
            throw new IllegalArgumentException("the potential probe must stand between the electrode and the current"
                    + " probe at " + line.distance() + " m; have " + place + " m");
        }
        return rise - field.potential(line.east(place), line.north(place), 0);
    }

    /**
     * Error of a reading through the place of the probes.
     *
     * @param place distance of the potential probe from the terminal [m]
     * @return reading over resistance, less 1 [-]
     */
    public double error(double place) {
        return reading(place) / resistance - 1;
    }

    /**
     * Where the potential probe reads the resistance.
     *
     * @return distance from the terminal [m], the farthest where there are several; empty if no place on the line does
     */
    public OptionalDouble rightPlace() {
        double above = 0.98 * line.distance();
        for (int i = SCAN - 1; i >= 1; i--) {
            double below = 0.98 * line.distance() * i / SCAN;
            if (error(below) <= 0 && error(above) >= 0) {
                return OptionalDouble.of(
                        new BrentSolver(1e-9, 1e-9 * line.distance()).solve(100, this::error, below, above));
            }
            above = below;
        }
        return OptionalDouble.empty();
    }
}
