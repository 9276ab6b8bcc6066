package earthing.site;

import earthing.quantity.Dimension;
import earthing.quantity.Measure;
import org.jspecify.annotations.Nullable;

/** Rods in a line. */
public record RodsInLine(
        @Key(most = 100, least = 2, required = true, example = "2", doc = "How many.")
        Integer count,

        @Key(unit = Dimension.LENGTH, required = true, example = "3 m", doc = "Distance between neighbours.")
        Measure spacing,

        @Key(unit = Dimension.LENGTH, required = true, example = "3 m", doc = "Length of each.")
        Measure length,

        @Key(unit = Dimension.LENGTH, required = true, example = "16 mm", doc = "Diameter of each.")
        Measure diameter,

        @Key(
                sign = Key.Sign.NOT_NEGATIVE,
                unit = Dimension.LENGTH,
                example = "0.5 m",
                doc = "Depth of the tops and of the joining wire.")
        @Nullable
        Measure topDepth,

        @Key(
                example = "10 mm",
                unit = Dimension.LENGTH,
                doc = "Diameter of a bare joining wire; absent if the wire is insulated.")
        @Nullable
        Measure wireDiameter) {}
