package earthing.study;

import earthing.network.NonlinearResistance;
import earthing.quantity.Dimension;
import earthing.quantity.Measure;
import earthing.quantity.Measure.Bound;
import earthing.quantity.Source;
import earthing.site.ArresterEarth;
import earthing.site.ArresterSide;
import earthing.site.Arresters;
import earthing.site.Line;
import earthing.site.ResidualPoint;
import earthing.site.Site;
import earthing.site.YesNo;
import earthing.surge.ProtectiveMargin;
import earthing.surge.TwoSectionArrester;
import java.util.List;
import java.util.Optional;

/** What the site file says of the line and its arresters, as the surge sees it. */
final class EntryInputs {

    private static final Source TRAVEL = Source.publication(
            "L. V. Bewley, Traveling Waves on Transmission Systems, 2nd ed., Wiley 1951",
            "surge impedances of parallel conductors over perfect ground, 60 ln(D/d) ohm",
            Source.Status.FROM_MEMORY);
    private static final Source USUAL_LINE = Source.tool("a usual line of medium voltage");
    private static final Source USUAL_CURVE = Source.commonPractice(
            "residual voltage of metal-oxide arresters: 0.84, 0.94, 1, 1.10 of the value at 10 kA for 1, 5, 10, 20 kA");
    private static final Source CAUTIOUS =
            Source.tool("without arresters at the neighbours nothing relieves this pole: the higher current");

    /** Speed of waves on overhead conductors [m/s]. */
    private static final double LIGHT = 299_792_458;

    private static final double[] USUAL_CURRENTS = {1e3, 5e3, 10e3, 20e3};
    private static final double[] USUAL_RATIOS = {0.84, 0.94, 1, 1.10};

    private final double[][] impedance;
    private final int directions;
    private final double delay;
    private final boolean neighbours;
    private final double neighbourResistance;
    private final double neighbourInductance;
    private final ArresterSide side;
    private final int phases;
    private final double leadInductance;
    private final double residual;
    private final double[] currents;
    private final double[] voltages;
    private final Optional<TwoSectionArrester> detailed;
    private final Optional<Double> impulseLevel;

    private EntryInputs(Site site, Inputs in) throws MissingInput {
        Line line = site.line();
        if (line == null) {
            throw new MissingInput("the file describes no line", "line");
        }
        Arresters arresters = site.arresters();
        if (arresters == null || arresters.side() == ArresterSide.UNKNOWN) {
            throw new MissingInput("the arresters are not described", "arresters.side");
        }
        side = arresters.side();
        if (side != ArresterSide.NONE && arresters.earthedAt() != ArresterEarth.TANK) {
            throw new MissingInput(
                    "the arresters are not earthed on the tank; how the line's surge enters is not modelled then");
        }
        directions = line.spans() == null ? 2 : line.spans();
        if (line.spans() == null) {
            in.choice("line.spans", "2", USUAL_LINE);
        }
        impedance = impedances(line, in);
        delay = in.need(line.spanLength(), "line.span-length") / LIGHT;
        neighbours = line.neighboursHaveArresters() == YesNo.YES;
        if (line.neighboursHaveArresters() == null || line.neighboursHaveArresters() == YesNo.UNKNOWN) {
            in.choice("line.neighbours-have-arresters", "no", CAUTIOUS);
        }
        neighbourResistance = neighbours
                ? in.need(line.neighbourEarthResistance(), "line.neighbour-earth-resistance", Bound.NOMINAL)
                : 0;
        double height = height(line, in);
        neighbourInductance = 2e-7 * height * (Math.log(2 * height / 0.005) - 1);
        boolean here = side != ArresterSide.NONE;
        phases = !here ? 0 : arresters.phases() == null ? 3 : arresters.phases();
        leadInductance = !here
                ? 0
                : ProtectiveMargin.LEAD_INDUCTANCE
                        * (in.need(arresters.lineLead(), "arresters.line-lead")
                                + in.need(arresters.earthLead(), "arresters.earth-lead"));
        residual = here || neighbours ? in.need(arresters.residualVoltage(), "arresters.residual-voltage") : 0;
        List<ResidualPoint> points = arresters.residualCurve();
        boolean drawn = residual > 0 && points.size() >= 2;
        currents = drawn ? new double[points.size()] : USUAL_CURRENTS.clone();
        voltages = new double[currents.length];
        for (int k = 0; k < currents.length; k++) {
            if (drawn) {
                currents[k] = in.need(points.get(k).current(), "arresters.residual-curve.current");
                voltages[k] = in.need(points.get(k).voltage(), "arresters.residual-curve.voltage");
            } else {
                voltages[k] = USUAL_RATIOS[k] * residual;
            }
        }
        if (residual > 0) {
            requireRising();
            if (!drawn) {
                in.choice(
                        "arresters.residual-curve",
                        "of usual shape through the declared residual voltage",
                        USUAL_CURVE);
            }
        }
        detailed = here ? detailed(arresters) : Optional.empty();
        impulseLevel = known(site.tank() == null ? null : site.tank().impulseLevel());
    }

