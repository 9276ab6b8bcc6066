package earthing.site;

import earthing.quantity.Dimension;
import earthing.quantity.Measure;
import org.jspecify.annotations.Nullable;

/** Rods on a circle. */
public record RodsInRing(
        @Key(most = 100, least = 3, required = true, example = "4", doc = "How many.")
        Integer count,

        @Key(unit = Dimension.LENGTH, required = true, example = "2 m", doc = "Radius of the circle.")
        Measure radius,

        @Key(unit = Dimension.LENGTH, required = true, example = "3 m", doc = "Length of each.")
        Measure length,

        @Key(unit = Dimension.LENGTH, required = true, example = "16 mm", doc = "Diameter of each.")
        Measure diameter,

        @Key(
                sign = Key.Sign.NOT_NEGATIVE,
                unit = Dimension.LENGTH,
                example = "0.5 m",
                doc = "Depth of the tops and of the joining ring.")
        @Nullable
        Measure topDepth,

        @Key(
                example = "10 mm",
                unit = Dimension.LENGTH,
                doc = "Diameter of a bare joining ring; absent if it is insulated.")
        @Nullable
        Measure wireDiameter) {}
