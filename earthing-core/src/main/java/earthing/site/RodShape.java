package earthing.site;

import earthing.quantity.Dimension;
import earthing.quantity.Measure;
import org.jspecify.annotations.Nullable;

/** A vertical rod. */
public record RodShape(
        @Key(unit = Dimension.LENGTH, required = true, example = "3 m", doc = "Length.")
        Measure length,

        @Key(unit = Dimension.LENGTH, required = true, example = "16 mm", doc = "Diameter.")
        Measure diameter,

        @Key(sign = Key.Sign.NOT_NEGATIVE, unit = Dimension.LENGTH, example = "0.5 m", doc = "Depth of the top.")
        @Nullable
        Measure topDepth) {}
