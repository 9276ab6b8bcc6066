package earthing.site;

import earthing.quantity.Dimension;
import earthing.quantity.Measure;
import org.jspecify.annotations.Nullable;

/** The line between source and pole. */
public record SourceLine(
        @Key(unit = Dimension.LENGTH, required = true, example = "6 km", doc = "Length of the line.")
        Measure length,

        @Key(
                sign = Key.Sign.NOT_NEGATIVE,
                unit = Dimension.RESISTANCE_PER_LENGTH,
                example = "0.35 ohm/km",
                doc = "Positive-sequence resistance per length.")
        @Nullable
        Measure resistance,

        @Key(
                sign = Key.Sign.NOT_NEGATIVE,
                unit = Dimension.RESISTANCE_PER_LENGTH,
                example = "0.38 ohm/km",
                doc = "Positive-sequence reactance per length.")
        @Nullable
        Measure reactance,

        @Key(
                sign = Key.Sign.NOT_NEGATIVE,
                unit = Dimension.RESISTANCE_PER_LENGTH,
                example = "0.50 ohm/km",
                doc = "Zero-sequence resistance per length.")
        @Nullable
        Measure zeroSequenceResistance,

        @Key(
                sign = Key.Sign.NOT_NEGATIVE,
                unit = Dimension.RESISTANCE_PER_LENGTH,
                example = "1.6 ohm/km",
                doc = "Zero-sequence reactance per length.")
        @Nullable
        Measure zeroSequenceReactance) {}
