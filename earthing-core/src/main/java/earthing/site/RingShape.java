package earthing.site;

import earthing.quantity.Dimension;
import earthing.quantity.Measure;

/** A closed horizontal ring. */
public record RingShape(
        @Key(unit = Dimension.LENGTH, required = true, example = "3 m", doc = "Radius.")
        Measure radius,

        @Key(unit = Dimension.LENGTH, required = true, example = "10 mm", doc = "Diameter of the wire.")
        Measure diameter,

        @Key(unit = Dimension.LENGTH, required = true, example = "0.6 m", doc = "Depth.")
        Measure depth) {}
