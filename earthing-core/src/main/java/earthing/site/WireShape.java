package earthing.site;

import earthing.quantity.Dimension;
import earthing.quantity.Measure;

/** A straight horizontal wire or tape. */
public record WireShape(
        @Key(unit = Dimension.LENGTH, required = true, example = "20 m", doc = "Length.")
        Measure length,

        @Key(unit = Dimension.LENGTH, required = true, example = "10 mm", doc = "Diameter, for a tape half its width.")
        Measure diameter,

        @Key(unit = Dimension.LENGTH, required = true, example = "0.6 m", doc = "Depth.")
        Measure depth) {}
