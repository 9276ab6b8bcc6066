package earthing.study;

import earthing.quantity.Measure.Bound;
import earthing.quantity.Source;
import earthing.quantity.Worked;
import earthing.site.ArresterEarth;
import earthing.site.ArresterSide;
import earthing.site.Arresters;
import earthing.site.Site;
import earthing.surge.PowerExponential;
import earthing.surge.ProtectiveMargin;
import java.util.ArrayList;
import java.util.List;

/**
 * What the insulation of the tank sees, and the two protective margins. Only the leads that are in parallel with the
 * insulation count: the line lead and the lead to the tank; the down-lead below the tank's bond does not.
 */
final class ArresterStudy {

    private static final Source RESIDUAL = Source.owner("arresters.residual-voltage");
    /** Current at which the residual voltage is stated [A]. */
    private static final double NOMINAL = 10e3;

    private ArresterStudy() {}

    static StudyResults of(Site site) {
        Arresters arresters = site.arresters();
        if (arresters == null || arresters.side() == ArresterSide.NONE || arresters.side() == ArresterSide.UNKNOWN) {
            return StudyResults.EMPTY;
        }
        List<Result> results = new ArrayList<>();
        List<Gap> gaps = new ArrayList<>();
        Inputs in = new Inputs();
        try {
            if (arresters.earthedAt() != ArresterEarth.TANK) {
                throw new MissingInput(
                        "the arresters are not earthed on the tank; which leads count is not modelled then");
            }
            double residual = in.need(arresters.residualVoltage(), "arresters.residual-voltage", Bound.HIGH);
            double length = in.need(arresters.lineLead(), "arresters.line-lead", Bound.HIGH)
                    + in.need(arresters.earthLead(), "arresters.earth-lead", Bound.HIGH);
            double inductance = ProtectiveMargin.LEAD_INDUCTANCE * length;
            double slope = PowerExponential.impulse820(NOMINAL).steepest();
            double peak = residual + ProtectiveMargin.leadVoltage(inductance, slope);
            results.add(Result.of(
                    "surge.arrester.residual", Case.NONE, "nominal", residual, "V", "10 kA 8/20, declared", RESIDUAL));
            results.add(Result.of(
                            "surge.insulation.peak",
                            Case.NONE,
                            "nominal",
                            peak,
                            "V",
                            "residual voltage and leads at the steepest part of 10 kA 8/20",
                            ProtectiveMargin.SOURCE)
                    .withWorked(Worked.of("U", "U_r + L * S")
                            .with("U_r", residual, "V")
                            .with("L", inductance, "H")
                            .with("S", slope, "A/s")
                            .gives(peak, "V")));
            if (site.tank() == null) {
                throw new MissingInput("the file describes no tank", "tank");
            }
            double withstand = in.need(site.tank().impulseLevel(), "tank.impulse-level", Bound.LOW);
            double lead = ProtectiveMargin.leadVoltage(inductance, slope);
            results.add(margin("surge.insulation.margin", withstand, residual, lead));
            if (site.tank().choppedWaveLevel() != null) {
                double chopped = in.need(site.tank().choppedWaveLevel(), "tank.chopped-wave-level", Bound.LOW);
                double steep =
                        in.need(arresters.steepResidualVoltage(), "arresters.steep-residual-voltage", Bound.HIGH);
                double fast = ProtectiveMargin.leadVoltage(inductance, ProtectiveMargin.LEAD_STEEPNESS);
                results.add(margin("surge.insulation.chopped-margin", chopped, steep, fast));
            }
        } catch (MissingInput missing) {
            gaps.add(missing.gap("surge.insulation", Case.NONE));
        }
        return new StudyResults(results, List.of(), gaps, in.assumptions(), List.of());
    }

    private static Result margin(String id, double withstand, double level, double lead) {
        double margin = ProtectiveMargin.margin(withstand, level, lead);
        return Result.of(
                        id,
                        Case.NONE,
                        "nominal",
                        margin,
                        "",
                        "withstand over arrester level with leads, less one",
                        ProtectiveMargin.SOURCE)
                .withWorked(Worked.of("m", "U_w / (U_p + U_l) - 1")
                        .with("U_w", withstand, "V")
                        .with("U_p", level, "V")
                        .with("U_l", lead, "V")
                        .gives(margin, ""));
    }
}
