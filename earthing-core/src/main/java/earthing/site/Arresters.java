package earthing.site;

import earthing.quantity.Dimension;
import earthing.quantity.Measure;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The surge arresters. */
public record Arresters(
        @Key(most = 3, example = "3", doc = "Phases with arresters.") @Nullable
        Integer phases,

        @Key(required = true, example = "both", doc = "Which side of the switchgear carries them.")
        ArresterSide side,

        @Key(brief = true, unit = Dimension.VOLTAGE, example = "24 kV", doc = "Rated voltage Ur, r.m.s.") @Nullable
        Measure ratedVoltage,

        @Key(
                brief = true,
                unit = Dimension.VOLTAGE,
                example = "19.2 kV",
                doc = "Continuous operating voltage Uc, r.m.s.")
        @Nullable
        Measure continuousVoltage,

        @Key(
                unit = Dimension.VOLTAGE,
                example = "27.6 kV",
                doc = "Temporary overvoltage withstood for the time below, r.m.s.")
        @Nullable
        Measure temporaryOvervoltage,

        @Key(unit = Dimension.TIME, example = "10 s", doc = "Time of that temporary overvoltage.") @Nullable
        Measure temporaryOvervoltageTime,

        @Key(brief = true, unit = Dimension.VOLTAGE, example = "66 kV", doc = "Residual voltage at 10 kA 8/20, peak.")
        @Nullable
        Measure residualVoltage,

        @Key(unit = Dimension.VOLTAGE, example = "73 kV", doc = "Residual voltage at 10 kA with a front of 1 us, peak.")
        @Nullable
        Measure steepResidualVoltage,

        @Key(doc = "Residual voltage at other 8/20 currents.")
        List<ResidualPoint> residualCurve,

        @Key(unit = Dimension.ENERGY, example = "60 kJ", doc = "Energy the arrester can take in one event.") @Nullable
        Measure energy,

        @Key(
                sign = Key.Sign.NOT_NEGATIVE,
                unit = Dimension.LENGTH,
                example = "0.5 m",
                doc = "Length of the lead between line terminal and arrester.")
        @Nullable
        Measure lineLead,

        @Key(
                sign = Key.Sign.NOT_NEGATIVE,
                unit = Dimension.LENGTH,
                example = "0.5 m",
                doc = "Length of the lead between arrester and tank.")
        @Nullable
        Measure earthLead,

        @Key(
                required = true,
                example = "tank",
                doc = "Where the arresters are earthed; tank is the earth terminal of the tank.")
        ArresterEarth earthedAt) {

    /**
     * Copies the lists.
     *
     */
    public Arresters {
        residualCurve = List.copyOf(residualCurve);
    }
}
