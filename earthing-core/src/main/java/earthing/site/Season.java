package earthing.site;

import earthing.quantity.Dimension;
import earthing.quantity.Measure;
import org.jspecify.annotations.Nullable;

/** Drying or freezing multiplies the resistivity of a top depth only. */
public record Season(
        @Key(
                unit = Dimension.LENGTH,
                required = true,
                example = "0.8 m",
                doc = "Depth to which the ground dries or freezes.")
        Measure depth,

        @Key(
                unit = Dimension.RATIO,
                required = true,
                example = "3",
                doc = "Worst factor on the resistivity of that depth.")
        Measure factor,

        @Key(example = "wet", doc = "State of the ground when the resistivity was found.") @Nullable
        SoilState surveyState) {}