    static EntryInputs of(Site site, Inputs in) throws MissingInput {
        return new EntryInputs(site, in);
    }

    private void requireRising() throws MissingInput {
        for (int k = 1; k < currents.length; k++) {
            if (!(currents[k] > currents[k - 1]) || !(voltages[k] > voltages[k - 1])) {
                throw new MissingInput(
                        "current and voltage of the residual curve have to rise from point to point",
                        "arresters.residual-curve");
            }
        }
    }

    private Optional<TwoSectionArrester> detailed(Arresters arresters) {
        Optional<Double> steep = known(arresters.steepResidualVoltage());
        Optional<Double> rated = known(arresters.ratedVoltage());
        return steep.isPresent() && rated.isPresent() && steep.get() > residual
                ? Optional.of(TwoSectionArrester.ofResidualVoltages(residual, steep.get(), rated.get()))
                : Optional.empty();
    }

    private static Optional<Double> known(@org.jspecify.annotations.Nullable Measure measure) {
        return measure != null && measure.isKnown() ? Optional.of(measure.nominal()) : Optional.empty();
    }

    private static double height(Line line, Inputs in) throws MissingInput {
        return in.orElse(line.height(), "line.height", 10, Dimension.LENGTH, USUAL_LINE);
    }

    /** Own surge impedance as declared, mutual ones from height and spacing; the phases stand side by side. */
    private static double[][] impedances(Line line, Inputs in) throws MissingInput {
        double height = height(line, in);
        double spacing = in.orElse(line.phaseSpacing(), "line.phase-spacing", 1.1, Dimension.LENGTH, USUAL_LINE);
        double own;
        if (line.surgeImpedance() == null && line.conductorDiameter() != null) {
            own = 60 * Math.log(4 * height / in.need(line.conductorDiameter(), "line.conductor-diameter"));
            in.choice("line.surge-impedance", Math.round(own) + " ohm, from height and diameter", TRAVEL);
        } else {
            own = in.orElse(line.surgeImpedance(), "line.surge-impedance", 450, Dimension.RESISTANCE, USUAL_LINE);
        }
        double[][] z = new double[3][3];
        for (int i = 0; i < 3; i++) {
            for (int j = 0; j < 3; j++) {
                double apart = Math.abs(i - j) * spacing;
                z[i][j] = i == j ? own : 60 * Math.log(Math.hypot(2 * height, apart) / apart);
            }
        }
        if (!(z[0][1] < own)) {
            throw new MissingInput(
                    "the phases are so close that their mutual surge impedance exceeds the declared own one",
                    "line.surge-impedance",
                    "line.phase-spacing");
        }
        return z;
    }

    /** Own and mutual surge impedances of so many equal directions in parallel [Ω]. */
    double[][] impedance(int parallel) {
        double[][] z = new double[3][3];
        for (int i = 0; i < 3; i++) {
            for (int j = 0; j < 3; j++) {
                z[i][j] = impedance[i][j] / parallel;
            }
        }
        return z;
    }

    /** Surge impedance of all phases together in all directions [Ω]. */
    double common() {
        double sum = 0;
        for (double[] row : impedance) {
            for (double value : row) {
                sum += value;
            }
        }
        return sum / (impedance.length * impedance.length * directions);
    }

    int directions() {
        return directions;
    }

    /** Time of travel over one span [s]. */
    double delay() {
        return delay;
    }

    boolean neighboursHaveArresters() {
        return neighbours;
    }

    /** Earth of a neighbouring pole [Ω]. */
    double neighbourResistance() {
        return neighbourResistance;
    }

    /** Down-lead of a neighbouring pole, as a single straight wire [H]. */
    double neighbourInductance() {
        return neighbourInductance;
    }

    /** Whether the arresters of a side are there; with the switch closed either side serves. */
    boolean protects(ArresterSide which) {
        return side == ArresterSide.BOTH || side == which;
    }

    int sides() {
        return side == ArresterSide.NONE ? 0 : side == ArresterSide.BOTH ? 2 : 1;
    }

    /** Number of phases that carry arresters, the struck one first. */
    int phases() {
        return phases;
    }

    /** Leads in series with so many equal arresters in parallel [H]; without leads that of 1 mm stands in. */
    double leadInductance(int parallel) {
        return Math.max(leadInductance, 1e-3 * ProtectiveMargin.LEAD_INDUCTANCE) / parallel;
    }

    /** Residual voltage at 10 kA 8/20 [V]; 0 without arresters anywhere. */
    double residual() {
        return residual;
    }

    /** Residual curve of so many equal arresters in parallel. */
    NonlinearResistance curve(int parallel) {
        double[] together = currents.clone();
        for (int k = 0; k < together.length; k++) {
            together[k] *= parallel;
        }
        return new NonlinearResistance.LogLog(together, voltages);
    }

    /** The arrester with its dependence on the front, where the file gives what it takes. */
    Optional<TwoSectionArrester> detailed() {
        return detailed;
    }

    /** Impulse withstand level of the bushings [V]. */
    Optional<Double> impulseLevel() {
        return impulseLevel;
    }
}
