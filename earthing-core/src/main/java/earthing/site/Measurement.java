package earthing.site;

import earthing.quantity.Dimension;
import earthing.quantity.Measure;
import org.jspecify.annotations.Nullable;

/** A reading taken on site. */
public record Measurement(
        @Key(required = true, example = "electrode-resistance", doc = "electrode-resistance or bond-continuity.")
        MeasurementKind kind,

        @Key(required = true, example = "main", doc = "Name of the electrode or segment.")
        String of,

        @Key(unit = Dimension.RESISTANCE, required = true, example = "18 ohm", doc = "The reading.")
        Measure value,

        @Key(
                required = true,
                example = "fall-of-potential",
                doc = "fall-of-potential, clamp-on, dead-earth or four-wire.")
        MeasurementMethod method,

        @Key(required = true, example = "yes", doc = "Whether the electrode was disconnected from everything else.")
        YesNo isolated,

        @Key(unit = Dimension.LENGTH, doc = "Distance of the current probe.") @Nullable
        Measure currentProbeDistance,

        @Key(unit = Dimension.LENGTH, doc = "Distance of the potential probe.") @Nullable
        Measure potentialProbeDistance,

        @Key(required = true, example = "2026-03-02", doc = "ISO date.")
        String date,

        @Key(example = "wet", doc = "State of the ground.") @Nullable
        SoilState soilState) {}
