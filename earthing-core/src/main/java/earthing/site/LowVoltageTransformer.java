package earthing.site;

import earthing.quantity.Dimension;
import earthing.quantity.Measure;
import org.jspecify.annotations.Nullable;

/** A distribution transformer on the same pole. */
public record LowVoltageTransformer(
        @Key(required = true, example = "no", doc = "Whether its low-voltage neutral is joined to the main earth.")
        YesNo neutralJoinedToMainEarth,

        @Key(
                unit = Dimension.RESISTANCE,
                example = "5 ohm",
                doc = "Resistance of the low-voltage network's own earths.")
        @Nullable
        Measure neutralEarthResistance,

        @Key(example = "neutral", text = Key.Text.ELECTRODE, doc = "Name of the neutral's electrode at this pole.")
        @Nullable
        String electrode,

        @Key(example = "3 kV", unit = Dimension.VOLTAGE, doc = "Power-frequency withstand between windings, r.m.s.")
        @Nullable
        Measure insulationLevel) {}
