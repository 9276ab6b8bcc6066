package earthing.site;

import earthing.quantity.Dimension;
import earthing.quantity.Measure;

/** Horizontal wires from a centre. */
public record StarShape(
        @Key(most = 36, least = 2, required = true, example = "3", doc = "How many.")
        Integer arms,

        @Key(unit = Dimension.LENGTH, required = true, example = "15 m", doc = "Length of each.")
        Measure length,

        @Key(unit = Dimension.LENGTH, required = true, example = "10 mm", doc = "Diameter of the wire.")
        Measure diameter,

        @Key(unit = Dimension.LENGTH, required = true, example = "0.6 m", doc = "Depth.")
        Measure depth) {}
