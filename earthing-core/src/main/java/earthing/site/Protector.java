package earthing.site;

import earthing.quantity.Dimension;
import earthing.quantity.Measure;
import org.jspecify.annotations.Nullable;

/** A surge protector between a core and chassis. */
public record Protector(
        @Key(unit = Dimension.VOLTAGE, required = true, example = "600 V", doc = "Voltage protection level, peak.")
        Measure level,

        @Key(
                unit = Dimension.CURRENT,
                required = true,
                example = "10 kA",
                doc = "Rated discharge current on 8/20, peak.")
        Measure current,

        @Key(
                example = "clamping",
                doc = "Whether it clamps at its level or fires and burns low; absent assumes the worse.")
        @Nullable
        ProtectorKind kind,

        @Key(example = "0.3 C", unit = Dimension.CHARGE, doc = "Rated charge.") @Nullable
        Measure charge,

        @Key(
                example = "0.3 m",
                sign = Key.Sign.NOT_NEGATIVE,
                unit = Dimension.LENGTH,
                doc = "Length of its two own leads together, from the core to the protector and on to chassis.")
        @Nullable
        Measure leadLength,

        @Key(
                example = "20 mm",
                unit = Dimension.LENGTH,
                doc = "Distance of the two leads where they run side by side; absent if they run apart.")
        @Nullable
        Measure leadSpacing,

        @Key(example = "2.5 kV", unit = Dimension.VOLTAGE, doc = "Withstand of the port behind it, peak.") @Nullable
        Measure portWithstand) {}
