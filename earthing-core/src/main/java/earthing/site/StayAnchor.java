package earthing.site;

import earthing.quantity.Dimension;
import earthing.quantity.Measure;
import org.jspecify.annotations.Nullable;

/** The buried metal of a stay's anchor. A log or a block of concrete counts as nothing: only its rod is metal in the soil. */
public record StayAnchor(
        @Key(
                unit = Dimension.LENGTH,
                required = true,
                example = "2 m",
                doc = "Length of the rod in the soil; it goes on in the direction of the stay.")
        Measure rodLength,

        @Key(unit = Dimension.LENGTH, required = true, example = "19 mm", doc = "Diameter of the rod.")
        Measure rodDiameter,

        @Key(
                unit = Dimension.LENGTH,
                example = "0.4 m",
                doc = "Diameter of the round steel plate at the end of the rod, at right angles to it.")
        @Nullable
        Measure plateDiameter) {}
