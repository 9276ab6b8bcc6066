package earthing.site;

import earthing.quantity.Dimension;
import earthing.quantity.Measure;
import org.jspecify.annotations.Nullable;

/** The overhead line at this pole. */
public record Line(
        @Key(most = 4, example = "2", doc = "Line directions that leave the pole.") @Nullable
        Integer spans,

        @Key(unit = Dimension.LENGTH, example = "80 m", doc = "Distance to the neighbouring poles.") @Nullable
        Measure spanLength,

        @Key(unit = Dimension.LENGTH, example = "10.5 m", doc = "Height of the phase conductors.") @Nullable
        Measure height,

        @Key(unit = Dimension.LENGTH, example = "1.1 m", doc = "Horizontal distance between phases.") @Nullable
        Measure phaseSpacing,

        @Key(unit = Dimension.LENGTH, example = "12 mm", doc = "Diameter of a phase conductor.") @Nullable
        Measure conductorDiameter,

        @Key(unit = Dimension.RESISTANCE, example = "450 ohm", doc = "Surge impedance of one phase conductor each way.")
        @Nullable
        Measure surgeImpedance,

        @Key(example = "no", doc = "Whether the neighbouring poles carry arresters.") @Nullable
        YesNo neighboursHaveArresters,

        @Key(
                unit = Dimension.RESISTANCE,
                example = "40 ohm",
                doc = "Resistance of the earth at the neighbouring poles.")
        @Nullable
        Measure neighbourEarthResistance) {}
