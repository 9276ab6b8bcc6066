package earthing.site;

import earthing.quantity.Dimension;
import earthing.quantity.Measure;

/** A horizontal mat. */
public record MatShape(
        @Key(unit = Dimension.LENGTH, required = true, example = "2 m", doc = "Width along x.")
        Measure width,

        @Key(unit = Dimension.LENGTH, required = true, example = "2 m", doc = "Length along y.")
        Measure length,

        @Key(unit = Dimension.LENGTH, required = true, example = "0.5 m", doc = "Distance between wires.")
        Measure mesh,

        @Key(unit = Dimension.LENGTH, required = true, example = "8 mm", doc = "Diameter of the wires.")
        Measure diameter,

        @Key(unit = Dimension.LENGTH, required = true, example = "0.1 m", doc = "Depth.")
        Measure depth) {}
