package earthing.site;

import earthing.quantity.Dimension;
import earthing.quantity.Measure;

/** A straight bar at coordinates. */
public record Bar(
        @Key(unit = Dimension.LENGTH, required = true, example = "0 m", doc = "x of the first end.")
        Measure x1,

        @Key(unit = Dimension.LENGTH, required = true, example = "0 m", doc = "y of the first end.")
        Measure y1,

        @Key(unit = Dimension.LENGTH, required = true, example = "0.5 m", doc = "Depth of the first end.")
        Measure depth1,

        @Key(unit = Dimension.LENGTH, required = true, example = "0 m", doc = "x of the second end.")
        Measure x2,

        @Key(unit = Dimension.LENGTH, required = true, example = "0 m", doc = "y of the second end.")
        Measure y2,

        @Key(unit = Dimension.LENGTH, required = true, example = "3.5 m", doc = "Depth of the second end.")
        Measure depth2,

        @Key(unit = Dimension.LENGTH, required = true, example = "16 mm", doc = "Diameter.")
        Measure diameter) {}
