package earthing.site;

import earthing.quantity.Dimension;
import earthing.quantity.Measure;
import org.jspecify.annotations.Nullable;

/** A reading taken on site. */
public record Measurement(
        @Key(required = true, example = "electrode-resistance", doc = "What was measured.")
        MeasurementKind kind,

        @Key(
                required = true,
                example = "main",
                doc =
                        "Name of the electrode; for a bond the name of a segment of the main earth, or main-earth, tee or own-lead.")
        String of,

        @Key(
                sign = Key.Sign.NOT_NEGATIVE,
                unit = Dimension.RESISTANCE,
                required = true,
                example = "18 ohm",
                doc = "The reading.")
        Measure value,

        @Key(required = true, example = "fall-of-potential", doc = "How it was measured.")
        MeasurementMethod method,

        @Key(required = true, example = "yes", doc = "Whether the electrode was disconnected from everything else.")
        YesNo isolated,

        @Key(example = "60 m", unit = Dimension.LENGTH, doc = "Distance of the current probe.") @Nullable
        Measure currentProbeDistance,

        @Key(example = "37 m", unit = Dimension.LENGTH, doc = "Distance of the potential probe.") @Nullable
        Measure potentialProbeDistance,

        @Key(text = Key.Text.DATE, required = true, example = "2026-03-02", doc = "ISO date.")
        String date,

        @Key(example = "wet", doc = "State of the ground.") @Nullable
        SoilState soilState) {}
